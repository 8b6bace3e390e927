package figures

import (
	"fmt"

	"cloche.example/ventilation"
)

func shadePlaces() Figure {
	return Figure{
		Name: "shade", Title: "A shade outside, on or under the cover", Subject: "summer", Package: "ventilation", Example: "Example_shading",
		Question: "The same shade in three places lets the same light in. How much of the sun's heat comes in with it?",
		Sketch:   "Sun, cover, crop; a shade above the cover, on it as whitewash, or below it as a screen. What a shade absorbs outside is blown away; inside it warms the house.",
		Given: []Given{
			{"τ_s", "light through the shade", "fraction", 0.5, 0.05, 0.95},
			{"ρ_s", "reflected by the shade", "fraction", 0.25, 0, 0.9},
			{"τ_c", "light through the cover", "fraction", 0.8, 0.3, 0.95},
			{"U", "heat through the cover", "W/(m² K)", 5.8, 1, 10},
		},
		Assumes: []string{"One band of light, diffuse; the cover reflects 0.10; 23 W/(m² K) at its outside."},
		Change:  []string{"A shade that reflects all it does not pass: its place hardly matters any more."},
		Code:    "solveShade",
		Solve:   solveShade,
	}
}

func solveShade(v []float64) (r Result, err error) {
	switch {
	case v[0]+v[1] > 1:
		return r, fmt.Errorf("light through the shade and reflected by the shade: together more than 1")
	case v[2] > 0.9:
		return r, fmt.Errorf("light through the cover: more than 0.9, and it reflects 0.1 besides")
	}
	s := ventilation.Shade{
		Layer: ventilation.Optics{Transmittance: v[0], Reflectance: v[1]}, Drawn: 1,
		Cover: ventilation.Optics{Transmittance: v[2], Reflectance: 0.10}, U: v[3], Outside: 23,
	}
	r.Lines = []string{"place            light in  reflected  to outside  heat in  of the bare house's"}
	r.Steps = []Step{{Says: "Light through shade and cover, thrown to and fro between them.", Formula: "τ = τ_s τ_c/(1 - ρ_s 0.10)", Values: numbers{"τ_s": v[0], "τ_c": v[2], "ρ_s": v[1]}}}
	var rows []bar
	for place, name := range []string{"screen outside", "whitewash", "screen inside"} {
		s.Place = ventilation.ShadePlace(place)
		b, err := s.Balance()
		if err != nil {
			return r, err
		}
		in := b.Transmitted + b.CoverInward + b.ShadeInward
		r.Lines = append(r.Lines, fmt.Sprintf("%-15s  %8.3f  %9.3f  %10.3f  %7.3f  %6.3f", name, b.Transmitted, b.Reflected, b.ToOutside, in, b.InwardFactor))
		if place == 0 {
			r.Steps[0].Value = b.Transmitted
		}
		r.Steps = append(r.Steps, Step{Says: "All heat that comes in, as a share of the sun: " + name + ".", Formula: "g = τ + c + s", Values: numbers{"τ": b.Transmitted, "c": b.CoverInward, "s": b.ShadeInward}, Value: in})
		rows = append(rows, bar{name + ", light", b.Transmitted}, bar{name + ", heat", in})
	}
	r.Picture = bars("Light and heat that come in", "Pairs of bars for three places of the shade: the light is the same, the heat grows from outside to inside.", "%.2f", "Shares of the sun on the house.", rows...)
	return r, nil
}
