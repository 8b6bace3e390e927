package psychro

import "math"

// DewPoint returns the temperature, °C, at which the air, cooled at constant
// pressure and humidity ratio, becomes saturated: over ice below 0.01 °C (a
// frost point), over liquid from there on. NaN for dry air.
func (s State) DewPoint() float64 {
	if s.x >= s.model.saturated(Liquid, TriplePoint, s.p) {
		return s.dewPoint(Liquid)
	}
	return s.dewPoint(Ice)
}

// FrostPoint returns the temperature, °C, at which the air becomes saturated
// over ice; NaN for dry air and where that lies above the triple point.
func (s State) FrostPoint() float64 { return s.DewPointOver(Ice) }

// DewPointOver returns the temperature, °C, at which the air becomes saturated
// over the given surface; NaN for dry air and outside LiquidTemperatures or
// IceTemperatures.
func (s State) DewPointOver(surface Surface) float64 {
	if surface == Ice && s.x > s.model.saturated(Ice, TriplePoint, s.p) {
		return nan
	}
	t := s.dewPoint(surface)
	if !(t >= LiquidTemperatures.Min) && surface == Liquid {
		return nan
	}
	return t
}

// dewPoint solves x p = f(td) ps(td). The enhancement factor f hardly changes
// with td: each pass leaves about a thousandth of the error before.
func (s State) dewPoint(surface Surface) float64 {
	e := s.x * s.p
	if !(e > 0) {
		return nan
	}
	if s.model == IdealGas {
		return handbookTemperature(surface, e)
	}
	f := 1 + 4.2e-8*s.p
	for range 12 {
		t := pureTemperature(surface, e/f)
		next := enhancement(surface, t+kelvin, s.p, e/f)
		if math.Abs(next-f) < 1e-11 {
			break
		}
		f = next
	}
	return pureTemperature(surface, e/f)
}
