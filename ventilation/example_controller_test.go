package ventilation_test

import (
	"fmt"
	"time"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

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

// A day under a controller of one's own, beside the rule of the package at rest.
func ExampleVents() {
	air, err := psychro.FromRelativeHumidity(20, 0.55, 97300)
	if err != nil {
		fmt.Println(err)
		return
	}
	vents, err := ventilation.NewNetwork([]ventilation.Opening{
		{Name: "side", Height: 0.7, Area: 3.8, Discharge: 0.62},
		{Name: "ridge", Height: 2.9, Area: 2.8, Discharge: 0.60},
	}, []ventilation.Leak{{Height: 1.5, Flow: 0.02, Exponent: 0.65}}, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	house, err := ventilation.NewClimate(ventilation.ClimateHouse{
		FloorArea: 95, Volume: 275, Cover: ventilation.DefaultSimpleCover(186), Floor: ventilation.DefaultFloorSurface(), Crop: ventilation.DefaultCanopy(2.5), Air: vents,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	var steps []ventilation.DayStep
	for _, sun := range []float64{100, 250, 400, 550, 650, 700, 700, 650, 550, 400, 250, 100} {
		steps = append(steps, ventilation.DayStep{Weather: ventilation.Weather{Air: air, Sun: sun, Wind: 1.5, Sky: 8, Ground: 15}})
	}
	for _, way := range []struct {
		name  string
		vents ventilation.Vents
	}{{"own controller", stepController{target: 25, step: 0.1}}, {"rule at rest  ", ventilation.DefaultOpeningRule()}} {
		day, err := house.Day(steps, time.Hour, way.vents, ventilation.DefaultDayLimits())
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s  highest %.1f °C, %d moves, vents at last %.0f %%\n", way.name, day.High, day.Moves, 100*day.Points[11].Vents.Opening)
	}
	// Output:
	// own controller  highest 29.3 °C, 7 moves, vents at last 50 %
	// rule at rest    highest 24.1 °C, 11 moves, vents at last 6 %
}
