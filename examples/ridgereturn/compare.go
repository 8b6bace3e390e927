package main

import (
	"errors"

	"cloche.example/airheat"
	"cloche.example/envelope"
	"cloche.example/internal/demo"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// shares of the heat that rises past the crop, fraction.
var shares = []float64{0.2, 0.3, 0.4, 0.5, 0.6, 0.65, 0.7}

// layers are the two layers of the demo house.
type layers struct {
	lower, upper float64 // W/K
	capacity     float64 // J/(m³ K)
}

// row is one degree of layering.
type row struct {
	share float64
	ridge airheat.RidgeReturn
	fans  airheat.FansCompared
}

// compare computes the demo house's two layers and all rows.
func compare(c choice) (layers, []row, error) {
	l, err := split(c)
	if err != nil {
		return layers{}, nil, err
	}
	var rows []row
	for _, share := range shares {
		t := airheat.TwoLayers{
			LowerLoss: l.lower, UpperLoss: l.upper, Lower: c.inside, Outside: c.outside,
			RisingShare: share, Mixing: c.mixing, HeaterFlow: c.flow, HeatCapacity: l.capacity,
		}
		r := row{share: share}
		if r.ridge, err = t.RidgeReturn(); err != nil {
			return layers{}, nil, err
		}
		if r.fans, err = t.Fans(airheat.MixingFans{Flow: c.fanFlow, Power: c.fanPower, FilmFactor: c.film}, c.worth); err != nil {
			return layers{}, nil, err
		}
		rows = append(rows, r)
	}
	return l, rows, nil
}

// split gives the roof's loss on the design night to the upper layer and all
// other loss to the lower one.
func split(c choice) (layers, error) {
	if err := errors.Join(
		(domain.Range{Min: -60, Max: 60, Unit: "°C", Source: "domain of the solver"}).Check("-inside", c.inside),
		(domain.Range{Min: -60, Max: 60, Unit: "°C", Source: "domain of the solver"}).Check("-outside", c.outside),
	); err != nil {
		return layers{}, err
	}
	if !(c.inside > c.outside) {
		return layers{}, errors.New("-inside must be above -outside: there is nothing to heat")
	}
	form := envelope.DefaultForm()
	form.Span, form.Length, form.Azimuth, form.Depth = demo.Span, demo.Length, demo.Azimuth, demo.Depth
	form.Eave, form.Ridge = demo.EaveHeight, demo.RidgeHeight
	shape, err := envelope.NewShape(form)
	if err != nil {
		return layers{}, err
	}
	film := envelope.DoubleInfraredFilm()
	house, err := envelope.NewHouse(envelope.HousePlan{
		Shape:          shape,
		Covers:         map[envelope.FacetKind]envelope.Cover{envelope.Roof: film, envelope.SideWall: film, envelope.EndWall: film},
		FrameAllowance: 0.04,
		Ground:         envelope.DefaultGround(envelope.ClaySoil()),
		Climate:        envelope.DefaultGroundClimate(),
		Leakage:        envelope.DefaultLeakage(),
	})
	if err != nil {
		return layers{}, err
	}
	pressure := psychro.StandardPressure(demo.Altitude)
	inside, bad := psychro.FromRelativeHumidity(c.inside, demo.InsideRH, pressure)
	outside, worse := psychro.FromRelativeHumidity(c.outside, demo.OutsideRH, pressure)
	if err := errors.Join(bad, worse); err != nil {
		return layers{}, err
	}
	k, err := envelope.NewHouseConditions(envelope.HouseAir{Inside: inside, Outside: outside, Wind: demo.Wind, Cloud: demo.CloudCover})
	if err != nil {
		return layers{}, err
	}
	loss, err := house.Loss(k)
	if err != nil {
		return layers{}, err
	}
	air, err := psychro.IdealGas.FromRelativeHumidity(c.inside, demo.InsideRH, pressure)
	if err != nil {
		return layers{}, err
	}
	l := layers{capacity: air.HeatCapacity() / air.SpecificVolume()}
	for _, f := range loss.Facets {
		if f.Kind == envelope.Roof {
			l.upper += f.Loss
		}
	}
	dt := c.inside - c.outside
	l.lower = (loss.Total - l.upper) / dt
	l.upper /= dt
	return l, nil
}
