package lighting

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// place turns the unknowns of the search, which run free, into a height and two
// spacings within their limits.
func (n Need) place(columns, rows int, x []float64) (Plan, error) {
	within := func(v, lo, hi float64) float64 { return lo + (hi-lo)/(1+math.Exp(-v)) }
	p := Plan{Columns: columns, Rows: rows, Height: within(x[0], n.MinHeight, n.MaxHeight)}
	// Spacings from half to 1.5 times the even share of the side.
	p.SpacingX = within(x[1], 0.5, 1.5) * n.Bed.Length / float64(columns)
	p.SpacingY = within(x[2], 0.5, 1.5) * n.Bed.Width / float64(rows)
	var err error
	if p.Layout, err = Spaced(n.Fixture, n.Bed, Spacing{Height: p.Height, X: p.SpacingX, Y: p.SpacingY, Columns: columns, Rows: rows}); err != nil {
		return p, err
	}
	if n.Room != nil {
		err = n.Room.inside(p.Layout)
	}
	return p, err
}

// light maps the plan on a grid fine enough for its height.
func (n Need) light(p *Plan, shared *tables) (*Lights, *Points, []float64, error) {
	lights, err := newLights(p.Layout, shared)
	if err != nil {
		return nil, nil, nil, err
	}
	points, err := n.Bed.GridFor(lights.lowest - n.Bed.Z)
	if err != nil {
		return nil, nil, nil, err
	}
	ppfd, err := lights.MapTo(nil, points)
	return lights, points, ppfd, err
}

// judge fills in what the plan reaches, with the reflected light or without.
func (n Need) judge(p *Plan, shared *tables, reflections bool) error {
	lights, points, ppfd, err := n.light(p, shared)
	if err != nil {
		return err
	}
	direct := floats.Sum(ppfd)
	if reflections {
		s, err := n.Room.Reflect(p.Layout, planPatches)
		if err != nil {
			return err
		}
		reflected, err := s.Map(points)
		if err != nil {
			return err
		}
		floats.Add(ppfd, reflected)
	}
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
