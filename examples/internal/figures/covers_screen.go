package figures

import (
	"fmt"

	"cloche.example/envelope"
)

func screenEdges() Figure {
	return Figure{
		Name: "screen-edges", Title: "A screen, sealed or drawn", Subject: "covers", Package: "envelope", Example: "ExampleWithScreen",
		Question: "An aluminised screen under glass saves much in a hot box. How much of that is left in a house, where its edges leak?",
		Sketch:   "Glass, air, a screen; in the hot box the edges are sealed, in the house air passes them.",
		Given: []Given{
			{"t_i", "inside air", "°C", 15, 5, 25},
			{"t_o", "outside air", "°C", 0, -20, 10},
			{"d", "sky below the outside air", "K", 20, 0, 30},
			{"v", "wind", "m/s", 4, 0, 12},
		},
		Assumes: []string{"A roof of 30 degree, dry. The sky twice: of one temperature, and colder above than at the horizon."},
		Change:  []string{"A sky as warm as the air, d = 0: all lose less, and the shares saved stay.", "Calm: still air outside shields the glass as well, so that the screen saves less, and its edges take more of that."},
		Code:    "solveScreenEdges",
		Solve:   solveScreenEdges,
	}
}

func solveScreenEdges(v []float64) (r Result, err error) {
	if v[0] <= v[1] {
		return r, fmt.Errorf("inside air: not warmer than the outside air")
	}
	k := envelope.DefaultCoverConditions()
	k.Inside, k.Outside, k.SkyDrop, k.Wind = v[0], v[1], v[2], v[3]
	glass := envelope.SingleGlass()
	sealed, err := envelope.WithSealedScreen(glass, envelope.AluminisedScreen())
	if err != nil {
		return r, err
	}
	drawn, err := envelope.WithScreen(glass, envelope.AluminisedScreen())
	if err != nil {
		return r, err
	}
	names := []string{"glass", "with a screen, sealed", "with a screen, drawn"}
	for _, sky := range []envelope.SkyPattern{envelope.SkyEven, envelope.SkyWeighted} {
		k.Sky = sky
		r.Lines = append(r.Lines, fmt.Sprintf("clear sky, %s", sky))
		var flux [3]float64
		var last envelope.Solution
		for i, cover := range []envelope.Cover{glass, sealed, drawn} {
			if last, err = cover.Solve(k); err != nil {
				return r, err
			}
			flux[i] = last.FluxIn
			r.Lines = append(r.Lines, fmt.Sprintf("  %-21s %5.1f W/m²  saves %2.0f %%", names[i], flux[i], 100*(1-flux[i]/flux[0])))
		}
		if sky == envelope.SkyEven {
			r.Steps = screenSteps(flux)
			r.Picture = throughCover("Temperatures with the screen drawn", "The screen keeps the glass cold: that is what it saves.", last, k)
		}
	}
	return r, nil
}

// screenSteps compares three heat losses: bare, sealed and drawn.
func screenSteps(q [3]float64) []Step {
	loss := numbers{"q_1": q[0], "q_2": q[1], "q_3": q[2]}
	return []Step{
		{Says: "Glass alone, under a sky of one temperature.", Symbol: "q_1", Source: "IsoWin03 8.3, solved", Value: q[0], Unit: "W/m²"},
		{Says: "With the screen, its edges sealed: a still gap between.", Symbol: "q_2", Source: "IsoWin03 8.3, solved", Value: q[1], Unit: "W/m²"},
		{Says: "As drawn in a house: air passes the edges.", Symbol: "q_3", Source: "IsoWin03 8.3, air of the gap as a node between", Value: q[2], Unit: "W/m²"},
		{Says: "What the hot box promises.", Formula: "s_2 = 1 - q_2/q_1", Values: loss, Value: 1 - q[1]/q[0]},
		{Says: "What the house gets.", Formula: "s_3 = 1 - q_3/q_1", Values: loss, Value: 1 - q[2]/q[0]},
		{Says: "Part of the saving that goes with the air at the edges.", Formula: "e = (q_3 - q_2)/(q_1 - q_2)", Values: loss, Value: (q[2] - q[1]) / (q[0] - q[1])},
	}
}
