package psychro

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
)

// FromEnthalpyAndRelativeHumidity returns the air of enthalpy h, J/kg dry air,
// and relative humidity rh, fraction, 0 to 1, at pressure p, Pa, 30e3 to 200e3;
// rh 1 gives the saturated air of that enthalpy. The error names each input
// outside its range, or the enthalpies of such air from -100 to 200 °C.
func (m Model) FromEnthalpyAndRelativeHumidity(h, rh, p float64) (State, error) {
	if err := errors.Join(m.check(), relativeHumiditiesRange.Check("relative humidity", rh), pressuresRange.Check("pressure", p)); err != nil {
		return State{}, finite(err, "enthalpy", h, "J/kg")
	}
	at := func(t float64) State { return m.moist(t, rh, p) }
	lo, hi := temperaturesRange.Min, m.hottest(rh, p)
	t, err := solve.Root(func(t float64) float64 { return at(t).Enthalpy() - h }, lo, hi, settledTemperature)
	if err != nil {
		return State{}, &RangeError{Field: "enthalpy", Value: h, Min: at(lo).Enthalpy(), Max: at(hi).Enthalpy(), Unit: "J/kg", Source: rangeOfTemperature}
	}
	return at(t), nil
}

// moist is FromRelativeHumidity without its checks.
func (m Model) moist(t, rh, p float64) State {
	xs := m.saturated(SurfaceAt(t), t, p)
	x := rh * xs
	return State{t: t, p: p, x: x, w: ratioOf(x), xs: xs, model: m}
}

// rangeOfTemperature tells that a limit comes from that of temperature.
const rangeOfTemperature = "the air would leave its range of temperature"

// FromEnthalpyAndHumidityRatio returns the air of enthalpy h, J/kg dry air, and
// humidity ratio w, kg/kg dry air, 0 to 1000, at pressure p, Pa, 30e3 to 200e3.
// The error names each input outside its range, or the enthalpies of such air
// up to 200 °C; for fog see Mix.
func (m Model) FromEnthalpyAndHumidityRatio(h, w, p float64) (State, error) {
	if err := errors.Join(m.check(), humidityRatiosRange.Check("humidity ratio", w), pressuresRange.Check("pressure", p)); err != nil {
		return State{}, finite(err, "enthalpy", h, "J/kg")
	}
	if err := finite(nil, "enthalpy", h, "J/kg"); err != nil {
		return State{}, err
	}
	return m.heated("enthalpy", h, "J/kg", m.temperature(h, w, p), w, p, State.Enthalpy)
}

// settledTemperature is how well a search for a temperature ends, K: so that any
// pair turned into any other comes back to 1e-9.
const settledTemperature = 1e-12

// roundingOfTemperature is how far, K, a computed temperature may lie below the
// dew point and still count as that of saturated air.
const roundingOfTemperature = 1e-9

// stepOfTemperature is more than the difference, K, of the dew points over ice
// and liquid of one vapour pressure next to 0.01 °C, at the highest pressure.
const stepOfTemperature = 0.01

// heated makes the State of a temperature t found from another input, which
// field, value, unit and property describe, and a humidity ratio w.
func (m Model) heated(field string, value float64, unit string, t, w, p float64, property func(State) float64) (State, error) {
	x := fractionOf(w)
	lo, hi := m.dewPointOf(x, p), temperaturesRange.Max
	if !(lo >= temperaturesRange.Min) {
		lo = temperaturesRange.Min
	}
	if t < lo && t > lo-roundingOfTemperature {
		t = lo
	}
	// Just below 0.01 °C air holds a little more vapour than just above: there
	// unsaturated air may lie below its dew point on the other side.
	between := t < lo && t > TriplePoint-stepOfTemperature && x <= m.saturated(SurfaceAt(t), t, p)*(1+roundingSlack)
	if !(t >= lo && t <= hi) && !between {
		a := State{t: lo, p: p, x: x, w: w, xs: m.saturated(SurfaceAt(lo), lo, p), model: m}
		b := State{t: hi, p: p, x: x, w: w, xs: m.saturated(SurfaceAt(hi), hi, p), model: m}
		return State{}, &RangeError{Field: field, Value: value, Min: property(a), Max: property(b), Unit: unit,
			Source: "saturated to the hottest air of this humidity ratio"}
	}
	s, err := m.build(t, p, x, m.saturated(SurfaceAt(t), t, p), "humidity ratio", w, "kg/kg", State.HumidityRatio)
	if err == nil && s.x == x {
		s.w = w
	}
	return s, err
}

