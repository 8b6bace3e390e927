package figures

import (
	"fmt"
	"math"

	"cloche.example/envelope"
)

func sunThroughCover() Figure {
	return Figure{
		Name: "sun-through-cover", Title: "Sun on each face of a house", Subject: "the whole house", Package: "envelope",
		Question: "The sun stands in the south. How much of it falls on each face of a house, and how much comes in?",
		Sketch:   "A gable house of 6.4 by 14.8 m with its ridge from east to west, single glass all round.",
		Given: []Given{
			{"b", "sun on a plane that faces it", "W/m²", 800, 0, 1100},
			{"d", "light of the sky on a level plane", "W/m²", 100, 0, 500},
			{"h", "height of the sun", "degree", 30, 1, 85},
			{"γ", "direction of the sun, clockwise from north", "degree", 180, 0, 360},
		},
		Assumes: []string{"Glass of 4 mm that passes 90 % straight on; clean, no bars; grass outside that throws back a fifth; an even sky."},
		Change:  []string{"A sun of 10 degree: a square metre of the south wall takes half as much again as one of the roof.", "Turn the sun to the west: the end wall comes in."},
		Code:    "solveSunThroughCover",
		Solve:   solveSunThroughCover,
	}
}

func solveSunThroughCover(v []float64) (r Result, err error) {
	form := envelope.DefaultForm()
	form.Span, form.Length, form.Eave, form.Ridge, form.Azimuth = 6.4, 14.8, 1.3, 3.1, 90
	shape, err := envelope.NewShape(form)
	if err != nil {
		return r, err
	}
	pane := envelope.Sheet{Index: 1.526, Thickness: 0.004, Extinction: envelope.ExtinctionOf(1.526, 0.004, 0.90)}
	sheets, err := envelope.NewLightLayers(pane)
	if err != nil {
		return r, err
	}
	lights := make([]envelope.FacetLight, len(shape.Facets))
	for i, f := range shape.Facets {
		if !f.Kind.InGround() {
			lights[i] = envelope.FacetLight{Sheets: sheets, Factors: envelope.DefaultLightFactors()}
		}
	}
	house, err := envelope.NewGlazing(shape, lights, 1)
	if err != nil {
		return r, err
	}
	sun := envelope.Sunlight{BeamNormal: v[0], DiffuseHorizontal: v[1], Albedo: 0.2, Elevation: v[2], Azimuth: v[3]}
	g, err := house.Gain(sun)
	if err != nil {
		return r, err
	}
	var rows []bar
	var roof envelope.FacetSun
	var facet envelope.Facet
	for i, f := range shape.Facets {
		if f.Kind.InGround() {
			continue
		}
		s := g.Facets[i]
		in := s.BeamTransmitted + s.DiffuseTransmitted
		r.Lines = append(r.Lines, fmt.Sprintf("%-17s %5.1f m²  incidence %5.1f degree  %6.1f W/m² on it  %7.0f W in", f.Name, f.Area, s.Plane.Incidence, s.Plane.Total(), in))
		rows = append(rows, bar{f.Name, in / 1000})
		if f.Kind == envelope.Roof && math.Abs(f.Azimuth-180) < 90 {
			roof, facet = s, f
		}
	}
	level := v[1] + v[0]*math.Sin(v[2]*math.Pi/180)
	r.Lines = append(r.Lines, fmt.Sprintf("in all %.1f kW on glass, %.1f kW in, %.0f W/m² of floor; %.0f W/m² fall on open ground", g.Incident/1000, g.Transmitted/1000, g.Transmitted/shape.FloorArea, level))
	values := numbers{"b": v[0], "d": v[1], "h": v[2], "γ": v[3], "β": facet.Tilt, "γ_f": facet.Azimuth}
	r.Steps = []Step{
		{Says: "Angle at which the sun meets the southern slope of the roof.", Formula: "θ = acos(cos(β) sin(h) + sin(β) cos(h) cos(γ - γ_f))", Source: "DufBec13 1.6", Values: values, Value: roof.Plane.Incidence, Unit: "degree", Within: 1e-6, Why: "rounding"},
		{Says: "Sun on it.", Formula: "G_b = b max(0, cos(θ))", Values: numbers{"b": v[0], "θ": roof.Plane.Incidence}, Value: roof.Plane.Beam, Unit: "W/m²", Within: 1e-6, Why: "rounding"},
		{Says: "Light of the sky on it.", Formula: "G_s = d (1 + cos(β))/2", Source: "DufBec13 2.15", Values: values, Value: roof.Plane.Sky, Unit: "W/m²"},
		{Says: "Light from the ground on it.", Formula: "G_g = 0.2 (d + b sin(h)) (1 - cos(β))/2", Source: "DufBec13 2.15", Values: values, Value: roof.Plane.Ground, Unit: "W/m²", Within: 1e-6, Why: "rounding"},
		{Says: "What passes of the beam.", Symbol: "τ", Source: "DufBec13 eq. 5.3.1 at that angle", Value: sheets.At(math.Min(90, roof.Plane.Incidence)).Transmittance},
		{Says: "The beam that comes in by this slope.", Formula: "Q_b = τ G_b A", Values: numbers{"τ": sheets.At(math.Min(90, roof.Plane.Incidence)).Transmittance, "G_b": roof.Plane.Beam, "A": facet.Area}, Value: roof.BeamTransmitted, Unit: "W", Within: 1e-6, Why: "rounding"},
	}
	r.Picture = bars("Sun that comes in by each face", "A bar for each face of the house.", "%.1f kW", "What comes in by each face.", rows...)
	return r, nil
}
