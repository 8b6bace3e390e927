package envelope

import (
	"math"

	"cloche.example/internal/constant"
	"cloche.example/psychro"
)

// Limits of the balance.
const (
	vapourClosure  = 1e-10 // of the larger of the vapour released and brought in: a tenth of what is promised
	firstDew       = 0.35  // of inside over outside air that the dew point is below the inside air at first
	vapourRounds   = 200   // solutions in a bracket; six are usual, fifty where the balance has a kink or step
	vapourTogether = 20    // rounds of the search for all at once; two to four are usual
	exactRatio     = 1e-5  // of the humidity ratio: a step of Newton's method from there leaves less than vapourClosure
	vapourDistinct = 1e-12 // fraction by which two humidity ratios differ
	slowShare      = 0.5   // of the miss before: a solution that leaves more is slow
)

// vapourSearch is the search for the humidity ratio in kg/kg, between low, where
// too little vapour is taken, and high; off counts what is taken too much, kg/s.
type vapourSearch struct {
	t               together
	dst             *VapourBalance
	v               VapourSources
	full            psychro.State // saturated
	near            float64       // kg/kg, where the search begins; not above 0 for none
	limit           float64       // kg/s, of the balance
	low, high       float64
	offLow, offHigh float64 // offHigh is NaN while unknown
}

// vented returns the vapour that the exchanged air carries off, kg/s.
func (b *vapourSearch) vented() float64 {
	return b.v.Exchange * (b.dst.HumidityRatio - b.t.outside.HumidityRatio())
}

// taken is what a house takes of its vapour: what leaks, vents and fans carry
// off and what condenses.
type taken struct {
	off     float64 // kg/s, beyond what is released
	byRatio float64 // kg/s for each kg/kg, while what the facets see stays
}

// taken sums what the house takes with its facets as they are solved.
func (b *vapourSearch) taken() (r taken, err error) {
	t := &b.t
	p := &t.h.plan
	l, err := p.Leakage.Flow(p.Shape.Volume, p.Shape.RidgeHeight, HouseAir{Inside: t.inside, Outside: t.outside, Wind: t.k.Wind})
	if err != nil {
		return r, err
	}
	flow := l.DryAir + b.v.Exchange
	// The air that leaks holds less dry air the moister it is.
	r.byRatio = flow - l.DryAir*(t.air.ratio-t.outside.HumidityRatio())/(constant.MoleRatio+t.air.ratio)
	r.off = flow*(t.air.ratio-t.outside.HumidityRatio()) - b.v.Released
	for i := range t.dst.Facets {
		f := &t.dst.mutual[i].flow
		area := t.wetArea(i)
		r.off += area * f.water
		r.byRatio += area * f.waterByRatio
	}
	if t.k.InnerFace != InnerDry {
		for _, d := range p.Doors {
			r.off += d.Area * t.air.door(d.U, t.k.Outside).condensate
		}
	}
	return r, nil
}

// wetArea returns the area in m² of facet i with its share of the frame.
func (t *together) wetArea(i int) float64 {
	f := t.dst.Facets[i].Facet
	return (1 + t.h.frame(t.h.plan.Shape.Facets[f].Kind)) * t.h.net[f]
}

// set makes the inside air that of the humidity ratio w.
func (b *vapourSearch) set(w float64) error {
	if err := b.t.moisten(w, b.full); err != nil {
		return err
	}
	b.dst.Humidity, b.dst.HumidityRatio = b.t.k.InsideHumidity, w
	return nil
}

// at solves the house at the humidity ratio w and returns by how much the vapour
// taken exceeds what is released, kg/s.
func (b *vapourSearch) at(w float64) (float64, error) {
	if err := b.set(w); err != nil {
		return 0, err
	}
	if err := b.t.settle(); err != nil {
		return 0, err
	}
	r, err := b.taken()
	return r.off, err
}

