package main

import (
	"errors"
	"fmt"
	"time"

	"cloche.example/airheat"
	"cloche.example/envelope"
	"cloche.example/internal/demo"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// frame is what bars add, fraction, from memory.
const frame = 0.04

// horizon is how far frost is looked for.
const horizon = 7 * 24 * time.Hour

// row is one cover at one outside temperature.
type row struct {
	cover     string
	outside   float64 // °C
	heat      float64 // W that held the house
	start     airheat.Temperatures
	drive     envelope.Drive
	fan, dark airheat.Transient // the house with its fan and without
	fault     airheat.Event     // the heater alone fails
	cut       airheat.Event     // power cut
	faults    [2]airheat.Event  // with the least and the most heat stored
	cuts      [2]airheat.Event
}

var covers = []struct {
	name string
	film func() envelope.Cover
}{
	{"single film", envelope.SingleFilm},
	{"double film", envelope.DoubleFilm},
	{"triple-wall sheet 16 mm", envelope.TripleWall16},
}

// compute solves all rows, cover by cover.
func compute(c choice) ([]row, error) {
	share := domain.Range{Min: 0.05, Max: 1, Unit: "fraction"}
	if err := errors.Join(
		(domain.Range{Min: -60, Max: 60, Unit: "°C", Source: "domain of the solver"}).Check("-inside", c.inside), (domain.Range{Min: -90, Max: 120, Unit: "°C"}).Check("-level", c.level), share.Check("-still", c.still),
		domain.Range{Min: 0, Max: 1, Unit: "fraction"}.Check("-cloud", c.cloud), domain.Range{Min: 0, Max: 40, Unit: "m/s"}.Check("-wind", c.wind),
	); err != nil {
		return nil, err
	}
	if !(c.inside > c.level) {
		return nil, errors.New("-inside must be above -level")
	}
	form := envelope.DefaultForm()
	form.Span, form.Length, form.Azimuth, form.Depth = demo.Span, demo.Length, demo.Azimuth, demo.Depth
	form.Eave, form.Ridge = demo.EaveHeight, demo.RidgeHeight
	shape, err := envelope.NewShape(form)
	if err != nil {
		return nil, err
	}
	var rows []row
	for _, cover := range covers {
		film := cover.film()
		house, err := envelope.NewHouse(envelope.HousePlan{
			Shape:          shape,
			Covers:         map[envelope.FacetKind]envelope.Cover{envelope.Roof: film, envelope.SideWall: film, envelope.EndWall: film},
			FrameAllowance: frame,
			Ground:         envelope.DefaultGround(envelope.ClaySoil()),
			Climate:        envelope.DefaultGroundClimate(),
			Leakage:        envelope.DefaultLeakage(),
		})
		if err != nil {
			return nil, err
		}
		for _, outside := range c.outside {
			r, err := one(c, house, outside)
			if err != nil {
				return nil, fmt.Errorf("%s, outside %g °C: %w", cover.name, outside, err)
			}
			r.cover = cover.name
			rows = append(rows, r)
		}
	}
	return rows, nil
}

// one makes three nodes of the house at one outside temperature, with the
// covers' loss at the start and at the frost, and lets the heat fail.
func one(c choice, house *envelope.House, outside float64) (row, error) {
	r := row{outside: outside}
	if err := (domain.Range{Min: -60, Max: 60, Unit: "°C", Source: "domain of the solver"}).Check("-outside", outside); err != nil {
		return r, err
	}
	if !(outside < c.level) {
		return r, fmt.Errorf("the outside air must be below -level, %g °C, for frost to come in", c.level)
	}
	pressure := psychro.StandardPressure(demo.Altitude)
	warm, bad := psychro.FromRelativeHumidity(c.inside, demo.InsideRH, pressure)
	cold, worse := psychro.FromRelativeHumidity(outside, demo.OutsideRH, pressure)
	if err := errors.Join(bad, worse); err != nil {
		return r, err
	}
	k, err := envelope.NewHouseConditions(envelope.HouseAir{Inside: warm, Outside: cold, Wind: c.wind, Cloud: c.cloud})
	if err != nil {
		return r, err
	}
	fails := airheat.HeatFailure{SetPoint: c.inside, Share: 0, Level: c.level, Limit: horizon}
	least, most := envelope.NodeStoresSpread()
	for i, stores := range []envelope.NodeStores{least, most, envelope.DefaultNodeStores()} {
		n, drive, err := house.Nodes(k, c.level, stores)
		if err != nil {
			return r, err
		}
		r.drive = drive
		if r.fan, err = airheat.NewTransient(n); err != nil {
			return r, err
		}
		n.AirStructure *= c.still
		n.AirSoil *= c.still
		if r.dark, err = airheat.NewTransient(n); err != nil {
			return r, err
		}
		if r.fault, err = r.fan.CoolDown(r.fan, r.drive, fails); err != nil {
			return r, err
		}
		if r.cut, err = r.fan.CoolDown(r.dark, r.drive, fails); err != nil {
			return r, err
		}
		if i < len(r.faults) {
			r.faults[i], r.cuts[i] = r.fault, r.cut
		}
	}
	r.heat, r.start = r.fan.HoldingHeat(r.drive, c.inside)
	return r, nil
}
