package figures

import (
	"fmt"

	"cloche.example/airheat"
)

func flueLoss() Figure {
	return Figure{
		Name: "flue-loss", Title: "The flue loss of an oil heater", Subject: "heater and fuel", Package: "airheat", Example: "Example_flueLossBothWays",
		Question: "How much of the oil's heat leaves through the flue, on either heating value, and what does the inspector's short form say?",
		Sketch:   "Hot gas leaves with the fuel's water as vapour. The lower heating value never counted the vapour's heat, the higher one did.",
		Given: []Given{
			{"O_2", "oxygen in the dry flue gas", "fraction", 0.05, 0.01, 0.12},
			{"t_f", "flue gas", "°C", 180, 100, 400},
			{"t_a", "air that the fire draws", "°C", 20, -10, 40},
		},
		Assumes: []string{"Complete combustion of light oil; the constants of the short form are from memory."},
		Change:  []string{"More air: the same flue temperature carries more away.", "Cool the flue below its dew point in mind: the latent part would come back."},
		Code:    "solveFlueLoss",
		Solve:   solveFlueLoss,
	}
}

func solveFlueLoss(v []float64) (r Result, err error) {
	oil := airheat.LightOil()
	air := airheat.DefaultCombustionAir()
	o2, flue, room, pressure := v[0], v[1], v[2], 101325.0
	s, err := oil.Stoichiometry(air)
	if err != nil {
		return r, err
	}
	ratio, err := oil.AirRatioFromO2(air, o2)
	if err != nil {
		return r, err
	}
	l, err := oil.FlueLoss(airheat.FlueState{Drawn: air, AirRatio: ratio, AirTemperature: room, FlueTemperature: flue, Pressure: pressure})
	if err != nil {
		return r, err
	}
	short, found := airheat.FindSiegert("light oil")
	if !found {
		return r, fmt.Errorf("no constants for light oil")
	}
	siegert := short.Siegert(flue, room, o2)
	r.Lines = []string{
		fmt.Sprintf("least air              %.2f kg/kg, %.2f m³/kg at 0 °C", s.AirMass, s.AirVolume),
		fmt.Sprintf("greatest CO2           %.2f %% of the dry gas", 100*s.CO2Max),
		fmt.Sprintf("air ratio              %.3f exact, %.3f by 21/(21 - O2)", ratio, airheat.AirRatioRule(o2)),
		fmt.Sprintf("CO2 in the dry gas     %.2f %%", 100*l.Gas.DryCO2),
		fmt.Sprintf("dew point              %.1f °C", l.DewPoint),
		fmt.Sprintf("acid dew point         %.0f °C, with 2 %% of the sulphur as trioxide", l.Gas.AcidDewPoint(pressure, 0.02)),
		fmt.Sprintf("sensible loss          %.3f MJ/kg of oil", l.Sensible/1e6),
		fmt.Sprintf("latent loss            %.3f MJ/kg of oil", l.Latent/1e6),
		fmt.Sprintf("of the lower value     %.2f %%", 100*l.OfLower),
		fmt.Sprintf("of the higher value    %.2f %%", 100*l.OfHigher),
		fmt.Sprintf("Siegert form           %.2f %% of the lower value (constants from memory)", 100*siegert),
		fmt.Sprintf("useful heat either way %.2f and %.2f MJ/kg", (1-l.OfLower)*oil.Lower/1e6, (1-l.OfHigher)*oil.Higher/1e6),
		airheat.CombustionCaution,
	}
	r.Steps = []Step{
		{Says: "Air that the fire draws over the least, from the oxygen left over.", Symbol: "λ", Source: "atoms, IupacAw21", Value: ratio},
		{Says: "The rule of the trade for the same.", Formula: "λ_r = 0.21/(0.21 - O_2)", Values: numbers{"O_2": o2}, Value: airheat.AirRatioRule(o2)},
		{Says: "Heat of the gases above the air, for a kilogram of oil.", Symbol: "q_s", Source: "Janaf98, integrals of the heat capacities", Value: l.Sensible / 1e6, Unit: "MJ/kg"},
		{Says: "As a share of the lower heating value.", Formula: "x_l = q_s/H_l", Values: numbers{"q_s": l.Sensible / 1e6, "H_l": oil.Lower / 1e6}, Value: l.OfLower, Within: 1e-6, Why: "rounding; no water condenses in a flue so hot"},
		{Says: "With the heat of the vapour, as a share of the higher one.", Formula: "x_h = (q_s + q_l)/H_h", Values: numbers{"q_s": l.Sensible / 1e6, "q_l": l.Latent / 1e6, "H_h": oil.Higher / 1e6}, Value: l.OfHigher},
		{Says: "The short form, oxygen in per cent.", Formula: "x_s = (t_f - t_a) (A/(21 - O) + B)/100", Source: "BimschV10, constants from memory", Values: numbers{"t_f": flue, "t_a": room, "A": short.A2, "B": short.B, "O": 100 * o2}, Value: siegert},
	}
	r.Picture, err = chart{title: "Flue loss over the temperature", says: "Two lines that rise with the temperature of the flue; the short form runs close to the exact one.", x: "flue gas, °C", y: "loss, % of the lower value", zero: true, curves: []curve{
		{"exact", along(100, 400, 30, func(t float64) float64 {
			l, err := oil.FlueLoss(airheat.FlueState{Drawn: air, AirRatio: ratio, AirTemperature: room, FlueTemperature: t, Pressure: pressure})
			if err != nil {
				return 0
			}
			return 100 * l.OfLower
		})},
		{"short form", along(100, 400, 30, func(t float64) float64 { return 100 * short.Siegert(t, room, o2) })},
	}, marks: []mark{{"here", flue, 100 * l.OfLower}}}.picture(fmt.Sprintf("Each 20 K at the flue cost %.1f parts in a hundred.", 100*l.OfLower/(flue-room)*20))
	return r, err
}
