package figures

import (
	"fmt"
	"math"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func insectScreen() Figure {
	return Figure{
		Name: "insect-screen", Title: "What an insect screen leaves of a vent", Subject: "vents and wind", Package: "ventilation", Example: "Example_insectScreen",
		Question: "A fine screen keeps insects out. What does it keep out of the air, clean and after a season's dust?",
		Sketch:   "A vent with a woven screen of its own size before it, one after the other. At low speed the threads' friction counts, at high speed their wake.",
		Given: []Given{
			{"φ", "porosity of the screen", "fraction", 0.4, 0.1, 0.9},
			{"e", "its thickness", "mm", 0.3, 0.05, 2},
			{"A", "vent", "m²", 1.5, 0.1, 50},
			{"b", "closed by dust", "fraction", 0.3, 0, 0.9},
		},
		Assumes: []string{"A vent of a discharge coefficient of 0.6, air of 25 °C. Permeability and inertial factor come from a fit to porosity: screens of one porosity differ by a factor of two, so prefer measured values. The last line shows how a tall vent is screened: as points."},
		Change:  []string{"A porosity of 0.7: under 2 Pa the vent then keeps 85 % of its flow instead of 43 %.", "Dust on 60 %: it halves what the clean screen left."},
		Code:    "solveInsectScreen",
		Solve:   solveInsectScreen,
	}
}

func solveInsectScreen(v []float64) (r Result, err error) {
	clear, err := ventilation.ValeraScreens.Screen(v[0], v[1]/1000)
	if err != nil {
		return r, err
	}
	mu, rho := psychro.Viscosity(25), ventilation.DryAirDensity(25, 101325)
	vent := ventilation.Opening{Height: 2.8, Area: v[2], Discharge: 0.6}
	clean, err := clear.Over(vent, v[2], mu)
	if err != nil {
		return r, err
	}
	screen := clear
	screen.Blocked = v[3]
	dusty, err := screen.Over(vent, v[2], mu)
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("pressure drop at 1 m/s of the clean screen %.2f Pa, of the dusty one %.2f Pa", clear.PressureDrop(1, rho, mu), screen.PressureDrop(1, rho, mu)),
		fmt.Sprintf("permeability %.3g m², inertial factor %.3f", screen.Permeability, screen.Inertia),
		fmt.Sprintf("dp Pa  Cd bare  screened  %.0f %% dusty", 100*v[3]),
	}
	cd := func(o ventilation.Opening, dp float64) float64 {
		return o.MassFlow(dp, rho) / (o.Area * math.Sqrt(2*rho*dp))
	}
	for _, dp := range []float64{0.1, 0.5, 2, 10} {
		r.Lines = append(r.Lines, fmt.Sprintf("%5.1f    %.3f    %.3f      %.3f", dp, cd(vent, dp), cd(clean, dp), cd(dusty, dp)))
	}
	// A tall vent with a screen is given as points, one above the other.
	points := ventilation.Opening{Height: 1, Vertical: 1, Area: 3, Discharge: 0.6}.Points(10)
	for i := range points {
		if points[i], err = screen.Over(points[i], 0.3, mu); err != nil {
			return r, err
		}
	}
	r.Lines = append(r.Lines, fmt.Sprintf("a tall vent as %d points from %.2f to %.2f m", len(points), points[0].Height, points[9].Height))
	q := clean.MassFlow(2, rho) / rho
	r.Steps = []Step{
		{Says: "Permeability, by the fit.", Formula: "K = 5.68 / 10^8 φ^3.68", Source: "Valera06, from memory", Values: numbers{"φ": v[0]}, Value: clear.Permeability, Unit: "m²"},
		{Says: "Inertial factor, by the fit.", Formula: "Y = 0.0567/φ^1.1604", Source: "Valera06, from memory", Values: numbers{"φ": v[0]}, Value: clear.Inertia},
		{Says: "Pressure drop at 1 m/s, clean: friction and wake.", Formula: "P_1 = e/1000 (μ 1/K + ρ Y 1^2/sqrt(K))", Source: "SenScreen16", Values: numbers{"e": v[1], "μ": mu, "K": clear.Permeability, "ρ": rho, "Y": clear.Inertia}, Value: clear.PressureDrop(1, rho, mu), Unit: "Pa"},
		{Says: "Flow under 2 Pa, screen and vent one after the other, found by their sum.", Symbol: "V", Value: q, Unit: "m³/s"},
		{Says: "Of the 2 Pa the screen takes.", Formula: "P_s = e/1000 (μ u/K + ρ Y u^2/sqrt(K))", Source: "SenScreen16", Values: numbers{"e": v[1], "μ": mu, "K": clear.Permeability, "ρ": rho, "Y": clear.Inertia, "u": q / v[2]}, Value: clear.PressureDrop(q/v[2], rho, mu), Unit: "Pa"},
		{Says: "And the vent.", Formula: "P_v = ρ (V/(0.6 A))^2/2", Values: numbers{"ρ": rho, "V": q, "A": v[2]}, Value: 2 - clear.PressureDrop(q/v[2], rho, mu), Unit: "Pa", Within: 1e-6, Why: "the difference of two near values"},
		{Says: "What the vent with its screen is worth under 2 Pa.", Formula: "C_d = V/(A sqrt(2 · 2/ρ))", Values: numbers{"V": q, "A": v[2], "ρ": rho}, Value: cd(clean, 2)},
	}
	line := func(name string, o ventilation.Opening) curve {
		return curve{name, along(0.05, 10, 80, func(dp float64) float64 { return cd(o, dp) })}
	}
	r.Picture, err = chart{title: "Discharge coefficient against the pressure across", says: "A level line of the bare vent and below it two curves, screened and dusty, that fall steeply towards small pressures.", x: "pressure across, Pa", y: "Cd", zero: true,
		curves: []curve{line("bare", vent), line("screened", clean), line("dusty", dusty)}}.picture("In calm, with tenths of a pascal, the screen takes most of the flow: it has no one discharge coefficient.")
	return r, err
}
