package psychro

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// State is moist air at one temperature, pressure and humidity, never above
// saturation. The zero value is no air: make one with a constructor, which
// checks everything. A State is a small value, safe to copy and to share.
type State struct {
	t, p  float64 // °C, Pa
	x, w  float64 // mole fraction of vapour; humidity ratio, kg/kg dry air
	xs    float64 // mole fraction of vapour at saturation over SurfaceAt(t)
	model Model
}

// roundingSlack is how far above saturation a computed humidity may lie and
// still count as saturated, relative.
const roundingSlack = 1e-9

// air is what every constructor from a dry bulb checks: temperature and
// pressure in range and the air below the boiling point of water. It returns
// the mole fraction of vapour at saturation.
func (m Model) air(t, p float64) (xs float64, err error) {
	if !(t >= temperaturesRange.Min && t <= temperaturesRange.Max && p >= pressuresRange.Min && p <= pressuresRange.Max) {
		return 0, errors.Join(temperaturesRange.Check("temperature", t), pressuresRange.Check("pressure", p))
	}
	xs = m.saturated(SurfaceAt(t), t, p)
	if !(xs < 1) {
		return 0, m.boils("temperature", t, p)
	}
	return xs, nil
}

// boils is the error for a temperature at which the saturation pressure is at
// or above the total pressure.
func (m Model) boils(field string, t, p float64) error {
	return &RangeError{Field: field, Value: t, Min: temperaturesRange.Min, Max: liquidTemperature(p), Unit: "°C",
		Source: "saturation pressure at or above the total pressure"}
}

// build makes a State from a mole fraction of vapour x, which must lie between
// none and xs, saturation. A fault is told in terms of the caller's input:
// field, value, unit, and the property of a State that it stands for.
func (m Model) build(t, p, x, xs float64, field string, value float64, unit string, property func(State) float64) (State, error) {
	if x > xs && x <= xs*(1+roundingSlack) {
		x = xs
	}
	if x >= 0 && x <= xs {
		return State{t: t, p: p, x: x, w: ratioOf(x), xs: xs, model: m}, nil
	}
	dry := State{t: t, p: p, xs: xs, model: m}
	full := State{t: t, p: p, x: xs, w: ratioOf(xs), xs: xs, model: m}
	a, b := property(dry), property(full)
	const places = 4e-15 // of the input: what its last places cannot tell
	switch {
	case math.Abs(value-b) <= places*math.Abs(b):
		return full, nil
	case math.Abs(value-a) <= places*math.Abs(a):
		return dry, nil
	case math.IsNaN(a): // the dew point of dry air
		a = temperaturesRange.Min
	}
	return State{}, &RangeError{Field: field, Value: value, Min: min(a, b), Max: max(a, b), Unit: unit,
		Source: "dry to saturated air"}
}

// finite joins to err a fault of an input whose limits depend on inputs that
// are themselves at fault: it can only be a number or not.
func finite(err error, field string, v float64, unit string) error {
	return errors.Join(err, domain.Range{Min: math.Inf(-1), Max: math.Inf(1), Unit: unit}.Check(field, v))
}

// FromRelativeHumidity returns air of temperature t, °C, relative humidity rh,
// fraction, and pressure p, Pa. Relative humidity is the vapour pressure of
// the air over that of saturated air at the same temperature and pressure,
// over ice below 0.01 °C and over liquid from there on. The error joins a
// *RangeError for each input outside Temperatures, RelativeHumidities or
// Pressures, and refuses air at or above the boiling point.
func FromRelativeHumidity(t, rh, p float64) (State, error) {
	return RealGas.FromRelativeHumidity(t, rh, p)
}

// FromRelativeHumidity is the function of the same name for model m: t in °C,
// rh as a fraction, p in Pa.
func (m Model) FromRelativeHumidity(t, rh, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil || !(rh >= 0 && rh <= 1) {
		return State{}, errors.Join(err, relativeHumiditiesRange.Check("relative humidity", rh))
	}
	x := rh * xs
	return State{t: t, p: p, x: x, w: ratioOf(x), xs: xs, model: m}, nil
}

// FromRelativeHumidityOver is FromRelativeHumidity with rh, fraction, stated
// over the given surface: weather services state it over liquid water below
// freezing too. Air saturated over liquid water at temperature t, °C, below
// 0.01 is supersaturated over ice and refused; the error names the largest rh
// that is not. Pressure p in Pa.
func (m Model) FromRelativeHumidityOver(surface Surface, t, rh, p float64) (State, error) {
	xs, err := m.air(t, p)
	if bad := surface.check("temperature", t); err == nil {
		err = bad
	}
	if err != nil || !(rh >= 0 && rh <= 1) {
		return State{}, errors.Join(err, relativeHumiditiesRange.Check("relative humidity", rh))
	}
	return m.build(t, p, rh*m.saturated(surface, t, p), xs, "relative humidity over "+surface.String(), rh, "fraction",
		func(s State) float64 { return s.RelativeHumidityOver(surface) })
}

