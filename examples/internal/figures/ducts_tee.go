package figures

import (
	"fmt"

	"cloche.example/airheat"
)

func dividingTee() Figure {
	return Figure{
		Name: "dividing-tee", Title: "What a tee takes", Subject: "ducts and fans", Package: "airheat",
		Question: "A pipe divides at a tee: some goes straight on, some leaves at 45 degree. What loss factor has each way?",
		Source:   "Crane09 (Crane Co., Flow of Fluids, TP-410), example 7-36",
		Sketch:   "Straight on the stream slows down and wins pressure; into the branch it must turn.",
		Given:    teeGiven(),
		Assumes:  []string{"Both factors on the speed before the tee."},
		Change:   []string{"A share near a half: the run loses nothing at all.", "A narrow branch costs much once it must take more than its share."},
		Code:     "solveTee",
		Solve:    solveTee,
	}
}

func teeGiven() []Given {
	return []Given{
		{"V_1", "flow that goes straight on", "m³/s", 0.02525, 0.001, 2},
		{"V_2", "flow that leaves", "m³/s", 0.01583, 0.001, 2},
		{"a", "area of the branch over that of the run", "ratio", 1, 0.1, 1},
		{"α", "angle of the branch", "degree", 45, 30, 60},
	}
}

func solveTee(v []float64) (r Result, err error) {
	share := v[1] / (v[0] + v[1])
	run, branch := airheat.DividingRun(share, v[2]), airheat.DividingBranch(share, v[2], v[3])
	r.Lines = []string{
		fmt.Sprintf("share that leaves  %.4f", share),
		fmt.Sprintf("run                K = %8.5f%s", run, said(teeGiven(), v, "   source prints -0.06809")),
		fmt.Sprintf("branch             K = %8.5f%s", branch, said(teeGiven(), v, "   source prints 0.4640")),
	}
	r.Printed = "K = 0.4640 for the branch and -0.06809 for the run."
	const rule = "the rule: 2 (2 y - 1) up to a share of a half, 0.3 (2 y - 1) above, 0.4 for narrow branches"
	m := 0.4
	switch {
	case v[2] <= 0.4:
	case share <= 0.5:
		m = 2 * (2*share - 1)
	default:
		m = 0.3 * (2*share - 1)
	}
	g := 1 + (share/v[2])*(share/v[2]) // with the turn below; the factor before it by the rule's table
	r.Steps = []Step{
		{Says: "Share that leaves.", Formula: "y = V_2/(V_1 + V_2)", Values: numbers{"V_1": v[0], "V_2": v[1]}, Value: share},
		{Says: "Factor of the run; M by " + rule + ".", Formula: "K_r = M y^2", Source: "Crane09 ch. 2", Values: numbers{"M": m, "y": share}, Value: run, Figures: 5},
	}
	turn := numbers{"y": share, "a": v[2], "α": v[3]}
	c := g - 2*share/v[2]*cosine(v[3])
	if c > 1e-9 {
		turn["G"] = branch / c
		r.Steps = append(r.Steps, Step{Says: "Factor of the branch: it must turn; G by the rule's table for the widths and the share.", Formula: "K_b = G (1 + (y/a)^2 - 2 y/a cos(α))", Source: "Crane09 ch. 2", Values: turn, Value: branch})
	} else {
		r.Steps = append(r.Steps, Step{Says: "Factor of the branch.", Symbol: "K_b", Source: "Crane09 ch. 2", Value: branch})
	}
	r.Picture, err = chart{title: "Loss factors over the share that leaves", says: "The branch's factor first falls and then rises; the run's lies below nought up to a half.", x: "share that leaves", y: "K", curves: []curve{
		{"branch", along(0.01, 0.99, 98, func(y float64) float64 { return airheat.DividingBranch(y, v[2], v[3]) })},
		{"run", along(0.01, 0.99, 98, func(y float64) float64 { return airheat.DividingRun(y, v[2]) })},
	}, marks: []mark{{"", share, branch}, {"", share, run}}}.picture("Below a half the run gains pressure at the tee.")
	return r, err
}
