package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func heatingAir() Figure {
	return Figure{
		Name: "heating", Title: "Heating cold saturated air", Subject: "moist air", Package: "psychro", Example: "Example_heating",
		Question: "Cold air, saturated, passes a heater. What heat does it take to the outlet's temperature?",
		Source:   "HoF17 ch. 1 example 2 (from memory)",
		Sketch:   "A stream of cold moist air and a hot coil; no water is added or taken.",
		Given:    heatingGiven(),
		Assumes:  []string{"The humidity ratio stays; the pressure falls too little to count."},
		Change:   []string{"Drier air in: the heat hardly changes, since the little water only rides along."},
		Code:     "solveHeating",
		Solve:    solveHeating,
	}
}

func heatingGiven() []Given {
	return []Given{
		{"V", "volume flow of the air that enters", "m³/s", 10, 0.01, 100},
		{"t_1", "its temperature", "°C", 2, -20, 20},
		{"φ", "its relative humidity", "fraction", 1, 0.05, 1},
		{"t_2", "temperature of the air that leaves", "°C", 40, 21, 90},
	}
}

func solveHeating(v []float64) (r Result, err error) {
	const p = 101325.0
	in, err := psychro.FromRelativeHumidity(v[1], v[2], p)
	if err != nil {
		return r, err
	}
	stream := psychro.Stream{State: in, DryAir: v[0] / in.SpecificVolume()}
	out, err := psychro.FromHumidityRatio(v[3], in.HumidityRatio(), p)
	if err != nil {
		return r, err
	}
	heat := stream.DryAir * (out.Enthalpy() - in.Enthalpy())
	back, err := stream.Heated(heat)
	if err != nil {
		return r, err
	}
	h1, h2, w := in.Enthalpy()/1000, out.Enthalpy()/1000, in.HumidityRatio()
	const real = "the ideal form; the library's air is a real gas"
	r.Steps = []Step{
		{Says: "Volume of the entering air, for a kilogram of dry air.", Formula: "v_1 = 287.042 (t_1 + 273.15) (1 + 1.607858 W)/p", Source: "HoF17 ch. 1 eq. 26", Values: numbers{"t_1": v[1], "W": w, "p": p}, Value: in.SpecificVolume(), Unit: "m³/kg", Within: 1e-3, Why: real},
		{Says: "Dry air that flows.", Formula: "m = V/v_1", Values: numbers{"V": v[0], "v_1": in.SpecificVolume()}, Value: stream.DryAir, Unit: "kg/s"},
		{Says: "Enthalpy before.", Formula: "h_1 = 1.006 t_1 + W (2501 + 1.86 t_1)", Source: "HoF17 ch. 1 eq. 30", Values: numbers{"t_1": v[1], "W": w}, Value: h1, Unit: "kJ/kg", Within: 0.01, Why: real},
		{Says: "Enthalpy after, with the same water.", Formula: "h_2 = 1.006 t_2 + W (2501 + 1.86 t_2)", Source: "HoF17 ch. 1 eq. 30", Values: numbers{"t_2": v[3], "W": w}, Value: h2, Unit: "kJ/kg", Within: 0.01, Why: real},
		{Says: "The heat.", Formula: "q = m (h_2 - h_1)", Source: "HoF17 ch. 1 example 2", Values: numbers{"m": stream.DryAir, "h_1": h1, "h_2": h2}, Value: heat / 1000, Unit: "kW"},
	}
	r.Lines = []string{
		fmt.Sprintf("volume of the entering air     v1 = %.4f m³/kg", in.SpecificVolume()),
		fmt.Sprintf("dry air                    %.4g/v1  = %.2f kg/s", v[0], stream.DryAir),
		fmt.Sprintf("humidity ratio                 W  = %.5f kg/kg, unchanged", w),
		fmt.Sprintf("enthalpies                 h1, h2 = %.2f, %.2f kJ/kg", h1, h2),
		fmt.Sprintf("heat               m (h2 - h1)    = %.1f kW%s", heat/1000, said(heatingGiven(), v, " (handbook 490)")),
		fmt.Sprintf("and back: %.1f W give %.3f °C, %v", heat, back.State.Temperature(), err),
	}
	r.Printed = "490 kW, read off the handbook's chart."
	r.Picture, err = airChart("Heating on the chart", "A level line from the entering state to the right: warmer, the same water, a lower relative humidity.", "Heating moves air level across the chart: drier to the feel, with the same water in it.", p, airOf("enters", in), airOf("leaves", out))
	return r, err
}
