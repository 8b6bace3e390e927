package main

import (
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// coldNight solves every facet, the ground and the leakage on the design
// night.
func (d *design) coldNight(p plan, shape envelope.Shape) error {
	plan := envelope.HousePlan{Shape: shape, FrameAllowance: frame, Ground: envelope.DefaultGround(envelope.ClaySoil()), Climate: climate(p), Leakage: envelope.DefaultLeakage()}
	plan.Covers = map[envelope.FacetKind]envelope.Cover{
		envelope.Roof:     covers[p.Cover.Roof](),
		envelope.SideWall: covers[p.Cover.SideWalls](),
		envelope.EndWall:  covers[p.Cover.EndWalls](),
	}
	plan.Ground.Soil = soils[p.Ground.Soil]
	plan.Ground.WallThickness, plan.Ground.WallResistance = p.Ground.WallThickness, p.Ground.WallResistance
	for i, f := range shape.Facets {
		if f.Kind == envelope.EndWall && p.Cover.DoorArea > 0 {
			if p.Cover.DoorArea > f.Area {
				return fmt.Errorf("cover.door_area_m2 is %g, more than the end wall's %.2f", p.Cover.DoorArea, f.Area)
			}
			plan.Doors = []envelope.Door{{Name: "door", Facet: i, Area: p.Cover.DoorArea, U: p.Cover.DoorU}}
			break
		}
	}
	plan.Leakage.Model, plan.Leakage.AirChanges = envelope.LeakageGiven, p.Cover.AirChanges
	h, err := envelope.NewHouse(plan)
	if err != nil {
		return err
	}
	k, err := envelope.NewHouseConditions(envelope.HouseAir{Inside: d.Air.inside, Outside: d.Air.outside, Wind: p.Site.Wind, Cloud: p.Site.Cloud})
	if err != nil {
		return err
	}
	k.Month = float64(p.Site.DesignMonth)
	r, err := h.Loss(k)
	if err != nil {
		return err
	}
	for _, f := range r.Facets {
		d.Facets = append(d.Facets, facet{f.Name, f.Area, f.U, f.UAir, f.AirDriven, f.SkyDriven, f.InnerTemperature, f.Drips, f.DripHumidity})
	}
	d.Loss = loss{
		Total: r.Total, Coefficient: r.Coefficient, PerFloor: r.PerFloor,
		GroundYear: r.Ground.Steady, GroundTotal: r.Ground.Total,
		LeakSens: r.Leakage.Sensible, LeakLatent: r.Leakage.Latent,
		Condensate: r.Condensate, linear: r.Linear,
	}
	for _, t := range r.Terms() {
		d.Loss.Terms = append(d.Loss.Terms, term{t.Name, t.Loss, t.Share})
	}
	d.house, d.night = h, k
	return d.meanNight(p)
}

// meanNight finds the loss per kelvin under the season's usual wind and cloud,
// at the mean of the months colder than the house is kept.
func (d *design) meanNight(p plan) error {
	n := 0.0
	for _, t := range p.Site.MonthlyMean {
		if t < p.Heater.SeasonInside {
			n, d.Loss.SeasonMean = n+1, d.Loss.SeasonMean+t
		}
	}
	if n == 0 {
		d.Loss.SeasonMean = p.Site.Outside // nothing to heat, on any coefficient
	} else {
		d.Loss.SeasonMean /= n
	}
	air, err := psychro.FromRelativeHumidity(d.Loss.SeasonMean, p.Site.OutsideRH, d.Air.Pressure)
	if err != nil {
		return err
	}
	r, err := d.usualNight(p, air, p.Heater.SeasonInside, p.Inside.RH)
	d.Loss.Season = r.Coefficient
	return err
}

// usualNight solves the house under the season's wind and cloud in the air
// outside, with the air inside at temperature, °C, and humidity, a fraction.
func (d *design) usualNight(p plan, air psychro.State, temperature, humidity float64) (envelope.HouseLoss, error) {
	inside, err := psychro.FromRelativeHumidity(temperature, humidity, d.Air.Pressure)
	if err != nil {
		return envelope.HouseLoss{}, err
	}
	k, err := envelope.NewHouseConditions(envelope.HouseAir{Inside: inside, Outside: air, Wind: p.Site.SeasonWind, Cloud: p.Site.SeasonCloud})
	if err != nil {
		return envelope.HouseLoss{}, err
	}
	k.Month = d.night.Month
	return d.house.Loss(k)
}

// frame is the allowance for bars and profiles, fraction, from memory.
const frame = 0.04

// climate fits the ground's yearly wave to the monthly means: the mean, and
// the amplitude and month of the first harmonic.
func climate(p plan) envelope.GroundClimate {
	c := envelope.DefaultGroundClimate()
	mean, a, b := 0.0, 0.0, 0.0
	for i, t := range p.Site.MonthlyMean {
		s, k := math.Sincos(2 * math.Pi * float64(i) / 12)
		mean, a, b = mean+t/12, a+t*k/6, b+t*s/6
	}
	c.OutsideMean, c.OutsideSwing = mean, math.Hypot(a, b)
	// T = mean + a cos + b sin is lowest half a year after its crest.
	c.Coldest = 1 + 12*math.Atan2(-b, -a)/(2*math.Pi)
	if c.Coldest < (domain.Range{Min: 0.5, Max: 12.5, Unit: "number of the month", Source: "1 stands for the mean of January, 12 of December"}).Min {
		c.Coldest += 12
	}
	c.InsideMean, c.InsideSwing = p.Inside.Temperature, 0
	return c
}
