package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func mixing() Figure {
	return Figure{
		Name: "mixing", Title: "Mixing, and mixing to fog", Subject: "moist air", Package: "psychro", Example: "Example_mixing",
		Question: "Two streams of air mix. What state do they give, and when does the mixture steam?",
		Source:   "HoF17 ch. 1 example 4 for the first mixture (from memory); the second is our own",
		Sketch:   "Cold air from outside meets warm air of the house; then, at a vent on a frosty night, warm moist air meets frost.",
		Given:    mixingGiven(),
		Assumes:  []string{"No heat is lost where they mix; the pressure is 101325 Pa.", "The foggy mixture is of a cubic metre each second of 20 °C and 95 %, and one of -12 °C and 80 %."},
		Change:   []string{"More cold air pulls the mixture down the straight line between the two states.", "Where that line crosses saturation, the mixture holds fog."},
		Code:     "solveMixing",
		Solve:    solveMixing,
	}
}

func mixingGiven() []Given {
	return []Given{
		{"V_1", "volume flow of the cold air", "m³/s", 2, 0.01, 100},
		{"t_1", "its temperature", "°C", 4, 2.5, 10},
		{"V_2", "volume flow of the warm air", "m³/s", 6.25, 0.01, 100},
		{"t_2", "its temperature", "°C", 25, 11, 40},
		{"φ_2", "its relative humidity", "fraction", 0.5, 0.05, 1},
	}
}

func solveMixing(v []float64) (r Result, err error) {
	const p = 101325.0
	cold, err := psychro.FromWetBulb(v[1], 2, p)
	if err != nil {
		return r, err
	}
	warm, err := psychro.FromRelativeHumidity(v[3], v[4], p)
	if err != nil {
		return r, err
	}
	flow := func(s psychro.State, volume float64) psychro.Stream {
		return psychro.Stream{State: s, DryAir: volume / s.SpecificVolume()}
	}
	a, b := flow(cold, v[0]), flow(warm, v[2])
	mix, err := psychro.Mix(a, b)
	if err != nil {
		return r, err
	}
	s := mix.Air.State
	house, err := psychro.FromRelativeHumidity(20, 0.95, p)
	if err != nil {
		return r, err
	}
	frost, err := psychro.FromRelativeHumidity(-12, 0.8, p)
	if err != nil {
		return r, err
	}
	fog, err := psychro.Mix(flow(house, 1), flow(frost, 1))
	if err != nil {
		return r, err
	}
	f := fog.Air.State
	r.Lines = []string{
		fmt.Sprintf("dry air %.3f kg/s, %.2f °C, wet bulb %.2f °C%s", mix.Air.DryAir, s.Temperature(), s.WetBulb(), said(mixingGiven(), v, " (handbook 19.5, 14.6)")),
		fmt.Sprintf("fog: %.2f °C, %.0f %%, %.2f g/s of droplets in %.3f kg/s of air", f.Temperature(), 100*f.RelativeHumidity(), 1000*fog.FogLiquid, fog.Air.DryAir),
	}
	all := numbers{"m_1": a.DryAir, "m_2": b.DryAir, "W_1": cold.HumidityRatio(), "W_2": warm.HumidityRatio(), "h_1": cold.Enthalpy() / 1000, "h_2": warm.Enthalpy() / 1000}
	r.Steps = []Step{
		{Says: "Dry air of both streams.", Formula: "m = V_1/v_1 + V_2/v_2", Values: numbers{"V_1": v[0], "v_1": cold.SpecificVolume(), "V_2": v[2], "v_2": warm.SpecificVolume()}, Value: mix.Air.DryAir, Unit: "kg/s"},
	}
	if mix.FogLiquid == 0 && mix.FogIce == 0 {
		r.Steps = append(r.Steps,
			Step{Says: "Water of the mixture.", Formula: "W = (m_1 W_1 + m_2 W_2)/(m_1 + m_2)", Source: "HoF17 ch. 1 example 4", Values: all, Value: s.HumidityRatio(), Unit: "kg/kg"},
			Step{Says: "Enthalpy of the mixture.", Formula: "h = (m_1 h_1 + m_2 h_2)/(m_1 + m_2)", Source: "HoF17 ch. 1 example 4", Values: all, Value: s.Enthalpy() / 1000, Unit: "kJ/kg"})
	} else {
		r.Steps = append(r.Steps, Step{Says: "The mixture holds more water than saturated air can: it steams. Humidity ratio of its air.", Symbol: "W", Value: s.HumidityRatio(), Unit: "kg/kg"})
	}
	r.Steps = append(r.Steps,
		Step{Says: "Temperature of the mixture, from enthalpy and humidity.", Symbol: "t", Source: "HoF17 ch. 1 eq. 30", Value: s.Temperature(), Unit: "°C"},
		Step{Says: "The second mixture would hold more than saturated air does; the rest is droplets.", Symbol: "m_fog", Source: "balances of water and enthalpy", Value: 1000 * fog.FogLiquid, Unit: "g/s"})
	r.Printed = "19.5 °C with a wet bulb of 14.6 °C, read off the handbook's chart."
	r.Picture, err = airChart("Mixing to fog on the chart", "The straight line between the warm and the cold state passes above the saturation curve; the mixture falls back onto it.", "The second mixture: the line between the two states crosses saturation, and what lies above it is fog.", p,
		airOf("house", house), airPoint{"before the fog forms", 0.5 * (house.Temperature() + frost.Temperature()), 0.5 * (house.HumidityRatio() + frost.HumidityRatio())}, airOf("frost", frost), airOf("mixture", f))
	return r, err
}
