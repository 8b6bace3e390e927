package figures

import (
	"fmt"

	"cloche.example/airheat"
	"cloche.example/examples/internal/page"
)

func branches() Figure {
	return Figure{
		Name: "branches", Title: "A duct that divides", Subject: "ducts and fans", Package: "airheat", Example: "Example_branchesBalanced",
		Question: "A duct divides into a long and a short branch. Which flow does each get, and which damper makes them equal?",
		Sketch:   "From the fan to a tee; straight on to the far bench, at 45 degree to the near one.",
		Given: []Given{
			{"V", "flow of the fan", "m³/s", 0.80, 0.2, 2},
			{"L_1", "length to the far bench", "m", 14, 4, 30},
			{"L_2", "length to the near bench", "m", 3, 0.5, 4},
		},
		Assumes: []string{"Air of 40 °C; smooth elbow in the far branch, both outlets free; the tee by its own published rule."},
		Change:  []string{"The tee itself throttles the side branch: with a short far branch the balance can turn round."},
		Code:    "solveBranches",
		Solve:   solveBranches,
	}
}

func solveBranches(v []float64) (r Result, err error) {
	duct := func(diameter, length, fittings float64) []airheat.Segment {
		return []airheat.Segment{{Section: airheat.Round(diameter), Length: length, Roughness: 0.15e-3, Fittings: fittings}}
	}
	all := []airheat.Branch{
		{Name: "main", Parent: -1, Segments: duct(0.40, 4, airheat.SharpEntry)},
		{Name: "far bench", Parent: 0, Segments: duct(0.30, v[1], airheat.SmoothElbow(1.5, 90)+airheat.FreeOutlet), Junction: airheat.StraightRun},
		{Name: "near bench", Parent: 0, Segments: duct(0.30, v[2], airheat.FreeOutlet), Junction: airheat.SideBranch, Angle: 45},
	}
	tree, err := airheat.NewTree(all...)
	if err != nil {
		return r, err
	}
	air := airheat.DryAir(40, 101325)
	flow := v[0]
	f, err := tree.Solve(flow, air)
	if err != nil {
		return r, err
	}
	for i, b := range f.Branches {
		r.Lines = append(r.Lines, fmt.Sprintf("%-10s %6.4f m³/s  loss %6.2f Pa, of it at the tee %6.2f Pa", all[i].Name, b.Flow, b.Loss, b.Tee))
	}
	share := f.Branches[2].Flow / flow
	ratio := all[2].Segments[0].Section.Area() / all[0].Segments[0].Section.Area()
	r.Lines = append(r.Lines,
		fmt.Sprintf("tee        run K = %.4f, branch K = %.4f   [Crane09] at a share of %.3f", airheat.DividingRun(share, ratio), airheat.DividingBranch(share, ratio, 45), share),
		fmt.Sprintf("fan        %6.2f Pa either way", f.Pressure))
	k, pressure, err := tree.Dampers([]float64{0, flow / 2, flow / 2}, air)
	if err != nil {
		return r, err
	}
	r.Lines = append(r.Lines, fmt.Sprintf("damper     K = %.3f in the near branch for %.2f m³/s each; fan then %.2f Pa", k[2], flow/2, pressure))
	b := f.Branches
	r.Steps = []Step{
		{Says: "What flows in must flow out.", Formula: "V = V_1 + V_2", Values: numbers{"V_1": b[1].Flow, "V_2": b[2].Flow}, Value: flow, Unit: "m³/s", Within: 1e-7, Why: "the balance is found to 1e-9 of the pressure"},
		{Says: "By the far bench: pressure that the fan must give.", Formula: "Δp = Δp_0 + Δp_1", Values: numbers{"Δp_0": b[0].Loss, "Δp_1": b[1].Loss}, Value: f.Pressure, Unit: "Pa", Within: 1e-6, Why: "as above"},
		{Says: "By the near bench: the same.", Formula: "Δp = Δp_0 + Δp_2", Values: numbers{"Δp_0": b[0].Loss, "Δp_2": b[2].Loss}, Value: f.Pressure, Unit: "Pa", Within: 1e-6, Why: "as above"},
		{Says: "At the tee, on the speed in the main.", Formula: "Δp_t = K_b ρ v^2/2", Source: "Crane09 ch. 2", Values: numbers{"K_b": airheat.DividingBranch(share, ratio, 45), "ρ": air.Density, "v": flow / all[0].Segments[0].Section.Area()}, Value: b[2].Tee, Unit: "Pa", Within: 1e-6, Why: "rounding"},
		{Says: "The damper that makes both equal.", Symbol: "K_d", Source: "solved", Value: k[2]},
	}
	d := page.NewDrawing(0, 0, 420, 190, 420)
	wide := page.Stroke{Width: 8, Color: "var(--rule)"}
	thin := page.Stroke{Width: 6, Color: "var(--rule)"}
	d.Line(wide, 40, 120, 150, 120)
	d.Line(thin, 150, 120, 395, 120)
	d.Line(thin, 150, 120, 215, 55)
	d.Circle(page.Stroke{Width: 1.5, Fill: "var(--paper)"}, 32, 120, 14)
	d.Text(page.Middle, 32, 116, "fan")
	d.Text(page.Middle, 95, 132, fmt.Sprintf("%.2f m³/s", flow))
	d.Text(page.Middle, 290, 132, fmt.Sprintf("far bench %.3f m³/s", b[1].Flow))
	d.Text(page.Middle, 290, 100, fmt.Sprintf("%.1f Pa", b[1].Loss))
	d.Text(page.Start, 222, 50, fmt.Sprintf("near bench %.3f m³/s", b[2].Flow))
	d.Text(page.Start, 222, 33, fmt.Sprintf("%.1f Pa, %.1f at the tee", b[2].Loss, b[2].Tee))
	r.Picture = drawn(d, "Flows of the branches", "A fan, a main duct, a tee, a long straight branch and a short one at 45 degree, each with its flow and loss.", "Both ways lose the same pressure; that settles the flows.")
	return r, nil
}
