package figures

import (
	"fmt"
	"math"

	"cloche.example/envelope"
)

func houseVapour() Figure {
	return Figure{
		Name: "own-humidity", Title: "The humidity that a house settles to", Subject: "moisture and crop", Package: "envelope", Example: "ExampleHouse_SolveVapour",
		Question: "Crop and soil set vapour free all night. At what humidity do the cold covers and the leaks take as much, and what heat does that cost?",
		Sketch:   "A glass house at night: what evaporates condenses on the covers or leaves with the air that leaks. The covers are the stronger pump.",
		Given: []Given{
			{"t_i", "inside air", "°C", 15, 5, 25},
			{"t_o", "outside air", "°C", -14, -25, 4},
			{"ΔT_s", "sky below the outside air", "K", 18, 0, 35},
			{"v", "wind", "m/s", 3.5, 0, 12},
			{"e", "vapour set free, for the steps", "g/(m² h)", 20, 1, 200},
		},
		Assumes: []string{"A house of 6.4 by 14.8 m under single glass; leakage of an ordinary house, outside air of 85 %; a steady night. The heater evaporates the water."},
		Change:  []string{"A milder night: the same vapour drives the humidity far higher, since the covers are warmer."},
		Code:    "solveHouseVapour",
		Solve:   solveHouseVapour,
	}
}

func solveHouseVapour(v []float64) (r Result, err error) {
	form := envelope.DefaultForm()
	form.Span, form.Length, form.Eave, form.Ridge = 6.4, 14.8, 1.3, 3.1
	plan, err := covered(form, envelope.SingleGlass())
	if err != nil {
		return r, err
	}
	shape := plan.Shape
	house, err := envelope.NewHouse(plan)
	if err != nil {
		return r, err
	}
	k := envelope.DefaultHouseConditions()
	k.Inside, k.Outside, k.SkyDrop, k.Wind = v[0], v[1], v[2], v[3]
	at := func(grams float64) (envelope.VapourBalance, error) {
		return house.SolveVapour(k, envelope.VapourSources{Released: grams / 3.6e6 * shape.FloorArea})
	}
	for _, grams := range []float64{5, 20, 60, 200} {
		b, err := at(grams)
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%3.0f g/(m² h): humidity %2.0f %%, on the covers %4.1f kg/h (frost on %d of %d facets), by the air %4.1f kg/h, load %.1f kW",
			grams, 100*b.Humidity, 3600*b.Condensate, b.Loss.Frosting, len(b.Loss.Facets), 3600*b.Carried, b.Total/1000))
	}
	b, err := at(v[4])
	if err != nil {
		return r, err
	}
	k.InsideHumidity = 0.8
	l, err := house.Loss(k)
	if err != nil {
		return r, err
	}
	r.Lines = append(r.Lines, fmt.Sprintf("80 %% inside takes %.1f kg/h of evaporation and %.1f kW", 3600*l.Evaporation, l.Total/1000))
	r.Steps = []Step{
		{Says: "Vapour that crop and soil set free.", Formula: "m = e A/1000", Values: numbers{"e": v[4], "A": shape.FloorArea}, Value: v[4] / 1000 * shape.FloorArea, Unit: "kg/h"},
		{Says: "Relative humidity at which covers and air take as much.", Symbol: "φ", Source: "every facet wet or dry at that humidity, solved", Value: b.Humidity},
		{Says: "There the balance closes: what condenses, what the air carries off, and what stays as fog.", Formula: "m = m_c + m_a + m_f", Values: numbers{"m_c": 3600 * b.Condensate, "m_a": 3600 * b.Carried, "m_f": 3600 * b.Fog}, Value: v[4] / 1000 * shape.FloorArea, Unit: "kg/h", Within: 1e-6, Why: "the balance is found to 1e-9 of the larger flow"},
		{Says: "Share that the covers take.", Formula: "x = m_c/m", Values: numbers{"m_c": 3600 * b.Condensate, "m": v[4] / 1000 * shape.FloorArea}, Value: 1000 * 3600 * b.Condensate / (v[4] * shape.FloorArea)},
		{Says: "Heat that the house then takes.", Symbol: "Q", Source: "House.Loss with the heat of evaporation in it", Value: b.Total, Unit: "W"},
	}
	var humidity, load curve
	humidity.at = along(1, 200, 16, func(e float64) float64 {
		b, err := at(e)
		if err != nil {
			return math.NaN()
		}
		return 100 * b.Humidity
	})
	load.at = along(1, 200, 16, func(e float64) float64 {
		b, err := at(e)
		if err != nil {
			return math.NaN()
		}
		return b.Total / 1000
	})
	r.Picture, err = charts("Humidity and load over the vapour set free", "Above, the humidity rises with the vapour; below, the load rises with it.", "The water that evaporates costs heat, and the cold covers take it out of the air.",
		chart{title: "humidity", x: "vapour set free, g/(m² h)", y: "humidity, %", zero: true, high: 200, curves: []curve{humidity}, marks: []mark{{"here", v[4], 100 * b.Humidity}}},
		chart{title: "load", x: "vapour set free, g/(m² h)", y: "load, kW", zero: true, high: 200, curves: []curve{load}, marks: []mark{{"here", v[4], b.Total / 1000}}})
	return r, err
}
