package answers

import (
	"fmt"
	"math"
	"slices"

	"cloche.example/examples/internal/fromplan"
)

// curve is what the house loses at one inside temperature, without the ground, by
// the temperature outside. It steps where covers turn wet that pass heat radiation.
type curve struct {
	at     []point // from the cold up
	facets []facetAt
}

// point is the house in air of one temperature outside.
type point struct {
	outside float64 // °C
	share   float64 // of the year's hours that are colder
	heat    float64 // W, that does not evaporate water
	vapour  float64 // W, that evaporates water and warms the air that carries it off
	facets  []facetAt
}

// facetAt is a facet at a point.
type facetAt struct {
	area  float64 // m²
	rise  float64 // K, of the inside over the outside air
	u     float64 // W/(m² K), without vapour
	water float64 // kg/(s m²), that condenses
}

// Points of a curve.
const (
	apart = 5      // K, about, between points
	most  = 12     // points more, where the curve steps in many hours
	small = 0.0006 // of the loss at the coldest point: steps that count for less are left
)

// curve asks the house at points over the temperatures outside from low to high,
// °C; the season's mean is one.
func (s *season) curve(low, high float64, screen bool) (c curve, err error) {
	mid := s.outside
	n := max(3, int(math.Ceil((high-low)/apart))+1)
	near := 1 + int(float64(n-3)*(mid-low)/(high-low)+0.5)
	for i := range n {
		t := mid
		switch {
		case i < near:
			t = low + (mid-low)*float64(i)/float64(near)
		case i > near:
			t = mid + (high-mid)*float64(i-near)/float64(n-1-near)
		}
		if err := s.add(&c, len(c.at), t, screen); err != nil {
			return c, err
		}
	}
	for range most {
		worst, at := small*c.at[0].heat, 0
		for i := 1; i < len(c.at); i++ {
			heat, vapour, _ := c.steps(i)
			if w := (c.at[i].share - c.at[i-1].share) * (math.Abs(heat) + vapour/2); w > worst {
				worst, at = w, i
			}
		}
		if at == 0 {
			break
		}
		if err := s.add(&c, at, (c.at[at-1].outside+c.at[at].outside)/2, screen); err != nil {
			return c, err
		}
	}
	return c, nil
}

// add puts the point of t, °C, at place i.
func (s *season) add(c *curve, i int, t float64, screen bool) error {
	d, err := s.damp(t, screen)
	if err != nil {
		return fmt.Errorf("the year's loss at %.1f °C outside: %w", t, err)
	}
	if t == s.outside && screen == fromplan.Drawn(s.house.Plan, t, 0) {
		s.mean = d
		s.mean.loss.Facets = slices.Clone(d.loss.Facets)
	}
	r := &d.loss
	p := point{outside: t, share: s.colder(t), heat: r.Total - r.Latent - r.Ground.Total, vapour: r.Latent + d.evaporated + d.warmed}
	for _, f := range r.Facets {
		if f.Area > 0 {
			rise := s.setPoint - t
			c.facets = append(c.facets, facetAt{f.Area, rise, (f.Loss - f.Latent) / f.Area / rise, f.Condensate / f.Area})
		}
	}
	n := len(c.facets)
	p.facets = c.facets[n-n/(len(c.at)+1):]
	c.at = append(c.at, p)
	copy(c.at[i+1:], c.at[i:])
	c.at[i] = p
	return nil
}

// steps are by how much heat and vapour change between the points i-1 and i beside
// what the slope of a stretch next to it makes, W, of the stretch that leaves less;
// and that slope of the heat, W/K.
func (c *curve) steps(i int) (heat, vapour, slope float64) {
	own := c.between(i-1, i)
	gap := own.to - own.from
	heat, vapour = math.Inf(1), math.Inf(1)
	for _, k := range [2]int{i - 1, i + 1} {
		if k > 0 && k < len(c.at) {
			next := c.between(k-1, k)
			if by := (own.heat.slope - next.heat.slope) * gap; math.Abs(by) < math.Abs(heat) {
				heat, slope = by, next.heat.slope
			}
			vapour = min(vapour, math.Abs(own.vapour.slope-next.vapour.slope)*gap)
		}
	}
	return heat, vapour, slope
}

// turns is where between the points i-1 and i covers turn wet, °C, and by how
// much that changes what the house loses, W; 0 for none that do. What condenses
// on a wet cover falls to nothing there, so that two points find the place.
func (c *curve) turns(i int) (where, change float64) {
	a, b := &c.at[i-1], &c.at[i]
	for f := range a.facets {
		x, y := &a.facets[f], &b.facets[f]
		if (x.water > 0) == (y.water > 0) {
			continue
		}
		t := (a.outside + b.outside) / 2
		wet, dry, beyond := i-1, i, i-2
		if y.water > 0 {
			wet, dry, beyond = i, i-1, i+1
		}
		if beyond >= 0 && beyond < len(c.at) {
			w, far := c.at[wet].facets[f].water, c.at[beyond].facets[f].water
			from, to := c.at[wet].outside, c.at[dry].outside
			if far > w {
				t = from + (from-c.at[beyond].outside)*w/(far-w)
				t = min(max(t, min(from, to)), max(from, to))
			}
		}
		by := x.area * math.Abs(x.u-y.u) * x.rise
		where, change = where+by*t, change+by
	}
	return where / change, change
}

// stretch is a part of the curve without a step.
type stretch struct {
	from, to     float64 // °C
	heat, vapour line
}

// line is a straight one.
type line struct{ value, slope float64 } // W at from, W/K

// stretches are the curve between its points, up to the inside temperature, and in
// the cold below them by the coldest's loss per kelvin. Where covers turn there is
// a step.
func (c *curve) stretches(inside float64) (list []stretch) {
	for i := 1; i < len(c.at); i++ {
		all := c.between(i-1, i)
		where, change := c.turns(i)
		step, _, slope := c.steps(i)
		if change == 0 || change < math.Abs(step)/2 {
			list = append(list, all)
			continue
		}
		first, second := all, all
		first.to, second.from = where, where
		first.heat.slope, second.heat.slope = slope, slope
		second.heat.value = c.at[i].heat - slope*(all.to-where)
		second.vapour.value += all.vapour.slope * (where - all.from)
		list = append(list, first, second)
	}
	cold := &c.at[0]
	rise := inside - cold.outside
	list = append(list, stretch{deepest, cold.outside, line{cold.heat * (inside - deepest) / rise, -cold.heat / rise}, line{cold.vapour, 0}})
	list[len(list)-2].to = inside
	return list
}

// deepest is colder than any hour, °C.
const deepest = -100

// between is the straight stretch between the points i and k.
func (c *curve) between(i, k int) stretch {
	a, b := &c.at[i], &c.at[k]
	gap := b.outside - a.outside
	return stretch{a.outside, b.outside, line{a.heat, (b.heat - a.heat) / gap}, line{a.vapour, (b.vapour - a.vapour) / gap}}
}
