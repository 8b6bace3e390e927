package figures

import (
	"fmt"
	"math"

	"cloche.example/lighting"
)

func photonWeb() Figure {
	return Figure{
		Name: "photon-web", Title: "A photon web of one's own", Subject: "photons and spectra", Package: "lighting", Example: "Example_photonWeb",
		Question: "A fixture's light falls in a straight line from below to the side. How many photons are that in all, and where do most of them go?",
		Sketch:   "A web: intensities at a few angles, straight lines between them, the same all round.",
		Given: []Given{
			{"I_0", "intensity straight down", "µmol/(s sr)", 100, 1, 5000},
			{"γ_e", "angle from straight down at which it ends", "degree", 90, 10, 180},
			{"γ", "an angle to look at", "degree", 45, 0, 180},
		},
		Assumes: []string{"The same all round; straight lines between the angles, as the library reads every web."},
		Change:  []string{"End at 30 degree: a narrow beam of the same intensity has few photons.", "End at 180 degree: the light that goes up is counted too."},
		Code:    "solvePhotonWeb",
		Solve:   solvePhotonWeb,
	}
}

func solvePhotonWeb(v []float64) (r Result, err error) {
	table, err := lighting.NewTable(lighting.Web{Coordinates: lighting.TypeC, Vertical: []float64{0, v[1]}, Horizontal: []float64{0}, Intensity: [][]float64{{v[0], 0}}})
	if err != nil {
		return r, err
	}
	end := v[1] * math.Pi / 180
	part := fmt.Sprintf("%.4f", math.Sin(end)/end)
	if v[1] == 90 {
		part = "2/π" // the sine is 1
	}
	at := table.Intensity(v[2], 0)
	r.Lines = []string{fmt.Sprintf("2π %g (1 - %s) = %.1f µmol/s, %.0f µmol/(s sr) at %g degree", v[0], part, table.Flux(), at, v[2])}
	ring := func(g float64) float64 {
		return table.Intensity(g, 0) * 2 * math.Pi * math.Sin(g*math.Pi/180) * math.Pi / 180
	}
	r.Steps = []Step{
		{Says: "Intensity at the angle, on the straight line.", Formula: "I = max(0, I_0 (1 - γ/γ_e))", Values: numbers{"I_0": v[0], "γ": v[2], "γ_e": v[1]}, Value: at, Unit: "µmol/(s sr)"},
		{Says: "A ring of one degree there spans so many steradian: it is wider to the side.", Formula: "ΔΩ = 2 π sin(γ) π/180", Values: numbers{"γ": v[2]}, Value: 2 * math.Pi * math.Sin(v[2]*math.Pi/180) * math.Pi / 180, Unit: "sr", Within: 1e-6, Why: "rounding near nought"},
		{Says: "Photons in that ring.", Formula: "ΔΦ = I ΔΩ", Values: numbers{"I": at, "ΔΩ": 2 * math.Pi * math.Sin(v[2]*math.Pi/180) * math.Pi / 180}, Value: ring(v[2]), Unit: "µmol/s in each degree"},
		{Says: "All rings: the integral of the straight line times the sine.", Formula: "Φ = 2 π I_0 (1 - sin(γ_e)/(γ_e π/180))", Values: numbers{"I_0": v[0], "γ_e": v[1]}, Value: table.Flux(), Unit: "µmol/s"},
	}
	most := 0.0
	for g := 0.0; g <= v[1]; g++ {
		most = math.Max(most, ring(g))
	}
	r.Picture, err = chart{title: "Intensity and photons over the angle", says: "A straight line that falls from straight down, and a hump between: the photons of each ring.", x: "angle from straight down, degree", y: "of the greatest, %", zero: true, curves: []curve{
		{"intensity", along(0, v[1], 90, func(g float64) float64 { return 100 * table.Intensity(g, 0) / v[0] })},
		{"photons in each degree", along(0, v[1], 90, func(g float64) float64 { return 100 * ring(g) / most })},
	}}.picture("The intensity is greatest straight down; most photons leave to the side, where the rings are wide.")
	return r, err
}