// hottest is the highest dry bulb, °C, at relative humidity rh and pressure p:
// the end of the range, or where the air is nearly all vapour.
func (m Model) hottest(rh, p float64) float64 {
	e := mostVapour * p / rh
	if !(e < pureSaturation(Liquid, temperaturesRange.Max)) {
		return temperaturesRange.Max
	}
	return min(temperaturesRange.Max, m.boiling(e))
}

// hotDewPoint is dewPointOf where x may be 1 or more: the temperature at which
// saturation makes x; NaN past the end of the range.
func (m Model) hotDewPoint(x, p float64) float64 {
	switch {
	case x < 1:
		return m.dewPointOf(x, p)
	case x < m.saturated(Liquid, temperaturesRange.Max, p):
		return m.boiling(x * p)
	}
	return nan
}

// dewPointOf is the dew point of vapour of mole fraction x at p, °C; NaN for
// none.
func (m Model) dewPointOf(x, p float64) float64 {
	return State{p: p, x: x, model: m}.defaultDewPoint()
}

// FromSpecificVolumeAndHumidityRatio returns the air of specific volume v,
// m³/kg dry air, more than 0, and humidity ratio w, kg/kg dry air, 0 to 1000,
// at pressure p, Pa, 30e3 to 200e3. The error names each input outside its
// range, or the volumes of such air up to 200 °C.
func (m Model) FromSpecificVolumeAndHumidityRatio(v, w, p float64) (State, error) {
	if err := errors.Join(m.check(), humidityRatiosRange.Check("humidity ratio", w), pressuresRange.Check("pressure", p)); err != nil {
		return State{}, finite(err, "specific volume", v, "m³/kg")
	}
	if err := (domain.Range{Min: domain.MoreThan(0), Max: math.Inf(1), Unit: "m³/kg"}).Check("specific volume", v); err != nil {
		return State{}, err
	}
	x := fractionOf(w)
	t := v*p/(gasAir*(1+gasFactor*w)) - kelvin
	if m == RealGas && t > coldestStart && t < hottestStart {
		slope := gasAir * (1 + gasFactor*w) / p
		for range 30 {
			d := (m.volume(t, p, x, w) - v) / slope
			t -= d
			if math.Abs(d) < settledTemperature {
				break
			}
		}
	}
	return m.heated("specific volume", v, "m³/kg", t, w, p, State.SpecificVolume)
}

// FromWetBulbAndHumidityRatio returns the air of thermodynamic wet bulb tw, °C,
// -100 to 200 and below boiling, and humidity ratio w, kg/kg dry air, 0 to 1000
// and at most saturation at the wet bulb, at pressure p, Pa, 30e3 to 200e3; the
// bulb is iced below 0.01 °C. The error names each input outside its range.
func (m Model) FromWetBulbAndHumidityRatio(tw, w, p float64) (State, error) {
	surface := SurfaceAt(tw)
	xs, err := m.wetted("wet bulb", tw, p)
	if err != nil {
		return State{}, errors.Join(err, humidityRatiosRange.Check("humidity ratio", w))
	}
	ws := ratioOf(xs)
	if w > ws && w <= ws*(1+roundingSlack) {
		w = ws
	}
	if !(w >= 0 && w <= ws) {
		return State{}, &RangeError{Field: "humidity ratio", Value: w, Min: 0, Max: ws, Unit: "kg/kg", Source: "saturation at the wet bulb"}
	}
	h := m.enthalpy(tw, p, xs, ws) - (ws-w)*m.condensed(surface, tw)
	return m.heated("wet bulb", tw, "°C", max(tw, m.temperature(h, w, p)), w, p,
		func(s State) float64 { return s.someBulb(surface) })
}

