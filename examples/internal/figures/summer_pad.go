package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func wetPad() Figure {
	return Figure{
		Name: "wet-pad", Title: "A wet pad on a hot day", Subject: "summer", Package: "psychro",
		Question: "Hot dry air is drawn through a wet pad. How cool does it come in?",
		Source:   "Hundy08 (G. F. Hundy et al., Refrigeration and Air-Conditioning), example 22.1",
		Sketch:   "Outside air, a wet pad, the air that leaves it; water trickles down the pad.",
		Given:    padGiven(),
		Assumes:  []string{"The pad brings the air a fixed share of the way to its wet bulb; its water is as warm as the wet bulb."},
		Change:   []string{"A wet bulb of 28 °C, a muggy day: the pad can do little."},
		Code:     "solveWetPad",
		Solve:    solveWetPad,
	}
}

func padGiven() []Given {
	return []Given{
		{"t", "air outside", "°C", 37, 28, 48},
		{"t_w", "its wet bulb", "°C", 21.5, 14, 28},
		{"e", "share of the way that the pad brings it", "fraction", 0.75, 0.1, 1},
		{"m", "dry air that flows", "kg/s", 1, 0.1, 100},
	}
}

func solveWetPad(v []float64) (r Result, err error) {
	in, err := psychro.IdealGas.FromWetBulb(v[0], v[1], 101325)
	if err != nil {
		return r, err
	}
	pad, err := psychro.Stream{State: in, DryAir: v[3]}.Pad(v[2])
	if err != nil {
		return r, err
	}
	out := pad.Out.State
	r.Steps = []Step{
		{Says: "Air behind the pad.", Formula: "t_2 = t - e (t - t_w)", Source: "Hundy08 example 22.1", Values: numbers{"t": v[0], "e": v[2], "t_w": v[1]}, Value: out.Temperature(), Unit: "°C", Within: 1e-6, Why: "the wet bulb is solved again from the state"},
		{Says: "Its humidity ratio, on the line of the wet bulb.", Symbol: "W_2", Source: "HoF17 ch. 1 eq. 33", Value: out.HumidityRatio(), Unit: "kg/kg"},
		{Says: "Water that the pad evaporates.", Formula: "w = 3600 m (W_2 - W_1)", Values: numbers{"m": v[3], "W_2": out.HumidityRatio(), "W_1": in.HumidityRatio()}, Value: 3600 * pad.Evaporated, Unit: "kg/h", Within: 1e-6, Why: "rounding"},
	}
	r.Lines = []string{fmt.Sprintf("air of %g °C leaves the pad at %.1f °C and %.0f %%%s; the pad evaporates %.1f kg/h", v[0], out.Temperature(), 100*out.RelativeHumidity(), said(padGiven(), v, " (source 25.4 °C)"), 3600*pad.Evaporated)}
	r.Printed = "25.4 °C."
	r.Picture, err = airChart("The pad on the chart", "From the hot dry state up and to the left along the line of the wet bulb, three quarters of the way to saturation.", "The pad trades warmth for humidity along the line of the wet bulb.", 101325,
		airOf("outside", in), airOf("behind the pad", out), airPoint{"wet bulb", v[1], psychro.SaturationHumidityRatio(v[1], 101325)})
	return r, err
}
