package main

import (
	"errors"
	"fmt"
	"slices"

	"cloche.example/envelope"
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/domain"
)

// Edge insulation of the house at ground level, down along the foundation.
const (
	edgeDepth     = 0.6 // m
	edgeThickness = 0.06
	leastEave     = 0.1 // m, of cover above the ground that a dug-in house keeps
)

// days of the months.
var days = [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// comparison is the plan's house at several depths.
type comparison struct {
	plan       *plan.Plan
	insulation float64 // m² K/W
	sky        float64 // °C, on the design night
	rows       []row   // bare, then insulated
}

// row is one depth, bare or insulated.
type row struct {
	depth     float64 // m
	insulated bool
	planned   bool                // the plan's depth, with its own walls
	floor     float64             // m²
	cover     float64             // m², against the air
	design    envelope.HouseLoss  // on the design night
	ground    envelope.GroundFlow // in its worst month
	year      float64             // J
	intoYear  float64             // J, of year into the ground
}

// depths are those at which the house is tried, m: as far as some cover is left
// at the eave and no deeper than the house is wide.
func depths(h plan.House) (list []float64) {
	eave := h.EaveHeight + h.Depth - h.DwarfWall.Height
	for _, d := range append([]float64{0, 0.25, 0.5, 0.75, 1, 1.25, 1.5}, h.Depth) {
		if d <= eave-leastEave && d <= min(h.Span, 4) && !slices.Contains(list, d) {
			list = append(list, d)
		}
	}
	if !slices.Contains(list, h.Depth) {
		list = append(list, h.Depth)
	}
	slices.Sort(list)
	return list
}

// compare computes all rows.
func compare(p *plan.Plan, insulation float64) (comparison, error) {
	c := comparison{plan: p, insulation: insulation}
	if err := (domain.Range{Min: 0.2, Max: 10, Unit: "m² K/W"}).Check("-insulation", insulation); err != nil {
		return c, err
	}
	if !(p.SetPoints.WinterNight.Temperature > p.Site.WinterNight.Temperature) {
		return c, fmt.Errorf("set_points.winter_night.temperature_c is %g and site.winter_night.temperature_c is %g: there is nothing to heat", p.SetPoints.WinterNight.Temperature, p.Site.WinterNight.Temperature)
	}
	for _, insulated := range []bool{false, true} {
		for _, depth := range depths(p.House) {
			r, err := c.one(depth, insulated)
			if err != nil {
				return c, fmt.Errorf("depth %g m: %w", depth, err)
			}
			c.rows = append(c.rows, r)
		}
	}
	return c, nil
}

// at is the plan's house with its floor at another depth: roof, vents and doors
// keep their place over the floor.
func (c *comparison) at(depth float64, insulated bool) plan.Plan {
	q := *c.plan
	rise := q.House.Depth - depth
	q.House.Depth = depth
	q.House.EaveHeight += rise
	q.House.RidgeHeight += rise
	q.House.Doors = slices.Clone(q.House.Doors)
	for i := range q.House.Doors {
		q.House.Doors[i].Sill += rise
	}
	q.House.Annexes = slices.Clone(q.House.Annexes)
	for i := range q.House.Annexes {
		a := &q.House.Annexes[i]
		a.High, a.Low, a.Depth = a.High+rise, a.Low+rise, max(0, a.Depth-rise)
	}
	edge := &q.Ground.EdgeInsulation
	switch {
	case insulated && depth > 0:
		edge.Lies = "none"
		q.Ground.BuriedWallResistance = max(c.insulation, q.Ground.BuriedWallResistance)
	case insulated:
		*edge = plan.EdgeInsulation{Lies: "upright", Width: edgeDepth, Thickness: edgeThickness, Conductivity: edgeThickness / c.insulation}
	case depth > 0:
		edge.Lies = "none" // it is that of a floor at ground level
	}
	return q
}

// one computes the house at one depth.
func (c *comparison) one(depth float64, insulated bool) (row, error) {
	p := c.at(depth, insulated)
	r := row{depth: depth, insulated: insulated, planned: depth == c.plan.House.Depth && !insulated}
	house, err := answers.NewHouse(&p)
	if err != nil {
		return r, err
	}
	k, _, err := fromplan.Conditions(&p, house.Night, float64(p.Site.WinterNight.Month), false)
	if err != nil {
		return r, err
	}
	c.sky = k.Outside - k.SkyDrop
	r.floor, r.cover = house.Shape.FloorArea, house.Shape.CoverArea
	if r.design, err = house.Loss(house.Night, float64(p.Site.WinterNight.Month)); err != nil {
		return r, err
	}
	r.ground = house.Envelope.Ground().Worst(house.Envelope.Climate())
	mean := answers.MeanSetPoint(&p)
	for i, t := range p.Site.Months.Temperature {
		if t >= mean {
			continue
		}
		out, e1 := fromplan.Air(&p, t, p.Site.Months.RelativeHumidity[i])
		in, e2 := fromplan.Air(&p, mean, p.SetPoints.WinterNight.RelativeHumidity)
		if err := errors.Join(e1, e2); err != nil {
			return r, err
		}
		l, err := house.Loss(envelope.HouseAir{Inside: in, Outside: out, Wind: p.Site.HeatingSeason.Wind, Cloud: p.Site.HeatingSeason.Cloud}, float64(i+1))
		if err != nil {
			return r, err
		}
		if l.Total > 0 {
			r.year += l.Total * days[i] * 86400
			r.intoYear += l.Ground.Total * days[i] * 86400
		}
	}
	return r, nil
}

// planned is the row of the plan's depth without further insulation.
func (c comparison) planned() row {
	for _, r := range c.rows {
		if r.planned {
			return r
		}
	}
	return c.rows[0]
}
