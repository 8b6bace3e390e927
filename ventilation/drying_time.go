package ventilation

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// DryingTime is the course from a humid house to the wanted humidity.
type DryingTime struct {
	Time      time.Duration // until the wanted humidity is reached; zero if the air is as dry already
	Settled   float64       // kg/kg dry air, where the humidity ratio would come to rest; +Inf where nothing takes vapour
	Constant  time.Duration // time constant at the end of the course, thirty years at most
	Mass      float64       // kg, dry air in the house
	Released  float64       // kg, vapour set free meanwhile
	Vented    float64       // kg, carried out by the air, less what came in
	Condensed float64       // kg, onto the surfaces
	Sensible  float64       // J, warms the outside air with its vapour
	Latent    float64       // J, carried out with the vapour in excess of the outside air's
}

// longest is what a drying may take, s: thirty years and more are no answer.
const longest = 1e9

// sink is a surface with its pull on the humidity ratio.
type sink struct {
	pull  float64 // kg/s: area times the transfer coefficient
	floor float64 // kg/kg, humidity ratio of saturation at it
	on    bool    // it takes part
	wet   bool    // it always does
}

// sinks appends to all the surfaces with their transfer coefficients at the
// wanted humidity, which hardly change with it.
func (d DryingCase) sinks(all []sink) ([]sink, error) {
	for i := range d.Surfaces {
		s := &d.Surfaces[i]
		v, err := d.Wanted.VapourFlux(s.Temperature, s.Film)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", place("Surfaces", i, s.Name), err)
		}
		all = append(all, sink{pull: s.Area * v.Coefficient, floor: v.Saturation, on: s.Wet, wet: s.Wet})
	}
	return all, nil
}

// rest returns where the humidity ratio comes to rest with the sinks that are
// on, kg/kg, and the pull of air and sinks together, kg/s.
func (d DryingCase) rest(all []sink, dryAir float64) (w, pull float64) {
	pull, sum := dryAir, d.Release+dryAir*d.Outside.HumidityRatio()
	for i := range all {
		if all[i].on {
			pull += all[i].pull
			sum += all[i].pull * all[i].floor
		}
	}
	if pull == 0 {
		return math.Inf(1), 0 // without release too: nothing moves it
	}
	return sum / pull, pull
}

// Settled returns the air in which the house comes to rest at the wanted
// temperature with dryAir, kg/s, 0 to 1e4, of outside air through it:
// Release = dryAir (W - Wo) + what the surfaces take. ErrNoSolution says that
// the air would saturate before: it drips or fogs. Other errors join every
// fault by field.
func (d DryingCase) Settled(dryAir float64) (psychro.State, error) {
	if err := errors.Join(d.check(), dryAirRange.Check("dryAir", dryAir)); err != nil {
		return psychro.State{}, err
	}
	var room [8]sink
	all, err := d.sinks(room[:0])
	if err != nil {
		return psychro.State{}, err
	}
	w := d.settle(all, dryAir)
	t, p := d.Wanted.Temperature(), d.Wanted.Pressure()
	if top := d.Wanted.Model().SaturationHumidityRatio(t, p); !(w <= top) {
		return psychro.State{}, fmt.Errorf("drying: %w: the humidity ratio would come to rest at %.5g kg/kg, air of %g °C holds %.5g", ErrNoSolution, w, t, top)
	}
	return d.Wanted.Model().FromHumidityRatio(t, w, p)
}

// settle turns on the sinks, lowest floor first, that lie below where the
// humidity ratio comes to rest, and returns that, kg/kg. Each one turned on
// lowers it, yet never below its own floor.
func (d DryingCase) settle(all []sink, dryAir float64) float64 {
	for {
		w, _ := d.rest(all, dryAir)
		lowest := -1
		for i := range all {
			if !all[i].on && all[i].pull > 0 && all[i].floor < w && (lowest < 0 || all[i].floor < all[lowest].floor) {
				lowest = i
			}
		}
		if lowest < 0 {
			return w
		}
		all[lowest].on = true
	}
}

// Time returns how long the house of volume, m³, more than 0, at most 1e6, takes
// from the air from, at the wanted temperature, to the wanted humidity with
// dryAir, kg/s, 0 to 1e4, of outside air through it. Well mixed and held
// at its temperature,
//
//	M dW/dt = Release - dryAir (W - Wo) - Σ k A (W - Ws),
//
// with k at the wanted humidity and each dry surface taking part above its Ws:
// an exact exponential from one Ws to the next. Water that wets leaves and
// floor goes with Release. ErrNoSolution says that the humidity comes to rest
// above the wanted one; other errors join every fault by field.
func (d DryingCase) Time(from psychro.State, dryAir, volume float64) (DryingTime, error) {
	err := errors.Join(d.check(), dryAirRange.Check("dryAir", dryAir), houseVolumeRange.Check("volume", volume), checkAir("from", from))
	if err != nil {
		return DryingTime{}, err
	}
	t := d.Wanted.Temperature()
	if err := errors.Join(sameAir("from", from, "Wanted", d.Wanted), domain.Range{Min: t - 1e-9, Max: t + 1e-9, Unit: "°C", Source: "the wanted temperature: heat first, then dry"}.Check("from.Temperature", from.Temperature())); err != nil {
		return DryingTime{}, err
	}
	var room [8]sink
	all, err := d.sinks(room[:0])
	if err != nil {
		return DryingTime{}, err
	}
	r := DryingTime{Settled: d.settle(all, dryAir), Mass: volume / d.Wanted.SpecificVolume()}
	w, goal := from.HumidityRatio(), d.Wanted.HumidityRatio()
	if w > goal && !(r.Settled < goal) {
		return DryingTime{}, fmt.Errorf("drying: %w: the humidity ratio comes to rest at %.5g kg/kg, not below the wanted %.5g", ErrNoSolution, r.Settled, goal)
	}
	seconds := 0.0
	for {
		next := goal
		for i := range all {
			s := &all[i]
			s.on = s.wet || s.floor < w
			if s.on && !s.wet {
				next = math.Max(next, s.floor)
			}
		}
		rest, pull := d.rest(all, dryAir)
		constant := r.Mass / pull // s
		r.Constant = time.Duration(math.Min(longest, constant) * 1e9)
		if w <= goal {
			break
		}
		span := constant * math.Log((w-rest)/(next-rest))
		mean := rest + constant*(w-next)/span // of W over the span, kg/kg
		seconds += span
		r.Vented += dryAir * (mean - d.Outside.HumidityRatio()) * span
		for i := range all {
			if all[i].on {
				r.Condensed += all[i].pull * (mean - all[i].floor) * span
			}
		}
		w = next
	}
	if !(seconds <= longest) {
		return DryingTime{}, fmt.Errorf("drying: %w: it would take %.3g s", ErrNoSolution, seconds)
	}
	r.Time = time.Duration(seconds * 1e9)
	r.Released = d.Release * seconds
	if seconds > 0 {
		still, err := d.Wanted.Model().FromHumidityRatio(t, 0, d.Wanted.Pressure())
		if err != nil {
			return DryingTime{}, err
		}
		vapour := (from.Enthalpy() - still.Enthalpy()) / from.HumidityRatio() // J/kg
		r.Sensible = dryAir * seconds * (still.Enthalpy() + vapour*d.Outside.HumidityRatio() - d.Outside.Enthalpy())
		r.Latent = r.Vented * vapour
	}
	return r, nil
}
