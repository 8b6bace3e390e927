package figures

import (
	"fmt"
	"math"

	"cloche.example/airheat"
)

func woodMoisture() Figure {
	return Figure{
		Name: "wet-wood", Title: "Wood by its moisture", Subject: "heater and fuel", Package: "airheat", Example: "Example_woodByMoisture",
		Question: "What is a kilogram of wood worth at 8 per cent of moisture, at 20, at 60?",
		Sketch:   "A kilogram of wet wood holds less wood, and what there is must first drive out the water.",
		Given: []Given{
			{"O_2", "oxygen in the dry flue gas", "fraction", 0.08, 0.02, 0.14},
			{"t_f", "flue gas", "°C", 180, 110, 400},
			{"t_a", "air that the fire draws", "°C", 15, -10, 40},
			{"M", "moisture for the steps", "fraction", 0.20, 0, 0.6},
		},
		Assumes: []string{"Complete combustion; moisture on the wet basis. Really wet wood does not burn completely."},
		Change:  []string{"Compare by heat, not by weight: a dry kilogram is worth nearly three wet ones."},
		Code:    "solveWoodMoisture",
		Solve:   solveWoodMoisture,
	}
}

func solveWoodMoisture(v []float64) (r Result, err error) {
	wood := airheat.Wood()
	air := airheat.DefaultCombustionAir()
	at := func(m float64) (airheat.Fuel, airheat.FlueHeat, error) {
		f, err := wood.MoistFuel(m)
		if err != nil {
			return f, airheat.FlueHeat{}, err
		}
		ratio, err := f.AirRatioFromO2(air, v[0])
		if err != nil {
			return f, airheat.FlueHeat{}, err
		}
		l, err := f.FlueLoss(airheat.FlueState{Drawn: air, AirRatio: ratio, AirTemperature: v[2], FlueTemperature: v[1], Pressure: 101325})
		return f, l, err
	}
	r.Lines = []string{"moisture   lower MJ/kg   higher MJ/kg   of dry wood's heat   flue loss   dew point °C"}
	for _, m := range []float64{0.08, 0.15, 0.20, 0.30, 0.45, 0.60} {
		f, l, err := at(m)
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%6.0f %% %13.2f %14.2f %18.1f %% %9.1f %% %14.1f", 100*m, f.Lower/1e6, f.Higher/1e6, 100*f.Lower/(18.5e6*(1-m)), 100*l.OfLower, l.DewPoint))
	}
	r.Lines = append(r.Lines, airheat.CombustionCaution)
	dry, _, err := at(0)
	if err != nil {
		return r, err
	}
	f, l, err := at(v[3])
	if err != nil {
		return r, err
	}
	r.Steps = []Step{
		{Says: "Lower heating value as received.", Formula: "H = H_d (1 - M) - 2.443 M", Source: "IsoFuel21", Values: numbers{"H_d": dry.Lower / 1e6, "M": v[3]}, Value: f.Lower / 1e6, Unit: "MJ/kg", Within: 1e-4, Why: "the heat of condensation is rounded"},
		{Says: "Lost through the flue, of that value.", Symbol: "x", Source: "Janaf98, integrals of the heat capacities", Value: l.OfLower},
		{Says: "What a kilogram gives to the house.", Formula: "H_u = H (1 - x)", Values: numbers{"H": f.Lower / 1e6, "x": l.OfLower}, Value: f.Lower * (1 - l.OfLower) / 1e6, Unit: "MJ/kg"},
	}
	useful := func(m float64) float64 {
		f, l, err := at(m)
		if err != nil {
			return math.NaN()
		}
		return f.Lower * (1 - l.OfLower) / 1e6
	}
	value := func(m float64) float64 {
		f, _, err := at(m)
		if err != nil {
			return math.NaN()
		}
		return f.Lower / 1e6
	}
	r.Picture, err = chart{title: "Heat of a kilogram of wood over its moisture", says: "Two falling lines: the heating value, and below it what is left after the flue.", x: "moisture, %", y: "MJ/kg", zero: true, curves: []curve{
		{"lower heating value", along(0, 60, 30, func(m float64) float64 { return value(m / 100) })},
		{"left after the flue", along(0, 60, 30, func(m float64) float64 { return useful(m / 100) })},
	}, marks: []mark{{"", 100 * v[3], useful(v[3])}}}.picture("Drying is worth more than any grate.")
	return r, err
}
