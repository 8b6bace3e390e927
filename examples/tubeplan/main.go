// Command tubeplan plans a perforated film tube for the demo house: the holes
// for a wanted evenness, pressure and heat row by row, the jets and where they
// go, and what the heater's fan makes of it.
//
//	go run ./examples/tubeplan
//	go run ./examples/tubeplan -diameter 0.5 -evenness 0.95
//	go run ./examples/tubeplan -hole 0.05
package main

import (
	"errors"
	"io"
	"os"
	"strings"

	"cloche.example/internal/demo"
	"cloche.example/internal/program"
)

// wish is what the user may set.
type wish struct {
	diameter, lead, pitch, hole, evenness float64
	rows, holes                           int
	flow, supply, house, drop             float64
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	var w wish
	f := program.New("tubeplan", "tubeplan plans a perforated tube for the demo house.")
	f.Float64Var(&w.diameter, "diameter", 0.4, "inside diameter of the tube, `m`")
	f.Float64Var(&w.lead, "lead-in", 1.2, "from the fan to the first row, `m`")
	f.Float64Var(&w.pitch, "pitch", 0.4, "from row to row, `m`")
	f.IntVar(&w.rows, "rows", 33, "`count` of rows")
	f.IntVar(&w.holes, "holes", 2, "`count` of holes in a row")
	f.Float64Var(&w.hole, "hole", 0, "diameter of the holes, `m`; 0 finds it for -evenness")
	f.Float64Var(&w.evenness, "evenness", 0.9, "wanted `ratio` of the weakest row to the strongest")
	f.Float64Var(&w.flow, "flow", demo.HeaterFlow, "supply air at its own density, `m³/s`")
	f.Float64Var(&w.supply, "supply", 45, "supply air, `°C`")
	f.Float64Var(&w.house, "house", demo.Inside, "house air, `°C`")
	f.Float64Var(&w.drop, "crop", 1.2, "from the tube down to the crop, `m`")
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		report, err := w.report()
		if err != nil {
			return nil, errors.New(asFlags.Replace(err.Error()))
		}
		return report, nil
	})
}

// asFlags puts an error in one line and in the words of the flags.
var asFlags = strings.NewReplacer("\n", "; ",
	"TubeSupply.Flow", "flow", "TubeSupply.Temperature", "supply", "TubeSupply.House", "house",
	"Positions", "rows", "HolesPerRow", "holes", "HoleDiameter", "hole", "Diameter", "diameter", "LeadIn", "lead-in", "Pitch", "pitch")
