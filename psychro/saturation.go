package psychro

import "math"

// Saturation line of liquid water [IapwsIF07] eq. 30 and 31; T in K, p in MPa.
const (
	n1  = 0.11670521452767e4
	n2  = -0.72421316703206e6
	n3  = -0.17073846940092e2
	n4  = 0.12020824702470e5
	n5  = -0.32325550322333e7
	n6  = 0.14915108613530e2
	n7  = -0.48232657361591e4
	n8  = 0.40511340542057e6
	n9  = -0.23855557567849
	n10 = 0.65017534844798e3
)

// Sublimation line of ice [IapwsIce11] eq. 6 and its triple point.
const (
	tripleKelvin   = 273.16  // K
	triplePressure = 611.657 // Pa

	iceA1, iceB1 = -0.212144006e2, 0.333333333e-2
	iceA2, iceB2 = 0.273203819e2, 0.120666667e1
	iceA3, iceB3 = -0.610598130e1, 0.170333333e1
)

// The same line as a polynomial in u = 273.16/T - 1, ln(p/611.657), fitted for
// this library by least squares at Chebyshev nodes: within 1e-8 of eq. 6 from
// -100 to 0.01 °C, at the cost of one exponential in place of four.
const (
	iceFitFrom = -100.0 // °C

	u1 = -22.49535965147
	u2 = -0.2156409571675
	u3 = 0.7765713030975
	u4 = -1.019246915095
	u5 = 1.077714322976
	u6 = -0.9139022206257
	u7 = 0.5318870435268
	u8 = -0.1513063651214
)

// SaturationPressure returns the pressure, Pa, of water vapour in equilibrium
// with ice below 0.01 °C and with liquid water from that temperature up, at
// temperature t, °C, -223.15 to 200; NaN outside. Pure water: the vapour
// pressure of saturated air is higher by the enhancement factor. See
// SaturationPressureOver for sources and accuracy.
func SaturationPressure(t float64) float64 { return SaturationPressureOver(SurfaceAt(t), t) }

// SaturationPressureOver returns the pressure, Pa, of pure water vapour in
// equilibrium with surface s at temperature t, °C: over liquid t is -40 to 200,
// over ice t is -223.15 to 0.01. NaN outside.
//
// Liquid: [IapwsIF07] eq. 30, within 0.007 % of IAPWS-95 from 0 to 60 °C;
// extrapolated for supercooled water, within 0.004 % at -20, 0.06 % at -30 and
// 0.5 % at -40 °C. Ice: [IapwsIce11] eq. 6, within 1e-8 of it.
func SaturationPressureOver(s Surface, t float64) float64 {
	if !s.contains(t) {
		return math.NaN()
	}
	return pureSaturation(s, t)
}

// SaturationTemperature is the inverse of SaturationPressure: the temperature,
// °C, at which pure water vapour of pressure e, Pa, is saturated. NaN where the
// result lies outside the range of SaturationPressure.
func SaturationTemperature(e float64) float64 {
	if e < triplePressure {
		return SaturationTemperatureOver(Ice, e)
	}
	return SaturationTemperatureOver(Liquid, e)
}

// SaturationTemperatureOver is the inverse of SaturationPressureOver: the
// temperature, °C, at which pure water vapour of pressure e, Pa, is in
// equilibrium with surface s. NaN where the result lies outside the range of
// SaturationPressureOver. Liquid: [IapwsIF07] eq. 31.
func SaturationTemperatureOver(s Surface, e float64) float64 {
	if !(e > 0) {
		return math.NaN()
	}
	t := pureTemperature(s, e)
	if s == Ice && t > TriplePoint && t < TriplePoint+triplePlaces {
		t = TriplePoint
	}
	if !s.contains(t) {
		return math.NaN()
	}
	return t
}

// SaturationSlope returns the derivative of SaturationPressure, Pa/K, at
// temperature t, °C, -223.15 to 200; NaN outside.
func SaturationSlope(t float64) float64 { return SaturationSlopeOver(SurfaceAt(t), t) }

// SaturationSlopeOver returns the derivative of SaturationPressureOver, Pa/K,
// over surface s at temperature t, °C, differentiated exactly: over liquid t is
// -40 to 200, over ice t is -223.15 to 0.01. NaN outside.
func SaturationSlopeOver(s Surface, t float64) float64 {
	if !s.contains(t) {
		return math.NaN()
	}
	if s == Ice {
		return iceSaturation(t) * iceLogSlope(t)
	}
	q, x := liquidRoot(t + kelvin)
	return liquidSaturation(t) * liquidLogSlope(t+kelvin, x, q)
}

func pureSaturation(s Surface, t float64) float64 {
	if s == Ice {
		return iceSaturation(t)
	}
	return liquidSaturation(t)
}

func pureTemperature(s Surface, e float64) float64 {
	if s == Ice {
		return iceTemperature(e)
	}
	return liquidTemperature(e)
}

func quadraticABC(x float64) (a, b, c float64) {
	return (x+n1)*x + n2, (n3*x+n4)*x + n5, (n6*x+n7)*x + n8
}

// liquidSaturation is [IapwsIF07] eq. 30: Pa, from °C.
func liquidSaturation(t float64) float64 {
	q, _ := liquidRoot(t + kelvin)
	q *= q
	return q * q * 1e6
}

