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

// StripFlow returns the heat flow in W per metre of length from a floor strip
// of the width floor in m into ground of the conductivity in W/(m K). The
// surface temperature is warmer than outside by difference in K on the floor,
// and falls evenly to that outside across the width wall in m on either side:
// (2 k/pi) dT [(c+w)/w ln(c+w) - (c/w) ln c - ln w]. Exact for steady,
// two-dimensional conduction in a half-space (own derivation by superposition
// of steps, within 3e-5 of finite differences). NaN for a length outside 1 mm
// to 10 km or a conductivity outside SoilConductivity.
func StripFlow(floor, wall, conductivity, difference float64) float64 {
	if !exactLengths.Contains(floor) || !exactLengths.Contains(wall) || !soilConductivityRange.Contains(conductivity) {
		return nan
	}
	c := floor / wall
	return 2 * conductivity / math.Pi * difference * (math.Log1p(c) + c*math.Log1p(1/c))
}

// BoxFlow returns the heat flow in W from a rectangular floor, length by width
// in m, as StripFlow does in three dimensions: the surface temperature falls
// evenly across the width wall in m around it. It is a single integral of the
// solution for a rectangle, [IeaBestest08] case GC10a to 1e-6. The conductivity
// in W/(m K), the temperature difference in K and NaN are as for StripFlow.
func BoxFlow(length, width, wall, conductivity, difference float64) float64 {
	if !exactLengths.Contains(length) || !exactLengths.Contains(width) || !exactLengths.Contains(wall) || !soilConductivityRange.Contains(conductivity) {
		return nan
	}
	f := func(a, b float64) float64 {
		r := math.Hypot(a, b)
		return 2*r - a*math.Log((r+a)/b) - b*math.Log((r+b)/a)
	}
	// s = w u³ takes the logarithm off the lower end.
	mean := quad.Fixed(func(u float64) float64 {
		s := wall * u * u * u
		return 3 * u * u * 4 * (f(length+s, width+s) - f(length+s, s) - f(s, width+s) + f(s, s))
	}, 0, 1, 200, nil, 0)
	return conductivity * difference / (2 * math.Pi) * mean
}

// MaceyFloor returns the U-value in W/(m² K) of a solid floor at grade with
// four exposed edges, of the breadth and length in m with breadth the shorter,
// behind walls of the thickness wall in m, on soil of the conductivity in
// W/(m K): Macey's formula in [CibseA06]. NaN when breadth exceeds length, for a
// length outside 1 mm to 10 km, or a conductivity outside SoilConductivity.
// Older than ISO 13370, without insulation, surfaces or seasons: a rival for
// comparison.
func MaceyFloor(breadth, length, wall, conductivity float64) float64 {
	if !exactLengths.Contains(breadth) || !(length >= breadth) || !exactLengths.Contains(wall) || !soilConductivityRange.Contains(conductivity) {
		return nan
	}
	half := breadth / 2
	shape := 1.0
	if !math.IsInf(length, 1) {
		shape = math.Exp(half / length)
	}
	return 2 * conductivity * shape / (math.Pi * half) * math.Atanh(half/(half+wall/2))
}

// AndersonFloor returns the U-value in W/(m² K) of an uninsulated solid floor
// on clay from the ratio in 1/m of its exposed perimeter to its area: 0.05 + 1.65 (P/A) -
// 0.6 (P/A)² of Anderson, [Anderson91]. NaN outside AndersonRange.
func AndersonFloor(ratio float64) float64 {
	if !andersonRange.Contains(ratio) {
		return nan
	}
	return anderson0 + anderson1*ratio + anderson2*ratio*ratio
}

// AndersonRange is the perimeter over area of AndersonFloor in 1/m.
var andersonRange = domain.Range{Min: 0.05, Max: 1.3, Unit: "1/m", Source: "chosen: the fit turns down beyond 1.375"}

const anderson0, anderson1, anderson2 = 0.05, 1.65, -0.6 // [Anderson91]
