package envelope

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// VapourSources is what makes a house's air moist, and the air exchanged beside
// its leakage.
type VapourSources struct {
	Released float64 // kg/s, 0 to 1000, vapour set free by crop, soil, people and unvented burners
	Unheated float64 // kg/s, 0 to 1000 and no more than Released: of it, what the heater does not evaporate, as what a burner gives off
	Exchange float64 // kg/s, 0 to 1e5, dry air through vents and fans, beside the leakage
}

// VapourBalance is the humidity at which a house's air gets rid of the vapour
// that is set free, and the heat that the house then loses.
type VapourBalance struct {
	Humidity      float64   // fraction, relative humidity inside
	HumidityRatio float64   // kg/kg dry air
	Condensate    float64   // kg/s, on covers, frame and doors
	Carried       float64   // kg/s, that leakage, vents and fans carry off more than they bring
	Fog           float64   // kg/s, what saturated air cannot get rid of
	Residual      float64   // kg/s, what the balance leaves open: 1e-9 of the larger of Released and the vapour that comes in
	Solutions     int       // of all covers that it took
	Loss          HouseLoss // at this humidity
	Exchange      float64   // W, to warm the air of VapourSources.Exchange
	Latent        float64   // W, that evaporates what the heater evaporates, less what fog gives back
	Total         float64   // W: Loss.Total with Latent in the place of Loss.Latent, and Exchange
}

// Ranges of the vapour.
var (
	vapourReleasedRange = domain.Range{Min: 0, Max: 1000, Unit: "kg/s", Source: "chosen"}
	vapourExchangeRange = domain.Range{Min: 0, Max: 1e5, Unit: "kg/s", Source: "chosen"}
)

// Limits of the balance.
const (
	vapourClosure  = 1e-10 // of the larger of the vapour released and brought in: a tenth of what is promised
	firstDew       = 0.35  // of inside over outside air that the dew point is below the inside air at first
	vapourRounds   = 200   // solutions; six are usual, fifty where the balance has a kink or step
	secantFrom     = 0.1   // of the surplus before: below it two humidities tell the slope better than one
	vapourDistinct = 1e-12 // fraction by which two humidity ratios differ
)

// check returns nil, or the join of a *RangeError for each field out of range.
func (v VapourSources) check() error {
	err := errors.Join(
		vapourReleasedRange.Check("Released", v.Released),
		vapourReleasedRange.Check("Unheated", v.Unheated),
		vapourExchangeRange.Check("Exchange", v.Exchange),
	)
	if err == nil && v.Unheated > v.Released {
		err = domain.Range{Min: 0, Max: v.Released, Unit: "kg/s", Source: "a part of Released"}.Check("Unheated", v.Unheated)
	}
	return err
}

// SolveVapour returns the humidity that the house settles to in the conditions
// k, whose InsideHumidity is not read, with what crop and soil set free: the
// condensate on all covers, their frame and the doors and what the exchanged
// air carries off are as much as is released. What they take never falls with
// the humidity, so that there is one answer. Where even saturated air does not
// get rid of all, the rest is fog; where nothing is released and no air is
// exchanged, the answer is the highest humidity at which nothing condenses. The
// error joins a *RangeError for each field out of range.
func (h *House) SolveVapour(k HouseConditions, v VapourSources) (VapourBalance, error) {
	var r VapourBalance
	err := h.SolveVapourTo(&r, &k, v)
	return r, err
}

// SolveVapourTo is SolveVapour that writes to dst, uses its slices again and
// begins at its humidity: with the hour before in it, the answer comes in two
// or three solutions. On an error dst is undefined.
func (h *House) SolveVapourTo(dst *VapourBalance, k *HouseConditions, v VapourSources) error {
	one := *k
	one.InsideHumidity = 1
	full, outside, err := h.states(&one)
	if err = errors.Join(err, v.check()); err != nil {
		return err
	}
	near := dst.HumidityRatio
	*dst = VapourBalance{Loss: dst.Loss}
	b := vapourSearch{house: h, dst: dst, k: one, v: v, full: full, outside: outside}
	dst.Loss.grows = true
	err = b.solve(near)
	dst.Loss.grows = false
	if err != nil {
		return err
	}
	heat := evaporation(k.Inside)
	l := &dst.Loss
	dst.Condensate, dst.Carried = l.Condensate, l.Evaporation-l.Condensate+b.vented()
	dst.Residual = dst.Condensate + dst.Carried + dst.Fog - v.Released
	dst.Exchange = v.Exchange * outside.HeatCapacity() * (k.Inside - k.Outside)
	dst.Latent = (v.Released - v.Unheated - dst.Fog) * heat
	dst.Total = l.Total - l.Latent + dst.Latent + dst.Exchange
	return nil
}

// vapourSearch is the search for the humidity ratio in kg/kg, between low, where
// too little vapour is taken, and high; off counts what is taken too much, kg/s.
type vapourSearch struct {
	house           *House
	dst             *VapourBalance
	k               HouseConditions
	v               VapourSources
	full, outside   psychro.State
	low, high       float64
	offLow, offHigh float64 // offHigh is NaN while unknown
	slope           float64 // kg/s for each kg/kg, of what is taken, at the last humidity ratio
}

