package figures

import (
	"fmt"
	"math"

	"cloche.example/envelope"
)

func doubleFilm() Figure {
	return Figure{
		Name: "double-film", Title: "Two films, and where they touch", Subject: "covers", Package: "envelope",
		Question: "A blower holds two films apart. What does the air between save, and what is lost where the films lie on each other?",
		Sketch:   "Two films with air between them; on a share of the roof the blower fails and they touch.",
		Given: []Given{
			{"t_i", "inside air", "°C", 15, 5, 30},
			{"t_o", "outside air", "°C", -5, -25, 4},
			{"ΔT_s", "sky below the outside air", "K", 17, 0, 35},
			{"d", "gap between the films", "m", 0.1, 0.005, 0.5},
			{"c", "share of the roof where they touch", "fraction", 0.3, 0, 0.9},
		},
		Assumes: []string{"Clear films of 0.15 mm, a roof of 30 degree, 2 m/s of wind, a dry inner face; 0.1 mm of still air where they touch."},
		Change:  []string{"Any gap from 2 to 50 cm does nearly the same: the air in it turns.", "Let half the roof collapse: a good part of the second film's worth is gone."},
		Code:    "solveDoubleFilm",
		Solve:   solveDoubleFilm,
	}
}

func solveDoubleFilm(v []float64) (r Result, err error) {
	k := envelope.DefaultCoverConditions()
	k.Inside, k.Outside, k.SkyDrop, k.Wind, k.InnerFace = v[0], v[1], v[2], 2, envelope.InnerDry
	film := envelope.SingleFilm().Layers()[0]
	make2 := func(width, share float64) (envelope.Solution, error) {
		gap := envelope.Gap{Width: width}
		if share > 0 {
			gap.Collapsed, gap.CollapsedWidth = share, 1e-4
		}
		c, err := envelope.NewCover([]envelope.Layer{film, film}, []envelope.Gap{gap})
		if err != nil {
			return envelope.Solution{}, err
		}
		return c.Solve(k)
	}
	one, err := envelope.SingleFilm().Solve(k)
	if err != nil {
		return r, err
	}
	two, err := make2(v[3], 0)
	if err != nil {
		return r, err
	}
	touch, err := make2(v[3], v[4])
	if err != nil {
		return r, err
	}
	g := two.Gaps[0]
	r.Lines = []string{
		fmt.Sprintf("one film            %6.1f W/m²  U %.2f, without the sky %.2f W/(m² K)", one.FluxIn, one.U, one.UOvercast),
		fmt.Sprintf("two films           %6.1f W/m²  U %.2f, without the sky %.2f W/(m² K)", two.FluxIn, two.U, two.UOvercast),
		fmt.Sprintf("touching on %2.0f %%    %6.1f W/m²  U %.2f, without the sky %.2f W/(m² K)", 100*v[4], touch.FluxIn, touch.U, touch.UOvercast),
		fmt.Sprintf("air in the gap turns at Ra %.3g with Nu %.2f: %.2f W/(m² K)", g.Rayleigh, g.Nusselt, g.Convection),
	}
	apart := (touch.FluxIn - (1-v[4])*two.FluxIn)
	if v[4] > 0 {
		apart /= v[4]
	}
	r.Steps = []Step{
		{Says: "Air in the gap, by its Nusselt number.", Formula: "h_g = Nu λ/d", Source: "IsoWin03 eq. 42-53", Values: numbers{"Nu": g.Nusselt, "λ": g.Convection * v[3] / g.Nusselt, "d": v[3]}, Value: g.Convection, Unit: "W/(m² K)"},
		{Says: "Heat that it carries from film to film; radiation goes besides.", Formula: "q_g = h_g (t_2 - t_1)", Values: numbers{"h_g": g.Convection, "t_2": two.Outer[1].Temperature, "t_1": two.Inner[0].Temperature}, Value: g.Flux, Unit: "W/m²", Within: 1e-6, Why: "rounding"},
		{Says: "What the second film saves.", Formula: "s = 1 - q_2/q_1", Values: numbers{"q_2": two.FluxIn, "q_1": one.FluxIn}, Value: 1 - two.FluxIn/one.FluxIn},
		{Says: "Where the films touch, they lose almost like one.", Formula: "q = (1 - c) q_2 + c q_t", Values: numbers{"c": v[4], "q_2": two.FluxIn, "q_t": apart}, Value: touch.FluxIn, Unit: "W/m²"},
	}
	over, err := chart{title: "Loss over the share that touches", says: "A line that rises from the loss of two films nearly to that of one.", x: "share that touches, %", y: "loss, W/m²", zero: true, curves: []curve{
		{"two films", along(0, 90, 18, func(c float64) float64 {
			s, err := make2(v[3], c/100)
			if err != nil {
				return math.NaN()
			}
			return s.FluxIn
		})},
		{"one film", straight(0, one.FluxIn, 90, one.FluxIn)},
	}, marks: []mark{{"", 100 * v[4], touch.FluxIn}}}.picture("What the blower is worth.")
	if err != nil {
		return r, err
	}
	section := throughCover("Temperatures through two films", "", two, k)
	r.Picture = Picture{SVG: section.SVG + over.SVG, Caption: "Through the films where they stand apart, and the loss over the share where they touch: what the blower is worth."}
	return r, nil
}
