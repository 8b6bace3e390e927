package psychro

import "math"

// DewPoint returns the temperature, °C, at which the air, cooled at constant
// pressure and humidity ratio, becomes saturated: over ice below 0.01 °C (a
// frost point), over liquid from that temperature up. NaN for dry air.
func (s State) DewPoint() float64 {
	if s.t < TriplePoint { // no liquid branch
		return s.lowered(s.dewPoint(Ice))
	}
	return s.lowered(s.defaultDewPoint())
}

// lowered is t, but no more than the dry bulb, which rounding can pass.
func (s State) lowered(t float64) float64 {
	if t > s.t {
		return s.t
	}
	return t
}

func (s State) defaultDewPoint() float64 {
	// The enhancement factor at the triple point lies between 1 and 1.01.
	e := s.x * s.p
	if e > triplePressure*1.01 || e > triplePressure*0.99 && s.x >= s.model.saturated(Liquid, TriplePoint, s.p) {
		return s.dewPoint(Liquid)
	}
	return s.dewPoint(Ice)
}

// DewPointOver returns the temperature, °C, at which the air becomes saturated
// over the given surface, over ice the frost point. NaN for dry air, below -40
// °C over liquid and above 0.01 °C over ice.
func (s State) DewPointOver(surface Surface) float64 {
	if surface > Ice {
		return nan
	}
	if surface == Ice && s.x > s.model.saturated(Ice, TriplePoint, s.p) {
		return nan
	}
	t := s.dewPoint(surface)
	if !(t >= liquidTemperaturesRange.Min) && surface == Liquid {
		return nan
	}
	return t
}

// dewPoint solves x p = f(td) ps(td). Saturated air is at its dew point.
func (s State) dewPoint(surface Surface) float64 {
	if s.x > 0 && s.x == s.xs && surface == SurfaceAt(s.t) {
		return s.t
	}
	e := s.x * s.p
	switch {
	case !(e > 0):
		return nan
	case s.model == IdealGas:
		return handbookTemperature(surface, e)
	case surface == Ice:
		return frostPoint(s.x, s.p)
	default:
		return liquidDewPoint(s.x, s.p)
	}
}

// First guesses of the logarithm of the enhancement factor at the dew point,
// from a measure of temperature that the inverse has already: the logarithm of e/611.657 Pa over
// ice, the fourth root of e in MPa over liquid. Fits for this library, within
// 1e-4 between 60 and 110 kPa; they save an iteration and do not affect
// the result.
const (
	gi0, gi1, gi2, gi3, gi4 = 3.66673e-8, -4.06356e-9, 1.81962e-10, 7.36565e-7, -2.55599e-7
	gl0, gl1, gl2, gl3, gl4 = 6.74153e-8, -2.50377e-7, 3.98092e-7, 8.13626e-7, -1.87333e-6
)

// Where one step of Newton's method from the guess ends at rounding: coldestLog is the
// logarithm of the pressure over the triple point's from which the fit of the line over
// ice holds, expandable the logarithm of the factor to which expMinus is exact, oneStep
// the step whose square is lost. Elsewhere refineDewPoint begins at firstEnhancement,
// 1/Pa, and ends when a factor moves by settledEnhancement.
const (
	coldestLog         = -13.0
	expandable         = 0.015
	oneStep            = 0.002
	firstEnhancement   = 4.2e-8
	settledEnhancement = 1e-13
)

// frostPoint takes the mole fraction of vapour.
func frostPoint(x, p float64) float64 {
	e := x * p
	l := math.Log(e * (1 / triplePressure))
	g := p*(gi0+l*(gi1+l*gi2)) + e*(gi3+l*gi4)
	if !(l > coldestLog && math.Abs(g) < expandable) {
		return refineDewPoint(Ice, e, p)
	}
	// u need not be the inverse of l - g: by how much it is off counts like
	// what g is off.
	u := iceInverseGuess(l - g)
	off := iceLog(u) - (l - g)
	perT := (1 + u) * (1 / tripleKelvin)
	slope := -(1 + u) * perT * iceLogDerivative(u)
	logF, extra := enhancementOfVapour(Ice, perT, p, x*expMinus(g)*(1+off), 1-x, slope)
	d := (g - off - logF) / (slope + extra)
	if !(math.Abs(d) < oneStep) {
		return refineDewPoint(Ice, e, p)
	}
	return tripleKelvin/(1+u-d*(1+u)*perT) - kelvin // one step of Newton, in 1/T
}

// expMinus is exp(-y) to 1e-10 for y up to 0.025.
func expMinus(y float64) float64 { return 1 - y + y*y*((0.5-y*(1.0/6))+y*y*(1.0/24)) }

// liquidDewPoint takes the mole fraction of vapour.
func liquidDewPoint(x, p float64) float64 {
	e := x * p
	b := math.Sqrt(math.Sqrt(e * 1e-6))
	g := p*(gl0+b*(gl1+b*gl2)) + e*(gl3+b*gl4)
	q := expMinus(g / 4)
	T, theta := liquidTemperatureOf(b * q)
	perT := 1 / T
	slope := liquidLogSlope(T, theta, b*q)
	q *= q
	logF, extra := enhancementOfVapour(Liquid, perT, p, x*(q*q), 1-x, slope)
	d := (g - logF) / (slope + extra)
	if !(math.Abs(d) < oneStep && math.Abs(g) < expandable) {
		return refineDewPoint(Liquid, e, p)
	}
	// One step of Newton on ln(f ps) in 1/T, where the line still curves a little.
	return T + d*(1+d*(perT-turnLiquid/2)) - kelvin
}

// refineDewPoint solves the same equation by the inverse of the saturation
// line alone. Each pass leaves about a hundredth of the error at most, near
// boiling, and mostly less than a thousandth.
func refineDewPoint(surface Surface, e, p float64) float64 {
	f := 1 + firstEnhancement*p
	for range 20 {
		t := pureTemperature(surface, e/f)
		next := enhancement(surface, 1/(t+kelvin), p, e/f/p)
		done := math.Abs(next-f) < settledEnhancement
		f = next
		if done {
			break
		}
	}
	return pureTemperature(surface, e/f)
}
