package figures

import (
	"fmt"
	"math"

	"gonum.org/v1/plot/plotter"

	"cloche.example/ventilation"
)

func openedAgainstTheWind() Figure {
	return Figure{
		Name: "three-states", Title: "Opened against the wind", Subject: "vents and wind", Package: "ventilation", Example: "Example_openedAgainstTheWind",
		Question: "Wind blows onto the ridge vent, against the warm air that wants out there. Which way does the air go, and how warm is the house?",
		Sketch:   "A warm house pushes its air up and out against the wind; a cool one is blown through from above. Both can hold under the same sun and wind.",
		Given: []Given{
			{"Q", "sun taken inside", "kW", 15, 0.5, 200},
			{"f", "of it evaporates water", "fraction", 0.6, 0, 0.95},
			{"U", "wind", "m/s", 2, 0, 10},
			{"t_o", "outside", "°C", 15, -10, 35},
		},
		Assumes: []string{"A side vent at 0.5 m and a ridge vent at 3.5 m, 2 m² each, pressure coefficients of -0.3 and 0.3; dry air; nothing lost through the cover. The share of the sun that evaporates water is given, not found."},
		Change:  []string{"Lower the wind to 1.5 m/s: two of the states are gone, and a house that was blown through from above jumps to 9 K.", "Which of the two stable states a house has depends on what went before: a gust turns it, and it stays."},
		Code:    "solveOpenedAgainstTheWind",
		Solve:   solveOpenedAgainstTheWind,
	}
}

func solveOpenedAgainstTheWind(v []float64) (r Result, err error) {
	n, err := ventilation.NewNetwork([]ventilation.Opening{
		{Name: "side", Height: 0.5, Area: 2, Discharge: 0.6, PressureCoefficient: -0.3},
		{Name: "ridge", Height: 3.5, Area: 2, Discharge: 0.6, PressureCoefficient: 0.3},
	}, nil, nil)
	if err != nil {
		return r, err
	}
	if n, err = n.WithExchange(ventilation.WindExchange{}); err != nil { // pressures alone
		return r, err
	}
	load := ventilation.Load{Solar: 1000 * v[0], Transpired: v[1]}
	states, err := n.SteadyStates(load, ventilation.Outdoors{Temperature: v[3], Pressure: 101325, Wind: v[2]})
	if err != nil {
		return r, err
	}
	r.Steps = []Step{{Says: "What warms the air.", Formula: "Q_s = (1 - f) Q", Values: numbers{"f": v[1], "Q": v[0]}, Value: states[0].Sensible / 1000, Unit: "kW"}}
	var marks []mark
	most := 0.0
	for _, s := range states {
		way := "in at the side"
		if s.Air.Paths[1].In > 0 {
			way = "in at the ridge"
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%+.2f K  %.3f kg/s %s  stable %v", s.Rise, s.Air.Flow, way, s.Stable))
		kind := "stable"
		if !s.Stable {
			kind = "unstable"
		}
		marks = append(marks, mark{kind, s.Rise, s.ByAir / 1000})
		r.Steps = append(r.Steps, Step{Says: "Where the air, " + way + ", carries just that: " + kind + ".", Formula: "Q_a = m 1.006 ΔT", Values: numbers{"m": s.Air.Flow, "ΔT": s.Rise}, Value: s.ByAir / 1000, Unit: "kW"})
		most = max(most, s.Rise)
	}
	var above, below plotter.XYs // air in by the ridge, and by the side
	for _, p := range along(0, 1.35*most, 240, func(rise float64) float64 {
		c, err := ventilation.DrySides{Inside: v[3] + rise, Outside: v[3], Pressure: 101325, Wind: v[2]}.Conditions()
		if err != nil {
			return math.NaN()
		}
		b, err := n.Solve(c)
		if err != nil {
			return math.NaN()
		}
		if b.Paths[1].In > 0 {
			return -b.Flow * 1.006 * rise
		}
		return b.Flow * 1.006 * rise
	}) {
		if p.Y < 0 {
			above = append(above, plotter.XY{X: p.X, Y: -p.Y})
		} else if p.X > 0 {
			below = append(below, p)
		}
	}
	r.Picture, err = chart{title: "Heat that the air carries, against the rise", says: "A curve that rises, falls to nothing where the wind holds the stack in balance, and rises again; a level line of the heat crosses it at each state.", x: "inside over outside, K", y: "heat, kW", zero: true, curves: []curve{
		{"carried, in at the ridge", above}, {"carried, in at the side", below}, {"set free", straight(0, states[0].Sensible/1000, 1.35*most, states[0].Sensible/1000)},
	}, marks: marks}.picture("A state stands where the curve meets the line. Where the curve falls with the rise a little warmth makes more: that state does not hold.")
	return r, err
}
