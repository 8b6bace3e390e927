package figures

import (
	"fmt"

	"cloche.example/ventilation"
)

func grassDay() Figure {
	return Figure{
		Name: "grass", Title: "Water that a day takes from grass", Subject: "moisture and crop", Package: "ventilation", Example: "Example_referenceEvapotranspiration",
		Question: "How much water does a day of known weather take from short grass?",
		Source:   "FAO56, example 18",
		Sketch:   "Grass under sun and wind: a part of the water goes with the radiation, a part with the dryness of the air.",
		Given: []Given{
			{"t_1", "lowest temperature", "°C", 12.3, -5, 30},
			{"t_2", "highest temperature", "°C", 21.5, 5, 45},
			{"R_s", "radiation of the day", "MJ/m²", 22.07, 1, 30},
			{"u_10", "wind 10 m above ground", "km/h", 10, 0, 60},
		},
		Assumes: []string{"Humidity of 63 and 84 %, a clear sky of 30.90 MJ/m², 100,100 Pa, grass of 0.12 m that does not lack water. The last five lines are other problems of the same paper."},
		Change:  []string{"No wind: what is left is nearly all by radiation."},
		Code:    "solveGrassDay",
		Solve:   solveGrassDay,
	}
}

func solveGrassDay(v []float64) (r Result, err error) {
	if v[1] < v[0] {
		return r, fmt.Errorf("the highest temperature is below the lowest")
	}
	wind := ventilation.FAO56WindAtTwoMetres(v[3]/3.6, 10)
	g, err := ventilation.GrassDay{
		Lowest: v[0], Highest: v[1], LeastHumidity: 0.63, MostHumidity: 0.84,
		Solar: v[2] * 1e6, ClearSky: 30.90e6, Wind: wind, Pressure: 100100,
	}.Grass()
	if err != nil {
		return r, err
	}
	e, err := g.Day()
	if err != nil {
		return r, err
	}
	h, err := ventilation.GrassHour{Temperature: 38, Humidity: 0.52, Solar: 2.450e6, Clearness: 0.922, Daylight: true, Wind: 3.3, Pressure: 101200}.Grass()
	if err != nil {
		return r, err
	}
	hour, err := h.Hour()
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("wind at 2 m        u 4.87/ln(67.8 z - 5.42)  %.3f m/s", g.Wind),
		fmt.Sprintf("saturation         mean of the two ends      %.0f Pa", g.Saturation),
		fmt.Sprintf("vapour pressure                              %.0f Pa", g.Vapour),
		fmt.Sprintf("net radiation      Rns - Rnl                 %.2f MJ/m²", g.Net/1e6),
		fmt.Sprintf("slope, psychrometric constant                %.0f Pa/K, %.1f Pa/K", e.Slope, e.Psychro),
		fmt.Sprintf("ETo                radiation + dryness       %.2f + %.2f = %.2f mm", e.Radiation, e.Dryness, e.ETo),
		fmt.Sprintf("an hour, example 19                          %.2f mm", hour.ETo),
		fmt.Sprintf("vapour pressure from two bulbs, example 4    %.0f Pa", ventilation.FAO56VapourFromBulbs(25.6, 19.5, 87900)),
		fmt.Sprintf("sun from the temperatures, example 15        %.1f MJ/m²", ventilation.FAO56SolarFromTemperature(14.8, 26.6, 40.6e6, false)/1e6),
		fmt.Sprintf("heat into the ground of April, example 13    %.2f MJ/m²", ventilation.FAO56SoilHeatMonth(14.1, 18.8)/1e6),
		fmt.Sprintf("the same with April's own mean               %.2f MJ/m²", ventilation.FAO56SoilHeatMonthSoFar(14.1, 16.1)/1e6),
	}
	r.Printed = "3.9 mm for the day."
	t := (v[0] + v[1]) / 2
	r.Steps = []Step{
		{Says: "Wind at 2 m.", Formula: "u_2 = u_10/3.6 · 4.87/ln(67.8 · 10 - 5.42)", Source: "FAO56 eq. 47", Values: numbers{"u_10": v[3]}, Value: wind, Unit: "m/s"},
		{Says: "Saturation, the mean of both temperatures' own.", Formula: "e_s = 610.8 (exp(17.27 t_1/(t_1 + 237.3)) + exp(17.27 t_2/(t_2 + 237.3)))/2", Source: "FAO56 eqs. 11, 12", Values: numbers{"t_1": v[0], "t_2": v[1]}, Value: g.Saturation, Unit: "Pa"},
		{Says: "Net radiation: what is taken of the sun less what goes back as heat.", Symbol: "R_n", Source: "FAO56 eqs. 38 to 40", Value: g.Net / 1e6, Unit: "MJ/m²"},
		{Says: "By radiation.", Formula: "E_r = 0.408 Δ R_n/(Δ + γ (1 + 0.34 u_2))", Source: "FAO56 eq. 6", Values: numbers{"Δ": e.Slope, "γ": e.Psychro, "u_2": wind, "R_n": g.Net / 1e6}, Value: e.Radiation, Unit: "mm"},
		{Says: "By the dryness of the air.", Formula: "E_d = γ 900/(t + 273) u_2 (e_s - e_a)/1000/(Δ + γ (1 + 0.34 u_2))", Source: "FAO56 eq. 6", Values: numbers{"Δ": e.Slope, "γ": e.Psychro, "u_2": wind, "t": t, "e_s": g.Saturation, "e_a": g.Vapour}, Value: e.Dryness, Unit: "mm"},
		{Says: "Together.", Formula: "ET_o = E_r + E_d", Values: numbers{"E_r": e.Radiation, "E_d": e.Dryness}, Value: e.ETo, Unit: "mm"},
	}
	r.Picture = bars("A day's water, by its two parts", "Three bars: by radiation, by dryness, together.", "%.2f mm", "A millimetre is a litre on each square metre.", bar{"by radiation", e.Radiation}, bar{"by dryness", e.Dryness}, bar{"together", e.ETo})
	return r, nil
}
