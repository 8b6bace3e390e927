package figures

import (
	"fmt"

	"cloche.example/examples/internal/page"
	"cloche.example/ventilation"
)

func dugInHouse() Figure {
	return Figure{
		Name: "dug-in", Title: "A house dug into the ground", Subject: "vents and wind", Package: "ventilation", Example: "Example_dugInHouse",
		Question: "The low vents of a dug-in house open into wells. What stack is left, how deep a pool of cold air stays, and what does wind on the ridge do?",
		Sketch:   "The floor lies below grade and so do the low vents, each with a shaft up to the light. Full of cold air the shaft helps the stack; once the wind has turned the flow it fills with warm air and does not.",
		Given: []Given{
			{"d", "floor below grade", "m", 0.9, 0.3, 2.5},
			{"A", "low vent", "m²", 1, 0.1, 10},
			{"S", "section of its well", "m²", 0.8, 0.1, 10},
			{"A_r", "ridge vent", "m²", 1.2, 0.1, 10},
			{"t_i", "inside", "°C", 25, 12, 45},
		},
		Assumes: []string{"A floor of 95 m², low vents 0.4 m tall whose middle lies 0.6 m above the floor or 0.3 m below grade, whichever is lower; a ridge vent at 2.9 m under a pressure coefficient of 0.4; 0.6 at all; outside 10 °C, 97,300 Pa."},
		Change:  []string{"A well as wide as three vents: it hardly costs any flow.", "The pool under the low vents holds what is colder than the air that enters: a fan or a pipe at the floor clears it."},
		Code:    "solveDugInHouse",
		Solve:   solveDugInHouse,
	}
}

func solveDugInHouse(v []float64) (r Result, err error) {
	floor := -v[0]
	ridge := ventilation.Opening{Name: "ridge", Height: 2.9, Area: v[3], Discharge: 0.6, PressureCoefficient: 0.4}
	low := ventilation.Well{
		Vent:    ventilation.Opening{Name: "low", Height: min(-0.3, floor+0.6), Vertical: 0.4, Area: v[1], Discharge: 0.6},
		Section: v[2], Discharge: 0.6,
	}
	if low.Vent.Height-0.2 < floor {
		low.Vent.Height = floor + 0.2
	}
	vent, err := low.Opening()
	if err != nil {
		return r, err
	}
	s, err := ventilation.StackOf([]ventilation.Opening{ridge, vent}, floor, 95)
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("vent and well in series   Cd %.3f on the vent", vent.Discharge),
		fmt.Sprintf("stack with the wells      %.2f m, without them %.2f m", s.Height, s.Usable),
		fmt.Sprintf("pool below the low vents  %.2f m deep, %.0f m³", s.Pool, s.Volume),
	}
	r.Steps = []Step{
		{Says: "Vent and well one after the other, on the vent's area.", Formula: "C_d = 1/(A sqrt(1/(0.6 A)^2 + 1/(0.6 S)^2))", Values: numbers{"A": v[1], "S": v[2]}, Value: vent.Discharge},
		{Says: "Stack, from the middle of the low vent up to the ridge's.", Formula: "H = 2.9 - z", Values: numbers{"z": vent.Height}, Value: s.Height, Unit: "m"},
		{Says: "Without wells it counts from grade alone.", Formula: "H_0 = 2.9 - 0", Value: s.Usable, Unit: "m"},
		{Says: "The pool: floor area times the height up to the lower edge.", Formula: "V = 95 (z - 0.4/2 + d)", Values: numbers{"z": vent.Height, "d": v[0]}, Value: s.Volume, Unit: "m³", Within: 1e-6, Why: "the difference of two near heights"},
	}
	calm := 0.0
	for _, wind := range []float64{0, 2.5, 2.75, 5} {
		c, err := ventilation.DrySides{Inside: v[4], Outside: 10, Pressure: 97300, Wind: wind}.Conditions()
		if err != nil {
			return r, err
		}
		states, err := ventilation.DugIn{Openings: []ventilation.Opening{ridge}, Wells: []ventilation.Well{low}}.States(c)
		if err != nil {
			return r, err
		}
		for _, state := range states {
			r.Lines = append(r.Lines, fmt.Sprintf("wind %.2f m/s: %.3f kg/s, wells full of house air %v", wind, state.Air.Flow, state.Filled[0]))
		}
		if wind == 0 {
			calm = states[0].Air.Flow
			r.Steps = append(r.Steps, Step{Says: "Pressure of the whole stack in calm.", Formula: "P = (ρ_o - ρ_i) 9.80665 H", Values: numbers{"ρ_o": c.OutsideDensity, "ρ_i": c.InsideDensity, "H": s.Height}, Value: (c.OutsideDensity - c.InsideDensity) * 9.80665 * s.Height, Unit: "Pa"},
				Step{Says: "Flow in calm, by equal mass in and out.", Symbol: "m", Value: calm, Unit: "kg/s"})
		}
	}
	d := gable(6, 1.2, 2.9, floor, 4.2)
	d.Polygon(page.Stroke{Width: 0.3, Fill: "var(--soft)"}, 0, floor, 6, floor, 6, s.Lowest, 0, s.Lowest)
	d.Line(page.Stroke{Width: 1.6}, 0, vent.Height-0.25, -0.7, vent.Height-0.25, -0.7, 0)
	d.Line(cool, -1.6, 0.9, -0.4, 0.5, -0.4, vent.Height, 1.2, vent.Height)
	d.Line(warm, 3, 1.9, 3, 3.6)
	d.Text(page.Start, 3.2, 3.3, fmt.Sprintf("%.2f kg/s in calm", calm))
	d.Text(page.Middle, 3.4, (floor+s.Lowest)/2-0.12, fmt.Sprintf("pool, %.2f m", s.Pool))
	d.Text(page.End, -0.9, floor/2-0.2, "well")
	d.Dimension(6.6, vent.Height, 6.6, 2.9, fmt.Sprintf("stack %.2f m", s.Height))
	r.Picture = drawn(d, "Section of the dug-in house", "A house in section with its floor below grade: air comes down a well, in by the low vent, up and out at the ridge; below the vent lies a pool.", "The pool is what no stack clears. The section is to scale.")
	return r, nil
}
