package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func humidifying() Figure {
	return Figure{
		Name: "humidifying", Title: "Steam, spray or wet pad", Subject: "moist air", Package: "psychro", Example: "Example_humidifying",
		Question: "Water comes into dry air as steam, as a spray, or from a wet pad. How warm is the air afterwards?",
		Source:   "HoF17 ch. 1 example 5 for the steam (from memory), and ChemicaLogic, MoistAirTab example 5; spray and pad are our own",
		Sketch:   "One stream of dry air, three ways to bring water in.",
		Given:    humidifyingGiven(),
		Assumes:  []string{"The spray evaporates wholly; the pad brings the air three quarters of the way to its wet bulb."},
		Change:   []string{"Steam at 120 °C instead of 110 °C: the air is hardly warmer, since the heat is nearly all the heat of evaporation.", "A drier wet bulb lets the pad cool more."},
		Code:     "solveHumidifying",
		Solve:    solveHumidifying,
	}
}

func humidifyingGiven() []Given {
	return []Given{
		{"m", "dry air that flows", "kg/s", 2, 0.1, 100},
		{"t", "its temperature", "°C", 20, 15, 35},
		{"t_w", "its wet bulb", "°C", 8, 7, 14},
		{"t_s", "temperature of the steam", "°C", 110, 100, 120},
	}
}

func solveHumidifying(v []float64) (r Result, err error) {
	const p = 101325.0
	in, err := psychro.FromWetBulb(v[1], v[2], p)
	if err != nil {
		return r, err
	}
	stream := psychro.Stream{State: in, DryAir: v[0]}
	goal, err := psychro.FromDewPoint(v[1], 13, p)
	if err != nil {
		return r, err
	}
	water := stream.DryAir * (goal.HumidityRatio() - in.HumidityRatio())
	r.Lines = []string{fmt.Sprintf("before  %.2f °C  W %.5f kg/kg  wet bulb %.2f °C", in.Temperature(), in.HumidityRatio(), in.WetBulb())}
	show := func(name string, s psychro.State, water float64, err error) {
		r.Lines = append(r.Lines, fmt.Sprintf("%-7s %.2f °C  W %.5f kg/kg  wet bulb %.2f °C  %.4f kg/s %v", name, s.Temperature(), s.HumidityRatio(), s.WetBulb(), water, err))
	}
	steam, err := stream.Changed(0, water, psychro.SteamEnthalpy(v[3]))
	if err != nil {
		return r, err
	}
	show("steam", steam.Air.State, water, err)
	sprayed := 0.003 * stream.DryAir
	spray, err := stream.Changed(0, sprayed, psychro.LiquidEnthalpy(in.WetBulb()))
	if err != nil {
		return r, err
	}
	show("spray", spray.Air.State, sprayed, err)
	pad, err := stream.Pad(0.75)
	if err != nil {
		return r, err
	}
	show("pad", pad.Out.State, pad.Evaporated, err)
	after := steam.Air.State
	r.Steps = []Step{
		{Says: "Steam for a dew point of 13 °C.", Formula: "m_w = m (W_2 - W_1)", Source: "balance of water", Values: numbers{"m": v[0], "W_2": goal.HumidityRatio(), "W_1": in.HumidityRatio()}, Value: water, Unit: "kg/s"},
		{Says: "Enthalpy of the steam.", Formula: "h_g = 2501 + 1.86 t_s", Source: "HoF17 ch. 1 eq. 29", Values: numbers{"t_s": v[3]}, Value: psychro.SteamEnthalpy(v[3]) / 1000, Unit: "kJ/kg", Figures: 5, Within: 6e-3, Why: "a constant heat capacity; the library's grows with temperature"},
		{Says: "Enthalpy of the air afterwards.", Formula: "h_2 = h_1 + m_w h_g/m", Source: "HoF17 ch. 1 example 5", Values: numbers{"h_1": in.Enthalpy() / 1000, "m_w": water, "h_g": psychro.SteamEnthalpy(v[3]) / 1000, "m": v[0]}, Value: after.Enthalpy() / 1000, Unit: "kJ/kg"},
		{Says: "Its temperature, from enthalpy and humidity.", Formula: "t_2 = (h_2 - 2501 W_2)/(1.006 + 1.86 W_2)", Source: "HoF17 ch. 1 eq. 30", Values: numbers{"h_2": after.Enthalpy() / 1000, "W_2": after.HumidityRatio()}, Value: after.Temperature(), Unit: "°C",
			Within: 0.01, Why: "the ideal form; the library's air is a real gas"},
		{Says: "After the pad: three quarters of the way from the air to its wet bulb.", Formula: "t_3 = t - 0.75 (t - t_w)", Values: numbers{"t": v[1], "t_w": in.WetBulb()}, Value: pad.Out.State.Temperature(), Unit: "°C"},
	}
	r.Printed = "for the steam, 21 °C off the handbook's chart; ChemicaLogic computes 21.14 °C and 0.0151 kg/s."
	r.Picture, err = airChart("Humidifying on the chart", "Steam goes almost straight up; spray and pad go up and to the left along the same slant.", "Steam brings its own heat; a spray or a pad takes it from the air.", p, airOf("steam", after), airOf("dry air", in), airOf("spray", spray.Air.State), airOf("pad", pad.Out.State))
	return r, err
}
