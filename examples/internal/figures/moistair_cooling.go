package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func coolingCoil() Figure {
	return Figure{
		Name: "cooling", Title: "Cooling with condensate", Subject: "moist air", Package: "psychro", Example: "Example_coolingWithCondensate",
		Question: "Air passes a cold coil and leaves saturated. How much heat does the coil take, and how much of it is the water's?",
		Source:   "HoF17 ch. 1 example 3 (from memory), and ChemicaLogic, MoistAirTab example 4",
		Sketch:   "A stream of warm moist air, a coil, a drain below it.",
		Given:    coolingGiven(),
		Assumes:  []string{"All air that leaves is saturated at the coil's temperature; the condensate leaves at that temperature."},
		Change:   []string{"Enter drier air: below some humidity nothing condenses and the latent heat is nought.", "A warmer coil takes less of the water than of the heat."},
		Code:     "solveCooling",
		Solve:    solveCooling,
	}
}

func coolingGiven() []Given {
	return []Given{
		{"V", "volume flow of the air that enters", "m³/s", 5, 0.01, 100},
		{"t_1", "its temperature", "°C", 30, 15, 50},
		{"φ", "its relative humidity", "fraction", 0.5, 0.1, 1},
		{"t_2", "temperature of the air that leaves", "°C", 10, 1, 14},
	}
}

func solveCooling(v []float64) (r Result, err error) {
	const p = 101325.0
	in, err := psychro.FromRelativeHumidity(v[1], v[2], p)
	if err != nil {
		return r, err
	}
	c, err := psychro.Stream{State: in, DryAir: v[0] / in.SpecificVolume()}.Coil(v[3])
	if err != nil {
		return r, err
	}
	out, m := c.Out.State, c.Out.DryAir
	h1, h2, w1, w2, hw := in.Enthalpy()/1000, out.Enthalpy()/1000, in.HumidityRatio(), out.HumidityRatio(), psychro.LiquidEnthalpy(v[3])/1000
	r.Steps = []Step{
		{Says: "Volume of the entering air, for a kilogram of dry air.", Formula: "v_1 = 287.042 (t_1 + 273.15) (1 + 1.607858 W_1)/p", Source: "HoF17 ch. 1 eq. 26", Values: numbers{"t_1": v[1], "W_1": w1, "p": p}, Value: in.SpecificVolume(), Unit: "m³/kg",
			Within: 1e-3, Why: "the ideal form; the library's air is a real gas"},
		{Says: "Dry air that flows.", Formula: "m = V/v_1", Values: numbers{"V": v[0], "v_1": in.SpecificVolume()}, Value: m, Unit: "kg/s"},
		{Says: "Water that the coil takes out.", Formula: "m_w = m (W_1 - W_2)", Source: "balance of water", Values: numbers{"m": m, "W_1": w1, "W_2": w2}, Value: c.Condensate, Unit: "kg/s"},
		{Says: "Heat that the coil takes: what the air loses, less what the condensate carries off.", Formula: "q = m (h_1 - h_2) - m_w h_w", Source: "balance of enthalpy, HoF17 ch. 1 example 3",
			Values: numbers{"m": m, "h_1": h1, "h_2": h2, "m_w": c.Condensate, "h_w": hw}, Value: c.Heat / 1000, Unit: "kW", Within: 1e-5, Why: "the enthalpy of the condensate is taken at saturation"},
	}
	few, err := psychro.Stream{State: in, DryAir: m}.BypassedCoil(v[3], 0.15)
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("dry air          %8.3f kg/s", m),
		fmt.Sprintf("enthalpies       %8.2f and %.2f kJ/kg", h1, h2),
		fmt.Sprintf("humidity ratios  %8.5f and %.5f kg/kg", w1, w2),
		fmt.Sprintf("condensate       %8.5f kg/s, carries %.2f kW", c.Condensate, c.Drain/1000),
		fmt.Sprintf("sensible heat    %8.1f kW", c.Sensible/1000),
		fmt.Sprintf("latent heat      %8.1f kW", c.Latent/1000),
		fmt.Sprintf("total            %8.1f kW%s", c.Heat/1000, said(coolingGiven(), v, " (chart 197, computed 198.18)")),
		fmt.Sprintf("15 %% past the coil: %.1f kW, out at %.1f °C and %.0f %%", few.Heat/1000, few.Out.State.Temperature(), 100*few.Out.State.RelativeHumidity()),
	}
	r.Printed = "197 kW read off the handbook's chart; 198.18 kW computed by ChemicaLogic."
	corner := airOf("", out)
	if in.Condenses(v[3]) {
		corner = airPoint{"dew point", in.DewPoint(), w1}
	}
	r.Picture, err = airChart("Cooling on the chart", "From the entering air level to saturation, then along saturation down to the coil's temperature.", "First only heat leaves; from the dew point on, water too.", p, airOf("enters", in), corner, airOf("leaves", out))
	return r, err
}
