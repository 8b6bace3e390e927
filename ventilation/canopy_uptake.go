package ventilation

import (
	"math"

	"cloche.example/internal/constant"
)

// Photosynthesis of a tomato canopy as electron transport and biochemistry
// [Vanthoor11b] electronic appendix eq. 10 to 23 and table 3.
const (
	uptakeLeafRate   = 210.0      // µmol/(m² s), of electrons per leaf area at 25 °C
	uptakeYield      = 0.385      // µmol of electrons per µmol of photons
	uptakeCurve      = 0.7        // dimensionless, theta
	uptakeActivation = 37e3       // J/mol, Ej
	uptakeDeactivate = 220e3      // J/mol, H
	uptakeEntropy    = 710.0      // J/(mol K), S
	uptakeReference  = 298.15     // K
	uptakeGas        = 8.314      // J/(mol K)
	uptakeInside     = 0.67       // fraction, CO2 in the stomata over that of the air
	uptakePoint      = 1.7        // µmol/(mol K), compensation point
	uptakePoint0     = 34.0       // µmol/mol, the part of it that a larger canopy has more of
	uptakeExtinction = 0.7        // dimensionless, of light
	uptakeReflected  = 0.07       // fraction, by the canopy
	uptakeFloor      = 0.5        // fraction, by a floor of white film
	carbonMass       = 44.0095e-3 // kg/mol, of CO2
)

// carbonGas is the gas constant of CO2.
const carbonGas = constant.MolarGas / carbonMass // J/(kg K)

// CO2Density returns the CO2, kg/m³, in air of the concentration co2, µmol/mol, 0
// to 5000, the temperature t, °C, -60 to 80, and the pressure p, Pa, 60000 to
// 110000: 1e-6 p/(R T) per µmol/mol. NaN outside these.
func CO2Density(co2, t, p float64) float64 {
	if !doseRange.Contains(co2) || !temperatureRange.Contains(t) || !pressureRange.Contains(p) {
		return math.NaN()
	}
	return co2 * carbonPer(t, p)
}

// carbonPer returns kg/m³ for each µmol/mol.
func carbonPer(t, p float64) float64 { return 1e-6 * p / (carbonGas * (t + kelvin)) }

// Uptake returns the CO2, kg/s per m² of floor, that the photosynthesis of the
// canopy takes in light of par, µmol/(m² s), 0 to 3000, above it, at the
// concentration co2, µmol/mol, 0 to 5000, and the leaf temperature leaf, °C, 0 to
// 45: [Vanthoor11b] eq. 10 to 23, fitted to tomato, over a floor of white film.
// Respiration is not taken off (0.3 to 0.8 g/(m² h), from memory). Below the
// compensation point and without light or leaves it is 0. NaN outside the ranges.
func (c Canopy) Uptake(par, co2, leaf float64) float64 {
	if !parRange.Contains(par) || !doseRange.Contains(co2) || !leafWarmthRange.Contains(leaf) || !leafAreaRange.Contains(c.LAI) {
		return math.NaN()
	}
	if par == 0 || c.LAI == 0 {
		return 0
	}
	up := uptakeOf(c.LAI, par, leaf)
	v, _ := up.at(co2)
	return v
}

// uptake is the light and the warmth of a canopy's photosynthesis.
type uptake struct {
	electrons float64 // µmol/(m² s)
	point     float64 // µmol/mol, compensation point
}

func uptakeOf(lai, par, leaf float64) uptake {
	through := math.Exp(-uptakeExtinction * lai)
	taken := par * (1 - uptakeReflected) * (1 - through) * (1 + uptakeFloor*through) // eq. 17, 18: from above and back from the floor
	t := leaf + kelvin
	warm := math.Exp(uptakeActivation*(t-uptakeReference)/(uptakeGas*t*uptakeReference)) *
		(1 + math.Exp((uptakeEntropy*uptakeReference-uptakeDeactivate)/(uptakeGas*uptakeReference))) /
		(1 + math.Exp((uptakeEntropy*t-uptakeDeactivate)/(uptakeGas*t))) // eq. 15
	most := lai * uptakeLeafRate * warm // eq. 16
	sum := most + uptakeYield*taken
	j := (sum - math.Sqrt(sum*sum-4*uptakeCurve*most*uptakeYield*taken)) / (2 * uptakeCurve) // eq. 14
	return uptake{electrons: j, point: uptakePoint*leaf/lai + uptakePoint0*(1-1/lai)}        // eq. 23
}

// at returns the CO2 taken, kg/(m² s), and its slope, at the concentration co2,
// µmol/mol.
func (u uptake) at(co2 float64) (v, slope float64) {
	s, g := uptakeInside*co2, u.point // eq. 21
	if s <= g || s == 0 {
		return 0, 0
	}
	// Pn = J (Cs - G)/(4 (Cs + 2 G)) (1 - G/Cs), eq. 12 and 13.
	d := s + 2*g
	v = u.electrons * (s - g) * (s - g) / (4 * d * s)
	slope = v * (2/(s-g) - 1/d - 1/s) * uptakeInside
	const unit = 1e-6 * carbonMass
	return v * unit, slope * unit
}
