package figures

import (
	"fmt"

	"cloche.example/envelope"
)

func wetOrDry() Figure {
	return Figure{
		Name: "wet-or-dry", Title: "The same cover, wet or dry", Subject: "covers", Package: "envelope", Example: "Example_wetOrDry",
		Question: "Does water on the inner face make a cover lose more or less?",
		Sketch:   "Water closes a clear film to long-wave radiation, so the film loses less by radiation; it brings latent heat to glass, which was opaque before, so glass loses more.",
		Given: []Given{
			{"t_i", "inside air", "°C", 15, 5, 35},
			{"φ", "relative humidity inside", "fraction", 0.9, 0.3, 1},
			{"t_o", "outside air", "°C", -5, -25, 4},
			{"ΔT_s", "sky below the outside air", "K", 17, 0, 35},
			{"v", "wind at the cover", "m/s", 2, 0, 15},
		},
		Assumes: []string{"A roof of 30 degree; the wet face is covered by water and takes up what condenses."},
		Change:  []string{"Dry the house to 50 %: the latent heat falls to a quarter, the closing of the film stays.", "An overcast sky: the film's gain by wetness is gone, the glass's loss stays."},
		Code:    "solveWetOrDry",
		Solve:   solveWetOrDry,
	}
}

func solveWetOrDry(v []float64) (r Result, err error) {
	k := envelope.DefaultCoverConditions()
	k.Inside, k.InsideHumidity = v[0], v[1]
	k.Outside, k.SkyDrop, k.Wind = v[2], v[3], v[4]
	r.Lines = []string{
		fmt.Sprintf("%g °C and %.0f %% inside, %g °C outside, sky %g °C, %g m/s; W/m²", v[0], 100*v[1], v[2], v[2]-v[3], v[4]),
		"cover         face   total  convection  long-wave  latent   litres/(h 100 m²)",
	}
	var rows []bar
	var wet envelope.Solution
	for _, c := range []struct {
		name  string
		cover envelope.Cover
	}{{"clear film", envelope.SingleFilm()}, {"glass", envelope.SingleGlass()}} {
		for _, face := range []envelope.InnerFace{envelope.InnerDry, envelope.InnerWet} {
			k.InnerFace = face
			s, err := c.cover.Solve(k)
			if err != nil {
				return r, err
			}
			word := "dry"
			if s.WetShare > 0 {
				word = "wet"
			}
			r.Lines = append(r.Lines, fmt.Sprintf("%-12s  %s  %6.1f  %10.1f  %9.1f  %6.1f  %6.1f", c.name, word,
				s.FluxIn, s.InConvective, s.InRadiative, s.InLatent, s.Condensate*3600*100))
			rows = append(rows, bar{c.name + ", " + word, s.FluxIn})
			if c.name == "glass" {
				wet = s
			}
		}
	}
	latent := 0.0
	if wet.Condensate != 0 {
		latent = wet.InLatent / wet.Condensate
	}
	r.Steps = []Step{
		{Says: "Wet glass: the face at which its heat balances.", Symbol: "t_f", Source: "IsoWin03 8.3 with a wet face, solved", Value: wet.Inner[0].Temperature, Unit: "°C"},
		{Says: "Convection to it.", Formula: "q_c = h_i (t_i - t_f)", Source: "IsoWin03 eq. 131-138 for the coefficient", Values: numbers{"h_i": wet.InsideCoefficient, "t_i": v[0], "t_f": wet.Inner[0].Temperature}, Value: wet.InConvective, Unit: "W/m²", Within: 1e-6, Why: "rounding"},
		{Says: "Water that condenses, by the Lewis relation.", Symbol: "m", Source: "ChiCol34", Value: wet.Condensate, Unit: "kg/(m² s)"},
		{Says: "Heat that it sets free.", Formula: "q_l = m L", Values: numbers{"m": wet.Condensate, "L": latent}, Value: wet.InLatent, Unit: "W/m²"},
		{Says: "All that leaves the house through wet glass.", Formula: "q = q_c + q_r + q_l", Values: numbers{"q_c": wet.InConvective, "q_r": wet.InRadiative, "q_l": wet.InLatent}, Value: wet.FluxIn, Unit: "W/m²"},
	}
	r.Picture = bars("Heat through the cover", "Four bars: film dry and wet, glass dry and wet.", "%.0f W/m²", "Under a cold sky wetness helps the film and harms the glass.", rows...)
	return r, nil
}
