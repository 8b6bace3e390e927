package main

import (
	"errors"
	"fmt"

	"cloche.example/envelope"
	"cloche.example/internal/demo"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// depths of the floor below grade, m.
var depths = []float64{0, 0.25, 0.5, 0.75, 1, 1.25, 1.5}

// Edge insulation of the house at grade, down along the foundation.
const (
	edgeDepth     = 0.6 // m
	edgeThickness = 0.06
	skyBelow      = 8.0 // K, mean sky below the outside air over the year
)

var soils = map[string]envelope.Soil{"clay": envelope.ClaySoil(), "sand": envelope.SandSoil(), "rock": envelope.RockSoil()}

// days of the months.
var days = [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// row is one depth, bare or insulated.
type row struct {
	depth     float64 // m
	insulated bool
	cover     float64             // m², against the air
	design    envelope.HouseLoss  // on the design night, in January
	ground    envelope.GroundFlow // in its worst month
	year      float64             // J
	intoYear  float64             // J, of year into the ground
}

// compare computes all rows, and the sky of the design night in °C.
func compare(c choice) (rows []row, sky float64, err error) {
	soil, known := soils[c.soil]
	if !known {
		return nil, 0, fmt.Errorf("-soil %q: clay, sand or rock", c.soil)
	}
	if err := errors.Join(
		(domain.Range{Min: -60, Max: 60, Unit: "°C", Source: "domain of the solver"}).Check("-inside", c.inside),
		(domain.Range{Min: -60, Max: 60, Unit: "°C", Source: "domain of the solver"}).Check("-outside", c.outside),
		domain.Range{Min: -30, Max: 35, Unit: "°C", Source: "chosen"}.Check("-mean", c.mean),
		domain.Range{Max: 25, Unit: "K", Source: "chosen"}.Check("-swing", c.swing),
		domain.Range{Min: 0.2, Max: 10, Unit: "m² K/W", Source: "chosen"}.Check("-insulation", c.insulation),
	); err != nil {
		return nil, 0, err
	}
	air, err := designAir(c, c.outside)
	if err != nil {
		return nil, 0, err
	}
	night, err := envelope.NewHouseConditions(air)
	if err != nil {
		return nil, 0, err
	}
	for _, insulated := range []bool{false, true} {
		for _, depth := range depths {
			r, err := one(c, night, soil, depth, insulated)
			if err != nil {
				return nil, 0, fmt.Errorf("depth %g m: %w", depth, err)
			}
			rows = append(rows, r)
		}
	}
	return rows, night.Outside - night.SkyDrop, nil
}

// one computes the house at one depth.
func one(c choice, night envelope.HouseConditions, soil envelope.Soil, depth float64, insulated bool) (row, error) {
	r := row{depth: depth, insulated: insulated}
	form := envelope.DefaultForm()
	form.Span, form.Length, form.Azimuth, form.Depth = demo.Span, demo.Length, demo.Azimuth, depth
	form.Eave = demo.EaveHeight + demo.Depth - depth // the same room under the roof
	form.Ridge = demo.RidgeHeight + demo.Depth - depth
	shape, err := envelope.NewShape(form)
	if err != nil {
		return r, err
	}
	g := envelope.DefaultGround(envelope.ClaySoil())
	g.Soil = soil
	switch {
	case insulated && depth == 0:
		g.Edge, g.EdgeWidth, g.EdgeThickness = envelope.EdgeVertical, edgeDepth, edgeThickness
		g.EdgeConductivity = edgeThickness / c.insulation
	case insulated:
		g.WallResistance = c.insulation
	}
	film := envelope.DoubleInfraredFilm()
	house, err := envelope.NewHouse(envelope.HousePlan{
		Shape:          shape,
		Covers:         map[envelope.FacetKind]envelope.Cover{envelope.Roof: film, envelope.SideWall: film, envelope.EndWall: film},
		FrameAllowance: 0.04,
		Ground:         g,
		Climate:        envelope.GroundClimate{InsideMean: c.inside, OutsideMean: c.mean, OutsideSwing: c.swing, Coldest: 1, OutsideLag: 1},
		Leakage:        envelope.DefaultLeakage(),
	})
	if err != nil {
		return r, err
	}
	r.cover = shape.CoverArea
	if r.design, err = house.Loss(night); err != nil {
		return r, err
	}
	ground, climate := house.Ground(), house.Climate()
	r.ground = ground.Worst(climate)
	for month := range 12 {
		f := ground.Flow(climate, float64(month+1))
		k := night
		k.Outside, k.SkyDrop, k.Month = f.Outside, skyBelow, f.Month
		l, err := house.Loss(k)
		if err != nil {
			return r, err
		}
		if l.Total > 0 {
			r.year += l.Total * days[month] * 86400
			r.intoYear += l.Ground.Total * days[month] * 86400
		}
	}
	return r, nil
}

// designAir is the air on the design night, outside at t in °C with the
// humidity of the demo site.
func designAir(c choice, t float64) (envelope.HouseAir, error) {
	pressure := psychro.StandardPressure(demo.Altitude)
	inside, bad := psychro.FromRelativeHumidity(c.inside, demo.InsideRH, pressure)
	outside, worse := psychro.FromRelativeHumidity(t, demo.OutsideRH, pressure)
	return envelope.HouseAir{Inside: inside, Outside: outside, Wind: demo.Wind}, errors.Join(bad, worse)
}
