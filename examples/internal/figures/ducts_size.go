package figures

import (
	"fmt"
	"math"

	"cloche.example/airheat"
)

func ductSize() Figure {
	return Figure{
		Name: "duct-size", Title: "How wide must the duct be?", Subject: "ducts and fans", Package: "airheat",
		Question: "A plastic duct of 150 m may lose 20 m of its own air's head. How wide must it be for the flow wanted?",
		Source:   "Y. A. Cengel, J. M. Cimbala, Fluid Mechanics, example 8-4, as an open companion works it",
		Sketch:   "A long smooth duct; the wider it is the less it loses, by nearly the fifth power.",
		Given:    ductSizeGiven(),
		Assumes:  []string{"Smooth walls; fittings left out; air of 35 °C at 1.2 kg/m³ as the source takes it."},
		Change:   []string{"Twice the flow asks for a duct a third wider, less than twice the area."},
		Code:     "solveDuctSize",
		Solve:    solveDuctSize,
	}
}

func ductSizeGiven() []Given {
	return []Given{
		{"V", "flow", "m³/s", 0.35, 0.01, 5},
		{"L", "length", "m", 150, 5, 500},
		{"h", "head that may be lost, metres of air", "m", 20, 1, 100},
	}
}

func solveDuctSize(v []float64) (r Result, err error) {
	air := airheat.AirProperties{Density: 1.2, Viscosity: 1.2 * 1.655e-5, HeatCapacity: 1006}
	pressure := v[2] * 9.81 * air.Density
	size := func(flow float64) (float64, error) {
		return airheat.RoundFor(airheat.RoundSizing{Flow: flow, Pressure: pressure, Length: v[1], Properties: air})
	}
	d, err := size(v[0])
	if err != nil {
		return r, err
	}
	l := airheat.Segment{Section: airheat.Round(d), Length: v[1]}.Loss(v[0], air)
	r.Lines = []string{
		fmt.Sprintf("diameter  %.4f m%s", d, said(ductSizeGiven(), v, "   source prints 0.267")),
		fmt.Sprintf("%.2f m/s, Reynolds number %.0f, friction factor %.5f, loss %.1f Pa", l.Velocity, l.Reynolds, l.Friction, l.Wall),
	}
	r.Printed = "0.267 m."
	at := numbers{"f": l.Friction, "L": v[1], "V": v[0], "h": v[2], "D": d}
	r.Steps = []Step{
		{Says: "Pressure that may be lost.", Formula: "Δp = 9.81 ρ h", Values: numbers{"ρ": air.Density, "h": v[2]}, Value: pressure, Unit: "Pa"},
		{Says: "Friction factor at the answer, which hangs on the answer itself.", Symbol: "f", Source: "Cole39 eq. 12, solved together with the next", Value: l.Friction},
		{Says: "The diameter at which the loss is the one allowed.", Formula: "D = (8 f L V^2/(π^2·9.81 h))^0.2", Source: "Darcy-Weisbach", Values: at, Value: d, Unit: "m", Within: 1e-6, Why: "found to a relative 1e-9 of the loss"},
		{Says: "Speed in it.", Formula: "v = 4 V/(π D^2)", Values: at, Value: l.Velocity, Unit: "m/s"},
	}
	r.Picture, err = chart{title: "Diameter over the flow", says: "A curve that rises with the flow, steep at first.", x: "flow, m³/s", y: "diameter, m", zero: true,
		curves: []curve{{"", along(0.02*v[0], 2*v[0], 50, func(q float64) float64 {
			d, err := size(q)
			if err != nil {
				return math.NaN()
			}
			return d
		})}}, marks: []mark{{"here", v[0], d}}}.picture("The flow grows much faster than the diameter.")
	return r, err
}
