package figures

import (
	"fmt"

	"cloche.example/envelope"
	"cloche.example/examples/internal/page"
)

func sealedGlazing() Figure {
	return Figure{
		Name: "declared-glazing", Title: "Double glazing by declared values", Subject: "covers", Package: "envelope", Example: "Example_doubleGlazing",
		Question: "A pane of 4-12-4 with air is declared with a U-value of 2.8. Where does the number come from?",
		Source:   "EnGlass11 (EN 673), trade tables of double glazing",
		Sketch:   "Two panes, a still gap between, and the two surface resistances that the standard sets.",
		Given:    sealedGiven(),
		Assumes:  []string{"The standard's boundary conditions: 283 K in the mean, 15 K across the space, upright."},
		Change:   []string{"Coat one face (an emittance of 0.04): the radiation all but goes, and the gas begins to count.", "Argon alone, without a coating, gains little."},
		Code:     "solveSealedGlazing",
		Solve:    solveSealedGlazing,
	}
}

func sealedGiven() []Given {
	return []Given{
		{"s", "width of the space", "m", 0.012, 0.004, 0.03},
		{"d", "thickness of each pane", "m", 0.004, 0.002, 0.02},
		{"ε_1", "emittance of the outer pane in the space", "fraction", 0.837, 0.02, 0.95},
		{"ε_2", "emittance of the inner pane in the space", "fraction", 0.837, 0.02, 0.95},
		{"x", "share of argon in the second filling", "fraction", 0.9, 0, 1},
	}
}

func solveSealedGlazing(v []float64) (res Result, err error) {
	unit := envelope.DefaultSealedUnit()
	unit.Glass = []float64{v[1], v[1]}
	gas := envelope.AirFilling()
	unit.Spaces = []envelope.SealedSpace{{Width: v[0], Gas: gas, Emittance: [2]float64{v[2], v[3]}}}
	r, err := unit.Solve()
	if err != nil {
		return res, err
	}
	unit.Spaces[0].Gas = envelope.MixGas(envelope.ArgonFilling(), gas, v[4])
	argon, err := unit.Solve()
	if err != nil {
		return res, err
	}
	declared := fmt.Sprintf("declared                       %.1f", r.U)
	res.Lines = []string{
		fmt.Sprintf("Double glazing %.3g-%.3g-%.3g, air, 283 K, 15 K across the space (EN 673)", 1000*v[1], 1000*v[0], 1000*v[1]),
		fmt.Sprintf("radiation in the space     hr  %.3f W/(m² K)   eq. 4", r.HRad[0]),
		fmt.Sprintf("Nusselt number             Nu  %.3f            eq. 7", r.Nusselt[0]),
		fmt.Sprintf("gas in the space           hg  %.3f W/(m² K)   eq. 6", r.HGas[0]),
		fmt.Sprintf("space                      R   %.4f m² K/W", r.RSpaces[0]),
		fmt.Sprintf("glass, 2 × %.3g mm            R   %.4f m² K/W     eq. 2", 1000*v[1], r.RGlass),
		fmt.Sprintf("surfaces                   R   %.4f m² K/W", unit.ROut+unit.RIn),
		fmt.Sprintf("thermal transmittance      U   %.3f W/(m² K)   eq. 1", r.U),
		declared + said(sealedGiven(), v, "; the tables print 2.8"),
		fmt.Sprintf("with %.0f %% of argon         U   %.3f W/(m² K)", 100*v[4], argon.U),
	}
	res.Steps = []Step{
		{Says: "Radiation between the two faces.", Formula: "h_r = 4 σ T_m^3/(1/ε_1 + 1/ε_2 - 1)", Source: "EnGlass11 eq. 4", Values: numbers{"σ": 5.67e-8, "T_m": 283, "ε_1": v[2], "ε_2": v[3]}, Value: r.HRad[0], Unit: "W/(m² K)", Within: 2e-3, Why: "the standard's mean is 10 °C, which it calls 283 K"},
		{Says: "Whether the gas turns: at Nu = 1 it only conducts.", Symbol: "Nu", Source: "EnGlass11 eq. 7", Value: r.Nusselt[0]},
		{Says: "The gas.", Formula: "h_g = Nu λ/s", Source: "EnGlass11 eq. 6", Values: numbers{"Nu": r.Nusselt[0], "λ": gas.Conductivity, "s": v[0]}, Value: r.HGas[0], Unit: "W/(m² K)"},
		{Says: "Resistance of the space.", Formula: "R_s = 1/(h_r + h_g)", Source: "EnGlass11 eq. 3", Values: numbers{"h_r": r.HRad[0], "h_g": r.HGas[0]}, Value: r.RSpaces[0], Unit: "m² K/W"},
		{Says: "Resistance of the glass.", Formula: "R_g = 2 d/λ_g", Source: "EnGlass11 eq. 2", Values: numbers{"d": v[1], "λ_g": unit.Conductivity}, Value: r.RGlass, Unit: "m² K/W"},
		{Says: "The U-value, with the surfaces.", Formula: "U = 1/(R_e + R_g + R_s + R_i)", Source: "EnGlass11 eq. 1", Values: numbers{"R_e": unit.ROut, "R_g": r.RGlass, "R_s": r.RSpaces[0], "R_i": unit.RIn}, Value: r.U, Unit: "W/(m² K)"},
	}
	res.Printed = "2.8 W/(m² K), as the tables of the trade declare it."
	carries := "Radiation carries more through the gap than the air does."
	if r.HRad[0] < r.HGas[0] {
		carries = "The air carries more through the gap than radiation does."
	}
	d := page.NewDrawing(0, 0, 420, 150, 420)
	fill := page.Stroke{Width: 0.8, Fill: "var(--soft)"}
	d.Polygon(fill, 150, 10, 165, 10, 165, 130, 150, 130)
	d.Polygon(fill, 245, 10, 260, 10, 260, 130, 245, 130)
	d.Text(page.End, 140, 95, "inside surface")
	d.Text(page.End, 140, 78, fmt.Sprintf("R %.2f", unit.RIn))
	d.Text(page.Middle, 205, 95, fmt.Sprintf("gap R %.3f", r.RSpaces[0]))
	d.Text(page.Start, 270, 95, "outside surface")
	d.Text(page.Start, 270, 78, fmt.Sprintf("R %.2f", unit.ROut))
	d.Line(page.Stroke{Width: 2, Color: css(page.PenOf(1).Color), Arrow: true}, 168, 60, 242, 60)
	d.Text(page.Middle, 205, 65, fmt.Sprintf("hr %.2f", r.HRad[0]))
	d.Line(page.Stroke{Width: 2, Color: css(page.PenOf(0).Color), Arrow: true}, 168, 30, 242, 30)
	d.Text(page.Middle, 205, 35, fmt.Sprintf("hg %.2f", r.HGas[0]))
	d.Text(page.Middle, 205, 138, fmt.Sprintf("glass, both panes R %.3f", r.RGlass))
	res.Picture = drawn(d, "Resistances of the glazing", "A section of two panes with the resistances of surfaces, glass and gap; in the gap radiation and gas run side by side.", carries)
	return res, nil
}