// liquidRoot is the fourth root of eq. 30, p in MPa, from T in K, and the x of
// its quadratic, the theta of eq. 29b.
func liquidRoot(T float64) (root, x float64) {
	x = T + n9/(T-n10)
	a, b, c := quadraticABC(x)
	return 2 * c / (math.Sqrt(b*b-4*a*c) - b), x // eq. 30
}

// liquidTemperature is [IapwsIF07] eq. 31: °C, from Pa.
func liquidTemperature(e float64) float64 {
	T, _ := liquidTemperatureOf(math.Sqrt(math.Sqrt(e * 1e-6)))
	return T - kelvin
}

// liquidTemperatureOf is eq. 31 in K, from the fourth root of p in MPa, and its
// D, the theta of eq. 29b.
func liquidTemperatureOf(beta float64) (T, x float64) {
	s := beta * beta
	ee := s + n3*beta + n6
	f := n1*s + n4*beta + n7
	g := n2*s + n5*beta + n8
	d := 2 * g / (-f - math.Sqrt(f*f-4*ee*g))
	// eq. 31: T - n10 = u with u + n9/u = d - n10 by its series, whose third
	// term makes it accurate to 1e-15: n9 is small.
	v := n9 / (d - n10)
	return d - v*(1+v*v*(1/n9)), d
}

// liquidLogSlope is d ln p/dT on the line of [IapwsIF07], 1/K, at T in K with
// the theta x of eq. 29b and beta, the fourth root of p in MPa: the quadratic
// of eq. 29 differentiated. n9/(T - n10) is x - T, so that dx/dT needs no
// division.
func liquidLogSlope(T, x, beta float64) float64 {
	d := x - T
	by := (2*beta*x+n1*beta+2*n3*x+n4)*beta + 2*n6*x + n7
	ba := 2*beta*((x+n1)*x+n2) + (n3*x+n4)*x + n5
	return -4 * by * (1 - d*d*(1/n9)) / (ba * beta)
}

// iceSaturation is [IapwsIce11] eq. 6: Pa, from °C.
func iceSaturation(t float64) float64 {
	if t >= iceFitFrom {
		return triplePressure * math.Exp(iceLog(tripleKelvin/(t+kelvin)-1))
	}
	return triplePressure * math.Exp(iceLogExact(t))
}

// iceLog sums in pairs: the processor then adds several terms at once.
func iceLog(u float64) float64 {
	s := u * u
	return u * ((u1 + u*u2) + s*(u3+u*u4) + s*s*((u5+u*u6)+s*(u7+u*u8)))
}

func iceLogExact(t float64) float64 {
	th := (t + kelvin) / tripleKelvin
	return (iceA1*math.Pow(th, iceB1) + iceA2*math.Pow(th, iceB2) + iceA3*math.Pow(th, iceB3)) / th // eq. 6
}

// iceLogSlope is d ln p/dT, 1/K, at t in °C.
func iceLogSlope(t float64) float64 {
	T := t + kelvin
	if t >= iceFitFrom {
		u := tripleKelvin/T - 1
		return -(u + 1) / T * iceLogDerivative(u)
	}
	th := T / tripleKelvin
	return (iceA1*(iceB1-1)*math.Pow(th, iceB1-2) + iceA2*(iceB2-1)*math.Pow(th, iceB2-2) +
		iceA3*(iceB3-1)*math.Pow(th, iceB3-2)) / tripleKelvin
}

func iceLogDerivative(u float64) float64 {
	s := u * u
	return (u1 + u*(2*u2)) + s*(3*u3+u*(4*u4)) + s*s*((5*u5+u*(6*u6))+s*(7*u7+u*(8*u8)))
}

// Inverse of iceLog to 1e-6, the first guess of Newton's method.
const v1, v2, v3, v4, v5 = -0.044453528, -1.8599071e-5, -2.8163202e-6, -1.2504765e-7, -2.5283356e-9

// iceInverse returns u = 273.16/T - 1 with iceLog(u) = l: one step of Newton
// squares the guess's error of 1e-6.
func iceInverse(l float64) float64 {
	u := iceInverseGuess(l)
	return u - (iceLog(u)-l)/iceLogDerivative(u)
}

func iceInverseGuess(l float64) float64 {
	s := l * l
	return l * ((v1 + l*v2) + s*((v3+l*v4)+s*v5))
}

// triplePlaces is how far above the triple point rounding puts the inverse of the
// pressure there, K. settledInverse is the step, as a fraction of the temperature in
// kelvin, at which Newton's method ends.
const (
	triplePlaces   = 1e-9
	settledInverse = 1e-12
)

// iceTemperature solves [IapwsIce11] eq. 6 for the temperature: °C, from Pa.
func iceTemperature(e float64) float64 {
	l := math.Log(e / triplePressure)
	u := iceInverse(l)
	if t := tripleKelvin/(u+1) - kelvin; t >= iceFitFrom {
		return t
	}
	// Below the fit. The logarithm falls without bound and is nearly linear in
	// 1/T there, so that Newton in 1/T converges from the warm end.
	T := iceFitFrom + kelvin
	for range 50 {
		d := (iceLogExact(T-kelvin) - l) / (-T * T * iceLogSlope(T-kelvin))
		next := 1 / (1/T - d)
		if !(next > 1) {
			return math.NaN()
		}
		if math.Abs(next-T) < settledInverse*T {
			return next - kelvin
		}
		T = next
	}
	return T - kelvin
}
