package psychro

import "math"

// The published formulas that people meet in their handbooks, beside those
// that State uses: to follow a source, to check one, or to show how far they
// lie apart. None of them knows an enhancement factor unless said.

// Hyland and Wexler 1983 as the ASHRAE handbook prints them, [HoF17] ch. 1
// eq. 5 (ice) and 6 (liquid): T in K, ln of Pa.
const (
	c1, c2, c3, c4, c5, c6, c7 = -5.6745359e3, 6.3925247, -9.6778430e-3, 6.2215701e-7, 2.0747825e-9, -9.4840240e-13, 4.1635019
	c8, c9, c10, c11, c12, c13 = -5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673
)

// HylandWexler returns the saturation pressure of pure water, Pa, over surface
// s at temperature t, °C: [HylWex83] in the handbook's form, [HoF17] ch. 1
// eq. 5 from -100 °C for ice and eq. 6 to 110 °C for liquid, which is used
// below 0 °C by extrapolation. Within 0.018 % of IAPWS for liquid from 0 to 60
// °C, 0.032 % for ice from -40. The IdealGas model uses it. NaN outside
// Temperatures, LiquidTemperatures or IceTemperatures.
func HylandWexler(s Surface, t float64) float64 {
	if !temperaturesRange.Contains(t) || !s.contains(t) {
		return nan
	}
	return handbookSaturation(s, t)
}

func handbookSaturation(s Surface, t float64) float64 {
	T := t + kelvin
	if s == Ice {
		return math.Exp(c1/T + c2 + T*(c3+T*(c4+T*(c5+T*c6))) + c7*math.Log(T)) // eq. 5
	}
	return math.Exp(c8/T + c9 + T*(c10+T*(c11+T*c12)) + c13*math.Log(T)) // eq. 6
}

// handbookLogSlope is d ln p/dT of handbookSaturation, 1/K.
func handbookLogSlope(s Surface, t float64) float64 {
	T := t + kelvin
	if s == Ice {
		return -c1/(T*T) + c3 + T*(2*c4+T*(3*c5+T*4*c6)) + c7/T
	}
	return -c8/(T*T) + c10 + T*(2*c11+T*3*c12) + c13/T
}

// handbookTemperature is the inverse of handbookSaturation: °C, from Pa.
// Newton on ln p from the IAPWS line, which lies within 0.02 K.
func handbookTemperature(s Surface, e float64) float64 {
	t := pureTemperature(s, e)
	for range 10 {
		d := math.Log(handbookSaturation(s, t)/e) / handbookLogSlope(s, t)
		t -= d
		if math.Abs(d) < 1e-7 {
			break
		}
	}
	return t
}

// Formulas of Magnus' form: a exp(b t/(c + t)), Pa, t in °C.
const (
	faoA, faoB, faoC       = 610.8, 17.27, 237.3 // [Fao56] eq. 11, over liquid
	wmoLiquidA, wmoLiquidB = 611.2, 17.62        // [Wmo08] annex 4.B
	wmoLiquidC             = 243.12
	wmoIceB, wmoIceC       = 22.46, 272.62
	wmoF0, wmoF1, wmoF2    = 1.0016, 3.15e-8, -7.4 // 1, 1/Pa, Pa
	faoPressure0, faoT0    = 101300.0, 293.0       // Pa, K [Fao56] eq. 7
	faoLapse, faoExponent  = 0.0065, 5.26
	faoPsychrometric       = 0.665e-3 // 1/K [Fao56] eq. 8
	faoSlope               = 4098.0   // K [Fao56] eq. 13
)

// FAO56 returns the saturation pressure over liquid water, Pa, at temperature
// t, °C, by [Fao56] eq. 11, for -40 to 110 °C; within 0.13 % of IAPWS from 0 to
// 60 °C. NaN outside.
func FAO56(t float64) float64 {
	if !liquidTemperaturesRange.Contains(t) {
		return nan
	}
	return faoA * math.Exp(faoB*t/(t+faoC)) // eq. 11
}

// FAO56Slope returns the derivative of FAO56, Pa/K, at temperature t, °C, by
// [Fao56] eq. 13, which rounds the product of its constants to 4098. NaN
// outside -40 to 110.
func FAO56Slope(t float64) float64 { return faoSlope * FAO56(t) / ((t + faoC) * (t + faoC)) }

// FAO56Pressure returns the pressure of the air, Pa, at the given altitude
// above sea level, m, by [Fao56] eq. 7: a rival of StandardPressure. NaN
// outside Altitudes.
func FAO56Pressure(altitude float64) float64 {
	if !altitudesRange.Contains(altitude) {
		return nan
	}
	return faoPressure0 * math.Pow((faoT0-faoLapse*altitude)/faoT0, faoExponent) // eq. 7
}

// FAO56PsychrometricConstant returns the psychrometric constant, Pa/K, at
// pressure p, Pa, by [Fao56] eq. 8, with one latent heat for all temperatures:
// a rival of State.PsychrometricConstant. NaN outside Pressures.
func FAO56PsychrometricConstant(p float64) float64 {
	if !pressuresRange.Contains(p) {
		return nan
	}
	return faoPsychrometric * p // eq. 8
}

// WMOMagnus returns the saturation pressure of pure water, Pa, over surface s
// at temperature t, °C, by [Wmo08] annex 4.B: liquid from -45 to 60 °C, ice
// from -65 to 0.01 °C, NaN outside. Within 0.31 % of IAPWS from 0 to 60 °C.
// (The constants over ice are from memory.)
func WMOMagnus(s Surface, t float64) float64 {
	switch {
	case s == Ice && t >= -65 && t <= TriplePoint:
		return wmoLiquidA * math.Exp(wmoIceB*t/(wmoIceC+t))
	case s == Liquid && t >= -45 && t <= 60:
		return wmoLiquidA * math.Exp(wmoLiquidB*t/(wmoLiquidC+t))
	}
	return nan
}

// WMOEnhancement returns the enhancement factor at pressure p, Pa, by [Wmo08]
// annex 4.B, one for all temperatures, dimensionless. NaN outside Pressures.
func WMOEnhancement(p float64) float64 {
	if !pressuresRange.Contains(p) {
		return nan
	}
	return wmoF0 + wmoF1*p + wmoF2/p
}
