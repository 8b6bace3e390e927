package envelope

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// Gas is the filling of a sealed unit at the mean temperature for which its
// properties hold.
type Gas struct {
	Name         string  // for reports
	Density      float64 // kg/m³, 0.01 to 30
	Viscosity    float64 // Pa s, 1e-6 to 1e-4, dynamic
	Conductivity float64 // W/(m K), 0.001 to 1
	HeatCapacity float64 // J/(kg K), 100 to 2e4
}

// AirFilling returns air at 10 °C, [EnGlass11] Table 1 (from memory; confirmed
// by the U-values it gives).
func AirFilling() Gas {
	return Gas{Name: "air", Density: 1.232, Viscosity: 1.761e-5, Conductivity: 2.496e-2, HeatCapacity: 1008}
}

// ArgonFilling returns argon at 10 °C, [EnGlass11] Table 1 (from memory).
func ArgonFilling() Gas {
	return Gas{Name: "argon", Density: 1.699, Viscosity: 2.164e-5, Conductivity: 1.684e-2, HeatCapacity: 519}
}

// MixGas returns the linear mixture of a and b with the share of a as a
// fraction of volume, as [EnGlass11] 6.3 mixes; a NaN share or one outside 0
// to 1 gives NaN fields.
func MixGas(a, b Gas, share float64) Gas {
	if !fractionRange.Contains(share) {
		share = nan
	}
	mix := func(x, y float64) float64 { return share*x + (1-share)*y }
	return Gas{
		Name:    a.Name + " and " + b.Name,
		Density: mix(a.Density, b.Density), Viscosity: mix(a.Viscosity, b.Viscosity),
		Conductivity: mix(a.Conductivity, b.Conductivity), HeatCapacity: mix(a.HeatCapacity, b.HeatCapacity),
	}
}

// SealedSpace is one gas space of a sealed unit.
type SealedSpace struct {
	Width     float64    // m, 0.001 to 0.1
	Gas       Gas        // filling
	Emittance [2]float64 // fraction, 0.005 to 1, corrected emittance of the two faces, outer first
}

// SealedUnit is a sealed glazing of plates that are opaque to long-wave, as
// EN 673 treats it. DefaultSealedUnit gives the declared boundary conditions.
type SealedUnit struct {
	Glass        []float64     // m, 1e-6 to 1, thickness of each plate from the outside
	Conductivity float64       // W/(m K), 0.001 to 500, of the plates
	Spaces       []SealedSpace // one fewer than plates
	Tilt         float64       // degree, 0 to 90: 90 upright, 45, or 0 flat with heat flowing up; linear between
	FlowDown     bool          // heat flows down: no convection in the spaces
	ROut         float64       // m² K/W, 0 to 50, outside surface resistance
	RIn          float64       // m² K/W, 0 to 50, inside surface resistance
	Mean         float64       // °C, -60 to 60, mean temperature of the spaces
	Difference   float64       // K, 0 to 100, between the outermost faces of the spaces in all
}

// DefaultSealedUnit returns the declared conditions of [EnGlass11]: upright,
// surface resistances 0.04 and 0.13 m² K/W, 10 °C mean temperature (283 K),
// 15 K over all spaces, glass of 1.0 W/(m K). Plates and spaces are to be set.
func DefaultSealedUnit() SealedUnit {
	return SealedUnit{Conductivity: 1, Tilt: 90, ROut: 0.04, RIn: 0.13, Mean: sealedMean - constant.ZeroCelsius, Difference: 15}
}

// sealedMean is the mean temperature of [EnGlass11] 7 in kelvin.
const sealedMean = 283.0

// spaceSettled is the move of a space's resistance, m² K/W, that is rounding.
const spaceSettled = 1e-14

// SealedResult carries the terms of a declared U-value.
type SealedResult struct {
	U       float64   // W/(m² K), between the environmental temperatures of EN 673
	RGlass  float64   // m² K/W, all plates
	RSpaces []float64 // m² K/W, each space
	Nusselt []float64 // dimensionless, each space
	HGas    []float64 // W/(m² K), each space: conduction and convection
	HRad    []float64 // W/(m² K), each space: radiation
	Rounds  int       // rounds of sharing the temperature difference
}

// Coefficients of [EnGlass11] 6.2: Nu = A (Gr Pr)^n.
const (
	sealedGravity                  = 9.81 // m/s², as EN 673 writes it
	sealedUprightA, sealedUprightN = 0.035, 0.38
	sealedSlopeA, sealedSlopeN     = 0.10, 0.31
	sealedFlatA, sealedFlatN       = 0.16, 0.28
)

// Solve returns the U-value by [EnGlass11] clauses 5 to 7. The error joins a
// *RangeError for each field out of range.
func (g SealedUnit) Solve() (SealedResult, error) { return g.solve(&standard) }

