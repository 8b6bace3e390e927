package main

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/internal/demo"
	"cloche.example/internal/domain"
	"cloche.example/lighting"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// The invented clear summer day, with h the hour of local standard time:
//
//	outside = mean - swing cos(2π (h - 3.5)/24): least at half past three
//	dew     = the given dew point, at most 0.3 K below outside
//	wind    = calm + (top - calm) (1 - cos(2π (h - 3)/24))/2: most at three in the afternoon
//	sun     = clear sky of Ineichen and Perez, Linke turbidity 3.5, on 15 July at the site
//	sky     = emissivity of Berdahl and Martin from the dew point
const (
	calmShare = 0.3  // of the top wind, at night
	turbidity = 3.5  // dimensionless, rather clear
	ground    = 17.0 // °C, below the floor
	squall    = 16.0 // m/s, in the hour of a squall, with rain
)

// date is the day; its year counts for nothing but the sun's place.
var date = time.Date(2025, time.July, 15, 0, 0, 0, 0, time.FixedZone("standard time", 3600))

// day returns the steps of the day.
func (c choice) day(house *ventilation.Climate) ([]ventilation.DayStep, error) {
	site, err := lighting.NewSite(demo.Latitude, demo.Longitude, demo.Altitude)
	if err != nil {
		return nil, err
	}
	pressure := psychro.StandardPressure(demo.Altitude)
	floor := house.House().FloorArea
	var steps []ventilation.DayStep
	for at := c.step / 2; at < 24*time.Hour; at += c.step {
		h := at.Hours()
		outside := c.mean - c.swing*math.Cos(2*math.Pi*(h-3.5)/24)
		dew := math.Min(c.dew, outside-0.3)
		air, err := psychro.FromDewPoint(outside, dew, pressure)
		if err != nil {
			return nil, fmt.Errorf("-mean, -swing, -dew: %w", err)
		}
		clear, err := site.ClearSky(date.Add(at), turbidity)
		if err != nil {
			return nil, err
		}
		sky, err := envelope.SkyTemperature(air, at, 0)
		if err != nil {
			return nil, fmt.Errorf("-mean, -swing, -dew: %w", err)
		}
		w := ventilation.Weather{
			Air:    air,
			Sun:    clear.Global,
			Wind:   c.wind * (calmShare + (1-calmShare)*(1-math.Cos(2*math.Pi*(h-3)/24))/2),
			Sky:    sky,
			Ground: ground,
		}
		step := ventilation.DayStep{Weather: w}
		if h >= c.squall && h < c.squall+1 {
			step.Rain, step.Weather.Wind = true, squall
		}
		if w.Sun >= c.coolAbove {
			step.Setting.Shade = c.shade
			step.Setting.Mist = c.fog / 3600 * floor / 1000
		}
		steps = append(steps, step)
	}
	return steps, nil
}

// check joins the faults of the day's and the cooling's figures.
func (c choice) check() error {
	r := func(low, high float64, unit string) domain.Range {
		return domain.Range{Min: low, Max: high, Unit: unit}
	}
	var step error
	if c.step < time.Minute || c.step > 2*time.Hour || (24*time.Hour)%c.step != 0 {
		step = fmt.Errorf("-step is %s: a part of the day, 1m to 2h", c.step)
	}
	if c.open >= c.shut {
		step = errors.Join(step, errors.New("-open must come before -shut"))
	}
	return errors.Join(
		r(0, 45, "°C").Check("-mean", c.mean), r(0, 15, "K").Check("-swing", c.swing), r(-20, 28, "°C").Check("-dew", c.dew),
		r(0, 30, "m/s").Check("-wind", c.wind), r(-1, 23, "h").Check("-squall", c.squall),
		r(0, 1, "fraction").Check("-shade", c.shade), r(0, 1000, "g/(m² h)").Check("-fog", c.fog), r(0, 1500, "W/m²").Check("-cool-above", c.coolAbove),
		r(0, 23.99, "h").Check("-open", c.open), r(0, 23.99, "h").Check("-shut", c.shut), r(0, 1, "fraction").Check("-hand", c.hand),
		r(10, 45, "°C").Check("-limit", c.limit), r(0, 10, "dimensionless").Check("-lai", c.lai),
		step,
	)
}