// uncondensed returns the humidity ratio that leakage and exchange alone would
// hold, no more than saturation, and their flow there, kg/s.
func (b *vapourSearch) uncondensed() (w, flow float64, err error) {
	p := &b.t.h.plan
	out := b.t.outside.HumidityRatio()
	w = b.full.HumidityRatio()
	air := b.full
	for range 10 { // the flow depends on the humidity by a hundredth at most
		l, err := p.Leakage.Flow(p.Shape.Volume, p.Shape.RidgeHeight, HouseAir{Inside: air, Outside: b.t.outside, Wind: b.t.k.Wind})
		if err != nil {
			return 0, 0, err
		}
		if flow = l.DryAir + b.v.Exchange; flow == 0 {
			return w, 0, nil
		}
		if w = out + b.v.Released/flow; w >= b.full.HumidityRatio() {
			return b.full.HumidityRatio(), flow, nil
		}
		if air, err = psychro.FromHumidityRatio(b.t.k.Inside, w, b.t.k.Pressure); err != nil {
			return 0, 0, err
		}
	}
	return w, flow, nil
}

// find finds the humidity, from near where that is one, else from below the
// highest that it can have. Films that would not stay wet are let go of between
// one search and the next, see together.begin.
func (b *vapourSearch) find() error {
	top, flow, err := b.uncondensed()
	if err != nil {
		return err
	}
	k := &b.t.k
	brought := flow * b.t.outside.HumidityRatio()
	scale := max(b.v.Released, brought)
	b.limit = vapourClosure * scale
	w := top
	if b.near > 0 && b.near <= b.full.HumidityRatio() {
		w = b.near
	} else if drop := firstDew * (k.Inside - k.Outside); !(b.near > 0) && drop > 0 {
		if s, err := psychro.FromRelativeHumidity(k.Inside-drop, 1, k.Pressure); err == nil && s.HumidityRatio() < top {
			w = s.HumidityRatio()
		}
	}
	b.t.begin()
	for {
		b.low, b.offLow = 0, -b.v.Released-brought
		b.high, b.offHigh = top, nan
		b.dst.Fog = 0
		if scale == 0 {
			err = b.driest()
		} else if closed, e := b.together(w); e != nil || !closed {
			err = b.solve(w)
		}
		if err != nil || !b.t.judge() {
			return err
		}
		w = b.dst.HumidityRatio
	}
}

// together seeks the humidity and what the facets see at once, by Newton's
// method. It reports false where it does not come to both.
func (b *vapourSearch) together(w float64) (closed bool, err error) {
	t, full := &b.t, b.full.HumidityRatio()
	exact := false
	for range vapourTogether {
		if err := b.set(w); err != nil {
			return false, err
		}
		if err := t.round(exact); err != nil {
			return false, err
		}
		x, err := b.taken()
		if err != nil {
			return false, err
		}
		off, foggy := t.missed(), w == full && x.off < 0
		if exact && off <= mutualLimit && (foggy || math.Abs(x.off) <= b.limit) {
			if t.dst.RadiantResidual = off; foggy {
				b.dst.Fog = -x.off
			}
			return true, nil
		}
		open, slope := x.off, x.byRatio
		var rows []float64
		var wide int
		if t.enclosed {
			rows, wide = t.lines()
			n := wide - lineSides
			for i := range n {
				f := t.wetArea(i) * t.dst.mutual[i].flow.waterBySeen
				open += f * rows[i*wide+n+lineOpen]
				slope += f * rows[i*wide+n+lineRatio]
			}
		}
		next := min(full, w-open/slope)
		if !(next > 0) {
			next = w / 2
		}
		if math.IsNaN(next) {
			return false, nil
		}
		if t.enclosed {
			t.move(rows, wide, next-w, 1)
		}
		exact = off <= exactFrom && math.Abs(next-w) <= exactRatio*w
		w = next
	}
	return false, nil
}

// solve finds the humidity in a bracket, from w. The balance is nearly straight
// between the humidities at which facets begin to condense, so that secants
// close it; the bracket guards them.
func (b *vapourSearch) solve(w float64) error {
	last, lastOff, slow := nan, nan, 0
	for range vapourRounds {
		off, err := b.at(w)
		if err != nil || math.Abs(off) <= b.limit {
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
		if math.Abs(off) > slowShare*math.Abs(lastOff) {
			slow++
		} else {
			slow = 0
		}
		next := w - off*(w-last)/(off-lastOff)
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
