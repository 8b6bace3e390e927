package psychro

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// Stream is moist air that flows.
type Stream struct {
	State  State   // the air
	DryAir float64 // kg/s of dry air, 0 to 1e6
}

func (s Stream) enthalpyFlow() float64 { return s.DryAir * s.State.Enthalpy() } // W

func (s Stream) vapourFlow() float64 { return s.DryAir * s.State.w } // kg/s

// VolumeFlow returns the stream's volume flow, m³/s.
func (s Stream) VolumeFlow() float64 { return s.DryAir * s.State.SpecificVolume() }

// Mixture is what comes out when streams mix: air, saturated if there is fog,
// and the fog that it carries. It holds all the water and all the enthalpy of
// the streams that went in.
type Mixture struct {
	Air         Stream  // the air with its vapour
	FogLiquid   float64 // kg/s of droplets
	FogIce      float64 // kg/s of ice crystals
	FogEnthalpy float64 // W, enthalpy that the fog carries, against liquid water at 0 °C
}

// dryAirsRange are the flows of dry air that a Stream may have.
var dryAirsRange = domain.Range{Min: 0, Max: 1e6, Unit: "kg/s"}

// Mix mixes streams of one pressure and one model, adiabatically. Where the
// mixture holds more water than saturated air can, the rest is fog at the
// mixture's temperature: liquid above 0.01 °C, ice below, and both where the
// mixture settles at the triple point. The error names each stream whose
// flow, state or pressure is at fault; no flow at all is refused.
func Mix(streams ...Stream) (Mixture, error) {
	if len(streams) == 0 {
		return Mixture{}, &RangeError{Field: "number of streams", Min: 1, Max: math.Inf(1)}
	}
	first := streams[0].State
	var errs []error
	var flow, water, heat float64
	for i, s := range streams {
		if err := s.check(); err != nil {
			errs = append(errs, domain.Within(nameOf(i), err))
			continue
		}
		if s.State.p != first.p {
			errs = append(errs, &RangeError{Field: nameOf(i) + ".State.Pressure", Value: s.State.p, Min: first.p, Max: first.p, Unit: "Pa", Source: "the pressure of streams[0]"})
		}
		if s.State.model != first.model {
			errs = append(errs, fmt.Errorf("%s: its model is %v, that of streams[0] %v: %w", nameOf(i), s.State.model, first.model, ErrRange))
		}
		flow += s.DryAir
		water += s.vapourFlow()
		heat += s.enthalpyFlow()
	}
	if len(errs) == 0 && !(flow > 0) {
		errs = append(errs, &RangeError{Field: "DryAir of all streams", Value: flow, Min: domain.MoreThan(0), Max: dryAirsRange.Max, Unit: "kg/s"})
	}
	if len(errs) > 0 {
		return Mixture{}, errors.Join(errs...)
	}
	return first.model.settle(flow, heat/flow, water/flow, first.p)
}

func nameOf(stream int) string { return fmt.Sprintf("streams[%d]", stream) }

func (s Stream) check() error {
	if err := s.State.check(); err != nil {
		return domain.Within("State", err)
	}
	return dryAirsRange.Check("DryAir", s.DryAir)
}

// settle finds the air, and the fog in it, of enthalpy h, J/kg dry air, and
// water w, kg/kg dry air, at pressure p.
func (m Model) settle(flow, h, w, p float64) (Mixture, error) {
	t := m.temperature(h, w, p)
	xs := math.Inf(1)
	if temperaturesRange.Contains(t) {
		xs = m.saturated(SurfaceAt(t), t, p)
	} else if !(t < temperaturesRange.Min) {
		return Mixture{}, temperaturesRange.Check("temperature of the mixture", t)
	}
	if x := fractionOf(w); x <= xs && t >= temperaturesRange.Min {
		return Mixture{Air: Stream{State{t: t, p: p, x: x, w: w, xs: xs, model: m}, flow}}, nil
	}
	wet := State{p: p, x: fractionOf(w), w: w, model: m}
	// Heat that must freeze out of the fog at the triple point: none or less
	// if it stays liquid, as much as there is if it is ice.
	freezing := wet.bulbBalance(Liquid, TriplePoint, h)
	ws := ratioOf(m.saturated(Liquid, TriplePoint, p))
	ice := freezing / ((w - ws) * (m.condensed(Liquid, TriplePoint) - m.condensed(Ice, TriplePoint)))
	switch {
	case freezing <= 0:
		t, ice = wet.solveBulb(Liquid, TriplePoint, m.hottest(1, p), t, h), 0
	case w > ws && ice < 1: // liquid and ice together
		t = TriplePoint
	default:
		t, ice = wet.solveBulb(Ice, lowest, TriplePoint, t, h), 1
	}
	if !temperaturesRange.Contains(t) {
		return Mixture{}, temperaturesRange.Check("temperature of the mixture", t)
	}
	x := m.saturated(SurfaceAt(t), t, p)
	ws = ratioOf(x)
	fog := max(0, flow*(w-ws))
	r := Mixture{Air: Stream{State{t: t, p: p, x: x, w: ws, xs: x, model: m}, flow}, FogLiquid: fog * (1 - ice), FogIce: fog * ice}
	r.FogEnthalpy = r.FogLiquid*m.condensed(Liquid, t) + r.FogIce*m.condensed(Ice, t)
	return r, nil
}

// Searches for a temperature begin between these, °C: beyond the range of every state,
// and where the formulas still rise.
const (
	coldestStart = -150.0
	hottestStart = 300.0
)

// settledMixture is the step, K, at which Newton's method ends, whose next one is lost
// in rounding.
const settledMixture = 1e-9

// temperature of unsaturated air of enthalpy h and humidity ratio w, °C.
func (m Model) temperature(h, w, p float64) float64 {
	t := (h - w*latentZero) / (heatAir + w*heatVapour)
	if m == IdealGas {
		return t
	}
	x := fractionOf(w)
	t = math.Max(coldestStart, math.Min(t, hottestStart))
	for range 20 {
		d := (m.enthalpy(t, p, x, w) - h) / m.heatCapacity(t, p, x, w)
		t -= d
		if math.Abs(d) < settledMixture {
			break
		}
	}
	return t
}
