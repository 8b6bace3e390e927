package figures

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/plot/plotter"

	"cloche.example/lighting"
)

func dimming() Figure {
	return Figure{
		Name: "dimming", Title: "Dimming in two groups", Subject: "light on the bed", Package: "lighting", Example: "Example_dimmingInGroups",
		Question: "The lamps over the middle and those along the edge are dimmed apart. Which two levels bring the shelf nearest to one brightness?",
		Sketch:   "A shelf of 2.4 by 1.2 m: eight lamps in two rows, eight more around the edge.",
		Given: []Given{
			{"T", "PPFD wanted everywhere", "µmol/(m² s)", 120, 10, 250},
			{"Φ", "photons of one lamp", "µmol/s", 90, 20, 300},
			{"h", "height above the shelf", "m", 0.5, 0.3, 0.8},
			{"L_low", "lowest level of the drivers", "fraction", 0.1, 0, 0.5},
		},
		Assumes: []string{"Exponent 1.2 of the cosine; 32 W for a lamp, power in proportion to the level; 12 by 6 points; direct light."},
		Change:  []string{"Want 200: both groups go up in the same proportion.", "Lamps of 40 µmol/s: the edge is at full output, and the middle makes up for what it lacks.", "Hang the lamps at 0.3 m: more is left over, since each lamp shows."},
		Code:    "solveDimming",
		Solve:   solveDimming,
	}
}

func solveDimming(v []float64) (r Result, err error) {
	light, err := lighting.NewCosinePower(v[1], 1.2)
	if err != nil {
		return r, err
	}
	bed, h := lighting.Bed{Z: 0.3, Length: 2.4, Width: 1.2}, v[2]
	middle, err := lighting.Rows(lighting.Fixture{Light: light, Power: 32, Group: "middle"}, bed, h, 4, 2)
	if err != nil {
		return r, err
	}
	edge, err := lighting.Perimeter(lighting.Fixture{Light: light, Power: 32, Group: "edge"}, bed, h, 0.1, 8)
	if err != nil {
		return r, err
	}
	shelves, err := lighting.Tiers(append(middle, edge...), 2, 0.9)
	if err != nil {
		return r, err
	}
	points, err := bed.Grid(12, 6)
	if err != nil {
		return r, err
	}
	maps, err := lighting.GroupMaps(shelves[0], points)
	if err != nil {
		return r, err
	}
	target := make([]float64, points.Len())
	floats.AddConst(v[0], target)
	d, err := lighting.Dim(maps, target, []float64{v[3], v[3]}, []float64{1, 1})
	if err != nil {
		return r, err
	}
	half, err := lighting.DimmedTo(nil, maps, []float64{0.5, 0.5})
	if err != nil {
		return r, err
	}
	even, err := lighting.Evenness(half)
	if err != nil {
		return r, err
	}
	r.Lines = []string{fmt.Sprintf("both at half: mean %.0f µmol/(m² s), least/mean %.2f", even.Mean, even.U0)}
	for i, m := range maps {
		r.Lines = append(r.Lines, fmt.Sprintf("%-6s at %.2f of %.0f W", m.Group, d.Levels[i], m.Power))
	}
	r.Lines = append(r.Lines, fmt.Sprintf("%.0f W in all, %.1f µmol/(m² s) off the target in the root mean square", d.Power, d.Residual))
	r.Steps = dimmingSteps(v[0], v[3], maps, d)
	along := func(ppfd []float64) plotter.XYs { // the row of points next to the middle
		at := make(plotter.XYs, points.Columns())
		for i := range at {
			k := 3*points.Columns() + i
			at[i] = plotter.XY{X: points.At(k).X, Y: ppfd[k]}
		}
		return at
	}
	shown := func(i int) plotter.XYs {
		ppfd := append([]float64(nil), maps[i].PPFD...)
		floats.Scale(d.Levels[i], ppfd)
		return along(ppfd)
	}
	r.Picture, err = chart{title: "Light along the middle of the shelf", says: "The light of the middle group, that of the edge group, and their sum near a level line.", x: "along the shelf, m", y: "PPFD, µmol/(m² s)", zero: true, curves: []curve{
		{"both", along(d.PPFD)}, {"middle group", shown(0)}, {"edge group", shown(1)}, {"wanted", straight(0, v[0], bed.Length, v[0])},
	}}.picture("The middle group sags towards the ends, the edge group towards the middle: each fills what the other lacks.")
	return r, err
}

// dimmingSteps shows the least squares of two groups; a level at an end of its
// range is found otherwise.
func dimmingSteps(target, low float64, maps []lighting.GroupMap, d lighting.Dimming) []Step {
	a, b := maps[0].PPFD, maps[1].PPFD
	n := float64(len(a))
	values := numbers{"T": target, "n": n, "a": floats.Dot(a, a) / n, "b": floats.Dot(b, b) / n, "c": floats.Dot(a, b) / n, "p": floats.Sum(a) / n, "q": floats.Sum(b) / n, "L_1": d.Levels[0], "L_2": d.Levels[1]}
	sums := []Step{
		{Says: "Mean square of the middle group's light at full output.", Symbol: "a", Value: values["a"], Figures: 6},
		{Says: "Of the edge group's.", Symbol: "b", Value: values["b"], Figures: 6},
		{Says: "Mean product of both.", Symbol: "c", Value: values["c"], Figures: 6},
	}
	free := math.Min(d.Levels[0], d.Levels[1]) > low+1e-9 && math.Max(d.Levels[0], d.Levels[1]) < 1-1e-9
	levels := []Step{
		{Says: "The least squares, both slopes nought: the level of the middle, with the means p and q of both groups.", Formula: "L_1 = T (p b - q c)/(a b - c^2)", Values: values, Value: d.Levels[0], Within: 1e-6, Why: "the library goes step by step"},
		{Says: "The level of the edge.", Formula: "L_2 = T (q a - p c)/(a b - c^2)", Values: values, Value: d.Levels[1], Within: 1e-6, Why: "the library goes step by step"},
	}
	if !free {
		levels = []Step{
			{Says: "The best level of the middle within its range; an end of the range stops one of the two.", Symbol: "L_1", Source: "least squares within bounds", Value: d.Levels[0]},
			{Says: "And of the edge.", Symbol: "L_2", Source: "least squares within bounds", Value: d.Levels[1]},
		}
	}
	mean, square := floats.Sum(d.PPFD)/n, floats.Dot(d.PPFD, d.PPFD)/n
	return append(append(sums, levels...),
		Step{Says: "Mean of both groups at these levels.", Formula: "M = L_1 p + L_2 q", Values: values, Value: mean, Unit: "µmol/(m² s)"},
		Step{Says: "Their mean square.", Formula: "S = L_1^2 a + L_2^2 b + 2 L_1 L_2 c", Values: values, Value: square, Figures: 6},
		Step{Says: "What is left over, in the root mean square.", Formula: "R = sqrt(S - 2 T M + T^2)", Values: numbers{"S": square, "T": target, "M": mean}, Value: d.Residual, Unit: "µmol/(m² s)", Within: 1e-6, Why: "rounding of a small difference"},
		Step{Says: "Power at these levels.", Formula: "P = L_1 P_1 + L_2 P_2", Values: numbers{"L_1": d.Levels[0], "P_1": maps[0].Power, "L_2": d.Levels[1], "P_2": maps[1].Power}, Value: d.Power, Unit: "W"})
}
