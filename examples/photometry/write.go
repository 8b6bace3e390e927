package main

import (
	"fmt"
	"math"
	"strings"

	"cloche.example/internal/report"
	"cloche.example/lighting"
)

func write(d input) *report.Report {
	var r report.Report
	f, t := d.file, d.table
	r.Title("What %s says", d.name)
	if d.demo {
		r.Note("The fixture, its photometry and its spectrum are invented for this example.")
	}

	r.Section("File")
	r.Text("Edition", "", f.Edition.String())
	for _, l := range f.Labels {
		r.Text(l.Keyword, "", strings.ReplaceAll(l.Value, "\n", " / "))
	}
	r.Text("Luminous opening", "", f.Opening())
	r.Value("Width of the opening", math.Abs(f.Width), 3, "m")
	r.Value("Length of the opening", math.Abs(f.Length), 3, "m")
	r.Value("Height of the opening", math.Abs(f.Height), 3, "m")
	r.Value("Input power", f.InputPower, 1, "W")
	if f.Tilt != nil {
		last := len(f.Tilt.Angles) - 1
		r.Text("Tilt data", fmt.Sprint(last+1), fmt.Sprintf("angles from %g to %g degree, not applied below", f.Tilt.Angles[0], f.Tilt.Angles[last]))
	}

	r.Section("Angles")
	v, h := f.Web.Vertical, f.Web.Horizontal
	r.Text("Type", f.Web.Coordinates.String(), "")
	r.Text("Vertical", fmt.Sprint(len(v)), fmt.Sprintf("from %g to %g degree", v[0], v[len(v)-1]))
	r.Text("Horizontal", fmt.Sprint(len(h)), fmt.Sprintf("from %g to %g degree: %s", h[0], h[len(h)-1], symmetry(f.Web)))

	r.Section("Light")
	top := 0.0
	for _, row := range f.Web.Candela {
		for _, c := range row {
			top = max(top, c)
		}
	}
	r.Value("Greatest intensity", top, 1, "cd")
	r.Value("Straight down", t.Intensity(0, 0), 1, "cd")
	r.Value("Flux, exact integral of the table", t.Lumens(), 1, "lm")
	r.Value("of it below the horizontal", below(f.Web), 1, "lm")
	if lamps := f.LampLumens(); !math.IsNaN(lamps) {
		r.Value("Flux over lumens of the lamps", t.Lumens()/lamps, 4, "")
	}
	if f.InputPower > 0 {
		r.Value("Luminous efficacy", t.Lumens()/f.InputPower, 1, "lm/W")
	}
	for _, c := range []float64{0, 90} {
		r.Value(fmt.Sprintf("Full angle at half the peak, plane %g-%g", c, c+180), width(t, c, 0.5), 0, "degree")
		r.Value(fmt.Sprintf("Full angle at a tenth of it, plane %g-%g", c, c+180), width(t, c, 0.1), 0, "degree")
	}
	photons(&r, d)

	if len(f.Warnings) > 0 {
		r.Section("Accepted, though it departs from the standard")
		for _, w := range f.Warnings {
			r.Note("%s", w)
		}
	}
	r.Section("Cautions")
	r.Note("Do not look into bright or narrow beams, and keep blue and ultraviolet light off eyes. What stands here is not a safety assessment.")
	return &r
}

func photons(r *report.Report, d input) {
	r.Section("Photons")
	if d.spectrum == nil {
		r.Note("LM-63 holds candela and lumens only. With the spectrum of the light (-spectrum) photons follow.")
		return
	}
	s := *d.spectrum
	r.Value("Illuminance of a PPFD", s.LuxPerPPFD(), 2, "lx per µmol/(m² s)")
	r.Value("Photons in a joule of light, 400-700 nm", s.PARPhotonsPerJoule(), 3, "µmol/J")
	ppf := d.table.Lumens() * s.PhotonsPerLumen(lighting.PAR())
	r.Value("PPF, 400-700 nm", ppf, 1, "µmol/s")
	r.Value("Far-red, 700-800 nm, kept apart", d.table.Lumens()*s.PhotonsPerLumen(lighting.FarRed()), 2, "µmol/s")
	if d.file.InputPower > 0 {
		e := ppf / d.file.InputPower
		r.Value("Photon efficacy", e, 2, "µmol/J")
		r.Value("Share of the power that leaves as these photons", lighting.LightShare(e, s.PARPhotonsPerJoule()), 3, "")
	}
	r.Note("The spectrum is taken to be the same in every direction.")
}
