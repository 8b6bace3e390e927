package figures

import (
	"fmt"
	"math"

	"cloche.example/envelope"
)

func paneLight() Figure {
	return Figure{
		Name: "light-by-angle", Title: "Light through a pane, by its angle", Subject: "covers", Package: "envelope", Example: "Example_paneForLight",
		Question: "How much light does a clear pane pass, and how fast does that fall when the sun stands low upon it?",
		Sketch:   "A ray meets a face, is partly thrown back, loses a little on its way, and meets the second face.",
		Given: []Given{
			{"n", "refractive index of the glass", "", 1.526, 1.3, 1.7},
			{"d", "thickness", "m", 0.004, 0.0005, 0.02},
			{"τ_0", "what it passes straight on", "fraction", 0.90, 0.75, 0.91},
			{"β", "slope of the roof for diffuse light", "degree", 30, 0, 90},
		},
		Assumes: []string{"A smooth, clear pane; both polarisations in equal parts. Dirt and drops take more."},
		Change:  []string{"A pane that passes 0.91: hardly anything is absorbed then, and what is lost is thrown back by the faces.", "Look beyond 60 degree: there the pane shuts."},
		Code:    "solvePaneLight",
		Solve:   solvePaneLight,
	}
}

func solvePaneLight(v []float64) (r Result, err error) {
	index, thickness := v[0], v[1]
	pane := envelope.Sheet{Index: index, Thickness: thickness, Extinction: envelope.ExtinctionOf(index, thickness, v[2])}
	if math.IsNaN(pane.Extinction) {
		return r, fmt.Errorf("a pane of the index %g cannot pass %g straight on: its faces alone throw back more", index, v[2])
	}
	one, err := envelope.NewLightLayers(pane)
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("extinction %.1f 1/m from a transmittance of %.2f", pane.Extinction, v[2]),
		"degree  face: perpendicular, parallel   once through  pane: passes  absorbs",
	}
	for _, angle := range []float64{0, 30, 60, 80} {
		perpendicular, parallel := envelope.Fresnel(index, angle)
		l := one.At(angle)
		r.Lines = append(r.Lines, fmt.Sprintf("%6.0f  %19.3f %9.3f   %12.3f  %12.3f  %7.3f", angle, perpendicular, parallel, pane.Bouguer(angle), l.Transmittance, l.Absorptance[0]))
	}
	sky, ground := envelope.DiffuseAngles(v[3])
	r.Lines = append(r.Lines, fmt.Sprintf("diffuse light %.3f", one.Diffuse().Transmittance),
		fmt.Sprintf("on a slope of %g degree the sky's light passes as beam at %.0f degree, %.3f, the ground's at %.0f, %.3f",
			v[3], sky, one.At(sky).Transmittance, ground, one.At(ground).Transmittance))
	const angle = 60.0
	perpendicular, parallel := envelope.Fresnel(index, angle)
	inside := math.Asin(math.Sin(angle*math.Pi/180)/index) * 180 / math.Pi
	once := pane.Bouguer(angle)
	values := numbers{"θ_1": angle, "θ_2": inside, "n": index, "K": pane.Extinction, "d": thickness}
	pass := func(rho float64) float64 { return once * (1 - rho) * (1 - rho) / (1 - rho*rho*once*once) }
	r.Steps = []Step{
		{Says: "A ray at 60 degree bends into the glass.", Formula: "θ_2 = asin(sin(θ_1)/n)", Source: "DufBec13 eq. 5.1.4", Values: values, Value: inside, Unit: "degree"},
		{Says: "Thrown back at a face, light that swings across the plane of incidence.", Formula: "r_s = (sin(θ_2 - θ_1)/sin(θ_2 + θ_1))^2", Source: "DufBec13 eq. 5.1.1", Values: values, Value: perpendicular},
		{Says: "The same, light that swings in it.", Formula: "r_p = (tan(θ_2 - θ_1)/tan(θ_2 + θ_1))^2", Source: "DufBec13 eq. 5.1.2", Values: values, Value: parallel},
		{Says: "What is left after the way through.", Formula: "τ_a = exp(-K d/cos(θ_2))", Source: "DufBec13 eq. 5.2.2", Values: values, Value: once},
		{Says: "The pane, both faces and the light thrown to and fro between them.", Formula: "τ = (τ_s + τ_p)/2", Source: "DufBec13 eq. 5.3.1", Values: numbers{"τ_s": pass(perpendicular), "τ_p": pass(parallel)}, Value: one.At(angle).Transmittance},
	}
	r.Picture, err = chart{title: "Light passed over the angle", says: "A curve that stays level to about 50 degree and then falls to nought at 90.", x: "angle of incidence, degree", y: "passed, %", zero: true,
		curves: []curve{{"", along(0, 89.9, 90, func(a float64) float64 { return 100 * one.At(a).Transmittance })}},
		marks:  []mark{{"60 degree", angle, 100 * one.At(angle).Transmittance}, {"diffuse", sky, 100 * one.At(sky).Transmittance}}}.picture("To about 50 degree the angle hardly matters; then the faces shut.")
	return r, err
}
