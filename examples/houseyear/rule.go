package main

import (
	"context"
	"math"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/ventilation"
)

// rule keeps the house as the plan says, and notes each hour's state when the
// next one asks.
type rule struct {
	house *house
	ctx   context.Context
	wind  []float64 // m/s, of the mast
	state []ventilation.ClimateState
}

// Vents stand as wide as they may when the outside air is as warm as they are to
// keep the house, or nearly so, K, under a sun brighter than bright, W/m².
const (
	bright = 250
	nearly = 2
)

// Keep has heat and vents for the humidity as DefaultTargets has them.
func (r rule) Keep(m ventilation.HourMoment) ventilation.Targets {
	if m.Hour > 0 {
		r.state[m.Hour-1] = m.Before
	}
	if r.ctx.Err() != nil {
		return ventilation.Targets{Warm: math.NaN()} // refused at once, hour after hour
	}
	p := r.house.plan
	i := min(m.Hour, r.house.weather.Hours()-1)
	clock := float64(r.house.weather.Time[i].Hour())
	t := ventilation.DefaultTargets(p.Heater.Power)
	q := p.SetPoints
	t.Warm, t.Vent = q.Night.Temperature, q.Night.VentTemperature
	if byDay(q, clock) {
		t.Warm, t.Vent = q.Day.Temperature, q.Day.VentTemperature
	}
	t.Humidity = max(0.2, q.Limits.RelativeHumidity)
	t.Vent = max(t.Vent, t.Warm)
	c := p.VentControl
	t.Least, t.Most = c.Least, max(c.Least, c.Most)
	if len(r.wind) > 0 {
		t.Most = max(t.Least, min(t.Most, inWind(c, r.wind[i])))
	}
	if out := m.Weather.Air.Temperature(); out >= t.Vent || out >= t.Vent-nearly && m.Weather.Sun > bright {
		t.Least = t.Most
	}
	if c.By == "hand" {
		t.Least, t.Most = 0, 0
		if clock >= c.HandFrom && clock < c.HandUntil {
			t.Least, t.Most = c.Hand, c.Hand
		}
	}
	t.Dry = min(t.Dry, t.Most)
	if len(p.Vents) == 0 {
		t.Least, t.Most, t.Dry = 0, 0, 0
	}
	t.Screen = fromplan.Drawn(p, m.Weather.Air.Temperature(), m.Weather.Sun)
	t.Shade = shade(p, m.Weather.Sun, t.Screen)
	return t
}

func byDay(q plan.SetPoints, clock float64) bool { return clock >= q.DayFrom && clock < q.DayUntil }

// inWind is how far the vents may open in a wind, m/s.
func inWind(c plan.VentControl, wind float64) float64 {
	switch {
	case wind >= c.WindHigh:
		return c.InWind
	case wind <= c.WindLow:
		return 1
	}
	return 1 + (c.InWind-1)*(wind-c.WindLow)/(c.WindHigh-c.WindLow)
}

// screenLight is what a ready-made screen lets through; from memory.
const screenLight = 0.4

// shade is the part of the sun that shade and drawn screen keep out.
func shade(p *plan.Plan, sun float64, drawn bool) float64 {
	left := 1.0
	if q := p.Shade; q != nil && sun > q.AboveSun {
		out := 1 - q.Transmittance
		if q.Place == "inside screen" {
			out = q.Reflectance // what it takes up stays in the house
		}
		left *= 1 - q.Drawn*out
	}
	if drawn {
		light := screenLight
		if o := p.Screen.Own; o != nil {
			light = o.LightTransmittance
		}
		left *= light
	}
	return 1 - left
}
