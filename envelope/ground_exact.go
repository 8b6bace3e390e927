package envelope

import (
	"math"

	"cloche.example/internal/domain"
	"gonum.org/v1/gonum/integrate/quad"
)

// Exact conduction into a half-space whose surface is held at two
// temperatures, for checks of the standard and of programs.

// exactLengths is the accepted size of the exact solutions in m.
var exactLengths = domain.Range{Min: 1e-3, Max: 1e4, Unit: "m", Source: "chosen"}

// BareFloor is a rectangular floor at grade without insulation, for formulas
// older than ISO 13370 and for exact solutions to compare it with.
type BareFloor struct {
	Length       float64 // m, 0.001 to 10000; for MaceyFloor any that is no less than Width
	Width        float64 // m, 0.001 to 10000
	Wall         float64 // m, 0.001 to 10000, thickness of the walls that stand round it
	Conductivity float64 // W/(m K), 0.1 to 6, of the soil
}

func (f *BareFloor) valid() bool {
	return exactLengths.Contains(f.Width) && exactLengths.Contains(f.Wall) && soilConductivityRange.Contains(f.Conductivity)
}

// StripFlow returns the heat flow in W per metre of length from an infinitely
// long floor f, whose Length is not read, into the ground. The surface
// temperature is warmer than outside by difference, K, on the floor, and falls
// evenly to that outside across the walls on either side: (2 k/pi) dT [(c+w)/w
// ln(c+w) - (c/w) ln c - ln w]. Exact for steady, two-dimensional conduction in
// a half-space (own derivation by superposition of steps, within 3e-5 of finite
// differences). NaN for a floor out of range.
func StripFlow(f BareFloor, difference float64) float64 {
	if !f.valid() {
		return nan
	}
	c := f.Width / f.Wall
	return 2 * f.Conductivity / math.Pi * difference * (math.Log1p(c) + c*math.Log1p(1/c))
}

// BoxFlow returns the heat flow in W from the floor f as StripFlow does, in
// three dimensions: the surface temperature, warmer by difference, K, on the
// floor, falls evenly across the walls around it. It is a single integral of the solution for a rectangle,
// [IeaBestest08] case GC10a to 1e-6. NaN for a floor out of range.
func BoxFlow(f BareFloor, difference float64) float64 {
	if !f.valid() || !exactLengths.Contains(f.Length) {
		return nan
	}
	step := func(a, b float64) float64 {
		r := math.Hypot(a, b)
		return 2*r - a*math.Log((r+a)/b) - b*math.Log((r+b)/a)
	}
	// s = w u³ takes the logarithm off the lower end.
	mean := quad.Fixed(func(u float64) float64 {
		s := f.Wall * u * u * u
		return 3 * u * u * 4 * (step(f.Length+s, f.Width+s) - step(f.Length+s, s) - step(s, f.Width+s) + step(s, s))
	}, 0, 1, 200, nil, 0)
	return f.Conductivity * difference / (2 * math.Pi) * mean
}

// MaceyFloor returns the U-value in W/(m² K) of the floor f with four exposed
// edges: Macey's formula in [CibseA06]. An infinite Length is a strip. NaN
// where Width exceeds Length and for a floor out of range. Older than ISO
// 13370, without surfaces or seasons: for comparison.
func MaceyFloor(f BareFloor) float64 {
	if !f.valid() || !(f.Length >= f.Width) {
		return nan
	}
	half := f.Width / 2
	shape := 1.0
	if !math.IsInf(f.Length, 1) {
		shape = math.Exp(half / f.Length)
	}
	return 2 * f.Conductivity * shape / (math.Pi * half) * math.Atanh(half/(half+f.Wall/2))
}

// AndersonFloor returns the U-value in W/(m² K) of an uninsulated solid floor
// on clay from the ratio of its exposed perimeter to its area, 1/m, 0.05 to 1.3:
// 0.05 + 1.65 (P/A) - 0.6 (P/A)² of Anderson, [Anderson91]. NaN outside.
func AndersonFloor(ratio float64) float64 {
	if !andersonRange.Contains(ratio) {
		return nan
	}
	return anderson0 + anderson1*ratio + anderson2*ratio*ratio
}

// andersonRange is the perimeter over area of AndersonFloor in 1/m.
var andersonRange = domain.Range{Min: 0.05, Max: 1.3, Unit: "1/m", Source: "chosen: the fit turns down beyond 1.375"}

const anderson0, anderson1, anderson2 = 0.05, 1.65, -0.6 // [Anderson91]
