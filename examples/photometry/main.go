// Command photometry reads a photometric file of ANSI/IES LM-63 and tells what it
// says: lamp, angles and symmetry, flux as the exact integral, beam and field
// angles, warnings; with a spectrum also the photons. The file is the one named,
// or that of a plan's lamps.
//
//	go run ./examples/photometry
//	go run ./examples/photometry lamp.ies -spectrum lamp.csv
//	go run ./examples/photometry -plan house.json
//	go run ./examples/photometry -figure lamp.svg lamp.ies
package main

import (
	"context"
	"io"
	"os"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/plan"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, in io.Reader, out, problems io.Writer) int {
	f := frame.New("photometry", "photometry [FILE.ies] tells what a photometric file says; - reads it from standard input. Without one it is that of the plan's lamps, or an invented one.", "the intensities")
	f.Words = 1
	spectrum := f.String("spectrum", "", "`file` of the light's spectrum: lines of nm and W/nm, a comma between; relative powers are enough")
	tilt := f.String("tilt", "", "`file` with the lamp's tilt data, when the photometric file asks for one")
	return f.Run(args, in, out, problems, func(_ context.Context, p plan.Filled) (frame.Answer, error) {
		d, err := load(&p.Plan, sources{f.Arg(0), *tilt, *spectrum}, in)
		if err != nil {
			return frame.Answer{}, err
		}
		return frame.Answer{Text: d.write(), Data: d.data(), Warnings: d.warnings(), Draw: d.draw}, nil
	})
}
