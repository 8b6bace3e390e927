package figures

import (
	"fmt"
	"math"

	"cloche.example/examples/internal/page"
	"cloche.example/lighting"
)

func beamAndExponent() Figure {
	return Figure{
		Name: "beam-and-exponent", Title: "Beam angle and exponent", Subject: "light on the bed", Package: "lighting",
		Question: "A data sheet gives a beam angle. How does the intensity fall, how bright is the middle, and what if half of it is taken for all?",
		Sketch:   "One lamp that points down; the farther a curve reaches in a direction, the more it sends there.",
		Given: []Given{
			{"Φ", "photons of the lamp", "µmol/s", 200, 1, 5000},
			{"β", "beam angle, the full one, to half the intensity", "degree", 120, 20, 170},
		},
		Assumes: []string{"An intensity that falls as a power of the cosine, the same all round, and nothing upward."},
		Change:  []string{"Take 60 degree: the same photons are three times as intense in the middle.", "120 degree is Lambert's law, as a flat diffuser has it: exponent 1."},
		Code:    "solveBeamAndExponent",
		Solve:   solveBeamAndExponent,
	}
}

func solveBeamAndExponent(v []float64) (r Result, err error) {
	light, err := lighting.FromBeamAngle(v[0], v[1])
	if err != nil {
		return r, err
	}
	slip, err := lighting.FromBeamAngle(v[0], v[1]/2)
	if err != nil {
		return r, err
	}
	m, middle, inside := light.Exponent(), light.Intensity(0, 0), light.ConeShare(v[1]/2)
	field := 2 * 180 / math.Pi * math.Acos(math.Pow(0.1, 1/m))
	r.Lines = []string{
		fmt.Sprintf("exponent %.3f, %.1f µmol/(s sr) in the middle, %.0f %% of the photons within the beam angle", m, middle, 100*inside),
		fmt.Sprintf("field angle, to a tenth of the intensity: %.0f degree", field),
		fmt.Sprintf("half of it taken for the full angle: exponent %.3f, %.1f µmol/(s sr) in the middle, %.1f times as much", slip.Exponent(), slip.Intensity(0, 0), slip.Intensity(0, 0)/middle),
	}
	r.Steps = []Step{
		{Says: "Exponent that halves the intensity at half the beam angle.", Formula: "m = ln(0.5)/ln(cos(β/2))", Source: "Moreno06", Values: numbers{"β": v[1]}, Value: m, Within: 1e-8, Why: "rounding of the angle"},
		{Says: "Intensity in the middle: all directions together must give the lamp's photons.", Formula: "I_0 = Φ (m + 1)/(2 π)", Values: numbers{"Φ": v[0], "m": m}, Value: middle, Unit: "µmol/(s sr)"},
		{Says: "At the edge of the beam.", Formula: "I_β = I_0 cos(β/2)^m", Values: numbers{"I_0": middle, "β": v[1], "m": m}, Value: light.Intensity(v[1]/2, 0), Unit: "µmol/(s sr)", Within: 1e-8, Why: "rounding of the angle"},
		{Says: "Photons within the beam.", Formula: "s = 1 - cos(β/2)^(m + 1)", Values: numbers{"β": v[1], "m": m}, Value: inside, Within: 1e-8, Why: "rounding of the angle"},
		{Says: "The field angle, where a tenth of the intensity is left: some sheets give this one.", Formula: "θ = 2 acos(0.1^(1/m))", Values: numbers{"m": m}, Value: field, Unit: "degree"},
		{Says: "The exponent if the half angle, as some sheets print it, were taken for the full one.", Formula: "m_s = ln(0.5)/ln(cos(β/4))", Values: numbers{"β": v[1]}, Value: slip.Exponent(), Within: 1e-8, Why: "rounding of the angle"},
		{Says: "So many times too bright the middle would come out.", Formula: "x = (m_s + 1)/(m + 1)", Values: numbers{"m_s": slip.Exponent(), "m": m}, Value: slip.Intensity(0, 0) / middle},
	}
	r.Picture = beamPicture(v[1], light)
	return r, nil
}

// beamPicture draws the intensity by direction, and the edges of the beam.
func beamPicture(beam float64, light lighting.CosinePower) Picture {
	d := page.NewDrawing(-1.35, -1.22, 1.35, 0.16, 420)
	point := func(g, reach float64) (x, y float64) {
		sin, cos := math.Sincos(g * math.Pi / 180)
		return reach * sin, -reach * cos
	}
	for _, reach := range []float64{0.5, 1} {
		var ring []float64
		for g := -90.0; g <= 90; g += 3 {
			x, y := point(g, reach)
			ring = append(ring, x, y)
		}
		d.Line(page.Stroke{Color: "var(--rule)", Width: 0.6}, ring...)
	}
	d.Line(page.Stroke{Color: "var(--rule)", Width: 0.6}, -1, 0, 1, 0)
	var curve []float64
	for g := -90.0; g <= 90; g++ {
		x, y := point(g, light.Intensity(math.Abs(g), 0)/light.Intensity(0, 0))
		curve = append(curve, x, y)
	}
	d.Line(page.Stroke{Color: css(page.PenOf(0).Color), Width: 2.2}, curve...)
	for _, side := range []float64{-1, 1} {
		x, y := point(side*beam/2, 1.06)
		d.Line(page.Stroke{Color: css(page.PenOf(1).Color), Width: 1.4, Dash: "5 3"}, 0, 0, x, y)
	}
	x, y := point(beam/2, 1.1)
	d.Text(page.Start, x, y-0.02, fmt.Sprintf("%.0f°", beam/2))
	d.Text(page.Middle, 0, -1.1, "100 %")
	d.Text(page.Start, 0.03, -0.58, "50 %")
	d.Text(page.Middle, 0, 0.06, "lamp")
	return drawn(d, "Intensity by direction", fmt.Sprintf("A curve about straight down that crosses the edges of the beam, %.0f degree to either side, at half its length.", beam/2), "The dashed edges of the beam cut the curve where half of the middle's intensity is left.")
}
