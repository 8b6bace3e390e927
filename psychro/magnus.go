package psychro

import "math"

// Formulas that people meet in their handbooks, beside those that State uses:
// to follow a source, to check one, or to show how far they lie apart. None of
// them knows an enhancement factor unless said.

// Formulas of Magnus' form: a exp(b t/(c + t)), Pa, t in °C.
const (
	faoA, faoB, faoC       = 610.8, 17.27, 237.3 // [FAO56] eq. 11, over liquid
	wmoLiquidA, wmoLiquidB = 611.2, 17.62        // [WMO08] annex 4.B
	wmoLiquidC             = 243.12
	wmoIceB, wmoIceC       = 22.46, 272.62
	wmoF0, wmoF1, wmoF2    = 1.0016, 3.15e-8, -7.4 // 1, 1/Pa, Pa
	faoPressure0, faoT0    = 101300.0, 293.0       // Pa, K [FAO56] eq. 7
	faoLapse, faoExponent  = 0.0065, 5.26
	faoPsychrometric       = 0.665e-3 // 1/K [FAO56] eq. 8
	faoSlope               = 4098.0   // K [FAO56] eq. 13
)

// FAO56Saturation returns the saturation pressure over liquid water, Pa, at
// temperature t, °C, -40 to 110, by [FAO56] eq. 11; within 0.13 % of IAPWS from
// 0 to 60 °C. NaN outside.
func FAO56Saturation(t float64) float64 {
	if !waterTemperaturesRange.Contains(t) {
		return nan
	}
	return faoA * math.Exp(faoB*t/(t+faoC)) // eq. 11
}

// FAO56Slope returns the derivative of FAO56Saturation, Pa/K, at temperature t,
// °C, -40 to 110, by [FAO56] eq. 13, which rounds the product of its constants
// to 4098. NaN outside.
func FAO56Slope(t float64) float64 { return faoSlope * FAO56Saturation(t) / ((t + faoC) * (t + faoC)) }

// FAO56Pressure returns the pressure of the air, Pa, at an altitude above sea
// level, m, -500 to 11000, by [FAO56] eq. 7: an alternative to
// StandardPressure. NaN outside.
func FAO56Pressure(altitude float64) float64 {
	if !altitudesRange.Contains(altitude) {
		return nan
	}
	return faoPressure0 * math.Pow((faoT0-faoLapse*altitude)/faoT0, faoExponent) // eq. 7
}

// FAO56PsychrometricConstant returns the psychrometric constant, Pa/K, at
// pressure p, Pa, 30e3 to 200e3, by [FAO56] eq. 8, with one latent heat for all
// temperatures: an alternative to Properties.PsychrometricConstant. NaN
// outside.
func FAO56PsychrometricConstant(p float64) float64 {
	if !pressuresRange.Contains(p) {
		return nan
	}
	return faoPsychrometric * p // eq. 8
}

// WMOMagnus returns the saturation pressure of pure water, Pa, over surface s
// at temperature t, °C, by [WMO08] annex 4.B: liquid from -45 to 60 °C, ice
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

// WMOEnhancement returns the enhancement factor at pressure p, Pa, 30e3 to
// 200e3, by [WMO08] annex 4.B, one for all temperatures, dimensionless. NaN
// outside.
func WMOEnhancement(p float64) float64 {
	if !pressuresRange.Contains(p) {
		return nan
	}
	return wmoF0 + wmoF1*p + wmoF2/p
}
