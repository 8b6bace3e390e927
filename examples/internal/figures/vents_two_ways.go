package figures

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/plot/plotter"

	"cloche.example/ventilation"
)

func openings() Figure {
	return Figure{
		Name: "openings", Title: "Openings by their geometry, and two ways through one door", Subject: "vents and wind", Package: "ventilation", Example: "Example_openings",
		Question: "What do a stroke, a slat's angle and two holes in a row leave free, and what passes an open door in calm with nothing else open?",
		Sketch:   "Through one tall opening warm air leaves by the upper half and cold air comes in by the lower; near the middle it stands still.",
		Given: []Given{
			{"s", "the flap is pushed out by", "m", 0.4, 0.05, 1.1},
			{"α", "slats turned by", "degree", 60, 5, 90},
			{"w", "width of the door", "m", 0.9, 0.5, 4},
			{"t_i", "inside", "°C", 25, 16, 45},
			{"t_o", "outside", "°C", 15, -25, 15},
		},
		Assumes: []string{"A flap 0.8 m deep, ten slats of 8 mm over 1.2 m by 1 m, a door 2 m tall; dry air at 101,325 Pa, calm. The handbook's line is another house: 1.2 m² with 2 m/s of wind, at these temperatures. The last line is what the library says of two points at one height without wind: nothing passes."},
		Change:  []string{"A door twice as wide passes twice as much, and its neutral level stays."},
		Code:    "solveOpenings",
		Solve:   solveOpenings,
	}
}

func solveOpenings(v []float64) (r Result, err error) {
	angle := ventilation.FlapAngle(v[0], 0.8)
	louvre := ventilation.Louvre{Width: 1.2, Height: 1, Slats: 10, Thickness: 0.008, Angle: v[1]}
	series := ventilation.SeriesArea(1, 2)
	c, err := ventilation.DrySides{Inside: v[3], Outside: v[4], Pressure: 101325}.Conditions()
	if err != nil {
		return r, err
	}
	cd := ventilation.ExchangeDischarge(v[3], v[4])
	two, err1 := ventilation.SingleOpening(ventilation.TallVent{Bottom: 0, Top: 2, Width: v[2], Discharge: cd}, c)
	band, err2 := ventilation.OneFace{Area: 2 * v[2], Height: 2, Inside: v[3], Outside: v[4]}.Band()
	h, err3 := ventilation.HandbookFlow{Area: 1.2, Discharge: 0.65, Height: 1.2, Inside: v[3], Outside: v[4], Wind: 2, Effectiveness: 0.3}.Solve()
	if err := errors.Join(err1, err2, err3); err != nil {
		return r, err
	}
	level := []ventilation.Opening{{Name: "a", Height: 1, Area: 1, Discharge: 0.6}, {Name: "b", Height: 1, Area: 1, Discharge: 0.6}}
	r.Lines = []string{
		fmt.Sprintf("a flap 0.8 m deep pushed out %g m stands at %.1f degree", v[0], angle),
		fmt.Sprintf("louvre of 1.2 m²     %.3f m² free at %g degree", louvre.FreeArea(), louvre.Angle),
		fmt.Sprintf("2 m² behind 1 m²     pass as much as %.3f m²", series),
		fmt.Sprintf("an open door alone   %.3f kg/s each way, neutral level %.2f m up", two.Flow, two.Neutral),
		fmt.Sprintf("published fits       %.2f to %.2f m³/s for the same", band.Low, band.High),
		fmt.Sprintf("handbook             stack %.2f, wind %.2f, together %.2f m³/s", h.Stack, h.Wind, h.Quadrature),
		fmt.Sprint(ventilation.CheckOpenings(level, 0, 3, 0)),
	}
	heavy, light := c.OutsideDensity, c.InsideDensity
	r.Steps = []Step{
		{Says: "The flap, from how far its edge moved.", Formula: "β = 2 asin(s/(2 · 0.8))", Values: numbers{"s": v[0]}, Value: angle, Unit: "degree"},
		{Says: "Free between the slats, square to them.", Formula: "A = 10 · 1.2 max(0, 0.1 sin(α) - 0.008)", Values: numbers{"α": v[1]}, Value: louvre.FreeArea(), Unit: "m²"},
		{Says: "Two holes one after the other.", Formula: "A_12 = 1/sqrt(1/1^2 + 1/2^2)", Value: series, Unit: "m²"},
		{Says: "Two streams that pass each other in one opening hinder each other.", Formula: "C_d = 0.40 + 0.0045 (t_i - t_o)", Source: "HoF97 ch. 25 eq. 38", Values: numbers{"t_i": v[3], "t_o": v[4]}, Value: cd},
		{Says: "Neutral level, from equal mass both ways.", Formula: "n = 2/(1 + (ρ_o/ρ_i)^(1/3))", Values: numbers{"ρ_o": heavy, "ρ_i": light}, Value: two.Neutral, Unit: "m"},
		{Says: "In below it, by the speeds summed over the height.", Formula: "m = 2/3 C_d w n sqrt(2 ρ_o (ρ_o - ρ_i) 9.80665 n)", Values: numbers{"C_d": cd, "w": v[2], "n": two.Neutral, "ρ_o": heavy, "ρ_i": light}, Value: two.Flow, Unit: "kg/s"},
		{Says: "The handbook's stack of the other house.", Formula: "V = 0.65 · 1.2 sqrt(2 · 9.80665 · 1.2 (t_i - t_o)/(t_i + 273.15))", Source: "HoF97 ch. 25 eq. 37", Values: numbers{"t_i": v[3], "t_o": v[4]}, Value: h.Stack, Unit: "m³/s"},
	}
	var in plotter.XYs // m/s outward, m
	out := plotter.XYs{{X: 0, Y: two.Neutral}}
	for i := 0; i <= 100; i++ {
		z := float64(i) / 50
		u := cd * math.Sqrt(2*9.80665*(heavy-light)*math.Abs(z-two.Neutral))
		if z < two.Neutral {
			in = append(in, plotter.XY{X: -u / math.Sqrt(heavy), Y: z})
		} else {
			out = append(out, plotter.XY{X: u / math.Sqrt(light), Y: z})
		}
	}
	in = append(in, out[0])
	r.Picture, err = chart{title: "Speed over the height of the door", says: "A curve over the height of the door: inward at the foot, none at the neutral level, outward at the top.", x: "outward, mean speed through the door, m/s", y: "height, m", zero: true,
		curves: []curve{{"in", in}, {"out", out}}, marks: []mark{{fmt.Sprintf("neutral, %.2f m", two.Neutral), 0, two.Neutral}}}.picture("Fastest at foot and head; as much goes in as comes out.")
	return r, err
}
