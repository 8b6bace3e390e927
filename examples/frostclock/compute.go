package main

import (
	"errors"
	"fmt"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/domain"
)

// clock is the answer: a row for each cover at each outside temperature.
type clock struct {
	plan    *plan.Plan
	outside []float64 // °C, below the frost; empty when the plan's design night has none
	rows    []row
}

// row is one cover at one outside temperature.
type row struct {
	cover        string
	outside, sky float64 // °C
	heat         float64 // W, that held the house
	frost        answers.Frost
}

// planned names the house as it stands.
const planned = "as planned"

// compute solves all rows, cover by cover: the plan's own, then three over roof
// and walls.
func compute(p *plan.Plan, outside []float64) (clock, error) {
	c := clock{plan: p, outside: outside}
	frost := p.SetPoints.Limits.Frost
	var faults []error
	for _, t := range outside {
		faults = append(faults, (domain.Range{Min: -50, Max: domain.LessThan(frost), Unit: "°C"}).Check("-outside", t))
	}
	if !(p.SetPoints.WinterNight.Temperature > frost) {
		faults = append(faults, fmt.Errorf("set_points.winter_night.temperature_c is %g, but frost begins at %g °C", p.SetPoints.WinterNight.Temperature, frost))
	}
	if err := errors.Join(faults...); err != nil {
		return c, err
	}
	if len(outside) == 0 {
		design := p.Site.WinterNight.Temperature
		for _, below := range []float64{2, 5, 8, 11} {
			if frost-below > design+1 {
				c.outside = append(c.outside, frost-below)
			}
		}
		if design < frost {
			c.outside = append(c.outside, design)
		}
	}
	for _, cover := range []string{planned, "single film", "double film", "triple-wall sheet 16 mm"} {
		q := *p
		if cover != planned {
			q.Cover.Roof, q.Cover.SideWalls, q.Cover.EndWalls = cover, cover, cover
		}
		house, err := answers.NewHouse(&q)
		if err != nil {
			return c, err
		}
		for _, t := range c.outside {
			q.Site.WinterNight.Temperature = t
			r, err := one(house)
			if err != nil {
				return c, fmt.Errorf("%s, outside %g °C: %w", cover, t, err)
			}
			r.cover, r.outside = cover, t
			c.rows = append(c.rows, r)
		}
	}
	return c, nil
}

// one lets the heat of the house fail on its plan's design night.
func one(house *answers.House) (r row, err error) {
	if house.Night, err = fromplan.WinterNight(house.Plan); err != nil {
		return r, err
	}
	k, _, err := fromplan.Conditions(house.Plan, house.Night, float64(house.Plan.Site.WinterNight.Month), false)
	if err != nil {
		return r, err
	}
	r.sky = k.Outside - k.SkyDrop
	wet, dry, err := house.Nights()
	if err != nil {
		return r, err
	}
	night := answers.Worse(wet, dry)
	r.heat = night.Total
	r.frost, err = house.Frost(night)
	return r, err
}

// coldest are the rows of the coldest outside temperature.
func (c clock) coldest() (rows []row) {
	for _, r := range c.rows {
		if len(rows) > 0 && r.outside < rows[0].outside {
			rows = nil
		}
		if len(rows) == 0 || r.outside == rows[0].outside {
			rows = append(rows, r)
		}
	}
	return rows
}
