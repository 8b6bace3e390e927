// Command photometry reads a photometric file of ANSI/IES LM-63 and tells what
// it says: fixture, angles and symmetry, flux as the exact integral, beam and
// field angles, warnings; with a spectrum also the photons.
//
//	go run ./examples/photometry
//	go run ./examples/photometry -spectrum lamp.csv lamp.ies
//	go run ./examples/photometry -figure lamp.svg lamp.ies
package main

import (
	"bytes"
	_ "embed"
	"fmt"
	"io"
	"os"
	"strings"

	"cloche.example/internal/program"
	"cloche.example/lighting"
)

//go:embed demo.ies
var demoFile []byte

//go:embed demo.csv
var demoSpectrum []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// input is what was read.
type input struct {
	name     string
	file     *lighting.LM63
	table    *lighting.CandelaTable
	spectrum *lighting.Spectrum // nil when none was given
	demo     bool
}

// run is main with its streams; the result is the exit status.
func run(args []string, in io.Reader, out, problems io.Writer) int {
	f := program.New("photometry", "photometry [flags] [FILE.ies] tells what a photometric file says; - reads standard input, no file shows the demo.")
	f.MostWords = 1
	spectrum := f.String("spectrum", "", "`file` of the light's spectrum: lines of nm and W/nm, a comma between; relative powers are enough")
	tilt := f.String("tilt", "", "`file` with the lamp's tilt data, when the photometric file asks for one")
	figure := f.String("figure", "", "write a polar picture to this `file` (.png, .svg or .pdf)")
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		data, err := load(f.Arg(0), *tilt, *spectrum, in)
		if err == nil && *figure != "" {
			err = draw(*figure, data)
		}
		if err != nil {
			return nil, err
		}
		return write(data), nil
	})
}

// load reads the files.
func load(name, tilt, spectrum string, in io.Reader) (input, error) {
	d := input{name: name}
	var source io.Reader
	light := io.Reader(nil)
	switch name {
	case "":
		d.name, d.demo = "the demo", true
		source = bytes.NewReader(demoFile)
		light = bytes.NewReader(demoSpectrum)
	case "-":
		d.name, source = "standard input", in
	default:
		file, err := os.Open(name)
		if err != nil {
			return d, err
		}
		defer file.Close()
		source = file
	}
	var tiltData io.Reader
	if tilt != "" {
		file, err := os.Open(tilt)
		if err != nil {
			return d, err
		}
		defer file.Close()
		tiltData = file
	}
	if spectrum != "" {
		file, err := os.Open(spectrum)
		if err != nil {
			return d, err
		}
		defer file.Close()
		light = file
	}
	var err error
	if d.file, err = lighting.ReadLM63(source, tiltData); err != nil {
		hint := ""
		if tilt == "" && strings.HasSuffix(err.Error(), "pass its text") {
			hint = " (-tilt)"
		}
		return d, fmt.Errorf("%s: %w%s", d.name, err, hint)
	}
	if d.table, err = d.file.Table(); err != nil {
		return d, fmt.Errorf("%s: %w", d.name, err)
	}
	if light != nil {
		s, err := readSpectrum(light)
		if err != nil {
			return d, fmt.Errorf("spectrum: %w", err)
		}
		d.spectrum = &s
	}
	return d, nil
}
