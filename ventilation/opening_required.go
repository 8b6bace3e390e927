package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
)

// deficitRange is what a vapour pressure deficit may be asked to be.
var deficitRange = domain.Range{Min: 0, Max: 10000, Unit: "Pa", Source: "saturated air to air that no crop stands"}

// RequiredOpening answers how far to open.
type RequiredOpening struct {
	Opening float64      // fraction of the openings' area, 0 shut to 1
	Met     bool         // false: no opening gives what was asked, this one comes nearest
	State   ClimateState // the house at that opening
}

// openings is the search for an opening of the vents of one case.
type openings struct {
	k   climateCase
	err error // why the last opening tried has no state
}

// try returns the state at the opening u, fraction, and false when there is
// none.
func (o *openings) try(u float64, out *ClimateState) bool {
	o.k.opening, o.k.lastDrive = u, math.NaN()
	if u == 0 && o.k.air.fansAlone() {
		o.err = errShut
		return false
	}
	x, stable, err := o.k.solve()
	if err != nil {
		o.err = err
		return false
	}
	o.k.state(out, &x, stable)
	return true
}

// OpeningForTemperature returns the least opening of the vents at which the
// house of the weather w and the setting s, whose Opening is not used, is no
// warmer than limit, °C, -60 to 80. All openings move together, leaks
// and fans stay. When the house is too warm whatever opens, Met is false and
// the opening is the one with the coolest house: fully open as a rule, less
// where the house is cooler than the air that enters. Errors are those of
// Solve; ErrNoSolution says that no opening leaves the house within
// -60 to 80 °C.
func (c *Climate) OpeningForTemperature(w Weather, s Setting, limit float64) (RequiredOpening, error) {
	var o openings
	s.Opening = 1
	if err := errors.Join(c.prepare(&o.k, &w, &s), temperatureRange.Check("limit", limit)); err != nil {
		return RequiredOpening{}, err
	}
	var p RequiredOpening
	err := o.k.meet(func() (err error) {
		p, err = o.coolest(limit, 0, 1)
		return err
	}, nil)
	return p, err
}

// coolest returns the least opening between low and high at which the house is
// no warmer than limit, or the coolest.
func (o *openings) coolest(limit, low, high float64) (RequiredOpening, error) {
	var p RequiredOpening
	shut := o.try(low, &p.State)
	if shut && p.State.Temperature <= limit {
		p.Opening, p.Met = low, true
		return p, nil
	}
	if o.try(high, &p.State) && p.State.Temperature > limit && p.State.Temperature >= p.State.Entering {
		p.Opening = high
		return p, nil
	}
	// The inside temperature over the limit, large where there is no state.
	excess := func(u float64) float64 {
		if !o.try(u, &p.State) {
			return temperatureRange.Max - limit + 1
		}
		return p.State.Temperature - limit
	}
	if excess(high) <= 0 {
		u, err := solve.Root(excess, low, high, shareFound)
		if err != nil {
			return RequiredOpening{}, err
		}
		// The limit itself must hold: step to its cool side.
		for step := shareFound; excess(u) > 0 && u < high; step *= 2 {
			u = min(high, u+step)
		}
		p.Opening, p.Met = u, true
		return p, nil
	}
	u := low + (high-low)*least(func(share float64) float64 { return excess(low + (high-low)*share) })
	if !o.try(u, &p.State) {
		return RequiredOpening{}, o.err
	}
	p.Opening, p.Met = u, p.State.Temperature <= limit
	return p, nil
}

// OpeningForDeficit returns the least opening of the vents at which the inside
// air of the house of the weather w and the setting s, whose Opening is not
// used, has a vapour pressure deficit between low and high, Pa, 0 to 1e4. When
// none does, Met is false and the opening is the one whose deficit comes
// nearest. Openings are tried in 32 steps, finer near shut, and between them
// where the deficit crosses the range. Errors are as of OpeningForTemperature.
func (c *Climate) OpeningForDeficit(w Weather, s Setting, low, high float64) (RequiredOpening, error) {
	var o openings
	s.Opening = 1
	order := error(nil)
	if low > high {
		order = &RangeError{Field: "low", Value: low, Min: deficitRange.Min, Max: high, Unit: deficitRange.Unit, Source: "not above high"}
	}
	if err := errors.Join(c.prepare(&o.k, &w, &s), deficitRange.Check("low", low), deficitRange.Check("high", high), order); err != nil {
		return RequiredOpening{}, err
	}
	var p RequiredOpening
	err := o.k.meet(func() (err error) {
		p, err = o.deficitWithin(low, high)
		return err
	}, nil)
	return p, err
}

func (o *openings) deficitWithin(low, high float64) (RequiredOpening, error) {
	var p RequiredOpening
	// How far the deficit lies beside the range, with its side.
	beside := func(u float64) float64 {
		if !o.try(u, &p.State) {
			return math.Inf(1)
		}
		switch d := p.State.Deficit; {
		case d < low:
			return d - low
		case d > high:
			return d - high
		}
		return 0
	}
	a, fa := 0.0, beside(0)
	for i := 1; fa != 0 && i <= openingSteps; i++ {
		b := opening(i)
		fb := beside(b)
		if fb == 0 || (fa < 0) != (fb < 0) {
			u := b
			bound := low
			if fa > 0 {
				bound = high
			}
			if !math.IsInf(fa, 0) && !math.IsInf(fb, 0) {
				if r, err := solve.Root(func(u float64) float64 {
					if !o.try(u, &p.State) {
						return math.NaN()
					}
					return p.State.Deficit - bound
				}, a, b, shareFound); err == nil {
					u = r
				}
				for step := shareFound; beside(u) != 0 && u < b; step *= 2 {
					u = min(b, u+step)
				}
			}
			a, fa = u, beside(u)
			break
		}
		a, fa = b, fb
	}
	if fa != 0 {
		a = least(func(u float64) float64 { return math.Abs(beside(u)) })
	}
	if !o.try(a, &p.State) {
		return RequiredOpening{}, o.err
	}
	p.Opening = a
	p.Met = p.State.Deficit >= low && p.State.Deficit <= high
	return p, nil
}

// openingSteps is the number of steps in which a range of openings is looked
// through.
const openingSteps = 32

func opening(i int) float64 {
	u := float64(i) / openingSteps
	return u * u
}

// least returns the opening at which f is smallest: the best of the steps,
// narrowed by golden section between its neighbours.
func least(f func(float64) float64) float64 {
	best, fBest := 0, f(0)
	for i := 1; i <= openingSteps; i++ {
		if v := f(opening(i)); v < fBest {
			best, fBest = i, v
		}
	}
	at := opening(best)
	a, b := opening(max(0, best-1)), opening(min(openingSteps, best+1))
	for range 60 {
		c, d := b-golden*(b-a), a+golden*(b-a)
		fc, fd := f(c), f(d)
		if fc < fBest {
			at, fBest = c, fc
		}
		if fd < fBest {
			at, fBest = d, fd
		}
		if fc < fd {
			b = d
		} else {
			a = c
		}
	}
	return at
}