// vented returns the vapour that the exchanged air carries off, kg/s.
func (b *vapourSearch) vented() float64 {
	return b.v.Exchange * (b.dst.HumidityRatio - b.outside.HumidityRatio())
}

// at solves the house at the humidity ratio w and returns by how much the vapour
// taken exceeds what is released, kg/s.
func (b *vapourSearch) at(w float64) (float64, error) {
	b.k.InsideHumidity = 1
	if w < b.full.HumidityRatio() {
		s, err := psychro.FromHumidityRatio(b.k.Inside, w, b.k.Pressure)
		if err != nil {
			return 0, err
		}
		b.k.InsideHumidity = s.RelativeHumidity()
	}
	b.dst.Humidity, b.dst.HumidityRatio = b.k.InsideHumidity, w
	b.dst.Solutions++
	if err := b.house.LossTo(&b.dst.Loss, &b.k); err != nil {
		return 0, err
	}
	b.slope = b.dst.Loss.uptake + b.dst.Loss.Leakage.DryAir + b.v.Exchange
	return b.dst.Loss.Evaporation + b.vented() - b.v.Released, nil
}

// uncondensed returns the humidity ratio that leakage and exchange alone would
// hold, no more than saturation, and their flow there, kg/s.
func (b *vapourSearch) uncondensed() (w, flow float64, err error) {
	p := &b.house.plan
	out := b.outside.HumidityRatio()
	w = b.full.HumidityRatio()
	air := b.full
	for range 10 { // the flow depends on the humidity by a hundredth at most
		l, err := p.Leakage.Flow(p.Shape.Volume, p.Shape.RidgeHeight, HouseAir{Inside: air, Outside: b.outside, Wind: b.k.Wind})
		if err != nil {
			return 0, 0, err
		}
		if flow = l.DryAir + b.v.Exchange; flow == 0 {
			return w, 0, nil
		}
		if w = out + b.v.Released/flow; w >= b.full.HumidityRatio() {
			return b.full.HumidityRatio(), flow, nil
		}
		if air, err = psychro.FromHumidityRatio(b.k.Inside, w, b.k.Pressure); err != nil {
			return 0, 0, err
		}
	}
	return w, flow, nil
}

// solve finds the humidity, from near where that is one, else from the highest
// that it can have. The balance is nearly straight between the humidities at
// which facets begin to condense, so that secants close it; the bracket guards
// them.
func (b *vapourSearch) solve(near float64) error {
	top, flow, err := b.uncondensed()
	if err != nil {
		return err
	}
	brought := flow * b.outside.HumidityRatio()
	scale := max(b.v.Released, brought)
	if scale == 0 {
		return b.driest()
	}
	limit := vapourClosure * scale
	b.low, b.offLow = 0, -b.v.Released-brought
	b.high, b.offHigh = top, nan
	w := top
	if near > 0 && near < top {
		w = near
	} else if drop := firstDew * (b.k.Inside - b.k.Outside); !(near > 0) && drop > 0 {
		if s, err := psychro.FromRelativeHumidity(b.k.Inside-drop, 1, b.k.Pressure); err == nil && s.HumidityRatio() < top {
			w = s.HumidityRatio()
		}
	}
	last, lastOff, slow := nan, nan, 0
	for range vapourRounds {
		off, err := b.at(w)
		if err != nil || math.Abs(off) <= limit {
			return err
		}
		switch {
		case off > 0:
			b.high, b.offHigh = w, off
		case w >= b.full.HumidityRatio():
			b.dst.Fog = -off
			return nil
		case w == b.high: // faces declared wet give vapour off
			b.low, b.offLow, b.high = w, off, b.full.HumidityRatio()
		default:
			b.low, b.offLow = w, off
		}
		if b.high-b.low <= vapourDistinct*b.high {
			return nil
		}
		if math.Abs(off) > 0.5*math.Abs(lastOff) {
			slow++
		} else {
			slow = 0
		}
		if math.Abs(off) < secantFrom*math.Abs(lastOff) {
			b.dst.Loss.grows = false
		}
		next := w - off*(w-last)/(off-lastOff)
		if b.dst.Loss.grows {
			next = w - off/b.slope
		}
		if slow > 2 || !(next > b.low && next < b.high) {
			slow = 0
			switch {
			case math.IsNaN(b.offHigh): // fog, where even this takes too little
				next = b.high
			case math.IsNaN(lastOff):
				next = b.low - b.offLow*(b.high-b.low)/(b.offHigh-b.offLow)
			default:
				next = (b.low + b.high) / 2
			}
		}
		last, lastOff, w = w, off, next
	}
	return nil
}

// driest finds the highest humidity at which nothing condenses, of a house that
// exchanges no air and in which nothing is set free.
func (b *vapourSearch) driest() error {
	low, high := 0.0, b.full.HumidityRatio()
	off, err := b.at(high)
	if err != nil || off <= 0 {
		return err
	}
	for high-low > vapourDistinct*high {
		mid := (low + high) / 2
		if off, err = b.at(mid); err != nil {
			return err
		}
		if off > 0 {
			high = mid
		} else {
			low = mid
		}
	}
	_, err = b.at(low)
	return err
}
