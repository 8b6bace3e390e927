package figures

import (
	"fmt"

	"cloche.example/airheat"
)

func ductPieces() Figure {
	return Figure{
		Name: "duct-pieces", Title: "A duct, piece by piece", Subject: "ducts and fans", Package: "airheat", Example: "Example_ductPieces",
		Question: "How wide must a duct be, what does each piece of it lose, and what flow does a fan drive through it?",
		Sketch:   "A flat duct of 0.5 by 0.2 m with an elbow, a damper and a sudden widening, then a round one of 0.4 m.",
		Given: []Given{
			{"V", "flow", "m³/s", 0.5, 0.05, 2},
			{"t", "temperature of the air", "°C", 40, -20, 90},
			{"θ", "damper, closed by", "degree", 20, 10, 60},
		},
		Assumes: []string{"Walls of 0.15 mm of roughness; fittings add up as if far apart. The fan gives 120 - 150 V² Pa at 1.2 kg/m³."},
		Change:  []string{"Close the damper to 50 degree: it takes more than the rest together."},
		Code:    "solveDuctPieces",
		Solve:   solveDuctPieces,
	}
}

func solveDuctPieces(v []float64) (r Result, err error) {
	flow, air := v[0], airheat.DryAir(v[1], 101325)
	d, err := airheat.RoundFor(airheat.RoundSizing{Flow: flow, Pressure: 1, Length: 1, Roughness: 0.15e-3, Properties: air})
	if err != nil {
		return r, err
	}
	flat := airheat.Rectangular(0.5, 0.2)
	k := airheat.MitredElbow(90) + airheat.DiscDamper(v[2]) + airheat.SuddenExpansion(0.5)
	system, err := airheat.NewSystem(
		airheat.Segment{Section: flat, Length: 6, Roughness: 0.15e-3, Fittings: k},
		airheat.Segment{Section: airheat.Round(0.4), Length: 8, Roughness: 0.15e-3, Fittings: airheat.FreeOutlet})
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("round duct for 1 Pa/m      %.3f m; 0.5 by 0.2 m is as good as %.3f m", d, flat.EquivalentDiameter()),
		fmt.Sprintf("elbow, damper, expansion   K = %.2f", k),
	}
	losses := system.LossesTo(nil, flow, air)
	for i, l := range losses {
		r.Lines = append(r.Lines, fmt.Sprintf("piece %d                    %.2f m/s, wall %.1f Pa, fittings %.1f Pa", i+1, l.Velocity, l.Wall, l.Fittings))
	}
	r.Lines = append(r.Lines, fmt.Sprintf("regain from 5 to 4 m/s     %.2f Pa of %.2f at 0.8", airheat.StaticRegain(5, 4, 0.8, air), airheat.StaticRegain(5, 4, 1, air)))
	q, err := system.FlowAt(40, air)
	if err != nil {
		return r, err
	}
	fan, err := airheat.NewFanPolynomial(0, 1, 120, 0, -150)
	if err != nil {
		return r, err
	}
	at, err := system.Intersections(fan, airheat.DefaultFanDrive(), air)
	if err != nil {
		return r, err
	}
	if len(at) == 0 {
		return r, fmt.Errorf("the fan does not meet this duct")
	}
	r.Lines = append(r.Lines,
		fmt.Sprintf("40 Pa drive                %.3f m³/s; a fan of 120 - 150 Q² Pa gives %.3f m³/s", q, at[0].Flow),
		fmt.Sprintf("which warms the air by     %.2f K at an efficiency of 0.5", airheat.FanRise(at[0].Pressure, 0.5, air)))
	one := losses[0]
	r.Steps = []Step{
		{Says: "A round duct as good as the flat one.", Formula: "D = 1.30 (a b)^0.625/(a + b)^0.25", Source: "Hueb48", Values: numbers{"a": 0.5, "b": 0.2}, Value: flat.EquivalentDiameter(), Unit: "m"},
		{Says: "Speed in the flat duct.", Formula: "v = V/(a b)", Values: numbers{"V": flow, "a": 0.5, "b": 0.2}, Value: one.Velocity, Unit: "m/s"},
		{Says: "Its friction factor, on the hydraulic diameter.", Symbol: "f", Source: "Cole39 eq. 12", Value: one.Friction},
		{Says: "Loss at its wall.", Formula: "Δp_w = f L/D_h ρ v^2/2", Source: "Darcy-Weisbach", Values: numbers{"f": one.Friction, "L": 6, "D_h": 2 * 0.5 * 0.2 / 0.7, "ρ": air.Density, "v": one.Velocity}, Value: one.Wall, Unit: "Pa", Within: 1e-6, Why: "rounding"},
		{Says: "Loss in its fittings.", Formula: "Δp_f = K ρ v^2/2", Source: "SmaDuct06 table A-7 for K", Values: numbers{"K": k, "ρ": air.Density, "v": one.Velocity}, Value: one.Fittings, Unit: "Pa", Within: 1e-6, Why: "rounding"},
		{Says: "Flow at which fan and duct agree.", Symbol: "V_f", Source: "solved", Value: at[0].Flow, Unit: "m³/s"},
	}
	two := losses[1]
	r.Picture = bars("Losses piece by piece", "Four bars: wall and fittings of the flat and of the round piece.", "%.1f Pa", "Elbow, damper and widening take most of it.",
		bar{"flat, wall", one.Wall}, bar{"flat, fittings", one.Fittings}, bar{"round, wall", two.Wall}, bar{"round, outlet", two.Fittings})
	return r, nil
}
