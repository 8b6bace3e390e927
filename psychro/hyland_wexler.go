package psychro

import "math"

// Hyland and Wexler 1983 as the ASHRAE handbook prints them, [HoF17] ch. 1
// eq. 5 (ice) and 6 (liquid): T in K, ln of Pa.
const (
	c1, c2, c3, c4, c5, c6, c7 = -5.6745359e3, 6.3925247, -9.6778430e-3, 6.2215701e-7, 2.0747825e-9, -9.4840240e-13, 4.1635019
	c8, c9, c10, c11, c12, c13 = -5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673
)

// HylandWexler returns the saturation pressure of pure water, Pa, over surface
// s at temperature t, °C: [HylWex83] in the handbook's form, [HoF17] ch. 1 eq.
// 5 for ice and eq. 6 for liquid, below 0 °C by extrapolation. Over liquid t is
// -40 to 200, over ice t is -100 to 0.01. Within 0.018 % of IAPWS for liquid
// from 0 to 60 °C, 0.032 % for ice from -40. The IdealGas model uses it. NaN
// outside.
func HylandWexler(s Surface, t float64) float64 {
	if !s.inAir(t) {
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

// lastHandbookStep is the step, K, after which Newton's method is at rounding: its error
// goes as the square.
const lastHandbookStep = 1e-7

// handbookTemperature is the inverse of handbookSaturation: °C, from Pa.
// Newton on ln p from the IAPWS line, which lies within 0.02 K.
func handbookTemperature(s Surface, e float64) float64 {
	t := pureTemperature(s, e)
	for range 10 {
		d := math.Log(handbookSaturation(s, t)/e) / handbookLogSlope(s, t)
		t -= d
		if math.Abs(d) < lastHandbookStep {
			break
		}
	}
	return t
}
