package psychro

import (
	"errors"
	"math"
)

// State is moist air at one temperature, pressure and humidity, never above
// saturation. The zero value is no air: make one with a constructor, which
// checks everything. A State is a small value, safe to copy and to share.
type State struct {
	t, p  float64 // °C, Pa
	x, w  float64 // mole fraction of vapour; humidity ratio, kg/kg dry air
	model Model
}

// roundingSlack is how far above saturation a computed humidity may lie and
// still count as saturated, relative.
const roundingSlack = 1e-9

// air is what every constructor from a dry bulb checks: temperature and
// pressure in range and the air below the boiling point of water. It returns
// the mole fraction of vapour at saturation over surface s.
func (m Model) air(s Surface, t, p float64) (xs float64, err error) {
	if !(t >= Temperatures.Min && t <= Temperatures.Max && p >= Pressures.Min && p <= Pressures.Max) {
		return 0, errors.Join(Temperatures.Check("temperature", t), Pressures.Check("pressure", p))
	}
	xs = m.saturated(s, t, p)
	if !(xs < 1) {
		return 0, m.boils("temperature", t, p)
	}
	return xs, nil
}

// boils is the error for a temperature at which the saturation pressure is at
// or above the total pressure.
func (m Model) boils(field string, t, p float64) error {
	return &RangeError{Field: field, Value: t, Min: Temperatures.Min, Max: liquidTemperature(p), Unit: "°C",
		Source: "saturation pressure at or above the total pressure"}
}

// state makes a State from a mole fraction of vapour and checks it against
// saturation. field, value, unit and scale tell how to name a fault: the limit
// is given by limit, called only then.
func (m Model) state(t, p, x, xs float64) (s State, ok bool) {
	if !(x >= 0 && x <= xs*(1+roundingSlack)) {
		return State{}, false
	}
	if x > xs {
		x = xs
	}
	return State{t: t, p: p, x: x, w: ratioOf(x), model: m}, true
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
	xs, err := m.air(SurfaceAt(t), t, p)
	if err != nil || !(rh >= 0 && rh <= 1) {
		return State{}, errors.Join(err, RelativeHumidities.Check("relative humidity", rh))
	}
	x := rh * xs
	return State{t: t, p: p, x: x, w: ratioOf(x), model: m}, nil
}

// FromHumidityRatio returns air of temperature t, °C, humidity ratio w, kg/kg
// dry air, and pressure p, Pa. The error names each input outside its range;
// w above saturation is refused, not taken for vapour.
func FromHumidityRatio(t, w, p float64) (State, error) { return RealGas.FromHumidityRatio(t, w, p) }

// FromHumidityRatio is the function of the same name for model m: t in °C, w
// in kg/kg dry air, p in Pa.
func (m Model) FromHumidityRatio(t, w, p float64) (State, error) {
	xs, err := m.air(SurfaceAt(t), t, p)
	if err != nil {
		return State{}, errors.Join(err, nonNegative("humidity ratio", w, math.Inf(1), "kg/kg"))
	}
	s, ok := m.state(t, p, fractionOf(w), xs)
	if !ok {
		return State{}, nonNegative("humidity ratio", w, ratioOf(xs), "kg/kg")
	}
	if s.x < xs {
		s.w = w
	}
	return s, nil
}

func nonNegative(field string, v, limit float64, unit string) error {
	r := Range{Min: 0, Max: limit, Unit: unit}
	if !math.IsInf(limit, 1) {
		r.Source = "saturation"
	}
	return r.Check(field, v)
}

// FromDewPoint returns air of temperature t, °C, dew point td, °C, and
// pressure p, Pa; td is a frost point below 0.01 °C. The error names each
// input outside its range; td above t is refused.
func FromDewPoint(t, td, p float64) (State, error) { return RealGas.FromDewPoint(t, td, p) }

// FromDewPoint is the function of the same name for model m: t and td in °C, p
// in Pa.
func (m Model) FromDewPoint(t, td, p float64) (State, error) {
	xs, err := m.air(SurfaceAt(t), t, p)
	if err != nil || !(td <= t) || !(td >= Temperatures.Min) {
		return State{}, errors.Join(err, belowDryBulb("dew point", td, Temperatures.Min, t))
	}
	s, ok := m.state(t, p, m.saturated(SurfaceAt(td), td, p), xs)
	if !ok {
		return State{}, belowDryBulb("dew point", td, Temperatures.Min, t)
	}
	return s, nil
}

// belowDryBulb checks a dew point or wet bulb, °C, against the dry bulb.
func belowDryBulb(field string, v, lowest, t float64) error {
	if !Temperatures.Contains(t) {
		return Temperatures.Check(field, v)
	}
	return Range{Min: lowest, Max: t, Unit: "°C", Source: "at most the dry bulb"}.Check(field, v)
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
// thermodynamic wet bulb tw, °C, of a bulb covered with water of surface s.
func (m Model) FromWetBulbOver(s Surface, t, tw, p float64) (State, error) {
	xs, err := m.air(SurfaceAt(t), t, p)
	if err != nil || !(tw <= t) || !(tw >= Temperatures.Min) || !s.contains(tw) {
		return State{}, errors.Join(err, belowDryBulb("wet bulb", tw, Temperatures.Min, t), s.check("wet bulb", tw))
	}
	state, ok := m.state(t, p, m.fractionFromWetBulb(s, t, tw, p), xs)
	if !ok {
		dry := State{t: t, p: p, model: m}
		return State{}, belowDryBulb("wet bulb", tw, dry.WetBulbOver(s), t)
	}
	return state, nil
}

// check names a temperature outside the range of surface s.
func (s Surface) check(field string, t float64) error {
	if s == Ice {
		return IceTemperatures.Check(field, t)
	}
	return LiquidTemperatures.Check(field, t)
}