// FromWetBulbAndRelativeHumidity returns the air of thermodynamic wet bulb tw,
// °C, -100 to 200 and below boiling, and relative humidity rh, fraction, 0 to
// 1, at pressure p, Pa, 30e3 to 200e3; the bulb is iced below 0.01 °C. The
// error names each input outside its range.
func (m Model) FromWetBulbAndRelativeHumidity(tw, rh, p float64) (State, error) {
	surface := SurfaceAt(tw)
	xs, err := m.wetted("wet bulb", tw, p)
	if err != nil || !(rh >= 0 && rh <= 1) {
		return State{}, errors.Join(err, relativeHumiditiesRange.Check("relative humidity", rh))
	}
	// x given by the wet bulb falls with t, rh times saturation rises.
	hi := m.hottest(rh, p)
	excess := func(t float64) float64 {
		return m.fractionFromWetBulb(surface, t, tw, p) - rh*m.saturated(SurfaceAt(t), t, p)
	}
	if excess(tw) <= 0 { // saturated, to rounding
		return m.build(tw, p, rh*xs, xs, "wet bulb", tw, "°C", State.WetBulb)
	}
	t, err := solve.Root(excess, tw, hi, settledTemperature)
	if err != nil {
		return State{}, &RangeError{Field: "relative humidity", Value: rh, Min: rh + excess(hi)/m.saturated(Liquid, hi, p), Max: 1, Unit: "fraction", Source: rangeOfTemperature}
	}
	return m.FromRelativeHumidity(t, rh, p)
}

// FromHumidityRatioAndRelativeHumidity returns the air of humidity ratio w,
// kg/kg dry air, 0 to 1000, and relative humidity rh, fraction, 0 to 1, at
// pressure p, Pa, 30e3 to 200e3. The error names each input outside its range;
// relative humidity 0 has no solution.
func (m Model) FromHumidityRatioAndRelativeHumidity(w, rh, p float64) (State, error) {
	if err := errors.Join(m.check(), humidityRatiosRange.Check("humidity ratio", w), relativeHumiditiesRange.Check("relative humidity", rh), pressuresRange.Check("pressure", p)); err != nil {
		return State{}, err
	}
	s, err := m.warmed(fractionOf(w), rh, p, "humidity ratio", w, "kg/kg", State.HumidityRatio)
	if err == nil && s.x < s.xs {
		s.w = w
	}
	return s, err
}

// warmed finds the temperature at which vapour of mole fraction x makes the
// relative humidity rh: the dew point of x/rh.
func (m Model) warmed(x, rh, p float64, field string, value float64, unit string, property func(State) float64) (State, error) {
	if rh == 0 {
		return State{}, fmt.Errorf("%w: air of relative humidity 0 may have any temperature and no %s but that of dry air", ErrNoSolution, field)
	}
	if t := m.hotDewPoint(x/rh, p); t >= temperaturesRange.Min && t <= temperaturesRange.Max {
		return State{t: t, p: p, x: x, w: ratioOf(x), xs: x / rh, model: m}, nil
	}
	at := func(t float64) float64 {
		return property(m.moist(t, rh, p))
	}
	return State{}, &RangeError{Field: field, Value: value, Min: at(temperaturesRange.Min), Max: at(m.hottest(rh, p)), Unit: unit, Source: rangeOfTemperature}
}

// FromDewPointAndRelativeHumidity returns the air of dew point td, °C, -100 to
// 200 and below boiling, and relative humidity rh, fraction, 0 to 1, at
// pressure p, Pa, 30e3 to 200e3; td is a frost point below 0.01 °C. The error
// names each input outside its range; relative humidity 0 has no solution.
func (m Model) FromDewPointAndRelativeHumidity(td, rh, p float64) (State, error) {
	x, err := m.wetted("dew point", td, p)
	if err = errors.Join(err, relativeHumiditiesRange.Check("relative humidity", rh)); err != nil {
		return State{}, err
	}
	return m.warmed(x, rh, p, "dew point", td, "°C", State.DewPoint)
}

// renamed gives the faults of a temperature the name of the input that stands
// for it.
func renamed(err error, field string) error {
	if err == nil {
		return nil
	}
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		var all []error
		for _, e := range joined.Unwrap() {
			all = append(all, renamed(e, field))
		}
		return errors.Join(all...)
	}
	var r *RangeError
	if errors.As(err, &r) && r.Field == "temperature" {
		named := *r
		named.Field = field
		return &named
	}
	return err
}
