package psychro

import (
	"math"

	"cloche.example/internal/constant"
)

var nan = math.NaN()

// Enthalpy of the ideal gases, J/mol, T in K [HylWex83], and the offsets that
// put dry air and liquid water to zero at 0 °C and 101325 Pa [HoF17] ch. 1.
const (
	ha0, ha1, ha2, ha3, ha4, ha5 = 0.63290874e1, 0.28709015e2, 0.26431805e-2, -0.10405863e-4, 0.18660410e-7, -0.97843331e-11
	hw0, hw1, hw2, hw3, hw4, hw5 = -0.5008e-2, 0.32491829e2, 0.65576345e-2, -0.26442147e-4, 0.51751789e-7, -0.31541624e-10
	airOffset, waterOffset       = -7914.1982, 35994.17
)

// Enthalpy of condensed water at 101325 Pa, J/kg, t in °C: fits for this library
// to [IapwsFull18], liquid within 4 J/kg from 0 to 110 °C and 25 down to -35,
// the second polynomial being added below 0 °C, and to [IapwsIh09], ice within
// 3 from -100 to 0.01 °C.
const (
	liq0, liq1, liq2, liq3, liq4, liq5 = 64.7533862, 4216.52967, -1.33492912, 0.0215137578, -1.57587623e-4, 5.04494208e-7
	cold2, cold3, cold4, cold5         = -0.221543291, 0.138796458, 8.14840210e-3, 2.28021343e-4
	ice0, ice1, ice2, ice3             = -333358.131, 2097.34077, 3.71903762, 9.51726826e-4
)

// Handbook form [HoF17] ch. 1.
const (
	gasAir             = constant.GasDryAir  // J/(kg K), eq. 24
	gasFactor          = 1.607858            // eq. 24
	heatAir            = constant.HeatDryAir // J/(kg K), eq. 28
	heatVapour         = constant.HeatVapour // J/(kg K), eq. 29
	latentZero         = constant.LatentZero // J/kg, eq. 29
	heatLiquid         = constant.HeatLiquid // J/(kg K), eq. 33
	heatIce            = 2100.0              // J/(kg K), eq. 35
	fusionOfTheWetBulb = -329000.0           // J/kg, ice at 0 °C as eq. 35 has it: 2501 - 2830 kJ/kg
)

func airIdeal(T float64) float64 {
	return ha0 + T*(ha1+T*(ha2+T*(ha3+T*(ha4+T*ha5)))) + airOffset
}

func vapourIdeal(T float64) float64 {
	return hw0 + T*(hw1+T*(hw2+T*(hw3+T*(hw4+T*hw5)))) + waterOffset
}

// enthalpy of moist air, J/kg dry air, at t in °C, p in Pa, mole fraction x
// and humidity ratio w of vapour.
func (m Model) enthalpy(t, p, x, w float64) float64 {
	if m == IdealGas {
		return heatAir*t + w*(latentZero+heatVapour*t) // [HoF17] ch. 1 eq. 30
	}
	T := t + kelvin
	caa, caw, cww := caloric(100 / T)
	return realEnthalpyOf(T, p, x, mix(x, caa, caw, cww))
}

// realEnthalpyOf takes the mixture's B - T dB/dT, cm³/mol.
func realEnthalpyOf(T, p, x, c float64) float64 {
	xa := 1 - x
	return (xa*airIdeal(T) + x*vapourIdeal(T) + p*1e-6*c) / (molarAir * xa)
}

// volume of moist air, m³/kg dry air.
func (m Model) volume(t, p, x, w float64) float64 {
	T := t + kelvin
	if m == IdealGas {
		return gasAir * T * (1 + gasFactor*w) / p // [HoF17] ch. 1 eq. 26
	}
	baa, baw, bww := virials(100 / T)
	return realVolumeOf(T, p, x, mix(x, baa, baw, bww))
}

// realVolumeOf takes the mixture's second virial coefficient, cm³/mol.
func realVolumeOf(T, p, x, b float64) float64 {
	return (gasConstant*T/p + 1e-6*b) / (molarAir * (1 - x))
}

