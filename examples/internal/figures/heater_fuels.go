package figures

import (
	"fmt"

	"cloche.example/airheat"
)

func fuels() Figure {
	return Figure{
		Name: "fuels", Title: "Fuels by their heat", Subject: "heater and fuel", Package: "airheat", Example: "Example_fuels",
		Question: "What heat does a kilogram of each fuel hold, counted with and without the heat of its water?",
		Sketch:   "Ready-made fuels, then a coal known by its composition alone and a gas known by its parts.",
		Given: []Given{
			{"C", "carbon of the coal", "fraction", 0.74, 0.6, 0.78},
			{"H", "its hydrogen", "fraction", 0.046, 0.02, 0.06},
			{"x", "methane in the biogas, the rest carbon dioxide", "fraction", 0.6, 0.3, 1},
		},
		Assumes: []string{"The coal holds 7.5 % of oxygen, 1.4 % of nitrogen, 0.8 % of sulphur, 4.5 % of moisture; ash is the rest."},
		Change:  []string{"More hydrogen: the two heating values part, since hydrogen burns to water."},
		Code:    "solveFuels",
		Solve:   solveFuels,
	}
}

func solveFuels(v []float64) (r Result, err error) {
	var rows []bar
	for _, f := range airheat.Fuels() {
		r.Lines = append(r.Lines, fmt.Sprintf("%-13s %5.1f MJ/kg lower, %5.1f higher", f.Name, f.Lower/1e6, f.Higher/1e6))
		rows = append(rows, bar{f.Name, f.Lower / 1e6})
	}
	coal := airheat.Composition{Carbon: v[0], Hydrogen: v[1], Oxygen: 0.075, Nitrogen: 0.014, Sulphur: 0.008, Water: 0.045}
	coal.Ash = 1 - coal.Carbon - coal.Hydrogen - coal.Oxygen - coal.Nitrogen - coal.Sulphur - coal.Water
	higher, lower := airheat.Dulong(coal)
	r.Lines = append(r.Lines, fmt.Sprintf("a coal by Dulong %.1f and %.1f, by Boie %.1f MJ/kg", higher/1e6, lower/1e6, airheat.Boie(coal)/1e6))
	declared, err := airheat.NewFuel("coal as declared", coal, 29e6)
	if err != nil {
		return r, err
	}
	gas, err := airheat.NewGasFuel("biogas", airheat.GasShares{Methane: v[2], CarbonDioxide: 1 - v[2]})
	if err != nil {
		return r, err
	}
	r.Lines = append(r.Lines, fmt.Sprintf("%s %.1f MJ/kg higher, %s %.1f MJ/kg lower", declared.Name, declared.Higher/1e6, gas.Name, gas.Lower/1e6))
	parts := numbers{"C": v[0], "H": v[1], "O": 0.075, "S": 0.008, "w": 0.045}
	r.Steps = []Step{
		{Says: "The coal by an old rule, higher value.", Formula: "H_h = 33.9 C + 143 (H - O/8) + 9.1 S", Source: "MurMck03 ch. 6", Values: parts, Value: higher / 1e6, Unit: "MJ/kg"},
		{Says: "Its lower value, without the water's heat.", Formula: "H_l = 33.9 C + 121 (H - O/8) + 9.1 S", Source: "MurMck03 ch. 6", Values: parts, Value: lower / 1e6, Unit: "MJ/kg"},
		{Says: "From a declared lower value to the higher one: the water of the hydrogen and the moisture condense.", Formula: "H_h = 29 + 2.443 (8.937 H + w)", Values: parts, Value: declared.Higher / 1e6, Unit: "MJ/kg", Within: 1e-3, Why: "the masses of atoms are rounded"},
		{Says: "The gas: methane burns, carbon dioxide is only carried along.", Formula: "H_l = 50.0·16.043 x/(16.043 x + 44.009 (1 - x))", Values: numbers{"x": v[2]}, Value: gas.Lower / 1e6, Unit: "MJ/kg", Within: 3e-3, Why: "methane's heating value is rounded"},
	}
	rows = append(rows, bar{"the coal", lower / 1e6}, bar{"the biogas", gas.Lower / 1e6})
	r.Picture = bars("Lower heating values", "A bar for each fuel, gases longest, wood shortest.", "%.1f MJ/kg", "Lower heating values.", rows...)
	return r, nil
}
