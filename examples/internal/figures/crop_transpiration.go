package figures

import (
	"fmt"
	"math"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func transpiration() Figure {
	return Figure{
		Name: "transpiration", Title: "What a crop transpires", Subject: "moisture and crop", Package: "ventilation", Example: "Example_transpiration",
		Question: "Sun falls on a crop in air of known warmth and humidity. How warm do the leaves become, and how much water do they give off?",
		Sketch:   "Leaves take sun, and lose it as warmth to the air, as vapour through their stomata and as heat radiation. Their own temperature settles where the three make up for the sun.",
		Given: []Given{
			{"t", "air", "°C", 25, 8, 40},
			{"φ", "humidity", "fraction", 0.6, 0.2, 0.95},
			{"I", "sun above the crop", "W/m²", 400, 20, 900},
			{"L", "leaf area over floor area", "", 2.5, 0.3, 8},
		},
		Assumes: []string{"A tomato's stomata and leaves of 0.05 m in air of 0.09 m/s, both from memory; surroundings as warm as the air, 101,325 Pa. Penman-Monteith gets the resistances and the net radiation of those leaves, so that the two differ by its straight saturation line alone."},
		Change:  []string{"Dry the air to 0.3, to nearly twice the deficit: the crop gives off a good third more, and its leaves are colder than the air.", "No more than 50 W/m² of sun: the leaves are colder than the air and live on its heat."},
		Code:    "solveTranspiration",
		Solve:   solveTranspiration,
	}
}

func solveTranspiration(v []float64) (r Result, err error) {
	air, err := psychro.FromRelativeHumidity(v[0], v[1], 101325)
	if err != nil {
		return r, err
	}
	crop := ventilation.DefaultCanopy(v[3])
	s, err := crop.Solve(air, v[2], v[0], 0.8)
	if err != nil {
		return r, err
	}
	leaf := 2 * crop.LAI
	big, err := ventilation.PenmanMonteith(air, s.Sun.Canopy-s.Longwave, s.Boundary/leaf, s.Stomata.Resistance/leaf)
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("sun on the leaves        %.0f of %g W/m²", s.Sun.Canopy, v[2]),
		fmt.Sprintf("resistances on 2 LAI     %.0f s/m of the air, %.0f s/m of the stomata", s.Boundary, s.Stomata.Resistance),
		fmt.Sprintf("leaves                   %.2f °C, sensible %.0f W/m², latent %.0f W/m²", s.Temperature, s.Heat, s.Latent),
		fmt.Sprintf("Penman-Monteith          %.2f °C, sensible %.0f W/m², latent %.0f W/m²", big.Temperature, big.Heat, big.Latent),
		fmt.Sprintf("transpired               %.3f and %.3f kg/(m² h)", 3600*s.Transpired, 3600*big.Transpired),
	}
	net := s.Sun.Canopy - s.Longwave
	r.Steps = []Step{
		{Says: "Sun that the leaves keep: what they catch, less a fifth turned back.", Formula: "S = I (1 - exp(-0.48 L)) (1 - 0.2)", Source: "MonsiSaeki53", Values: numbers{"I": v[2], "L": v[3]}, Value: s.Sun.Canopy, Unit: "W/m²"},
		{Says: "Leaves where the balance closes, found by search.", Symbol: "t_l", Value: s.Temperature, Unit: "°C"},
		{Says: "Resistance of the air at both sides of the leaves, by warmth and draught.", Formula: "r_a = 1174 sqrt(0.05)/(0.05 abs(t_l - t) + 207 · 0.09^2)^0.25", Source: "Stanghellini87, from memory", Values: numbers{"t_l": s.Temperature, "t": v[0]}, Value: s.Boundary, Unit: "s/m"},
		{Says: "And of the stomata: their least by day, times what light, warmth, carbon dioxide and dryness make of it.", Formula: "r_s = d r f_I f_T f_C f_D + (1 - d) r_n", Source: "Stanghellini87, from memory",
			Values: numbers{"d": s.Stomata.Day, "r": s.Stomata.Least, "f_I": s.Stomata.Light, "f_T": s.Stomata.Warmth, "f_C": s.Stomata.Carbon, "f_D": s.Stomata.Deficit, "r_n": s.Stomata.Night}, Value: s.Stomata.Resistance, Unit: "s/m"},
		{Says: "Vapour out of the leaves, by the hour.", Formula: "E = 3600 · 2 L D/(461.52 (t + 273.15) (r_a + r_s))", Source: "Stanghellini87, from memory", Values: numbers{"L": v[3], "D": s.Deficit, "t": v[0], "r_a": s.Boundary, "r_s": s.Stomata.Resistance}, Value: 3600 * s.Transpired, Unit: "kg/(m² h)", Within: 1e-4, Why: "the gas constant of vapour in five digits"},
		{Says: "What is left of the sun warms the air.", Formula: "H = S - R - λE", Values: numbers{"S": s.Sun.Canopy, "R": s.Longwave, "λE": s.Latent}, Value: s.Heat, Unit: "W/m²", Within: 1e-6, Why: "the balance closes to its own tolerance"},
		{Says: "Penman-Monteith: latent heat that the net radiation drives.", Formula: "λE_R = s R_n/(s + γ (1 + r_s/r_a))", Source: "FAO56 eq. 3", Values: numbers{"s": big.Slope, "R_n": net, "γ": big.Psychro, "r_s": s.Stomata.Resistance, "r_a": s.Boundary}, Value: big.Radiation, Unit: "W/m²"},
		{Says: "With what the dryness of the air drives.", Formula: "λE_P = λE_R + λE_D", Values: numbers{"λE_R": big.Radiation, "λE_D": big.Dryness}, Value: big.Latent, Unit: "W/m²"},
	}
	line := func(name string, of func(ventilation.CanopyState) float64) curve {
		return curve{name, along(0, 900, 60, func(sun float64) float64 {
			s, err := crop.Solve(air, sun, v[0], 0.8)
			if err != nil {
				return math.NaN()
			}
			return of(s)
		})}
	}
	r.Picture, err = chart{title: "Where the sun on the leaves goes", says: "Lines over the sun above the crop: what the leaves keep, what goes as vapour, and what warms the air, which is below zero in weak sun.", x: "sun above the crop, W/m²", y: "W/m² of floor", curves: []curve{
		line("kept by the leaves", func(s ventilation.CanopyState) float64 { return s.Sun.Canopy }),
		line("as vapour", func(s ventilation.CanopyState) float64 { return s.Latent }),
		line("as warmth to the air", func(s ventilation.CanopyState) float64 { return s.Heat }),
	}, marks: []mark{{"", v[2], s.Sun.Canopy}, {"", v[2], s.Latent}, {"", v[2], s.Heat}}}.picture("Most of it leaves as vapour; in weak sun the leaves cool the air.")
	return r, err
}
