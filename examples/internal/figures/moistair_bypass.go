package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func bypassedCoil() Figure {
	return Figure{
		Name: "bypass", Title: "A coil that lets some air pass", Subject: "moist air", Package: "psychro",
		Question: "Some of the air passes a cooling coil untouched. Where on the chart does the mixture leave?",
		Source:   "example 10.19 of a textbook of thermodynamics, as open code of its worked examples has it (Scilab textbook companion 551)",
		Sketch:   "Most of the air meets the cold rows and leaves saturated, the rest slips between them; behind the coil the two mix.",
		Given:    bypassGiven(),
		Assumes:  []string{"The ideal form of moist air at 101325 Pa; one share for heat and water, the usual convention."},
		Change:   []string{"No bypass: the air leaves saturated at the coil's temperature.", "More bypass: warmer, and drier than saturated."},
		Code:     "solveBypass",
		Solve:    solveBypass,
	}
}

func bypassGiven() []Given {
	return []Given{
		{"h_1", "enthalpy of the entering air", "kJ/kg", 82.5, 60, 110},
		{"W_1", "its humidity ratio", "kg/kg", 0.0196, 0.012, 0.021},
		{"t_s", "surface of the coil", "°C", 13, 1, 16},
		{"b", "share that passes untouched", "fraction", (47.5 - 36.6) / (82.5 - 36.6), 0, 0.9},
		{"m", "dry air", "kg/s", 250.0 / 60, 0.1, 50},
	}
}

func solveBypass(v []float64) (r Result, err error) {
	in, err := psychro.IdealGas.FromEnthalpyAndHumidityRatio(1000*v[0], v[1], 101325)
	if err != nil {
		return r, err
	}
	stream := psychro.Stream{State: in, DryAir: v[4]}
	c, err := stream.BypassedCoil(v[2], v[3])
	if err != nil {
		return r, err
	}
	surface, err := stream.Coil(v[2])
	if err != nil {
		return r, err
	}
	out, at := c.Out.State, surface.Out.State
	book := func(words string) string { return said(bypassGiven(), v, words) }
	r.Lines = []string{
		fmt.Sprintf("enters  %.2f °C  h %.2f kJ/kg  W %.5f kg/kg", in.Temperature(), in.Enthalpy()/1000, in.HumidityRatio()),
		fmt.Sprintf("leaves  %.2f °C  h %.2f kJ/kg  W %.5f kg/kg%s", out.Temperature(), out.Enthalpy()/1000, out.HumidityRatio(), book("  (source 17.6, 47.5, 0.0118)")),
		fmt.Sprintf("capacity %.1f kW%s, of it %.1f kW with the condensate of %.4f kg/s", (c.Heat+c.Drain)/1000, book(" (source 163.5)"), c.Drain/1000, c.Condensate),
	}
	r.Printed = "17.6 °C, 47.5 kJ/kg, 11.8 g/kg and 163.5 kW, read off a chart."
	formulas, line := []string{"h_2 = b h_1 + (1 - b) h_s", "W_2 = b W_1 + (1 - b) W_s"}, ""
	if w := v[3]*v[1] + (1-v[3])*at.HumidityRatio(); w-out.HumidityRatio() > 1e-9 {
		formulas, line = []string{"", ""}, ": the line to the surface passes above saturation, and what lies above it falls out as fog" // then no formula holds
	}
	r.Steps = []Step{
		{Says: "Air saturated at the surface.", Symbol: "h_s", Source: "HoF17 ch. 1 eq. 30", Value: at.Enthalpy() / 1000, Unit: "kJ/kg"},
		{Says: "Enthalpy of the mixture" + line + ".", Formula: formulas[0], Symbol: "h_2", Values: numbers{"b": v[3], "h_1": v[0], "h_s": at.Enthalpy() / 1000}, Value: out.Enthalpy() / 1000, Unit: "kJ/kg"},
		{Says: "Its humidity ratio.", Formula: formulas[1], Symbol: "W_2", Values: numbers{"b": v[3], "W_1": v[1], "W_s": at.HumidityRatio()}, Value: out.HumidityRatio(), Unit: "kg/kg"},
		{Says: "Its temperature.", Formula: "t_2 = (h_2 - 2501 W_2)/(1.006 + 1.86 W_2)", Source: "HoF17 ch. 1 eq. 30", Values: numbers{"h_2": out.Enthalpy() / 1000, "W_2": out.HumidityRatio()}, Value: out.Temperature(), Unit: "°C"},
		{Says: "Capacity, the condensate's heat in it.", Formula: "q = m (h_1 - h_2)", Values: numbers{"m": v[4], "h_1": v[0], "h_2": out.Enthalpy() / 1000}, Value: (c.Heat + c.Drain) / 1000, Unit: "kW", Within: 1e-6, Why: "rounding"},
	}
	r.Picture, err = airChart("The bypassed coil on the chart", "A straight line from the entering air to the coil's surface on the saturation curve; the leaving air lies on it.", "The leaving air lies on the straight line between the entering air and the surface.", 101325, airOf("enters", in), airOf("leaves", out), airOf("surface", at))
	return r, err
}
