package main

import (
	"math"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/ventilation"
)

// airFlows is the sensible heat that air takes out, W, by the way it goes.
type airFlows struct{ leak, vent float64 }

// split parts what the air takes between leaks and vents by the mass that goes
// each way.
func split(x *ventilation.ClimateState, opening float64) airFlows {
	if x.DryAir <= 0 || opening <= 0 {
		return airFlows{leak: x.AirSensible}
	}
	f := x.Leakage / x.DryAir
	return airFlows{f * x.AirSensible, (1 - f) * x.AirSensible}
}

// lit is the daylight on the trays with the shade that was drawn, µmol/(m² s).
func (y *year) lit(i int) float64 {
	w := y.house.weather
	return y.Daylight[i] * (1 - shade(y.house.plan, w.Global[i], y.screen(i)))
}

// lampShare is the part of the light above the crop that comes from lamps.
func (y *year) lampShare(i int) float64 {
	h, x := y.house, &y.State[i]
	lamp := y.Burn[i] * h.lamps.power * h.lamps.share
	all := x.SunCanopy + x.SunFloor + x.SunReflected
	if all <= 0 {
		return 0
	}
	return math.Min(1, lamp/all)
}

// fuel is what the heater takes in hour i, W. A burner stands ready in months that
// are colder in the mean than the house is kept by day.
func (y *year) fuel(i int) float64 {
	h := y.house
	if heat := y.State[i].Heat; heat > 0 {
		return h.source.Energy(heat, 1)
	}
	if h.plan.Site.Months.Temperature[h.weather.Time[i].Month()-1] < h.plan.SetPoints.Day.Temperature {
		return h.source.Burner.FuelPower(0) / h.source.Ratio
	}
	return 0
}

// screen tells whether the screen is drawn in hour i.
func (y *year) screen(i int) bool {
	w := y.house.weather
	return fromplan.Drawn(y.house.plan, w.Temperature[i], w.Global[i])
}

// setPoint is what the heater holds in hour i, °C.
func (y *year) setPoint(i int) float64 {
	q := y.house.plan.SetPoints
	if byDay(q, float64(y.house.weather.Time[i].Hour())) {
		return q.Day.Temperature
	}
	return q.Night.Temperature
}
