package figures

import (
	"fmt"
	"strings"
	"time"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func ownController() Figure {
	return Figure{
		Name: "own-controller", Title: "A day under a controller of one's own", Subject: "summer", Package: "ventilation", Example: "ExampleVents",
		Question: "A simple controller opens the vents a step when the hour before was too warm and closes a step when it was too cool. How does it fare beside a rule that follows at once?",
		Sketch:   "Twelve hours of sun. One controller sees the temperature of the hour before and moves by a fixed step; the other stands where the temperature it makes asks it to stand.",
		Given: []Given{
			{"t_t", "target of the own controller", "°C", 25, 18, 32},
			{"s", "its step", "fraction", 0.1, 0.02, 0.5},
			{"t_o", "outside", "°C", 20, 5, 32},
			{"I", "sun at noon", "W/m²", 700, 150, 1000},
		},
		Assumes: []string{"95 m² and 275 m³ under a single film, vents at sides and ridge, a crop; 55 % outside, 1.5 m/s; the hours rise and fall through the day in proportion. Each hour is steady: the air follows within minutes."},
		Change:  []string{"Make the step 0.3: fewer moves, and the same hottest hour, for that comes before the first of them.", "A target of 20 °C: it opens hour after hour, and stands wide open when the sun is gone."},
		Code:    "solveOwnController",
		Solve:   solveOwnController,
	}
}

// stepController opens by a step where the last hour was warmer than its target
// and closes by one where it was 3 K cooler, as a controller with one sensor
// does.
type stepController struct{ target, step float64 } // °C, fraction

// Opening implements ventilation.Vents.
func (s stepController) Opening(m ventilation.VentMoment) (ventilation.VentOpening, error) {
	p := ventilation.VentOpening{Opening: m.Last, Limit: 1, By: ventilation.ByTemperature}
	switch {
	case m.Time == 0:
		p.Opening = 0
	case m.Before.Temperature > s.target:
		p.Opening = min(1, m.Last+s.step)
	case m.Before.Temperature < s.target-3:
		p.Opening = max(0, m.Last-s.step)
	}
	return p, nil
}

func solveOwnController(v []float64) (r Result, err error) {
	air, err := psychro.FromRelativeHumidity(v[2], 0.55, 97300)
	if err != nil {
		return r, err
	}
	house, err := smallHouse()
	if err != nil {
		return r, err
	}
	var steps []ventilation.DayStep
	for _, sun := range []float64{100, 250, 400, 550, 650, 700, 700, 650, 550, 400, 250, 100} {
		steps = append(steps, ventilation.DayStep{Weather: ventilation.Weather{Air: air, Sun: sun / 700 * v[3], Wind: 1.5, Sky: v[2] - 12, Ground: 15}})
	}
	warmth := chart{title: "temperature", x: "hour of the day's twelve", y: "inside, °C", high: 220}
	vents := chart{title: "vents", x: "hour of the day's twelve", y: "vents open, %", zero: true, high: 200}
	var rest ventilation.DayPoint
	for _, way := range []struct {
		name  string
		vents ventilation.Vents
	}{{"own controller", stepController{target: v[0], step: v[1]}}, {"rule at rest  ", ventilation.DefaultOpeningRule()}} {
		day, err := house.Day(steps, time.Hour, way.vents, ventilation.DefaultDayLimits())
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%s  highest %.1f °C, %d moves, vents at last %.0f %%", way.name, day.High, day.Moves, 100*day.Points[11].Vents.Opening))
		var hour, t, u []float64
		for i, p := range day.Points {
			hour, t, u = append(hour, float64(i)+0.5), append(t, p.State.Temperature), append(u, 100*p.Vents.Opening)
			if p.Time == day.HighAt {
				rest = p
			}
		}
		warmth.curves, vents.curves = append(warmth.curves, curve{way.name, points(hour, t)}), append(vents.curves, curve{"", points(hour, u)})
		r.Steps = append(r.Steps, Step{Says: "Hottest hour under the " + strings.TrimSpace(way.name) + ".", Symbol: "t", Value: day.High, Unit: "°C"})
	}
	r.Steps = append(r.Steps, Step{Says: "There the rule stands where the temperature it leaves asks it to, 20 °C to 25 °C from shut to open.", Formula: "u = max(0, min(1, (t - 20)/5))", Values: numbers{"t": rest.State.Temperature}, Value: rest.Vents.Demand})
	r.Picture, err = charts("A day under two controllers", "Two charts: the temperature of both through the day, and how far each has its vents open.", "The step controller runs after the sun: it is too late in the morning and too open towards evening.", warmth, vents)
	return r, err
}
