package main

import (
	"errors"
	"math"

	"cloche.example/envelope"
	"cloche.example/internal/demo"
	"cloche.example/psychro"
)

// row is one cover on the demo house.
type row struct {
	name       string
	loss       envelope.HouseLoss // on the night, wet where the dew point says so
	dry        envelope.HouseLoss // the same with every face kept dry
	airChanges float64            // per hour
	uAir       float64            // W/(m² K), roof, dry, without the sky's part: what a table means
	drip       float64            // fraction, humidity above which some facet drips
	light      float64            // fraction, at normal incidence, mean over the cover; NaN with the screen drawn
}

// table is the comparison.
type table struct {
	night      night
	conditions envelope.HouseConditions
	sky        float64 // °C
	shape      envelope.Shape
	rows       []row
}

// conditions returns the night for the house, and its sky in °C.
func (n night) conditions() (k envelope.HouseConditions, sky float64, err error) {
	pressure := psychro.StandardPressure(demo.Altitude)
	inside, bad := psychro.FromRelativeHumidity(n.inside, n.humidity, pressure)
	outside, worse := psychro.FromRelativeHumidity(n.outside, n.outsideHumidity, pressure)
	if err := errors.Join(bad, worse); err != nil {
		return k, 0, err
	}
	k, err = envelope.NewHouseConditions(envelope.HouseAir{Inside: inside, Outside: outside, Wind: n.wind, Cloud: n.cloud})
	return k, k.Outside - k.SkyDrop, err
}

// compare computes every candidate.
func compare(n night) (table, error) {
	t := table{night: n}
	var err error
	if t.conditions, t.sky, err = n.conditions(); err != nil {
		return t, err
	}
	if t.shape, err = demoShape(); err != nil {
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
	house, airChanges, err := build(t.shape, c)
	if err != nil {
		return r, err
	}
	r.airChanges = airChanges
	k := t.conditions
	k.ScreenDrawn = c.screened
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
			r.uAir = f.UAir
		}
	}
	if !c.screened {
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
