package figures

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/ventilation"
)

func ventsAtOneLevel() Figure {
	return Figure{
		Name: "one-level", Title: "Roll-up sides alone", Subject: "vents and wind", Package: "ventilation", Example: "Example_ventsAtOneLevel",
		Question: "Both long sides are rolled up and nothing is open higher up. What do warmth and wind exchange, and what do published equations say?",
		Sketch:   "Two tall openings at one height and under one mean pressure: warm air leaves by their upper half and cool air comes in below, and gusts exchange air through each.",
		Given: []Given{
			{"l", "length of each side", "m", 30, 2, 100},
			{"h", "rolled up from 0.5 m by", "m", 1, 0.2, 3},
			{"t_i", "inside", "°C", 30, 10, 50},
			{"t_o", "outside", "°C", 25, -20, 45},
		},
		Assumes: []string{"Dry air at 101,325 Pa, a discharge coefficient of 0.6, a wind effect of 0.09, both sides under -0.2. The last column takes them for windows in the roof of hectares under glass."},
		Change:  []string{"Half the height: the stack falls to about a third, the wind's part to half."},
		Code:    "solveVentsAtOneLevel",
		Solve:   solveVentsAtOneLevel,
	}
}

func solveVentsAtOneLevel(v []float64) (r Result, err error) {
	long, high, inside, outside := v[0], v[1], v[2], v[3]
	side, err := ventilation.TallVent{Name: "side", Bottom: 0.5, Top: 0.5 + high, Width: long, Discharge: 0.6, PressureCoefficient: -0.2}.Opening()
	if err != nil {
		return r, err
	}
	n, err1 := ventilation.NewNetwork([]ventilation.Opening{side, side}, nil, nil)
	if err1 != nil {
		return r, err1
	}
	rival := ventilation.DefaultWindExchange()
	rival.Method = ventilation.LargerOfTwo
	larger, err := n.WithExchange(rival)
	if err != nil {
		return r, err
	}
	type answer struct{ flow, gusts, larger, equation, windows float64 }
	at := func(wind float64) (a answer, err error) {
		c, err1 := ventilation.DrySides{Inside: inside, Outside: outside, Pressure: 101325, Wind: wind}.Conditions()
		b, err2 := n.Solve(c)
		l, err3 := larger.Solve(c)
		eq, err4 := ventilation.HouseVents{Side: 2 * long * high, Discharge: 0.6, WindEffect: 0.09, Inside: inside, Outside: outside, Wind: wind}.Solve()
		roof, err5 := ventilation.RoofWindows{Lee: long, Windward: long, Chord: high, Pitch: 25, LeeAngle: 30, WindwardAngle: 30, Discharge: 0.6, Inside: inside, Outside: outside, Wind: wind}.Solve()
		return answer{b.Volume, b.Exchange / c.OutsideDensity, l.Volume, eq.Flow, roof.Flow}, errors.Join(err1, err2, err3, err4, err5)
	}
	var last answer
	for _, wind := range []float64{0, 1, 3} {
		if last, err = at(wind); err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%.0f m/s: %4.1f m³/s, %4.1f of it by gusts; larger %4.1f; wind by equation %4.1f; windows of a large house %.1f",
			wind, last.flow, last.gusts, last.larger, last.equation, last.windows))
	}
	r.Steps = []Step{
		{Says: "By warmth alone, two ways through each side: the flow in calm.", Symbol: "V_p", Value: last.flow - last.gusts, Unit: "m³/s"},
		{Says: "By the gusts of 3 m/s, in by half of the openings and out by the other half.", Formula: "V_x = 2 l h/2 · 0.6 sqrt(0.09) 3", Source: "BoulardB95", Values: numbers{"l": long, "h": high}, Value: last.equation, Unit: "m³/s"},
		{Says: "Together, as the root of the sum of the squares.", Formula: "V = sqrt(V_p^2 + V_x^2)", Source: "Kittas97", Values: numbers{"V_p": last.flow - last.gusts, "V_x": last.equation}, Value: last.flow, Unit: "m³/s"},
		{Says: "The rival rule takes the larger alone.", Formula: "V_l = max(V_p, V_x)", Source: "Warren84", Values: numbers{"V_p": last.flow - last.gusts, "V_x": last.equation}, Value: last.larger, Unit: "m³/s"},
	}
	line := func(name string, of func(answer) float64) curve {
		return curve{name, along(0, 4, 40, func(wind float64) float64 {
			a, err := at(wind)
			if err != nil {
				return math.NaN()
			}
			return of(a)
		})}
	}
	r.Picture, err = chart{title: "Exchange of air against wind", says: "Curves that begin at the stack's flow in calm and rise with the wind; the root of the squares lies above the larger of the two.", x: "wind, m/s", y: "exchange, m³/s", zero: true, curves: []curve{
		line("stack and gusts in quadrature", func(a answer) float64 { return a.flow }),
		line("the larger of the two", func(a answer) float64 { return a.larger }),
		line("as windows of a large house", func(a answer) float64 { return a.windows }),
	}}.picture("In calm the house breathes by its own warmth; from a light wind on the gusts rule.")
	return r, err
}
