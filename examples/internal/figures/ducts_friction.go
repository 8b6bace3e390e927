package figures

import (
	"fmt"
	"math"

	"cloche.example/airheat"
)

func friction() Figure {
	return Figure{
		Name: "friction", Title: "Four friction factors", Subject: "ducts and fans", Package: "airheat", Example: "Example_frictionFactors",
		Question: "Colebrook's equation must be solved, others give the friction factor at once. How far are they off?",
		Sketch:   "Air in a duct: laminar, in between, and turbulent.",
		Given: []Given{
			{"ε", "roughness over diameter", "ratio", 0.001, 1e-6, 0.01},
			{"Re", "Reynolds number for the steps", "", 1e5, 1e4, 1e7},
		},
		Assumes: []string{"Between 2300 and 4000 a straight line joins laminar and turbulent flow, a convention."},
		Change:  []string{"A smooth duct: the factor never stops falling. A rough one: it levels off."},
		Code:    "solveFriction",
		Solve:   solveFriction,
	}
}

func solveFriction(v []float64) (r Result, err error) {
	e, re := v[0], v[1]
	for _, re := range []float64{1500, 3000} {
		r.Lines = append(r.Lines, fmt.Sprintf("Re %6.0f  f = %.5f", re, airheat.Friction(re, e)))
	}
	r.Lines = append(r.Lines, "Re          Colebrook  Swamee-Jain  Haaland  Altshul-Tsal")
	for _, re := range []float64{1e4, 1e5, 1e6} {
		r.Lines = append(r.Lines, fmt.Sprintf("%-10.0f  %9.5f  %11.5f  %7.5f  %12.5f", re, airheat.Colebrook(re, e), airheat.SwameeJain(re, e), airheat.Haaland(re, e), airheat.AltshulTsal(re, e)))
	}
	f := airheat.Colebrook(re, e)
	at := numbers{"ε": e, "Re": re, "f": f}
	r.Steps = []Step{
		{Says: "Laminar flow, at a Reynolds number of 1500.", Formula: "f = 64/Re", Values: numbers{"Re": 1500}, Value: airheat.Friction(1500, e)},
		{Says: "Turbulent: Colebrook's equation, in which the answer stands on both sides.", Formula: "f = (-2 log(ε/3.7 + 2.51/(Re sqrt(f))))^-2", Source: "Cole39 eq. 12", Values: at, Value: f, Within: 2e-4, Why: "the paper's constant is 3.7, its form by Colebrook and White 3.71"},
		{Says: "Swamee and Jain, at once.", Formula: "f = 0.25/(log(ε/3.7 + 5.74/Re^0.9))^2", Source: "SwaJai76 eq. 3", Values: at, Value: airheat.SwameeJain(re, e)},
		{Says: "Haaland, at once.", Formula: "f = (1.8 log((ε/3.7)^1.11 + 6.9/Re))^-2", Source: "Haal83 eq. 8", Values: at, Value: airheat.Haaland(re, e)},
	}
	off := func(rival func(re, e float64) float64) curve {
		return curve{"", along(4, 7, 60, func(x float64) float64 { q := math.Pow(10, x); return 100 * (rival(q, e)/airheat.Colebrook(q, e) - 1) })}
	}
	a, b, c := off(airheat.SwameeJain), off(airheat.Haaland), off(airheat.AltshulTsal)
	a.name, b.name, c.name = "Swamee-Jain", "Haaland", "Altshul-Tsal"
	r.Picture, err = charts("Friction factor over the Reynolds number", "Above, the factor: it falls, jumps up at the turn to turbulent flow and falls again. Below, how far three short forms lie off, within a few per cent.", "The factor, and how far the short forms lie off.",
		chart{title: "factor", x: "logarithm of the Reynolds number", y: "friction factor", high: 190, curves: []curve{{"", along(2.8, 7, 200, func(x float64) float64 { return airheat.Friction(math.Pow(10, x), e) })}}},
		chart{title: "difference", x: "logarithm of the Reynolds number", y: "off by, %", high: 200, curves: []curve{a, b, c}})
	return r, err
}
