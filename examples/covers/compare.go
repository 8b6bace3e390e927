package main

import (
	"math"

	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
)

// row is one cover on the house.
type row struct {
	name       string
	loss       envelope.HouseLoss // on the night, wet where the dew point says so
	dry        envelope.HouseLoss // the same with every face kept dry
	airChanges float64            // per hour
	uAir       float64            // W/(m² K), roof, dry, without the sky's part: what a table means
	drip       float64            // fraction, humidity above which some facet drips
	light      float64            // fraction, at normal incidence, mean over the cover; NaN with the screen drawn and for the plan's own
}

// table is the comparison.
type table struct {
	plan       *plan.Plan
	conditions envelope.HouseConditions
	sky        float64 // °C
	shape      envelope.Shape
	rows       []row
}

// compare computes every candidate.
func compare(p *plan.Plan) (table, error) {
	t := table{plan: p}
	air, err := fromplan.WinterNight(p)
	if err != nil {
		return t, err
	}
	if t.conditions, _, err = fromplan.Conditions(p, air, float64(p.Site.WinterNight.Month), false); err != nil {
		return t, err
	}
	t.sky = t.conditions.Outside - t.conditions.SkyDrop
	if t.shape, err = fromplan.Shape(p); err != nil {
		return t, err
	}
	for _, c := range candidates() {
		r, err := t.one(c)
		if err != nil {
			return t, err
		}
		t.rows = append(t.rows, r)
	}
	return t, nil
}

// one computes one candidate.
func (t *table) one(c candidate) (row, error) {
	r := row{name: c.name}
	house, airChanges, err := build(t.plan, c)
	if err != nil {
		return r, err
	}
	r.airChanges = airChanges
	k := t.conditions
	k.ScreenDrawn = c.screened || c.leaks == "" && fromplan.Drawn(t.plan, k.Outside, 0)
	if r.loss, err = house.Loss(k); err != nil {
		return r, err
	}
	k.InnerFace = envelope.InnerDry
	if r.dry, err = house.Loss(k); err != nil {
		return r, err
	}
	r.drip, r.light = math.Inf(1), math.NaN()
	for _, f := range r.dry.Facets {
		r.drip = math.Min(r.drip, f.DripHumidity)
		if f.Kind == envelope.Roof {
			r.uAir = f.UOvercast
		}
	}
	if !c.screened && c.leaks != "" {
		r.light = t.light(c)
	}
	return r, nil
}

// light is the mean of roof and walls over their area.
func (t *table) light(c candidate) float64 {
	sum, area := 0.0, 0.0
	for _, f := range t.shape.Facets {
		switch f.Kind {
		case envelope.Roof:
			sum += f.Area * c.roof.Light
		case envelope.SideWall, envelope.EndWall:
			sum += f.Area * c.walls.Light
		default:
			continue
		}
		area += f.Area
	}
	return sum / area
}

// skyShare is the part of a loss through the covers that the sky draws, NaN
// where heat comes in.
func skyShare(l envelope.HouseLoss) float64 {
	if l.Cover <= 0 {
		return math.NaN()
	}
	return l.CoverSky / l.Cover
}
