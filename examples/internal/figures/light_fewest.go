package figures

import (
	"fmt"
	"math"

	"cloche.example/lighting"
)

func fewestFixtures() Figure {
	return Figure{
		Name: "fewest-fixtures", Title: "The fewest fixtures that will do", Subject: "light on the bed", Package: "lighting", Example: "ExampleNeed_Solve",
		Question: "How few fixtures keep a bed bright and even enough until harvest?",
		Sketch:   "A small bed of 5 by 1.6 m; the lamps lose light and gather dirt until harvest, and it must still suffice then.",
		Given: []Given{
			{"E", "PPFD wanted at harvest", "µmol/(m² s)", 120, 20, 400},
			{"U", "least over mean wanted", "fraction", 0.6, 0.1, 0.75},
			{"Φ", "photons of one fixture", "µmol/s", 250, 100, 2000},
			{"β", "beam angle, to half the intensity", "degree", 120, 60, 140},
			{"F_l", "light left by the lamps' age", "fraction", 0.92, 0.6, 1},
			{"F_d", "light left by dirt on the fixtures", "fraction", 0.95, 0.6, 1},
		},
		Assumes: []string{"Heights from 0.6 to 1.4 m, at most 16 fixtures, direct light alone; 92 W for a fixture."},
		Change:  []string{"Ask for 0.75 instead of 0.6: evenness costs lamps, since light must be thrown beside the bed.", "Dirt that takes 40 per cent: twelve fixtures do what eight did."},
		Code:    "solveFewestFixtures",
		Solve:   solveFewestFixtures,
	}
}

func solveFewestFixtures(v []float64) (r Result, err error) {
	light, err := lighting.FromBeamAngle(v[2], v[3])
	if err != nil {
		return r, err
	}
	need := lighting.Need{PPFD: v[0], U0: v[1], Maintenance: lighting.Maintenance{Flux: v[4], Survival: 1, Luminaire: v[5], Surfaces: 1},
		Fixture: lighting.Fixture{Light: light, Power: 92}, Bed: lighting.Bed{Z: 0.8, Length: 5, Width: 1.6}, MinHeight: 0.6, MaxHeight: 1.4, MaxCount: 16}
	plan, err := need.Solve()
	if err != nil {
		return r, err
	}
	m, err := need.Bed.Map(plan.Layout)
	if err != nil {
		return r, err
	}
	factor, area, n := need.Maintenance.Factor(), need.Bed.Area(), float64(len(plan.Layout))
	r.Lines = []string{
		fmt.Sprintf("%d by %d fixtures with %.0f W/m², maintenance factor %.2f", plan.Columns, plan.Rows, plan.PowerDensity, factor),
		fmt.Sprintln("enough at harvest:", plan.Harvest.Mean >= need.PPFD && plan.Harvest.U0 >= need.U0),
		lighting.StandingCautions()[0],
	}
	r.Lines[1] = r.Lines[1][:len(r.Lines[1])-1]
	r.Steps = []Step{
		{Says: "What is left of the first day's light at harvest.", Formula: "F = F_l F_d", Source: "CieMaint05", Values: numbers{"F_l": v[4], "F_d": v[5]}, Value: factor},
		{Says: "So much is wanted on the first day.", Formula: "E_0 = E/F", Values: numbers{"E": v[0], "F": factor}, Value: v[0] / factor, Unit: "µmol/(m² s)"},
		{Says: "Fixtures if every photon fell on the bed; the search begins above that.", Formula: "N_0 = E_0 A/Φ", Values: numbers{"E_0": v[0] / factor, "A": area, "Φ": v[2]}, Value: v[0] / factor * area / v[2]},
		{Says: "Fixtures of the plan: for each count the rows, the height and the spacings of the greatest evenness.", Symbol: "N", Source: "simplex search", Value: n},
		{Says: "The part of their photons that falls on the bed.", Formula: "u = E_m A/(N Φ)", Values: numbers{"E_m": m.Evenness.Mean, "A": area, "N": n, "Φ": v[2]}, Value: plan.Utilisation, Within: 0.01, Why: "the mean of points against the exact flux"},
		{Says: "Mean at harvest.", Formula: "E_h = F E_f", Values: numbers{"F": factor, "E_f": plan.FirstDay.Mean}, Value: plan.Harvest.Mean, Unit: "µmol/(m² s)"},
		{Says: "Power for each square metre.", Formula: "P = 92 N/A", Values: numbers{"N": n, "A": area}, Value: plan.PowerDensity, Unit: "W/m²"},
	}
	words := fmt.Sprintf("%.2f m up, %.2f by %.2f m apart: %s", plan.Height, plan.SpacingX, plan.SpacingY, evenly(m))
	if math.IsNaN(plan.SpacingX) || plan.Columns == 1 || plan.Rows == 1 {
		words = fmt.Sprintf("%.2f m up: %s", plan.Height, evenly(m))
	}
	r.Picture = maps("The plan found, from above", "A plan of the bed on the first day with a dot for each fixture of the plan found.",
		"PPFD of the first day in µmol/(m² s), dots are fixtures. The outer ones hang near the ends, to make up for the neighbours that are not there.", need.Bed, bedMap{words, m, plan.Layout})
	return r, nil
}
