package airheat

import (
	"math"

	"cloche.example/internal/domain"
)

// The two Reynolds numbers between which pipe flow is neither laminar nor
// fully turbulent, dimensionless. Friction is 64/Re up to the first, Colebrook
// from the second, and a straight line in Re between the two end values: a
// convention, not a law, for no published formula holds there.
const (
	laminarLimit   = 2300.0
	turbulentLimit = 4000.0
)

// reynoldsRange holds for Friction and Colebrook, dimensionless.
var reynoldsRange = domain.Range{Min: 0, Max: 1e9, Unit: "dimensionless", Source: "Moody's chart and a margin"}

// relativeRoughnessRange is the roughness over the hydraulic diameter,
// dimensionless. Moody's chart ends at 0.05.
var relativeRoughnessRange = domain.Range{Min: 0, Max: 0.1, Unit: "dimensionless", Source: "Moody's chart ends at 0.05"}

// Friction returns the Darcy friction factor, dimensionless, of a pipe or duct
// at the Reynolds number re (above 0, up to 1e9, dimensionless) with the
// roughness relativeRoughness over the diameter (0 to 0.1, dimensionless):
// 64/re up to 2300, Colebrook from 4000, linear in re between those two values.
// The Fanning factor of some books is a quarter of it. NaN outside the ranges.
// Accuracy: 4e-16 relative to the exact root of the equation; Colebrook itself
// stands within some 5 % of measured pipes.
func Friction(re, relativeRoughness float64) float64 {
	if !(re > 0 && re <= reynoldsRange.Max) || !relativeRoughnessRange.Contains(relativeRoughness) {
		return math.NaN()
	}
	switch {
	case re <= laminarLimit:
		return laminar / re
	case re < turbulentLimit:
		x, _ := colebrookRoot(colebrookSmooth/turbulentLimit, relativeRoughness/colebrookRough)
		return between(re, 1/(x*x))
	}
	x, _ := colebrookRoot(colebrookSmooth/re, relativeRoughness/colebrookRough)
	return 1 / (x * x)
}

// The laminar law f = 64/Re of Hagen and Poiseuille, and the constants of
// Colebrook's equation in the order of its terms [Cole39] eq. 12.
const (
	laminar         = 64.0
	colebrookRough  = 3.7
	colebrookSmooth = 2.51
	colebrookC      = 2 / math.Ln10 // 2 log10 written with the natural logarithm
)

// between is the straight line in re from the laminar value to f4000, the
// turbulent value at turbulentLimit.
func between(re, f4000 float64) float64 {
	const f2300 = laminar / laminarLimit
	return f2300 + (f4000-f2300)*((re-laminarLimit)/(turbulentLimit-laminarLimit))
}

// Colebrook returns the Darcy friction factor f, dimensionless, of turbulent
// flow as the exact root of
//
//	1/√f = -2 log10(relativeRoughness/3.7 + 2.51/(re √f))
//
// for the Reynolds number re (4000 to 1e9, dimensionless) and the roughness
// relativeRoughness over the diameter (0 to 0.1, dimensionless). NaN outside.
// [Cole39] eq. 12. Accuracy: 4e-16 relative to the exact root.
func Colebrook(re, relativeRoughness float64) float64 {
	if !(re >= turbulentLimit && re <= reynoldsRange.Max) || !relativeRoughnessRange.Contains(relativeRoughness) {
		return math.NaN()
	}
	x, _ := colebrookRoot(colebrookSmooth/re, relativeRoughness/colebrookRough)
	return 1 / (x * x)
}

// colebrookRoot solves x + c ln(a + b x) = 0 for x = 1/√f: a Newton step with
// a crude logarithm starts it from the middle of all pipes, and fourth-order
// steps with the true one end at machine precision, as in [Clam09], who solved
// the same equation through Lambert's W. The slope of the root by ln Re is
// k x/(1 + k).
func colebrookRoot(b, a float64) (x, k float64) {
	return colebrookFrom(colebrookStart(colebrookMiddle, b, a), b, a)
}

const colebrookMiddle = 7.0 // 1/√f lies between 3 and 14 for every pipe

// colebrookStart is a Newton step from x with the crude logarithm.
func colebrookStart(x, b, a float64) float64 {
	y := a + b*x
	return x - (x+colebrookC*crudeLog(y))*y/(y+colebrookC*b)
}

// fourthOrder is the miss of 1/√f from which a step of fourth order ends at rounding:
// its error goes as the fourth power.
const fourthOrder = 0.002

// colebrookFrom is the root and its k from x, a guess near it: one step of
// fourth order, two from far away. k is carried to the root to first order.
func colebrookFrom(x, b, a float64) (root, k float64) {
	for range 3 {
		y := a + b*x
		k = colebrookC * b / y
		r := 1 / (1 + k)
		e, t := parts(y)
		miss := (x + colebrookC*fullLog(e, t)) * r
		x -= inverseSeries(miss, k, r)
		k += k * k * (1 / colebrookC) * miss
		if miss < fourthOrder && miss > -fourthOrder {
			break
		}
	}
	return x, k
}

