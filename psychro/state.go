package psychro

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// State is moist air at one temperature, pressure and humidity, never above
// saturation. The zero State is invalid: make one with a constructor, which
// checks everything. A State is a small value, safe to copy and to share.
type State struct {
	t, p  float64 // °C, Pa
	x, w  float64 // mole fraction of vapour; humidity ratio, kg/kg dry air
	xs    float64 // mole fraction of vapour at saturation over SurfaceAt(t); above boiling, saturation over total pressure
	model Model
}

// roundingSlack is how far above saturation a computed humidity may lie and
// still count as saturated, relative.
const roundingSlack = 1e-9

// mostVapour is the mole fraction of vapour at the largest humidity ratio, 1000
// kg/kg: of steam with a trace of air.
const mostVapour = 1e3 / (molarRatio + 1e3)

// tooLittleAir is the source of a limit that mostVapour sets.
const tooLittleAir = "humidity ratio of at most 1000 kg/kg"

// air is what every constructor from a dry bulb checks: model, temperature and
// pressure in range. It returns the mole fraction of vapour at saturation,
// which above the boiling point of water is the saturation pressure over the
// total pressure, more than 1.
func (m Model) air(t, p float64) (xs float64, err error) {
	if !(t >= temperaturesRange.Min && t <= temperaturesRange.Max && p >= pressuresRange.Min && p <= pressuresRange.Max && m <= IdealGas) {
		return 0, errors.Join(m.check(), temperaturesRange.Check("temperature", t), pressuresRange.Check("pressure", p))
	}
	return m.saturated(SurfaceAt(t), t, p), nil
}

// wetted is air for the temperature of something wet, at which water must not
// boil; field is its name.
func (m Model) wetted(field string, t, p float64) (xs float64, err error) {
	if xs, err = m.air(t, p); err != nil {
		return 0, renamed(err, field)
	}
	if !(xs < mostVapour) {
		return 0, m.boils(field, t, p)
	}
	return xs, nil
}

// boils is the error for a temperature at which the saturation pressure is at
// or above the total pressure.
func (m Model) boils(field string, t, p float64) error {
	return &RangeError{Field: field, Value: t, Min: temperaturesRange.Min, Max: m.boiling(p), Unit: "°C",
		Source: "water boils: its saturation pressure reaches the total pressure"}
}

// boiling is the temperature, °C, at which pure water boils at pressure p.
func (m Model) boiling(p float64) float64 {
	if m == IdealGas {
		return handbookTemperature(Liquid, p)
	}
	return liquidTemperature(p)
}

// surelyBelowBoiling is a temperature, °C, below the boiling point at every
// pressure in range, 69 °C at the least: no need to ask for that.
const surelyBelowBoiling = 60.0

func (m Model) check() error {
	return domain.Range{Min: 0, Max: float64(IdealGas), Unit: "number of a model", Source: "constants of Model"}.Check("Model", float64(m))
}

// build makes a State from a mole fraction of vapour x, which must lie between
// none and xs, saturation, or mostVapour if that is less. A fault is reported as
// one of the caller's input: field, value, unit, and the property of a State
// that it stands for.
func (m Model) build(t, p, x, xs float64, field string, value float64, unit string, property func(State) float64) (State, error) {
	top := min(xs, mostVapour)
	if x > top && x <= top*(1+roundingSlack) {
		x = top
	}
	if x >= 0 && x <= top {
		return State{t: t, p: p, x: x, w: ratioOf(x), xs: xs, model: m}, nil
	}
	dry := State{t: t, p: p, xs: xs, model: m}
	full := State{t: t, p: p, x: top, w: ratioOf(top), xs: xs, model: m}
	a, b := property(dry), property(full)
	const places = 4e-15 // of the input: below the last digit of a float64
	switch {
	case math.Abs(value-b) <= places*math.Abs(b):
		return full, nil
	case math.Abs(value-a) <= places*math.Abs(a):
		return dry, nil
	case math.IsNaN(a): // the dew point of dry air
		a = temperaturesRange.Min
	}
	source := "dry to saturated air"
	if top < xs {
		source = tooLittleAir
	}
	return State{}, &RangeError{Field: field, Value: value, Min: min(a, b), Max: max(a, b), Unit: unit, Source: source}
}

// check refuses the zero State, which no constructor made.
func (s State) check() error {
	if s.p > 0 {
		return nil
	}
	return &RangeError{Field: "Pressure", Value: s.p, Min: pressuresRange.Min, Max: pressuresRange.Max, Unit: "Pa", Source: "the zero State is invalid"}
}

// finite joins to err a fault of an input whose limits depend on inputs that
// are themselves at fault: all that can be checked is that it is finite.
func finite(err error, field string, v float64, unit string) error {
	return errors.Join(err, domain.Range{Min: math.Inf(-1), Max: math.Inf(1), Unit: unit}.Check(field, v))
}

// check names a temperature outside the range of surface s.
func (s Surface) check(field string, t float64) error {
	switch s {
	case Ice:
		return frostTemperaturesRange.Check(field, t)
	case Liquid:
		return liquidTemperaturesRange.Check(field, t)
	}
	return domain.Range{Min: 0, Max: float64(Ice), Unit: "number of a surface", Source: "constants of Surface"}.Check("Surface", float64(s))
}
