package main

import (
	"math"

	"cloche.example/envelope"
	"cloche.example/internal/demo"
	"cloche.example/internal/domain"
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
	night night
	sky   float64 // °C
	shape envelope.Shape
	rows  []row
}

// skyOf returns the sky temperature in °C for the night.
func skyOf(n night) (float64, error) {
	pressure := psychro.StandardPressure(demo.Altitude)
	air, err := psychro.FromRelativeHumidity(n.outside, n.outsideHumidity, pressure)
	if err != nil {
		return 0, err
	}
	if err := (domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "definition"}).Check("cloud", n.cloud); err != nil {
		return 0, err
	}
	dew := air.DewPoint()
	if err := (domain.Range{Min: -40, Max: 30, Unit: "°C", Source: "chosen around the sites of Berdahl and Martin, -20 to 30 °C"}).Check("dew point outside", dew); err != nil {
		return 0, err
	}
	clear := envelope.SkyEmissivity(dew, 0, pressure)
	return envelope.SkyTemperatureOf(n.outside, envelope.CloudySky(clear, n.cloud, 1, 1000)), nil
}

// compare computes every candidate.
func compare(n night) (table, error) {
	t := table{night: n}
	var err error
	if t.sky, err = skyOf(n); err != nil {
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
	n := t.night
	k := envelope.DefaultHouseConditions()
	k.Inside, k.InsideRadiant, k.InsideHumidity = n.inside, n.inside, n.humidity
	k.Outside, k.Ground, k.Sky, k.Wind, k.OutsideHumidity = n.outside, n.outside, t.sky, n.wind, n.outsideHumidity
	k.Pressure, k.ScreenDrawn = psychro.StandardPressure(demo.Altitude), c.screened
	k.InnerFace = envelope.InnerAuto
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