// inverseSeries is the step to the root of g for the ratio u = g/g', with
// g” = −k²/c and g”' = 2 k³/c²: Householder's series to the third order.
func inverseSeries(u, k, r float64) float64 {
	kc := k * (1 / colebrookC)
	a2 := -0.5 * k * kc * r   // g''/(2 g')
	a3 := k * kc * kc * r / 3 // g'''/(6 g')
	return u * (1 + u*(a2+u*(2*a2*a2-a3)))
}

// parts writes a positive normal number as 2^e m, m in [√½, √2), and returns e
// and t = (m-1)/(m+1), so that its logarithm is e ln 2 + 2 artanh t. Written out
// here, a logarithm lies in line and can be as short as its use allows.
func parts(v float64) (e, t float64) {
	const halfRoot = 0x3fe6a09e667f3bcd // bits of √½
	bits := math.Float64bits(v)
	n := int64(bits-halfRoot) >> 52
	m := math.Float64frombits(bits - uint64(n)<<52)
	return float64(n), (m - 1) / (m + 1)
}

// crudeLog is the natural logarithm to within 7e-5: two terms of the series.
func crudeLog(v float64) float64 {
	e, t := parts(v)
	return e*math.Ln2 + 2*t*(1+t*t/3)
}

// Coefficients of artanh t = t (1 + c1 t² + c2 t⁴ + …), fitted so that seven of
// them serve to 1e-17 where twice as many of the series would: those of FreeBSD's
// e_log.c (Sun Microsystems 1993), halved.
const (
	artanh1 = 6.666666666666735130e-01 / 2
	artanh2 = 3.999999999940941908e-01 / 2
	artanh3 = 2.857142874366239149e-01 / 2
	artanh4 = 2.222219843214978396e-01 / 2
	artanh5 = 1.818357216161805012e-01 / 2
	artanh6 = 1.531383769920937332e-01 / 2
	artanh7 = 1.479819860511658591e-01 / 2
)

// fullLog is the natural logarithm to the last digits of the number with these
// parts.
func fullLog(e, t float64) float64 {
	z := t * t
	w := z * z
	return e*math.Ln2 + 2*(t+t*(z*(artanh1+w*(artanh3+w*(artanh5+w*artanh7)))+w*(artanh2+w*(artanh4+w*artanh6))))
}

// SwameeJain returns the Darcy friction factor, dimensionless, of turbulent
// flow at the Reynolds number re (5e3 to 1e8, dimensionless) and the roughness
// relativeRoughness over the diameter (1e-6 to 1e-2, dimensionless) by the
// explicit form 0.25/[log10(ε/3.7 + 5.74/Re^0.9)]². NaN outside. [SwaJai76]
// eq. 3 states 1 % against Colebrook; the tests find -0.6 to +2.9 % over that
// range.
func SwameeJain(re, relativeRoughness float64) float64 {
	if !(re >= 5e3 && re <= 1e8) || !(relativeRoughness >= 1e-6 && relativeRoughness <= 1e-2) {
		return math.NaN()
	}
	l := math.Log10(relativeRoughness/3.7 + 5.74/math.Pow(re, 0.9)) // [SwaJai76] eq. 3
	return 0.25 / (l * l)
}

// Haaland returns the Darcy friction factor, dimensionless, of turbulent flow
// at the Reynolds number re (4e3 to 1e8, dimensionless) and the roughness
// relativeRoughness over the diameter (0 to 0.05, dimensionless) by the
// explicit form 1/√f = -1.8 log10[(ε/3.7)^1.11 + 6.9/Re]. NaN outside.
// [Haal83] eq. 8; within 1.5 % of Colebrook.
func Haaland(re, relativeRoughness float64) float64 {
	if !(re >= 4e3 && re <= 1e8) || !(relativeRoughness >= 0 && relativeRoughness <= 0.05) {
		return math.NaN()
	}
	x := -1.8 * math.Log10(math.Pow(relativeRoughness/3.7, 1.11)+6.9/re) // [Haal83] eq. 8
	return 1 / (x * x)
}

// AltshulTsal returns the Darcy friction factor, dimensionless, of turbulent
// flow at the Reynolds number re (4e3 to 1e8, dimensionless) and the roughness
// relativeRoughness over the diameter (0 to 0.05, dimensionless) by the form
// of older duct tables, 0.11 (ε + 68/Re)^0.25, raised to 0.85 f + 0.0028 where
// that first value is below 0.018. NaN outside. [Tsal89]; -9 to +3 % of
// Colebrook up to a relative roughness of 0.01.
func AltshulTsal(re, relativeRoughness float64) float64 {
	if !(re >= 4e3 && re <= 1e8) || !(relativeRoughness >= 0 && relativeRoughness <= 0.05) {
		return math.NaN()
	}
	f := 0.11 * math.Sqrt(math.Sqrt(relativeRoughness+68/re)) // [Tsal89]
	if f < 0.018 {
		f = 0.85*f + 0.0028 // [Tsal89]
	}
	return f
}
