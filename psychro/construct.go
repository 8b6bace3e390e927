package psychro

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// FromRelativeHumidity returns air of temperature t, °C, -100 to 200, relative
// humidity rh, fraction, 0 to 1, and pressure p, Pa, 30e3 to 200e3. Relative
// humidity is the vapour pressure of the air over that of saturated air at the
// same temperature and pressure, over ice below 0.01 °C and over liquid from
// that temperature up; above the boiling point it is the vapour pressure over
// the saturation pressure of pure water. The error joins a *RangeError for each
// input outside its range.
func FromRelativeHumidity(t, rh, p float64) (State, error) {
	return RealGas.FromRelativeHumidity(t, rh, p)
}

// FromRelativeHumidity is the function of the same name for model m: t, °C,
// -100 to 200, rh, fraction, 0 to 1, p, Pa, 30e3 to 200e3.
func (m Model) FromRelativeHumidity(t, rh, p float64) (State, error) {
	xs, err := m.air(t, p)
	if err != nil || !(rh >= 0 && rh <= 1) {
		return State{}, errors.Join(err, relativeHumiditiesRange.Check("relative humidity", rh))
	}
	x := rh * xs
	if x > mostVapour {
		return State{}, &RangeError{Field: "relative humidity", Value: rh, Min: 0, Max: mostVapour / xs, Unit: "fraction", Source: tooLittleAir}
	}
	return State{t: t, p: p, x: x, w: ratioOf(x), xs: xs, model: m}, nil
}

// FromRelativeHumidityOver is FromRelativeHumidity with rh, fraction, 0 to 1,
// stated over the given surface at temperature t, °C, -100 to 200: weather
// services state it over liquid water below freezing too. Over liquid t is -40
// to 200, over ice t is -100 to 0.01. Air saturated over liquid water below
// 0.01 °C is supersaturated over ice and refused; the error names the largest
// rh that is not. Pressure p, Pa, 30e3 to 200e3.
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

// FromHumidityRatio returns air of temperature t, °C, -100 to 200, humidity
// ratio w, kg/kg dry air, 0 to 1000, and pressure p, Pa, 30e3 to 200e3. The
// error names each input outside its range; w above saturation is refused,
// since the excess would be fog.
func FromHumidityRatio(t, w, p float64) (State, error) { return RealGas.FromHumidityRatio(t, w, p) }

// FromHumidityRatio is the function of the same name for model m: t, °C, -100
// to 200, w, kg/kg dry air, 0 to 1000, p, Pa, 30e3 to 200e3.
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

// FromDewPoint returns air of temperature t, °C, -100 to 200, dew point td, °C,
// -100 to t, and pressure p, Pa, 30e3 to 200e3; td is a frost point below 0.01
// °C. The error names each input outside its range.
func FromDewPoint(t, td, p float64) (State, error) { return RealGas.FromDewPoint(t, td, p) }

// FromDewPoint is the function of the same name for model m: t, °C, -100 to
// 200, td, °C, -100 to t, p, Pa, 30e3 to 200e3.
func (m Model) FromDewPoint(t, td, p float64) (State, error) {
	return m.FromDewPointOver(SurfaceAt(td), t, td, p)
}

// FromDewPointOver is FromDewPoint with the dew point td, °C, at most t, stated
// over the given surface: instruments and weather services may state it over
// liquid water below freezing too. Over liquid td is -40 to 200, over ice td is
// -100 to 0.01. Temperature t, °C, -100 to 200, pressure p, Pa, 30e3 to 200e3.
func (m Model) FromDewPointOver(surface Surface, t, td, p float64) (State, error) {
	xs, err := m.air(t, p)
	if bad := m.belowDryBulb("dew point", td, t, p, surface); err != nil || bad != nil {
		return State{}, errors.Join(err, bad)
	}
	return m.build(t, p, m.saturated(surface, td, p), xs, "dew point", td, "°C",
		func(s State) float64 { return s.DewPointOver(surface) })
}

// belowDryBulb checks a dew point or wet bulb v, °C, against the dry bulb t,
// the boiling point at pressure p and the range of its surface.
func (m Model) belowDryBulb(field string, v, t, p float64, s Surface) error {
	if v <= t && s.inAir(v) && (v < surelyBelowBoiling || v <= m.boiling(p)) {
		return nil
	}
	r := domain.Range{Min: temperaturesRange.Min, Max: temperaturesRange.Max, Unit: "°C", Source: "at most the dry bulb"}
	if t < r.Max && t >= r.Min {
		r.Max = t
	}
	if most := m.boiling(p); most < r.Max && pressuresRange.Contains(p) {
		r.Max, r.Source = most, "water boils"
	}
	if err := r.Check(field, v); err != nil {
		return err
	}
	return s.check(field, v)
}

// FromWetBulb returns air of temperature t, °C, -100 to 200, thermodynamic wet
// bulb tw, °C, -100 to t, and pressure p, Pa, 30e3 to 200e3; the bulb is iced
// below 0.01 °C. See Model.FromWetBulbOver for a bulb that stays liquid below.
// The error names each input outside its range; tw below the wet bulb of dry
// air is refused.
func FromWetBulb(t, tw, p float64) (State, error) { return RealGas.FromWetBulb(t, tw, p) }

// FromWetBulb is the function of the same name for model m: t, °C, -100 to 200,
// tw, °C, -100 to t, p, Pa, 30e3 to 200e3.
func (m Model) FromWetBulb(t, tw, p float64) (State, error) {
	return m.FromWetBulbOver(SurfaceAt(tw), t, tw, p)
}

// FromWetBulbOver is FromWetBulb with the wet bulb tw, °C, at most t, of a bulb
// covered with water of the given surface. Over liquid tw is -40 to 200, over
// ice tw is -100 to 0.01. Temperature t, °C, -100 to 200, pressure p, Pa, 30e3
// to 200e3.
func (m Model) FromWetBulbOver(surface Surface, t, tw, p float64) (State, error) {
	xs, err := m.air(t, p)
	if bad := m.belowDryBulb("wet bulb", tw, t, p, surface); err != nil || bad != nil {
		return State{}, errors.Join(err, bad)
	}
	return m.build(t, p, m.fractionFromWetBulb(surface, t, tw, p), xs, "wet bulb", tw, "°C",
		func(s State) float64 { return s.someBulb(surface) })
}

// someBulb is WetBulbOver, or WetBulb where there is none: an iced bulb in air
// that melts it.
func (s State) someBulb(surface Surface) float64 {
	if v := s.WetBulbOver(surface); !math.IsNaN(v) {
		return v
	}
	return s.WetBulb()
}
