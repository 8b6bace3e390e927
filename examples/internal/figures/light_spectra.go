package figures

import (
	"fmt"

	"cloche.example/lighting"
)

func spectra() Figure {
	return Figure{
		Name: "spectra", Title: "Spectra, and the bands that plants tell apart", Subject: "photons and spectra", Package: "lighting",
		Question: "What part of the photons of daylight, a filament lamp and diodes is blue, green, red and far-red, and how many photons are in a joule?",
		Sketch:   "Power over wavelength, once for each light. A photon of red has less energy than one of blue, so that a joule holds more of them.",
		Given: []Given{
			{"λ_r", "wavelength of the red diodes", "nm", 660, 620, 680},
			{"λ_b", "wavelength of the blue diodes", "nm", 450, 420, 480},
			{"b", "part of the diodes' light, as energy, that is blue", "fraction", 0.15, 0, 1},
		},
		Assumes: []string{"Diodes as triangles 40 nm wide at the foot; daylight and filament by the CIE's tables, which begin at 300 nm; bands of 100 nm from 400 nm on, the last one far-red."},
		Change:  []string{"All blue, b = 1: a joule holds over a quarter fewer photons.", "Red diodes of 680 nm: a few more photons in a joule, and a lux meter sees a third of them."},
		Code:    "solveSpectra",
		Solve:   solveSpectra,
	}
}

func solveSpectra(v []float64) (r Result, err error) {
	diode := func(nm float64) lighting.Spectrum {
		s, e := lighting.NewSpectrum([]float64{nm - 20, nm, nm + 20}, []float64{0, 1, 0})
		if e != nil {
			err = e
		}
		return s
	}
	red, blue := diode(v[0]).Scaled(1-v[2]), diode(v[1]).Scaled(v[2])
	if err != nil {
		return r, err
	}
	mix := lighting.MixSpectra(red, blue)
	lights := []struct {
		name string
		s    lighting.Spectrum
	}{{"daylight", lighting.IlluminantD65()}, {"filament lamp", lighting.IlluminantA()}, {"diodes", mix}}
	bands := []lighting.Band{{Name: "blue", From: 400, To: 500}, {Name: "green", From: 500, To: 600}, {Name: "red", From: 600, To: 700}, lighting.FarRed()}
	r.Lines = []string{"of 100 photons from 400 to 700 nm:   blue  green    red   and far-red   µmol in a joule"}
	var curves []curve
	for _, l := range lights {
		all := l.s.Photons(lighting.PAR())
		line := fmt.Sprintf("  %-33s", l.name)
		for _, b := range bands[:3] {
			line += fmt.Sprintf(" %6.1f", 100*l.s.Photons(b)/all)
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%s   %11.1f   %15.2f", line, 100*l.s.Photons(bands[3])/all, l.s.PARPhotonsPerJoule()))
		power := l.s.Power(400, 700)
		curves = append(curves, curve{l.name, along(380, 800, 210, func(nm float64) float64 { return 1000 * l.s.Power(nm-1, nm+1) / 2 / power })})
	}
	mixed := mix.PARPhotonsPerJoule()
	r.Steps = []Step{
		{Says: "Photons of one joule of the red line; a triangle is as good as its middle.", Formula: "n_r = λ_r/119.626565582", Source: "SI2019, N_A h c", Values: numbers{"λ_r": v[0]}, Value: lighting.PhotonsPerJoule(v[0]), Unit: "µmol/J"},
		{Says: "Of one joule of the blue line.", Formula: "n_b = λ_b/119.626565582", Values: numbers{"λ_b": v[1]}, Value: lighting.PhotonsPerJoule(v[1]), Unit: "µmol/J"},
		{Says: "Of one joule of both.", Formula: "n = (1 - b) n_r + b n_b", Values: numbers{"b": v[2], "n_r": lighting.PhotonsPerJoule(v[0]), "n_b": lighting.PhotonsPerJoule(v[1])}, Value: mixed, Unit: "µmol/J", Within: 1e-6, Why: "rounding where the triangles meet"},
		{Says: "Part of their photons that is blue: less than of their energy.", Formula: "p_b = b n_b/n", Values: numbers{"b": v[2], "n_b": lighting.PhotonsPerJoule(v[1]), "n": mixed}, Value: mix.Photons(bands[0]) / mix.Photons(lighting.PAR()), Within: 1e-6, Why: "rounding where the triangles meet"},
		{Says: "Lumens for each µmol, which a lux meter would read.", Symbol: "f", Source: "CieVis23", Value: mix.LuxPerPPFD(), Unit: "lm s/µmol"},
	}
	r.Picture, err = chart{title: "Three spectra", says: "Daylight is nearly level, the filament rises to the red and beyond, the diodes are two peaks.", x: "wavelength, nm", y: "relative power", zero: true, curves: curves}.picture("For equal power from 400 to 700 nm: thousandths of it in each nanometre. The filament gives most beyond the band.")
	return r, err
}
