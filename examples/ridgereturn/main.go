// Command ridgereturn compares what a return of warm air from the ridge seems
// to save at the heater's coil with what it really saves the house, over how
// layered the air is, and with mixing fans.
//
//	go run ./examples/ridgereturn
//	go run ./examples/ridgereturn -flow 1.2 -mixing 0.05 -worth 2
package main

import (
	"errors"
	"io"
	"os"
	"strings"

	"cloche.example/internal/demo"
	"cloche.example/internal/program"
)

// choice is what the user may set.
type choice struct {
	inside, outside, flow, mixing  float64
	fanFlow, fanPower, film, worth float64
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	var c choice
	f := program.New("ridgereturn", "ridgereturn compares the coil's view of a return from the ridge with what the house saves.")
	f.Float64Var(&c.inside, "inside", demo.Inside, "air at the crop, `°C`")
	f.Float64Var(&c.outside, "outside", demo.OutsideDesign, "outside air, `°C`")
	f.Float64Var(&c.flow, "flow", demo.HeaterFlow, "flow through the heater, `m³/s`")
	f.Float64Var(&c.mixing, "mixing", 0.30, "air that mixes between the layers by itself, `m³/s`")
	f.Float64Var(&c.fanFlow, "fan-flow", demo.HeaterFlow, "air that mixing fans would move between the layers, `m³/s`")
	f.Float64Var(&c.fanPower, "fan-power", 120, "electricity of the mixing fans, `W`")
	f.Float64Var(&c.film, "film", 1.03, "`ratio` by which the fans raise the loss of the upper layer")
	f.Float64Var(&c.worth, "worth", 2.5, "what a joule of electricity is worth in joules of heat, `ratio`")
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		h, rows, err := compare(c)
		if err != nil {
			return nil, errors.New(asFlags.Replace(err.Error()))
		}
		return strings.NewReader(write(c, h, rows)), nil
	})
}

// asFlags puts an error in one line and in the words of the flags.
var asFlags = strings.NewReplacer("\n", "; ", "HeaterFlow", "-flow", "Mixing", "-mixing", "FilmFactor", "-film",
	"Flow", "-fan-flow", "Power", "-fan-power", "worth is", "-worth is")
