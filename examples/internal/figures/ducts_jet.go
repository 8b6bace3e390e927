package figures

import (
	"fmt"
	"math"

	"cloche.example/airheat"
)

func jetThrow() Figure {
	return Figure{
		Name: "warm-jet", Title: "How far a warm jet reaches", Subject: "ducts and fans", Package: "airheat", Example: "Example_jetThrow",
		Question: "A heater blows warm air level into a house. How far does it reach, and how far does it rise?",
		Sketch:   "A level opening of 0.04 m². The jet draws in air of the house, slows down, cools, and bends upward because it is warm.",
		Given: []Given{
			{"V", "flow", "m³/s", 0.25, 0.05, 2},
			{"A", "free area of the opening", "m²", 0.04, 0.005, 0.3},
			{"ΔT", "supply above the house", "K", 25, 1, 60},
			{"t", "house", "°C", 15, 0, 35},
			{"y", "height of the film above the opening", "m", 1.8, 0.2, 6},
		},
		Assumes: []string{"A free round jet; decay factors from memory; two ends of what is published for the bend."},
		Change:  []string{"Half the speed through twice the area: the jet turns up long before its throw is used."},
		Code:    "solveJet",
		Solve:   solveJet,
	}
}

func solveJet(v []float64) (r Result, err error) {
	jet := airheat.DefaultJet(airheat.RoundJet)
	jet.Size = math.Sqrt(v[1])
	jet.Speed = v[0] / v[1] // m/s
	jet.Excess, jet.House = v[2], v[3]
	if err := jet.Check(); err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("throw to 0.5 m/s  %6.2f m   K √A0 V0/V, K = %g", jet.Throw(0.5), jet.Velocity),
		fmt.Sprintf("Archimedes number %7.4f  g ΔT0 √A0/(T V0²)", jet.Archimedes()),
	}
	for _, x := range []float64{2, 4, 6} {
		h := jet.Height(x)
		r.Lines = append(r.Lines, fmt.Sprintf("at %g m: %5.2f m/s, %5.2f K, axis up by %5.2f to %5.2f m", x, jet.AxisSpeed(x), jet.AxisExcess(x), h.Least, h.Most))
	}
	r.Lines = append(r.Lines, fmt.Sprintf("inertia rules for %6.2f m", jet.ForcedLength()))
	near, far := jet.Meets(v[4], 30)
	if math.IsNaN(far.Distance) {
		r.Lines = append(r.Lines, fmt.Sprintf("its axis need not meet a film %g m above within 30 m", v[4]))
	} else {
		r.Lines = append(r.Lines, fmt.Sprintf("meets a film %g m above after %.2f to %.2f m", v[4], near.Distance, far.Distance))
	}
	r.Steps = []Step{
		{Says: "Speed at the opening.", Formula: "v_0 = V/A", Values: numbers{"V": v[0], "A": v[1]}, Value: jet.Speed, Unit: "m/s"},
		{Says: "Throw: where the axis has slowed to 0.5 m/s.", Formula: "x = K sqrt(A) v_0/0.5", Source: "HoF17 ch. 20", Values: numbers{"K": jet.Velocity, "A": v[1], "v_0": jet.Speed}, Value: jet.Throw(0.5), Unit: "m"},
		{Says: "Buoyancy against momentum.", Formula: "Ar = 9.80665 ΔT sqrt(A)/((t + 273.15) v_0^2)", Source: "HoF17 ch. 20", Values: numbers{"ΔT": v[2], "A": v[1], "t": v[3], "v_0": jet.Speed}, Value: jet.Archimedes()},
		{Says: "Warmth of the axis at 6 m.", Formula: "ΔT_6 = K_T ΔT sqrt(A)/6", Values: numbers{"K_T": jet.Thermal, "ΔT": v[2], "A": v[1]}, Value: jet.AxisExcess(6), Unit: "K", Within: 1e-6, Why: "rounding; nearer than the core's end the axis keeps the full excess"},
		{Says: "Rise of the axis at 6 m, by the stronger published bend.", Symbol: "y_6", Value: jet.Height(6).Most, Unit: "m"},
	}
	if core := jet.Thermal * jet.Size; core > 6 {
		r.Steps = append(r.Steps[:3], r.Steps[4:]...) // the core reaches beyond
	}
	reach := math.Min(30, math.Max(4, 1.3*near.Distance))
	if math.IsNaN(near.Distance) {
		reach = 15
	}
	end := func(h float64) float64 {
		if h > 1.6*v[4] {
			return math.NaN()
		}
		return h
	}
	r.Picture, err = chart{title: "Path of the warm jet", says: "Two curves bend upward from the opening: the weakest and the strongest published bend; a level line is the film.", x: "distance, m", y: "above the opening, m", curves: []curve{
		{"weakest bend", along(0, reach, 60, func(x float64) float64 { return end(jet.Height(x).Least) })},
		{"strongest bend", along(0, reach, 60, func(x float64) float64 { return end(jet.Height(x).Most) })},
		{"film", straight(0, v[4], reach, v[4])},
	}}.picture("Somewhere between the two curves the jet meets the film.")
	return r, err
}
