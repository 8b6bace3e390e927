package main

import (
	"fmt"
	"math"
	"strings"

	"cloche.example/internal/report"
	"cloche.example/lighting"
)

func (d *reading) write() *report.Report {
	var r report.Report
	f, t := d.file, d.table
	r.Title("What %s says", d.name)
	if d.demo {
		r.Note("The lamp, its photometry and its spectrum are invented for this example.")
	}
	r.Section("Answer")
	for _, s := range d.answer() {
		r.Note("%s", s)
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
	r.Value("Greatest intensity", d.top(), 1, "cd")
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
	d.photons(&r)

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

// top is the greatest intensity, cd.
func (d *reading) top() float64 {
	top := 0.0
	for _, row := range d.file.Web.Candela {
		for _, c := range row {
			top = max(top, c)
		}
	}
	return top
}

// ppf is the flux of photons of 400 to 700 nm, µmol/s, NaN where it is not known.
func (d *reading) ppf() float64 { return d.table.Lumens() * d.perLumen }

func (d *reading) photons(r *report.Report) {
	r.Section("Photons")
	if math.IsNaN(d.perLumen) {
		r.Note("LM-63 holds candela and lumens only. With the spectrum of the light (-spectrum) photons follow.")
		return
	}
	r.Value("Photons of 400 to 700 nm in a lumen", d.perLumen, 5, "µmol/(s lm)")
	r.Value("PPF, 400-700 nm", d.ppf(), 1, "µmol/s")
	if d.file.InputPower > 0 {
		r.Value("Photon efficacy", d.ppf()/d.file.InputPower, 2, "µmol/J")
	}
	if d.spectrum == nil {
		return
	}
	s := *d.spectrum
	r.Value("Illuminance of a PPFD", s.LuxPerPPFD(), 2, "lx per µmol/(m² s)")
	r.Value("Photons in a joule of light, 400-700 nm", s.PARPhotonsPerJoule(), 3, "µmol/J")
	r.Value("Far-red, 700-800 nm, kept apart", d.table.Lumens()*s.PhotonsPerLumen(lighting.FarRed()), 2, "µmol/s")
	if d.file.InputPower > 0 {
		r.Value("Share of the power that leaves as these photons", lighting.LightShare(d.ppf()/d.file.InputPower, s.PARPhotonsPerJoule()), 3, "")
	}
	r.Note("The spectrum is taken to be the same in every direction.")
}

// answer says what the lamp is, and how a plan takes it.
func (d *reading) answer() []string {
	text := fmt.Sprintf("%s lm", report.Number(d.table.Lumens(), 0))
	if p := d.file.InputPower; p > 0 {
		text += fmt.Sprintf(" for %s W, %s lm/W", report.Number(p, 0), report.Number(d.table.Lumens()/p, 0))
	}
	text += fmt.Sprintf("; %s %% of it goes down; half the greatest intensity within %s degree along the plane 0-180 and %s across it.",
		report.Number(100*below(d.file.Web)/d.table.Lumens(), 0), report.Number(width(d.table, 0, 0.5), 0), report.Number(width(d.table, 90, 0.5), 0))
	all := []string{text}
	if !math.IsNaN(d.perLumen) {
		all = append(all, fmt.Sprintf("In photons %s µmol/s. A plan takes the file as lights.photometric_file with lights.photons_per_lumen_umol_s_lm %s.", report.Number(d.ppf(), 1), report.Number(d.perLumen, 5)))
	}
	if d.demo && d.planLamps {
		all = append(all, fmt.Sprintf("The plan's lamps are beams of %g degree without a photometric file; this one stands for it.", d.plan.Lights.Beam))
	}
	return append(all, d.warnings()...)
}

// warnings tell where the file departs from the plan that names it.
func (d *reading) warnings() []string {
	if !d.ofPlan {
		return nil
	}
	var all []string
	l := d.plan.Lights
	if p := d.file.InputPower; p > 0 && math.Abs(p/l.Power-1) > 0.05 {
		all = append(all, fmt.Sprintf("The file's lamp draws %s W, and lights.power_w is %s W.", report.Number(p, 1), report.Number(l.Power, 1)))
	}
	if math.IsNaN(d.perLumen) {
		all = append(all, "The plan says neither lights.photons_per_lumen_umol_s_lm nor lights.spectrum_file: the file's lumens tell no photons.")
	}
	return all
}
