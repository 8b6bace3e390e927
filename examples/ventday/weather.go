package main

import (
	"fmt"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/lighting"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// The plan's clear summer day, with h the hour of local standard time:
//
//	outside = mean - swing cos(2π (h - 3.5)/24): least at half past three
//	dew     = the plan's dew point, at most 0.3 K below outside
//	wind    = calm + (top - calm) (1 - cos(2π (h - 3)/24))/2: most at three in the afternoon
//	sun     = clear sky of Ineichen and Perez with the plan's turbidity, on 15 July, or 15 January in the south
//	sky     = emissivity of Berdahl and Martin from the dew point
const (
	calmShare = 0.3  // of the top wind, at night
	squall    = 16.0 // m/s, in the hour of a squall, with rain
)

// date is the day; its year counts for nothing but the sun's place.
func (c choice) date() time.Time {
	site := c.plan.Site
	month := time.July
	if site.Latitude < 0 {
		month = time.January
	}
	return time.Date(2025, month, 15, 0, 0, 0, 0, time.FixedZone("standard time", int(3600*site.TimeZone)))
}

// steps are those of the day.
func (c choice) steps(house *answers.House) ([]ventilation.DayStep, error) {
	p := c.plan
	site, err := lighting.NewSite(p.Site.Latitude, p.Site.Longitude, p.Site.Altitude)
	if err != nil {
		return nil, err
	}
	glazing, err := fromplan.Glazing(p, house.Shape)
	if err != nil {
		return nil, err
	}
	date, day := c.date(), p.Site.SummerDay
	ground := p.Site.Months.Temperature[date.Month()-1]
	var steps []ventilation.DayStep
	for at := c.step / 2; at < 24*time.Hour; at += c.step {
		h := at.Hours()
		outside := day.Temperature - day.Swing*math.Cos(2*math.Pi*(h-3.5)/24)
		air, err := psychro.FromDewPoint(outside, math.Min(day.DewPoint, outside-0.3), house.Pressure)
		if err != nil {
			return nil, fmt.Errorf("site.summer_day: %w", err)
		}
		w := ventilation.Weather{Air: air, Ground: ground, Wind: day.Wind * (calmShare + (1-calmShare)*(1-math.Cos(2*math.Pi*(h-3)/24))/2)}
		if w.Sky, err = envelope.SkyTemperature(air, at, 0); err != nil {
			return nil, fmt.Errorf("site.summer_day: %w", err)
		}
		moment := date.Add(at)
		clear, err := site.ClearSky(moment, p.Site.LinkeTurbidity)
		if err != nil {
			return nil, err
		}
		sun := site.Sun(moment)
		gain, err := glazing.Gain(envelope.Sunlight{BeamNormal: clear.Direct, DiffuseHorizontal: clear.Diffuse, Albedo: p.Site.GroundReflectance, Elevation: sun.Elevation, Azimuth: sun.Azimuth})
		if err != nil {
			return nil, err
		}
		w.Sun, w.Gain = clear.Global, &gain
		step := ventilation.DayStep{Weather: w}
		if h >= c.squall && h < c.squall+1 {
			step.Rain, step.Weather.Wind = true, squall
		}
		step.Setting = c.cooled(w, house.Shape.FloorArea)
		steps = append(steps, step)
	}
	return steps, nil
}

// cooled is what the plan's shade and fog do under a sun. Its screen stays open.
func (c choice) cooled(w ventilation.Weather, floor float64) ventilation.Setting {
	s := ventilation.Setting{Shade: 1 - fromplan.ShadeLeft(c.plan, w.Sun)}
	if f := c.plan.Fog; f != nil && w.Sun > f.AboveSun {
		s.Mist = f.Spray * f.Evaporated / 3.6e6 * floor
	}
	return s
}
