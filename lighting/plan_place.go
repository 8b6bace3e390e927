package lighting

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/floats"
)

// Spacings that are tried, as shares of the even one: closer, fixtures leave the
// ends dark; wider, the outer ones light the floor beside the bed.
const (
	closestSpacing = 0.5
	widestSpacing  = 1.5
)

// place turns the unknowns of the search, which run free, into a height and two
// spacings within their limits.
func (n Need) place(columns, rows int, x []float64) (Plan, error) {
	within := func(v, lo, hi float64) float64 { return lo + (hi-lo)/(1+math.Exp(-v)) }
	p := Plan{Columns: columns, Rows: rows, Height: within(x[0], n.MinHeight, n.MaxHeight)}
	p.SpacingX = within(x[1], closestSpacing, widestSpacing) * n.Bed.Length / float64(columns)
	p.SpacingY = within(x[2], closestSpacing, widestSpacing) * n.Bed.Width / float64(rows)
	var err error
	if p.Layout, err = Spaced(n.Fixture, n.Bed, Spacing{Height: p.Height, X: p.SpacingX, Y: p.SpacingY, Columns: columns, Rows: rows}); err != nil {
		return p, err
	}
	if n.Room != nil {
		err = n.Room.inside(p.Layout)
	}
	return p, err
}

// symmetric tells that fixtures set evenly about the middle of the bed light
// each quarter of it alike.
func (n Need) symmetric() bool {
	_, ok := n.Fixture.Light.(CosinePower)
	return ok && n.Fixture.Aim == Orientation{}
}

// sample returns mean and least direct light of a plan, µmol/(m² s), with a
// grid of cell centres whose spacing is the share of the clearance; for the least
// also along the edges and midway between the fixtures.
func (n Need) sample(p *Plan, share float64, shared *tables) (mean, least float64, err error) {
	lights, err := newLights(p.Layout, shared)
	if err != nil {
		return 0, 0, err
	}
	points, weight, err := n.Bed.sampled(p, share*(lights.lowest-n.Bed.Z), n.symmetric())
	if err != nil {
		return 0, 0, err
	}
	ppfd, err := lights.MapTo(nil, points)
	if err != nil {
		return 0, 0, err
	}
	return floats.Dot(ppfd, weight) / floats.Sum(weight), floats.Min(ppfd), nil
}

// sampled returns cell centres, edge points and points midway between the plan's
// fixtures, or those in the quarter with the smallest x and y, with the weight of
// each in the mean.
func (b Bed) sampled(plan *Plan, spacing float64, quarter bool) (*Points, []float64, error) {
	nx, ny := cells(b.Length, spacing), cells(b.Width, spacing)
	if nx > maxPoints/ny {
		return nil, nil, fmt.Errorf("a grid of %d by %d cells: %w", nx, ny, ErrRange)
	}
	x, wx := midways(b.X, b.Length, plan.SpacingX, plan.Columns, quarter)
	y, wy := midways(b.Y, b.Width, plan.SpacingY, plan.Rows, quarter)
	x, wx = places(x, wx, b.X, b.Length, nx, quarter)
	y, wy = places(y, wy, b.Y, b.Width, ny, quarter)
	p, weight := newPoints(len(x)*len(y)), make([]float64, len(x)*len(y))
	for j := range y {
		for i := range x {
			p.set(j*len(x)+i, Point{x[i], y[j], b.Z}, up)
			weight[j*len(x)+i] = wx[i] * wy[j]
		}
	}
	return p, weight, nil
}

// midways lists what lies midway between count fixtures, spacing apart about the
// middle of a side, or of half of it, without weight: there the light is least.
func midways(from, side, spacing float64, count int, half bool) (at, weight []float64) {
	for i := 1; i < count; i++ {
		offset := (float64(i) - float64(count)/2) * spacing
		if math.Abs(offset) <= side/2 && !(half && offset > 0) {
			at, weight = append(at, from+side/2+offset), append(weight, 0)
		}
	}
	return at, weight
}

// places adds the edge and the cell centres of a side, or of half of it, with
// their weights.
func places(at, weight []float64, from, side float64, n int, half bool) ([]float64, []float64) {
	at, weight = append(at, from), append(weight, 0)
	for i := range n {
		w := 1.0
		if half && 2*i+1 < n {
			w = 2
		}
		if half && 2*i+1 > n {
			return at, weight
		}
		at, weight = append(at, from+side*(float64(i)+0.5)/float64(n)), append(weight, w)
	}
	return append(at, from+side), append(weight, 0)
}

// judge fills in what the plan reaches, with the reflected light or without.
func (n Need) judge(p *Plan, shared *tables, reflections bool) error {
	lights, err := newLights(p.Layout, shared)
	if err != nil {
		return err
	}
	clearance := lights.lowest - n.Bed.Z
	points, err := n.Bed.GridFor(clearance)
	if err != nil {
		return err
	}
	edges, _, err := n.Bed.sampled(p, spacingShare*clearance, false)
	if err != nil {
		return err
	}
	ppfd, err := lights.MapTo(nil, points)
	if err != nil {
		return err
	}
	all, err := lights.MapTo(nil, edges)
	if err != nil {
		return err
	}
	direct := floats.Sum(ppfd)
	if reflections {
		s, err := n.Room.Reflect(p.Layout, planPatches)
		if err != nil {
			return err
		}
		for _, m := range []struct {
			at *Points
			to []float64
		}{{points, ppfd}, {edges, all}} {
			reflected, err := s.Map(m.at)
			if err != nil {
				return err
			}
			floats.Add(m.to, reflected)
		}
	}
	p.Least = floats.Min(all) * n.Maintenance.Factor()
	total := floats.Sum(ppfd)
	p.Reflected = 1 - direct/total
	if p.FirstDay, err = Evenness(ppfd); err != nil {
		return err
	}
	factor := n.Maintenance.Factor()
	for i := range ppfd {
		ppfd[i] *= factor
	}
	p.Harvest, err = Evenness(ppfd)
	p.Utilisation = direct / float64(len(ppfd)) * n.Bed.Area() / lights.ppf
	p.Power = p.Layout.Power()
	p.PowerDensity = p.Power / n.Bed.Area()
	return err
}
