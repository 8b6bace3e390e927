package main

import (
	"context"
	"errors"
	"math"
	"slices"
	"sort"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/ventilation"
)

// hotVents is how large the vents would have to be in the hot hours.
type hotVents struct {
	Hot     int        `json:"hot_hours_count"`
	Outside int        `json:"of_them_outside_hot_hours_count"` // the outside air is itself above the limit
	Never   int        `json:"hot_with_any_vents_hours_count"`  // with vents up to the largest that are tried
	Had     float64    `json:"vent_area_m2"`
	Sizes   []ventSize `json:"sizes"`  // largest last
	Factor  float64    `json:"factor"` // of the size that cures every hour that vents can, or most of them; 0: none cures one
	All     bool       `json:"cures_all"`
}

// ventSize is what vents of a size leave, by the hot hours alone.
type ventSize struct {
	Area float64 `json:"area_m2"`
	Left int     `json:"hot_hours_count"`
}

// Sizes of vents that are tried, over those of the plan: steps of a tenth, up to vents
// of two fifths of the floor, beyond what houses have (chosen), or half as large again
// as the plan's. Where some hours stay hot with any of them, those are proposed that
// cure enough of the others.
const (
	sizeStep    = 1.1
	largestVent = 0.4 // m² for each m² of floor
	enough      = 0.9
)

// scaled is a plan with longer vents.
func scaled(p *plan.Plan, factor float64) *plan.Plan {
	q := *p
	q.Vents = slices.Clone(p.Vents)
	for i := range q.Vents {
		q.Vents[i].Length *= factor
	}
	return &q
}

// ventArea is that of all openings of a plan, m².
func ventArea(p *plan.Plan) (sum float64) {
	for _, v := range p.Vents {
		sum += fromplan.FaceArea(v)
	}
	return sum
}

// ventSearch finds the size of vents by the hot hours of a year, each on the soil and
// the structure as they were.
type ventSearch struct {
	year  *year
	sizes []*vents // of each size, made when it is asked for; the first is that of the plan
}

// factor is size k over the plan's.
func factor(k int) float64 { return math.Pow(sizeStep, float64(k)) }

// last is the largest size that is tried.
func (s *ventSearch) last() int { return len(s.sizes) - 1 }

// newHotVents looks at every hot hour of the year; nil without one or without vents.
func newHotVents(ctx context.Context, y *year) (*hotVents, error) {
	p, limit := y.house.plan, y.house.plan.SetPoints.Limits.Hot
	if len(p.Vents) == 0 {
		return nil, nil
	}
	r := &hotVents{Had: ventArea(p)}
	most := max(wider, largestVent*y.house.steady.House.Shape.FloorArea/r.Had)
	s := ventSearch{year: y, sizes: make([]*vents, 1+int(math.Log(most)/math.Log(sizeStep)))}
	var needed []int // size that cures each hour
	for i := range y.State {
		if y.Failed[i] || y.State[i].Temperature <= limit {
			continue
		}
		r.Hot++
		if y.house.weather.Temperature[i] > limit {
			r.Outside++
		}
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		k, err := s.size(i, limit)
		if err != nil {
			return nil, err
		}
		needed = append(needed, k)
		if k > s.last() {
			r.Never++
		}
	}
	if r.Hot == 0 {
		return nil, nil
	}
	slices.Sort(needed)
	for k := 1; k <= s.last(); k++ {
		cured, _ := slices.BinarySearch(needed, k+1)
		r.Sizes = append(r.Sizes, ventSize{factor(k) * r.Had, r.Hot - cured})
	}
	r.All = r.Never == 0
	if cured := r.Hot - r.Never; r.All {
		r.Factor = factor(needed[r.Hot-1])
	} else if cured > 0 {
		r.Factor = factor(needed[int(math.Ceil(enough*float64(cured)))-1])
	}
	return r, nil
}

// size is the least that keeps hour i at the limit, °C; beyond the last where none does,
// as where the air that comes in is warmer.
func (s *ventSearch) size(i int, limit float64) (int, error) {
	var fault error
	holds := func(k int) bool {
		t, err := s.inside(i, k)
		fault = errors.Join(fault, err)
		return t <= limit
	}
	if s.year.house.weather.Temperature[i] > limit || !holds(s.last()) {
		return s.last() + 1, fault
	}
	return 1 + sort.Search(s.last()-1, func(k int) bool { return holds(k + 1) }), fault
}

// inside is how warm the house is in hour i with vents of size k as wide open as they
// may be, °C; what else was done in the hour stays.
func (s *ventSearch) inside(i, k int) (float64, error) {
	y := s.year
	h, x := y.house, &y.State[i]
	if s.sizes[k] == nil {
		v, err := newVents(scaled(h.plan, factor(k)), h.weather.WindFrom != nil)
		if err != nil {
			return 0, err
		}
		s.sizes[k] = &v
	}
	w, set, err := y.again(i)
	if err != nil {
		return 0, err
	}
	_, set.Opening = h.opens(i)
	if set.Opening == 0 {
		return x.Temperature, nil
	}
	if wind := s.sizes[k].in(h.weather.WindFrom, i); x.Forced {
		set.Air, set.Pad = wind.forced, h.vents.pad
	} else {
		set.Air = wind.open
	}
	state, err := h.climate.Solve(w, set)
	if errors.Is(err, ventilation.ErrNoSolution) {
		return math.Inf(1), nil
	}
	return state.Temperature, err
}