// FromHumidityRatio returns air of temperature t, °C, humidity ratio w, kg/kg
// dry air, and pressure p, Pa. The error names each input outside its range;
// w above saturation is refused, not taken for vapour.
func FromHumidityRatio(t, w, p float64) (State, error) { return RealGas.FromHumidityRatio(t, w, p) }

// FromHumidityRatio is the function of the same name for model m: t in °C, w
// in kg/kg dry air, p in Pa.
func (m Model) FromHumidityRatio(t, w, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil {
		return State{}, errors.Join(err, humidityRatiosRange.Check("humidity ratio", w))
	}
	s, err := m.build(t, p, fractionOf(w), xs, "humidity ratio", w, "kg/kg", State.HumidityRatio)
	if err == nil && s.x < xs {
		s.w = w
	}
	return s, err
}

// FromDewPoint returns air of temperature t, °C, dew point td, °C, and
// pressure p, Pa; td is a frost point below 0.01 °C. The error names each
// input outside its range; td above t is refused.
func FromDewPoint(t, td, p float64) (State, error) { return RealGas.FromDewPoint(t, td, p) }

// FromDewPoint is the function of the same name for model m: t and td in °C, p
// in Pa.
func (m Model) FromDewPoint(t, td, p float64) (State, error) {
	return m.FromDewPointOver(SurfaceAt(td), t, td, p)
}

// FromDewPointOver is FromDewPoint with the dew point td, °C, stated over the
// given surface: instruments and weather services may state it over liquid
// water below freezing too. Temperature t in °C, pressure p in Pa.
func (m Model) FromDewPointOver(surface Surface, t, td, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil || !(td <= t) || !(td >= temperaturesRange.Min) || !surface.contains(td) {
		return State{}, errors.Join(err, belowDryBulb("dew point", td, temperaturesRange.Min, t, surface))
	}
	return m.build(t, p, m.saturated(surface, td, p), xs, "dew point", td, "°C",
		func(s State) float64 { return s.DewPointOver(surface) })
}

// belowDryBulb checks a dew point or wet bulb, °C, against the dry bulb t and
// the range of its surface.
func belowDryBulb(field string, v, lowest, t float64, s Surface) error {
	if t = min(t, temperaturesRange.Max); !(t >= temperaturesRange.Min) {
		t = temperaturesRange.Max
	}
	r := domain.Range{Min: lowest, Max: t, Unit: "°C", Source: "at most the dry bulb"}
	if err := r.Check(field, v); err != nil {
		return err
	}
	return s.check(field, v)
}

// FromWetBulb returns air of temperature t, °C, thermodynamic wet bulb tw, °C,
// and pressure p, Pa; the bulb is iced below 0.01 °C. See FromWetBulbOver for
// a bulb that stays liquid below. The error names each input outside its
// range; tw above t, or below the wet bulb of dry air, is refused.
func FromWetBulb(t, tw, p float64) (State, error) { return RealGas.FromWetBulb(t, tw, p) }

// FromWetBulb is the function of the same name for model m: t and tw in °C, p
// in Pa.
func (m Model) FromWetBulb(t, tw, p float64) (State, error) {
	return m.FromWetBulbOver(SurfaceAt(tw), t, tw, p)
}

// FromWetBulbOver returns air of temperature t, °C, pressure p, Pa, and the
// thermodynamic wet bulb tw, °C, of a bulb covered with water of the given
// surface.
func (m Model) FromWetBulbOver(surface Surface, t, tw, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil || !(tw <= t) || !(tw >= temperaturesRange.Min) || !surface.contains(tw) {
		return State{}, errors.Join(err, belowDryBulb("wet bulb", tw, temperaturesRange.Min, t, surface))
	}
	return m.build(t, p, m.fractionFromWetBulb(surface, t, tw, p), xs, "wet bulb", tw, "°C",
		func(s State) float64 {
			if v := s.WetBulbOver(surface); v == v {
				return v
			}
			return s.WetBulb() // an iced bulb in air that melts it
		})
}

// check names a temperature outside the range of surface s.
func (s Surface) check(field string, t float64) error {
	if s == Ice {
		return iceTemperaturesRange.Check(field, t)
	}
	return liquidTemperaturesRange.Check(field, t)
}
