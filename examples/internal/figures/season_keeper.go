package figures

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/ventilation"
)

func dayAndNight() Figure {
	return Figure{
		Name: "day-and-night", Title: "A humid day kept two ways", Subject: "season", Package: "ventilation", Example: "Example_dayAndNight",
		Question: "A glass house is kept warmer by day than by night, dry enough by vents and heat, and under a screen when it is dark and cold. What is the screen worth, and what if it is drawn on windless nights alone?",
		Sketch:   "A cold humid day. The rule asks by the clock, the sun and the air; the second rule takes it over and leaves the screen open in wind.",
		Given: []Given{
			{"t_m", "outside, mean of the day", "°C", 6, -8, 14},
			{"I", "sun at noon", "W/m²", 450, 0, 900},
			{"t_d", "heated to by day", "°C", 16, 8, 20},
			{"t_n", "heated to by night", "°C", 13, 5, 20},
			{"φ", "humidity kept below", "fraction", 0.8, 0.6, 1},
		},
		Assumes: []string{"An invented glass house on its real covers with an aluminised screen; vents of 2.5 m² at the sides and 2 m² at the ridge; outside 4 K warmer at noon and colder at midnight than the mean, 0.5, 1.5 and 2.5 m/s of wind in turn, 100,000 Pa. Day from 8 to 18 h."},
		Change:  []string{"Let humidity rise, to 1: the vents stay shut until the house is too warm, and the heater saves a sixth.", "The same 16 °C by night: a third more heat."},
		Code:    "solveDayAndNight",
		Solve:   solveDayAndNight,
	}
}

// windless draws the screen on windless nights alone, and keeps the rest of a
// rule.
type windless struct{ ventilation.DayNight }

// At implements ventilation.TargetRule.
func (w windless) At(m ventilation.HourMoment) ventilation.Targets {
	t := w.DayNight.At(m)
	t.Screen = t.Screen && m.Weather.Wind < 1
	return t
}

func solveDayAndNight(v []float64) (r Result, err error) {
	built, err1 := glassHouse(0)
	vents, err2 := ventilation.NewNetwork([]ventilation.Opening{
		{Name: "side", Height: 0.7, Area: 2.5, Discharge: 0.62},
		{Name: "ridge", Height: 2.9, Area: 2.0, Discharge: 0.60},
	}, nil, nil)
	if err := errors.Join(err1, err2); err != nil {
		return r, err
	}
	shape := built.Shape()
	house, err := ventilation.NewClimate(ventilation.ClimateHouse{
		FloorArea: shape.FloorArea, Volume: shape.Volume, Real: ventilation.DefaultRealCover(built),
		Floor: ventilation.DefaultFloorSurface(), Crop: ventilation.DefaultCanopy(2.5), Air: vents,
	})
	if err != nil {
		return r, err
	}
	rule := ventilation.DefaultDayNight(30e3)
	rule.Day.Warm, rule.Night.Warm = v[2], v[3]
	rule.Day.Humidity, rule.Night.Humidity = v[4], v[4]
	rule.Morning, rule.Evening = 8*time.Hour, 18*time.Hour
	hours := ventilation.Hours{
		Pressure: 100000, Settings: []ventilation.Setting{{}},
		Soil:      ventilation.FloorStore{Capacity: 3e5, Deep: 1, Ground: 10, Start: 14},
		Structure: ventilation.DefaultStructureStore(),
	}
	for h := range 24 {
		wave := -math.Cos(2 * math.Pi * float64(h) / 24)
		hours.Temperature = append(hours.Temperature, v[0]+4*wave)
		hours.RelativeHumidity = append(hours.RelativeHumidity, 0.88-0.1*wave)
		hours.Sun = append(hours.Sun, max(0, v[1]*wave))
		hours.Wind = append(hours.Wind, 0.5+float64(h%3))
		hours.Sky = append(hours.Sky, v[0]-10+4*wave)
	}
	var heat []float64
	warmth := dayChart("°C", false, hourly("outside", hours.Temperature, 1))
	heater := dayChart("heater, kW", true)
	for _, kept := range []struct {
		name string
		rule ventilation.TargetRule
	}{{"screen by sun and clock", rule}, {"screen on windless nights", windless{rule}}} {
		hours.Rule = kept.rule
		day, err := house.YearTo(nil, hours)
		if err != nil {
			return r, err
		}
		heat = append(heat, heatOf(day.Heat))
		r.Lines = append(r.Lines, fmt.Sprintf("%s: %.0f kWh", kept.name, heatOf(day.Heat)))
		for h := 0; h < 24; h += 6 {
			r.Lines = append(r.Lines, fmt.Sprintf("  %2d h  %4.1f °C  %2.0f %%  heat %4.1f kW  vents %4.1f %%  benches %4.1f °C",
				h, day.Temperature[h], 100*day.RelativeHumidity[h], day.Heat[h]/1000, 100*day.Opening[h], day.StructureTemperature[h]))
		}
		if len(heat) == 1 {
			warmth.curves = append(warmth.curves, hourly("inside", day.Temperature, 1), hourly("benches", day.StructureTemperature, 1))
		}
		heater.curves = append(heater.curves, hourly(kept.name, day.Heat, 1e-3))
		r.Steps = append(r.Steps, Step{Says: "Heat of the day with the " + kept.name + ", from its hourly mean.", Formula: "E = 24 Q_m", Values: numbers{"Q_m": heatOf(day.Heat) / 24}, Value: heatOf(day.Heat), Unit: "kWh"},
			Step{Says: "Humidity at midnight.", Symbol: "φ_0", Value: day.RelativeHumidity[0]})
	}
	r.Steps = append(r.Steps, Step{Says: "What the windy nights cost without the screen.", Formula: "D = E_2 - E_1", Values: numbers{"E_1": heat[0], "E_2": heat[1]}, Value: heat[1] - heat[0], Unit: "kWh"})
	r.Picture, err = charts("A day kept two ways", "Two charts over the hours: outside, inside and benches; and the heater under both rules.", "In each hour of wind the second rule leaves the screen open, and the heater makes up for it.", warmth, heater)
	return r, err
}
