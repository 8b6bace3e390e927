package figures

import (
	"fmt"

	"cloche.example/envelope"
)

func coatedGlazing() Figure {
	return Figure{
		Name: "coated-glazing", Title: "What a coating and argon are worth", Subject: "covers", Package: "envelope",
		Question: "Coat one face of a double glazing and fill it with argon: how far does the declared U-value fall, and which of the two does it?",
		Source:   "EnGlass11 (EN 673), with trade pages (oikodomisis) that print 2.7 without and 1.1 with both",
		Sketch:   "4-16-4: two panes, 16 mm of gas between, a coating on one face in the gap.",
		Given:    coatedGiven(),
		Assumes:  []string{"The standard's boundary conditions: 283 K in the mean, 15 K across the space, upright; declared to one decimal."},
		Change:   []string{"No argon (a share of 0): see that the coating alone halves the loss. The radiation was the greater leak."},
		Code:     "solveCoatedGlazing",
		Solve:    solveCoatedGlazing,
	}
}

func coatedGiven() []Given {
	return []Given{
		{"s", "width of the space", "m", 0.016, 0.004, 0.03},
		{"ε_2", "emittance of the coated face", "fraction", 0.04, 0.02, 0.837},
		{"x", "share of argon", "fraction", 0.9, 0, 1},
	}
}

func solveCoatedGlazing(v []float64) (res Result, err error) {
	air := envelope.AirFilling()
	argon := envelope.MixGas(envelope.ArgonFilling(), air, v[2])
	solve := func(gas envelope.Gas, emittance float64) (envelope.SealedResult, error) {
		unit := envelope.DefaultSealedUnit()
		unit.Glass = []float64{0.004, 0.004}
		unit.Spaces = []envelope.SealedSpace{{Width: v[0], Gas: gas, Emittance: [2]float64{0.837, emittance}}}
		return unit.Solve()
	}
	var rows []bar
	var all []envelope.SealedResult
	for _, c := range []struct {
		name      string
		gas       envelope.Gas
		emittance float64
	}{{"plain, air", air, 0.837}, {"plain, argon", argon, 0.837}, {"coated, air", air, v[1]}, {"coated, argon", argon, v[1]}} {
		r, err := solve(c.gas, c.emittance)
		if err != nil {
			return res, err
		}
		all = append(all, r)
		rows = append(rows, bar{c.name, r.U})
	}
	print := []string{" (source 2.7)", "", "", " (source 1.1)"}
	for i, b := range rows {
		res.Lines = append(res.Lines, fmt.Sprintf("%-14s hr %.2f  hg %.2f  U %.2f, declared %.1f W/(m² K)%s", b.name, all[i].HRad[0], all[i].HGas[0], b.value, b.value, said(coatedGiven(), v, print[i])))
	}
	both := all[3]
	unit := envelope.DefaultSealedUnit()
	res.Steps = []Step{
		{Says: "Radiation in the coated space.", Formula: "h_r = 4 σ T_m^3/(1/0.837 + 1/ε_2 - 1)", Source: "EnGlass11 eq. 4", Values: numbers{"σ": 5.67e-8, "T_m": 283, "ε_2": v[1]}, Value: both.HRad[0], Unit: "W/(m² K)", Within: 2e-3, Why: "the standard's mean is 10 °C, which it calls 283 K"},
		{Says: "Argon in it.", Formula: "h_g = Nu λ/s", Source: "EnGlass11 eq. 6", Values: numbers{"Nu": both.Nusselt[0], "λ": argon.Conductivity, "s": v[0]}, Value: both.HGas[0], Unit: "W/(m² K)"},
		{Says: "The U-value with both.", Formula: "U = 1/(R_e + R_g + 1/(h_r + h_g) + R_i)", Source: "EnGlass11 eq. 1", Values: numbers{"R_e": unit.ROut, "R_i": unit.RIn, "R_g": both.RGlass, "h_r": both.HRad[0], "h_g": both.HGas[0]}, Value: both.U, Unit: "W/(m² K)"},
	}
	res.Printed = "2.7 W/(m² K) plain with air, 1.1 coated with argon."
	res.Picture = bars("U-values of four glazings", "Four bars: plain with air, plain with argon, coated with air, coated with argon.", "%.2f", "U-values in W/(m² K): compare what the coating does with what argon does.", rows...)
	return res, nil
}
