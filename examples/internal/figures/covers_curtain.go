package figures

import (
	"fmt"
	"math"

	"cloche.example/envelope"
)

func curtain() Figure {
	return Figure{
		Name: "curtain", Title: "A curtain under glass, tight or leaky", Subject: "covers", Package: "envelope",
		Question: "A thin curtain hangs under single glass at night. What does it save, and how tight must it be?",
		Source:   "Mihara and Hayashi 1979, J. Agric. Meteorol. 35:13",
		Sketch:   "Glass, 20 cm of air, a curtain of PVC film, the house. Air that leaks through the curtain carries heat past it.",
		Given:    curtainGiven(),
		Assumes:  []string{"The source measured heat transmission over the wind: 4.41 + 0.40 v of glass, 2.93 + 0.10 v with a curtain of PVC. Ours is a cover of layers at 0 °C outside and a sky 10 K colder."},
		Change:   []string{"Twice the leakage: a curtain that does not close saves little."},
		Code:     "solveCurtain",
		Solve:    solveCurtain,
	}
}

func curtainGiven() []Given {
	return []Given{
		{"v", "wind", "m/s", 1, 0, 10},
		{"a", "air that leaks through the curtain", "m³/(s m²)", 0.01, 0, 0.05},
		{"ε", "emittance of the curtain", "fraction", 0.68, 0.05, 0.7},
	}
}

func solveCurtain(v []float64) (r Result, err error) {
	k := envelope.DefaultCoverConditions()
	k.Wind, k.SkyDrop = v[0], 10
	bare := envelope.SingleGlass()
	glass, err := bare.Solve(k)
	if err != nil {
		return r, err
	}
	with := func(leakage float64) (envelope.Solution, error) {
		screen := envelope.Layer{EmittanceOut: v[2], EmittanceIn: v[2], Transmittance: 0.25, Thickness: 0.1e-3, Conductivity: 0.19, Leakage: leakage}
		both, err := envelope.WithScreen(bare, screen)
		if err != nil {
			return envelope.Solution{}, err
		}
		return both.Solve(k)
	}
	ours, err := with(v[1])
	if err != nil {
		return r, err
	}
	tight, err := with(0)
	if err != nil {
		return r, err
	}
	measured := 1 - (2.93+0.10*v[0])/(4.41+0.40*v[0])
	saving := 1 - ours.FluxIn/glass.FluxIn
	r.Lines = []string{
		fmt.Sprintf("measured        saves %.0f %% at %g m/s%s", 100*measured, v[0], said(curtainGiven(), v, " (source 37)")),
		fmt.Sprintf("cover, tight    saves %.0f %%: %.1f instead of %.1f W/m²", 100*(1-tight.FluxIn/glass.FluxIn), tight.FluxIn, glass.FluxIn),
		fmt.Sprintf("cover, leaking  saves %.0f %% at %g m³/(s m²)", 100*saving, v[1]),
	}
	r.Printed = "37 per cent at 1 m/s, in its abstract."
	r.Steps = []Step{
		{Says: "What the source's two lines of heat transmission save.", Formula: "s = 1 - (2.93 + 0.10 v)/(4.41 + 0.40 v)", Source: "Mihara and Hayashi 1979", Values: numbers{"v": v[0]}, Value: measured},
		{Says: "Glass alone, all layers solved.", Symbol: "q_1", Source: "IsoWin03 8.3, solved", Value: glass.FluxIn, Unit: "W/m²"},
		{Says: "Glass with the leaking curtain.", Symbol: "q_2", Source: "IsoWin03 8.3, air of the gap as a node between", Value: ours.FluxIn, Unit: "W/m²"},
		{Says: "Its saving.", Formula: "s_2 = 1 - q_2/q_1", Values: numbers{"q_2": ours.FluxIn, "q_1": glass.FluxIn}, Value: saving},
	}
	r.Picture, err = chart{title: "Saving over the leakage", says: "The saving falls with the leakage; a level line is what was measured.", x: "leakage, L/(s m²)", y: "saving, %", zero: true, curves: []curve{
		{"cover of layers", along(0, 50, 25, func(a float64) float64 {
			s, err := with(a / 1000)
			if err != nil {
				return math.NaN()
			}
			return 100 * (1 - s.FluxIn/glass.FluxIn)
		})},
		{"measured", straight(0, 100*measured, 50, 100*measured)},
	}, marks: []mark{{"", 1000 * v[1], 100 * saving}}}.picture("Where the two lines cross, the measured curtain leaks.")
	return r, err
}
