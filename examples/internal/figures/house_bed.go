package figures

import (
	"fmt"

	"cloche.example/envelope"
	"cloche.example/examples/internal/page"
)

func bedLight() Figure {
	return Figure{
		Name: "daylight-on-a-bed", Title: "Daylight on a bed, hour by hour", Subject: "sun and daylight", Package: "envelope", Example: "ExampleNewBedLight",
		Question: "How much of the sun and of the sky's light reaches a bed under glass, and through which part of the cover?",
		Sketch:   "A glass house of 6 by 12 m with its ridge from west to east and an opaque wall to the north; a bed of 5 by 11 m.",
		Given: []Given{
			{"τ_0", "what the clean glass passes straight on", "fraction", 0.90, 0.75, 0.91},
			{"τ_d", "left by dirt", "fraction", 0.95, 0.5, 1},
			{"τ_w", "left by drops", "fraction", 0.95, 0.5, 1},
			{"τ_b", "left by bars", "fraction", 0.92, 0.5, 1},
			{"z", "height of the bed", "m", 0.8, 0, 1.2},
		},
		Assumes: []string{"Straight rays, each through one face; an even sky; what walls and floor throw back is left out. A clear day of March, its fourth hour hazy."},
		Change:  []string{"Wash the glass: dirt of 0.95 to 1 gives every hour a twentieth more."},
		Code:    "solveBedLight",
		Solve:   solveBedLight,
	}
}

func solveBedLight(v []float64) (r Result, err error) {
	form := envelope.DefaultForm()
	form.Azimuth = 90 // the ridge runs from west to east
	shape, err := envelope.NewShape(form)
	if err != nil {
		return r, err
	}
	pane, err := envelope.NewLightLayers(envelope.Sheet{Index: 1.526, Thickness: 0.004, Extinction: envelope.ExtinctionOf(1.526, 0.004, v[0])})
	if err != nil {
		return r, err
	}
	lights := make([]envelope.FacetLight, len(shape.Facets))
	for i, f := range shape.Facets {
		if f.Kind != envelope.Floor && !(f.Kind == envelope.SideWall && f.Azimuth == 0) {
			lights[i] = envelope.FacetLight{Sheets: pane, Factors: envelope.LightFactors{Dirt: v[1], Condensation: v[2], Frame: v[3]}}
		}
	}
	house, err := envelope.NewGlazing(shape, lights, 0.8)
	if err != nil {
		return r, err
	}
	bed, err := envelope.NewBedLight(house, envelope.BedPlace{Left: 0.5, Near: 0.5, Width: 5, Length: 11, Height: v[4]})
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("%.0f %% of the sky's light reaches the bed", 100*bed.Diffuse()),
		"sun: height, azimuth   roof  walls  beam through   beam  diffuse W/m²  diffuse share",
	}
	var noon envelope.BedHour
	suns := []envelope.Sunlight{
		{BeamNormal: 250, DiffuseHorizontal: 35, Elevation: 6, Azimuth: 98},
		{BeamNormal: 560, DiffuseHorizontal: 65, Elevation: 23, Azimuth: 122},
		{BeamNormal: 680, DiffuseHorizontal: 80, Elevation: 36, Azimuth: 180},
		{BeamNormal: 60, DiffuseHorizontal: 170, Elevation: 23, Azimuth: 238},
	}
	for _, sun := range suns {
		hour, err := bed.Light(sun)
		if err != nil {
			return r, err
		}
		roof := 0.0
		for i, share := range hour.Sun.Facets {
			if shape.Facets[i].Kind == envelope.Roof {
				roof += share
			}
		}
		if sun.Azimuth == 180 {
			noon = hour
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%11.0f %8.0f %7.2f %6.2f %10.2f %9.0f %8.0f %14.2f", sun.Elevation, sun.Azimuth, roof, hour.Sun.Lit-roof, hour.Sun.Transmittance, hour.Beam, hour.Diffuse, hour.DiffuseShare))
	}
	r.Lines = append(r.Lines, fmt.Sprintf("at noon %.0f %% of the bed lie in the sun", 100*bed.Beam(36, 180).Lit))
	r.Steps = []Step{
		{Says: "What the parts beside the glass leave.", Formula: "f = τ_d τ_w τ_b", Values: numbers{"τ_d": v[1], "τ_w": v[2], "τ_b": v[3]}, Value: envelope.LightFactors{Dirt: v[1], Condensation: v[2], Frame: v[3]}.Total()},
		{Says: "Beam that the bed gets at noon, of that on open ground; each part of it through its own face and angle.", Symbol: "τ_n", Source: "DufBec13 5.1-5.3 along straight rays", Value: noon.Sun.Transmittance},
		{Says: "Sun on the bed at noon.", Formula: "G_b = τ_n b sin(h)", Values: numbers{"τ_n": noon.Sun.Transmittance, "b": 680, "h": 36}, Value: noon.Beam, Unit: "W/m²", Within: 1e-6, Why: "rounding"},
		{Says: "The sky's light on it.", Formula: "G_d = τ_s d", Values: numbers{"τ_s": bed.Diffuse(), "d": 80}, Value: noon.Diffuse, Unit: "W/m²", Within: 1e-6, Why: "rounding"},
	}
	d := page.NewDrawing(-2.6, -0.9, 8.6, 5.4, 420)
	d.Line(page.Stroke{Width: 1.5}, -2.6, 0, 8.6, 0)
	w, e, ridge := form.Span, form.Eave, form.Ridge
	d.Line(page.Stroke{Width: 2}, 0, 0, 0, e, w/2, ridge, w, e)
	d.Line(page.Stroke{Width: 5}, w, e, w, 0)
	d.Line(page.Stroke{Width: 4, Color: css(page.PenOf(2).Color)}, 0.5, v[4], w-0.5, v[4])
	for _, x := range []float64{1, 2, 3, 4, 5} { // rays of noon, from the south at the left
		const long = 4.6
		top := v[4] + long*0.5878
		d.Line(page.Stroke{Width: 1, Color: css(page.PenOf(1).Color), Arrow: true}, x-long*0.809, top, x, v[4])
	}
	d.Text(page.Middle, w/2, v[4]-0.35, "bed")
	d.Text(page.Start, w+0.2, e/2, "opaque")
	d.Text(page.Start, w+0.2, e/2-0.4, "wall, north")
	d.Text(page.Start, -2.5, 5.0, "sun of noon, 36 degree")
	r.Picture = drawn(d, "The bed at noon", "A section with the sun from the south: rays reach the bed through the wall and through both slopes of the roof.", "Rays of noon: some come through the front wall, most through the roof.")
	return r, nil
}
