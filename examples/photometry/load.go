package main

import (
	"bytes"
	_ "embed" // the demo
	"errors"
	"fmt"
	"io"
	"math"
	"strings"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/input"
	"cloche.example/examples/internal/plan"
	"cloche.example/lighting"
)

//go:embed demo.ies
var demoFile []byte

//go:embed demo.csv
var demoSpectrum []byte

// most is the size of a photometric file or of tilt data, bytes.
const most = 1 << 20

// sources are the names of files; empty for none.
type sources struct{ file, tilt, spectrum string }

// reading is what was read.
type reading struct {
	plan      *plan.Plan
	name      string
	file      *lighting.LM63
	table     *lighting.CandelaTable
	perLumen  float64            // µmol/(s lm), 400 to 700 nm; NaN where unknown
	spectrum  *lighting.Spectrum // nil when none was given
	demo      bool               // the invented file stands for one
	ofPlan    bool               // the file is that of the plan's lamps
	planLamps bool               // the plan has lamps
}

// load reads the file that was named, or the plan's, or the demo's.
func load(p *plan.Plan, from sources, in io.Reader) (*reading, error) {
	d := &reading{plan: p, name: input.Name(from.file), perLumen: math.NaN(), planLamps: p.Lights != nil}
	var text []byte
	var err error
	switch {
	case from.file != "":
		text, err = input.Text(from.file, in, most)
	case d.planLamps && p.Lights.PhotometricFile != "":
		l := p.Lights
		d.ofPlan, d.name = true, l.PhotometricFile
		if from.tilt == "" {
			from.tilt = l.TiltFile
		}
		if from.spectrum == "" {
			from.spectrum = l.SpectrumFile
		}
		if l.PhotonsPerLumen != nil {
			d.perLumen = *l.PhotonsPerLumen
		}
		text, err = input.Text(l.PhotometricFile, strings.NewReader(""), most)
	default:
		d.name, d.demo, text = "an invented file", true, demoFile
	}
	if err != nil {
		return nil, err
	}
	if err = d.read(text, from.tilt); err != nil {
		return nil, err
	}
	return d, d.light(from.spectrum)
}

// read reads the photometric file, and the tilt data of another.
func (d *reading) read(text []byte, tilt string) (err error) {
	var tilted io.Reader
	if tilt != "" {
		b, err := input.Text(tilt, strings.NewReader(""), most)
		if err != nil {
			return err
		}
		tilted = bytes.NewReader(b)
	}
	if d.file, err = lighting.ReadLM63(bytes.NewReader(text), tilted); err == nil {
		d.table, err = d.file.Table()
	}
	if err != nil {
		hint := ""
		if tilt == "" && strings.HasSuffix(err.Error(), "pass its text") {
			hint = " (-tilt)"
		}
		return fmt.Errorf("%s: %w%s", d.name, err, hint)
	}
	return nil
}

// light reads the spectrum, whose photons count before a plan's own figure.
func (d *reading) light(name string) error {
	var s lighting.Spectrum
	var err error
	switch {
	case name == "-":
		return errors.New("-spectrum names a file: standard input is for the photometric file or the plan")
	case name != "":
		s, err = fromplan.Spectrum(name)
	case d.demo:
		s, err = fromplan.ReadSpectrum(bytes.NewReader(demoSpectrum))
	default:
		return nil
	}
	if err != nil {
		return fmt.Errorf("spectrum: %w", err)
	}
	d.spectrum, d.perLumen = &s, s.PhotonsPerLumen(lighting.PAR())
	return nil
}
