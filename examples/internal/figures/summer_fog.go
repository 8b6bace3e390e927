package figures

import (
	"fmt"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func fogAndWhitening() Figure {
	return Figure{
		Name: "fog", Title: "Fog in the air, white on the cover", Subject: "summer", Package: "ventilation", Example: "Example_fogAndWhitening",
		Question: "Fine drops are sprayed into the air that passes a house, and its cover is whitened. What does each do to the heat?",
		Sketch:   "Drops take their heat of evaporation from the air, which goes along its wet bulb towards saturation; drops that do not evaporate fall. White paint sends light back before it warms anything.",
		Given: []Given{
			{"t_o", "air that passes", "°C", 34, 15, 45},
			{"φ_o", "its humidity", "fraction", 0.35, 0.05, 0.95},
			{"m", "of dry air", "kg/s", 3, 0.2, 30},
			{"m_w", "water sprayed", "g/s", 15, 0.1, 200},
			{"f", "of it evaporates", "fraction", 0.6, 0.05, 1},
			{"τ_b", "light through cover and white", "fraction", 0.31, 0.15, 0.55},
		},
		Assumes: []string{"Water of 18 °C, 97,300 Pa. A cover that passes 0.62 and reflects 0.12, white that absorbs a tenth, 800 W/m² on 95 m²; 0.62 and 0.31 were measured on a whitened glasshouse [Baille01]."},
		Change:  []string{"Spray four times as much: the air saturates, and the rest drips on the crop.", "On a damp day, 70 %, the same spray saturates the air after 5 K, and more than half of it drips."},
		Code:    "solveFogAndWhitening",
		Solve:   solveFogAndWhitening,
	}
}

func solveFogAndWhitening(v []float64) (r Result, err error) {
	air, err := psychro.FromRelativeHumidity(v[0], v[1], 97300)
	if err != nil {
		return r, err
	}
	passing := psychro.Stream{State: air, DryAir: v[2]}
	fog, err := ventilation.Fogging{Spray: v[3] / 1000, Evaporates: v[4], Water: 18}.Into(passing)
	if err != nil {
		return r, err
	}
	r.Lines = []string{fmt.Sprintf("fog          %.1f K cooler, %.0f %% of the way to saturation, %.1f kg/h drip", fog.Fall, 100*fog.Efficiency, 3600*fog.Dripped)}
	cover := ventilation.Optics{Transmittance: 0.62, Reflectance: 0.12}
	layer, err := ventilation.LayerFor(cover, v[5], 0.1)
	if err != nil {
		return r, err
	}
	b, err := ventilation.Shade{Place: ventilation.Whitewash, Layer: layer, Drawn: 1, Cover: cover, U: 5.8, Outside: 23}.Balance()
	if err != nil {
		return r, err
	}
	s := b.Apply(ventilation.Setting{Opening: 1}, 800, 95)
	r.Lines = append(r.Lines,
		fmt.Sprintf("whitening    transmits %.2f, reflects %.2f: light %.2f of the bare cover's", layer.Transmittance, layer.Reflectance, b.Factor),
		fmt.Sprintf("as a Setting shade %.2f, heat %+.0f W at 800 W/m²", s.Shade, s.Heat))
	full, err := ventilation.Fogging{Spray: fog.Limit, Evaporates: 1, Water: 18}.Into(passing)
	if err != nil {
		return r, err
	}
	r.Steps = []Step{
		{Says: "Water that the air takes: what evaporates, or what saturates it.", Formula: "E = min(f m_w, E_s)", Values: numbers{"f": v[4], "m_w": v[3], "E_s": 1000 * fog.Limit}, Value: 1000 * fog.Evaporated, Unit: "g/s"},
		{Says: "Enthalpy of the air after it: its own and that of the water.", Formula: "h = h_o + E h_w/m", Source: "HoF17 ch. 1", Values: numbers{"h_o": air.Enthalpy() / 1000, "E": fog.Evaporated, "h_w": psychro.LiquidEnthalpy(18) / 1000, "m": v[2]}, Value: fog.Air.Enthalpy() / 1000, Unit: "kJ/kg", Within: 1e-6, Why: "saturated air is found by search"},
		{Says: "Its temperature, from enthalpy and water.", Symbol: "t", Value: fog.Air.Temperature(), Unit: "°C"},
		{Says: "Of the way to saturation.", Formula: "η = (t_o - t)/(t_o - t_s)", Values: numbers{"t_o": v[0], "t": fog.Air.Temperature(), "t_s": full.Air.Temperature()}, Value: fog.Efficiency, Within: 1e-6, Why: "saturated air is found by search"},
		{Says: "The white layer, from what it leaves of the cover's light.", Formula: "τ = τ_b (1 - (1 - 0.1) 0.12)/(0.62 - τ_b 0.12)", Values: numbers{"τ_b": v[5]}, Value: layer.Transmittance},
		{Says: "Sun kept out by it, beside the bare cover.", Formula: "s = 1 - τ_b/0.62", Values: numbers{"τ_b": v[5]}, Value: s.Shade},
		{Says: "Heat of white and cover that comes in none the less.", Formula: "Q = 800 · 95 (c - c_b (1 - s))", Values: numbers{"c": b.CoverInward, "c_b": b.BareInward, "s": s.Shade}, Value: s.Heat, Unit: "W"},
	}
	r.Picture, err = airChart("Path of the fogged air", "On the moist-air chart the air goes along its wet bulb, a part of the way to saturation.", "What is left of the way is what more fog could do; then it drips.", 97300, airOf("outside", air), airOf("fogged", fog.Air), airOf("saturated", full.Air))
	return r, err
}
