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
	year  *year
	noted int                       // count of hours
	hour  int                       // that was begun last
	next  int                       // after that which is begun
	seen  *ventilation.ClimateState // its state; nil before it has one
	state ventilation.ClimateState
	fault error // ends the year
}

// Vents stand as wide as they may when the outside air is as warm as they are to
// keep the house, or nearly so, K, under a sun brighter than bright, W/m².
const (
	bright = 250
	nearly = 2
)

// At has heat and vents for the humidity as DefaultTargets has them.
func (r *rule) At(m ventilation.HourMoment) ventilation.Targets {
	r.next = m.Hour + 1
	if m.Hour > 0 {
		r.refused(m.Hour - 1)
		r.note(m.Hour-1, &m.Before)
	}
	r.hour, r.seen = m.Hour, nil
	if r.ctx.Err() != nil || r.fault != nil {
		return ventilation.Targets{Warm: math.NaN()} // refused at once, hour after hour
	}
	h := r.house
	p, s := h.plan, h.weather
	i := min(m.Hour, s.Hours()-1)
	clock := float64(s.Time[i].Hour())
	t := ventilation.DefaultTargets(p.Heater.Power)
	if h.ridge.on {
		t.Heater /= 1 - max(0, h.steady.Ridge.Saving)
	}
	q := p.SetPoints
	t.Warm, t.Vent = q.Night.Temperature, q.Night.VentTemperature
	if byDay(q, clock) {
		t.Warm, t.Vent = q.Day.Temperature, q.Day.VentTemperature
	}
	t.Humidity = max(0.2, q.Limits.RelativeHumidity)
	t.Vent = max(t.Vent, t.Warm)
	t.Least, t.Most = h.opens(i)
	if out := m.Weather.Air.Temperature(); out >= t.Vent || out >= t.Vent-nearly && m.Weather.Sun > bright {
		t.Least = t.Most
	}
	t.Dry = min(t.Dry, t.Most)
	t.Screen = fromplan.Drawn(p, m.Weather.Air.Temperature(), m.Weather.Sun)
	t.Shade = shade(p, m.Weather.Sun, t.Screen)
	h.vents.turn(&t, h.vents.in(s.WindFrom, i), m.Weather.Air.Temperature(), m.Weather.Sun)
	t.CO2, t.Mist = h.dose(&m), h.fog(&m, &t)
	if u := r.year.tubes; u != nil && m.Hour > 0 {
		r.fault = u.begin(&t, &m.Before, h.heater(&m.Before) > 0)
	}
	return t
}

var _ ventilation.RefiningRule = (*rule)(nil)

// Refine lets the tubes in the soil take what they do in the state x.
func (r *rule) Refine(x *ventilation.ClimateState, t *ventilation.Targets) bool {
	r.state = *x
	r.seen = &r.state
	u := r.year.tubes
	if u == nil || r.fault != nil {
		return false
	}
	again, err := u.refine(x, t)
	r.fault = err
	return again && err == nil
}

// opens is from where to where the vents may stand in hour i, fraction.
func (h *house) opens(i int) (least, most float64) {
	c, s := h.plan.VentControl, h.weather
	clock := float64(s.Time[i].Hour())
	switch {
	case len(h.plan.Vents) == 0, c.By == "hand" && (clock < c.HandFrom || clock >= c.HandUntil || !h.handDays[s.Time[i].YearDay()]):
		return 0, 0
	case c.By == "hand":
		return c.Hand, c.Hand
	}
	least, most = c.Least, max(c.Least, c.Most)
	if s.Wind != nil {
		most = max(least, min(most, inWind(c, s.Wind[i])))
	}
	return least, most
}

// dryFor is by how much the house must be drier than its limit for the fog to
// spray all the time, fraction; less time in damper air (chosen).
const dryFor = 0.15

// fog is what evaporates of the plan's fog, kg/s: under its sun, in a house that
// was in the hour before warm enough to be vented.
func (h *house) fog(m *ventilation.HourMoment, t *ventilation.Targets) float64 {
	f, x := h.plan.Fog, &m.Before
	if f == nil || m.Weather.Sun <= f.AboveSun || x.Temperature < t.Vent-nearly {
		return 0
	}
	part := max(0, min(1, (t.Humidity-x.RelativeHumidity)/dryFor))
	return part * f.Spray / 1000 / 3600 * h.steady.House.Shape.FloorArea * f.Evaporated
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

// shade is the part of the sun's heat that shade and drawn screen keep out.
func shade(p *plan.Plan, sun float64, drawn bool) float64 {
	return 1 - fromplan.ShadeLeft(p, sun)*screenLeaves(p, drawn)
}

// screenLeaves is the part of the sun that the screen lets through.
func screenLeaves(p *plan.Plan, drawn bool) float64 {
	if !drawn {
		return 1
	}
	return fromplan.ScreenLight(p.Screen)
}