// condensed is the enthalpy of liquid water or ice, J/kg, at t in °C.
func (m Model) condensed(s Surface, t float64) float64 {
	switch {
	case m == IdealGas && s == Ice:
		return fusionOfTheWetBulb + heatIce*t
	case m == IdealGas:
		return heatLiquid * t
	case s == Ice:
		return ice0 + t*(ice1+t*(ice2+t*ice3))
	case t < 0:
		return liquidPolynomial(t) + t*t*(cold2+t*(cold3+t*(cold4+t*cold5)))
	default:
		return liquidPolynomial(t)
	}
}

func liquidPolynomial(t float64) float64 {
	return liq0 + t*(liq1+t*(liq2+t*(liq3+t*(liq4+t*liq5))))
}

// condensedSlope is condensed with its derivative, J/(kg K).
func (m Model) condensedSlope(s Surface, t float64) (h, c float64) {
	switch {
	case m == IdealGas && s == Ice:
		c = heatIce
	case m == IdealGas:
		c = heatLiquid
	case s == Ice:
		c = ice1 + t*(2*ice2+t*(3*ice3))
	default:
		c = liq1 + t*(2*liq2+t*(3*liq3+t*(4*liq4+t*(5*liq5))))
		if t < 0 {
			c += t * (2*cold2 + t*(3*cold3+t*(4*cold4+t*(5*cold5))))
		}
	}
	return m.condensed(s, t), c
}

// LatentHeat returns the heat of evaporation of water, J/kg, at temperature t,
// °C, -100 to 110, and of sublimation of ice below 0.01 °C; NaN outside. It is
// the difference between the enthalpies of vapour and of water or ice that
// State uses, at the saturation pressure of pure water.
func LatentHeat(t float64) float64 { return LatentHeatOver(SurfaceAt(t), t) }

// LatentHeatOver returns the heat, J/kg, that takes water from surface s into
// saturated vapour at temperature t, °C: over liquid t is -40 to 110, over ice
// t is -100 to 0.01. NaN outside.
func LatentHeatOver(s Surface, t float64) float64 {
	_, _, cww := caloric(100 / (t + kelvin))
	return latentIn(s, t, cww)
}

// latentIn is latentOf, and NaN where water of that surface has no fit.
func latentIn(s Surface, t, cww float64) float64 {
	if !(s == Liquid && waterTemperaturesRange.Contains(t)) && !(s == Ice && frostTemperaturesRange.Contains(t)) {
		return nan
	}
	return latentOf(s, t, cww)
}

// latentOf takes water's B - T dB/dT, cm³/mol.
func latentOf(s Surface, t, cww float64) float64 {
	return (vapourIdeal(t+kelvin)+1e-6*cww*pureSaturation(s, t))*(1/molarWater) - RealGas.condensed(s, t)
}

// airHeat and vapourHeat are the slopes of airIdeal and vapourIdeal, J/(mol K).
func airHeat(T float64) float64 {
	return ha1 + T*(2*ha2+T*(3*ha3+T*(4*ha4+T*(5*ha5))))
}

func vapourHeat(T float64) float64 {
	return hw1 + T*(2*hw2+T*(3*hw3+T*(4*hw4+T*(5*hw5))))
}

// heatCapacity is dh/dt at constant p and w, J/(kg K), per kg of dry air.
func (m Model) heatCapacity(t, p, x, w float64) float64 {
	if m == IdealGas {
		return heatAir + w*heatVapour
	}
	T := t + kelvin
	daa, daw, dww := caloricSlope(100 / T)
	return realHeatCapacityOf(T, p, x, mix(x, daa, daw, dww))
}

// realHeatCapacityOf takes the mixture's z d/dz of B - T dB/dT, cm³/mol.
func realHeatCapacityOf(T, p, x, d float64) float64 {
	xa := 1 - x
	return (xa*airHeat(T) + x*vapourHeat(T) - p*1e-6/T*d) / (molarAir * xa)
}
