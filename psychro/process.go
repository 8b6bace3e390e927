package psychro

import (
	"errors"

	"cloche.example/internal/domain"
)

// Heated returns the stream after sensible heat, W, is added to it; negative
// takes heat out. The error names the most and the least heat that keep the air
// below 200 °C and above its dew point; beyond that see Coil and Changed.
func (s Stream) Heated(heat float64) (Stream, error) {
	if err := s.flowing(finite(nil, "heat", heat, "W")); err != nil {
		return Stream{}, err
	}
	before := s.State.Enthalpy()
	next, err := s.State.model.FromEnthalpyAndHumidityRatio(before+heat/s.DryAir, s.State.w, s.State.p)
	if r, ok := err.(*RangeError); ok && r.Field == "enthalpy" { // which the caller did not give
		err = &RangeError{Field: "heat", Value: heat, Min: s.DryAir * (r.Min - before), Max: s.DryAir * (r.Max - before), Unit: "W", Source: r.Source}
	}
	return Stream{State: next, DryAir: s.DryAir}, err
}

// flowing joins to err the faults of a stream that a process cannot use.
func (s Stream) flowing(err error) error {
	bad := s.check()
	if bad == nil && s.DryAir == 0 {
		bad = &RangeError{Field: "DryAir", Value: 0, Min: domain.MoreThan(0), Max: dryAirsRange.Max, Unit: "kg/s"}
	}
	return errors.Join(bad, err)
}

// Coil is what a cooling coil does to a stream.
type Coil struct {
	Out        Stream  // the air that leaves
	Heat       float64 // W taken from the stream: Sensible + Latent
	Sensible   float64 // W, at the entering humidity ratio down to the leaving temperature
	Latent     float64 // W, the rest: the vapour that condensed, less what the condensate carries off
	Condensate float64 // kg/s, leaves at the leaving temperature as liquid, below 0.01 °C as frost
	Drain      float64 // W, enthalpy that the condensate carries, against liquid water at 0 °C
}

// Coil returns the stream cooled to temperature t, °C, -100 to 200, with the
// condensate taken off at t. A stream whose dew point lies below t keeps its
// vapour. An error if t is above the stream's temperature.
func (s Stream) Coil(t float64) (Coil, error) {
	if err := s.flowing(leavingTemperature(t, s.State.t)); err != nil {
		return Coil{}, err
	}
	in := s.State
	xs, err := in.model.air(t, in.p)
	if err != nil {
		return Coil{}, err
	}
	out := State{t: t, p: in.p, x: in.x, w: in.w, xs: xs, model: in.model}
	if in.x > xs {
		out.x, out.w = xs, ratioOf(xs)
	}
	c := Coil{Out: Stream{State: out, DryAir: s.DryAir}}
	c.Condensate = s.DryAir * (in.w - out.w)
	c.Drain = c.Condensate * in.model.condensed(SurfaceAt(t), t)
	c.Heat = s.enthalpyFlow() - c.Out.enthalpyFlow() - c.Drain
	c.Sensible = s.DryAir * (in.Enthalpy() - in.model.enthalpy(t, in.p, in.x, in.w))
	c.Latent = c.Heat - c.Sensible
	return c, nil
}

// leavingTemperature checks that a cooler that takes air in at t brings it to v,
// °C.
func leavingTemperature(v, t float64) error {
	return domain.Range{Min: temperaturesRange.Min, Max: t, Unit: "°C", Source: "at most the dry bulb"}.Check("leaving temperature", v)
}

// LiquidEnthalpy returns the enthalpy of liquid water at temperature t, °C,
// -40 to 110, J/kg, at 101325 Pa and as the wet bulb uses it: within 4 J/kg of
// [IapwsFull18] from 0 °C on, 25 down to -35, 2 kJ/kg at -40. NaN outside.
func LiquidEnthalpy(t float64) float64 {
	if !waterTemperaturesRange.Contains(t) {
		return nan
	}
	return RealGas.condensed(Liquid, t)
}

// SteamEnthalpy returns the enthalpy, J/kg, of saturated steam at temperature
// t, °C, 0.01 to 110. NaN outside.
func SteamEnthalpy(t float64) float64 {
	if !(t >= TriplePoint && t <= waterTemperaturesRange.Max) {
		return nan
	}
	return RealGas.condensed(Liquid, t) + LatentHeatOver(Liquid, t)
}

// dried is how far below none rounding puts the humidity ratio of a stream that gives
// all its vapour.
const dried = 1e-15

// Changed returns the stream after heat, W, and water, kg/s, of the given
// enthalpy, J/kg, are added to it; fog, if any, is part of the result. It is
// the one balance behind humidifying and the gains of a room: give
// LiquidEnthalpy for sprayed water, SteamEnthalpy for steam, negative water for
// a dryer. The error names each input that is not finite, water that would take
// more vapour than there is, and a result outside -100 to 200 °C.
func (s Stream) Changed(heat, water, enthalpy float64) (Mixture, error) {
	err := errors.Join(finite(nil, "heat", heat, "W"), finite(nil, "enthalpy", enthalpy, "J/kg"))
	if err := s.flowing(finite(err, "water", water, "kg/s")); err != nil {
		return Mixture{}, err
	}
	w := s.State.w + water/s.DryAir
	if w < 0 && w > -dried {
		w = 0
	}
	if !humidityRatiosRange.Contains(w) {
		return Mixture{}, &RangeError{Field: "water", Value: water, Min: -s.vapourFlow(), Max: humidityRatiosRange.Max * s.DryAir, Unit: "kg/s", Source: "the vapour in the stream"}
	}
	h := s.State.Enthalpy() + (heat+water*enthalpy)/s.DryAir
	return s.State.model.settle(s.DryAir, h, w, s.State.p)
}

// Pad is what an evaporative pad does to a stream.
type Pad struct {
	Out        Stream  // the air that leaves
	WetBulb    float64 // °C, of the air that enters
	Evaporated float64 // kg/s of water, at the wet bulb
}

// Pad returns the stream after an evaporative pad of the given efficiency,
// fraction, 0 to 1: the fall of the dry bulb over the wet bulb depression. The
// water is liquid and at the wet bulb; a wet bulb below 0.01 °C, where the pad
// would freeze, is an error.
func (s Stream) Pad(efficiency float64) (Pad, error) {
	if err := s.flowing(fractionsRange.Check("efficiency", efficiency)); err != nil {
		return Pad{}, err
	}
	in := s.State
	tw := in.WetBulbOver(Liquid)
	if !(tw >= TriplePoint) {
		return Pad{}, &RangeError{Field: "wet bulb", Value: tw, Min: TriplePoint, Max: temperaturesRange.Max, Unit: "°C", Source: "the pad would freeze"}
	}
	t := in.t - efficiency*(in.t-tw)
	out, err := in.model.FromWetBulbOver(Liquid, t, tw, in.p)
	if err != nil {
		return Pad{}, err
	}
	return Pad{Out: Stream{State: out, DryAir: s.DryAir}, WetBulb: tw, Evaporated: s.DryAir * (out.w - in.w)}, nil
}