func (g SealedUnit) solve(pc *constants) (SealedResult, error) {
	if err := g.check(); err != nil {
		return SealedResult{}, err
	}
	n := len(g.Spaces)
	r := SealedResult{
		RSpaces: make([]float64, n), Nusselt: make([]float64, n),
		HGas: make([]float64, n), HRad: make([]float64, n),
	}
	for _, d := range g.Glass {
		r.RGlass += d / g.Conductivity // eq. 2
	}
	total := 0.0
	for i := range n {
		r.RSpaces[i] = 1
		total++
	}
	// Clause 7: the difference is shared by the resistances, to be repeated.
	for r.Rounds = 1; r.Rounds <= 200; r.Rounds++ {
		sum := 0.0
		for i, s := range g.Spaces {
			dt := g.Difference * r.RSpaces[i] / total
			r.Nusselt[i] = g.nusselt(s, dt)
			r.HGas[i] = r.Nusselt[i] * s.Gas.Conductivity / s.Width // eq. 6
			k := g.Mean + constant.ZeroCelsius
			r.HRad[i] = 4 * pc.sigma * k * k * k / (1/s.Emittance[0] + 1/s.Emittance[1] - 1) // eq. 4
			sum += 1 / (r.HGas[i] + r.HRad[i])
		}
		moved := 0.0
		for i := range n {
			next := 1 / (r.HGas[i] + r.HRad[i])
			moved = math.Max(moved, math.Abs(next-r.RSpaces[i]))
			r.RSpaces[i] = next
		}
		total = sum
		if moved < spaceSettled {
			break
		}
	}
	r.U = 1 / (g.ROut + g.RIn + r.RGlass + total) // eq. 1
	return r, nil
}

// nusselt is [EnGlass11] eq. 7 to 9 with the difference dt in K.
func (g SealedUnit) nusselt(s SealedSpace, dt float64) float64 {
	if g.FlowDown {
		return 1
	}
	k := g.Mean + constant.ZeroCelsius
	gas := s.Gas
	gr := sealedGravity * s.Width * s.Width * s.Width * dt * gas.Density * gas.Density / (k * gas.Viscosity * gas.Viscosity)
	ra := gr * gas.Viscosity * gas.HeatCapacity / gas.Conductivity
	upright := sealedUprightA * math.Pow(ra, sealedUprightN)
	slope := sealedSlopeA * math.Pow(ra, sealedSlopeN)
	flat := sealedFlatA * math.Pow(ra, sealedFlatN)
	nu := slope + (upright-slope)*(g.Tilt-45)/45
	if g.Tilt < 45 {
		nu = flat + (slope-flat)*g.Tilt/45
	}
	return math.Max(1, nu)
}

func (g SealedUnit) check() error {
	var faults []error
	check := func(r domain.Range, field string, v float64) {
		if err := r.Check(field, v); err != nil {
			faults = append(faults, err)
		}
	}
	check(domain.Range{Min: 1, Max: 20, Unit: "plates", Source: "chosen"}, "number of Glass", float64(len(g.Glass)))
	want := float64(max(0, len(g.Glass)-1))
	check(domain.Range{Min: want, Max: want, Unit: "spaces", Source: "one fewer than plates"}, "number of Spaces", float64(len(g.Spaces)))
	for i, d := range g.Glass {
		check(thicknessRange, fmt.Sprintf("Glass[%d]", i), d)
	}
	check(conductivityRange, "Conductivity", g.Conductivity)
	for i, s := range g.Spaces {
		check(domain.Range{Min: 1e-3, Max: 0.1, Unit: "m", Source: "chosen"}, fmt.Sprintf("Spaces[%d].Width", i), s.Width)
		for j, e := range s.Emittance {
			check(domain.Range{Min: 0.005, Max: 1, Unit: "fraction", Source: "chosen"}, fmt.Sprintf("Spaces[%d].Emittance[%d]", i, j), e)
		}
		check(gasDensityRange, fmt.Sprintf("Spaces[%d].Gas.Density", i), s.Gas.Density)
		check(gasViscosityRange, fmt.Sprintf("Spaces[%d].Gas.Viscosity", i), s.Gas.Viscosity)
		check(gasConductivityRange, fmt.Sprintf("Spaces[%d].Gas.Conductivity", i), s.Gas.Conductivity)
		check(gasHeatRange, fmt.Sprintf("Spaces[%d].Gas.HeatCapacity", i), s.Gas.HeatCapacity)
	}
	check(domain.Range{Min: 0, Max: 90, Unit: "degree", Source: "EN 673"}, "Tilt", g.Tilt)
	check(resistanceRange, "ROut", g.ROut)
	check(resistanceRange, "RIn", g.RIn)
	check(coverTemperatureRange, "Mean", g.Mean)
	check(domain.Range{Min: 0, Max: 100, Unit: "K", Source: "chosen"}, "Difference", g.Difference)
	return errors.Join(faults...)
}

var resistanceRange = domain.Range{Min: 0, Max: 50, Unit: "m² K/W", Source: "chosen"}

// Ranges of a filling: gases from hydrogen to sulphur hexafluoride and vapours
// of refrigerants, at the pressure of the air (chosen).
var (
	gasDensityRange      = domain.Range{Min: 0.01, Max: 30, Unit: "kg/m³", Source: "chosen: gases at the pressure of the air"}
	gasViscosityRange    = domain.Range{Min: 1e-6, Max: 1e-4, Unit: "Pa s", Source: "chosen: gases"}
	gasConductivityRange = domain.Range{Min: 1e-3, Max: 1, Unit: "W/(m K)", Source: "chosen: gases"}
	gasHeatRange         = domain.Range{Min: 100, Max: 2e4, Unit: "J/(kg K)", Source: "chosen: gases"}
)
