// Command digin tells what digging a house into the ground saves: the floor
// goes down while the room under the roof stays the same, so that cover gives
// way to buried wall. Each depth is shown bare and with its edge or buried wall
// insulated, on the design night and over the year.
//
//	go run ./examples/digin
//	go run ./examples/digin -plan house.json -figure digin.svg
//	go run ./examples/digin -soil "sand or gravel" -insulation 2.5
package main

import (
	"context"
	"io"
	"os"
	"strings"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/plan"
)

// choice is what the user may set besides the plan.
type choice struct {
	soil       string
	insulation float64 // m² K/W
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	var c choice
	f := frame.New("digin", "digin tells what digging a house into the ground saves.", "loss and heat of a year over the depth")
	f.Figure("inside", "set_points.winter_night.temperature_c", "inside air on the design night")
	f.Figure("outside", "site.winter_night.temperature_c", "outside air on the design night")
	f.Figure("conductivity", "ground.soil_conductivity_w_m_k", "conductivity of the soil")
	f.Float64Var(&c.insulation, "insulation", 1.5, "resistance of edge or wall insulation, `m² K/W`, 0.2 to 10")
	f.StringVar(&c.soil, "soil", "", "`kind` of soil in place of the plan's: clay or silt, sand or gravel, or rock")
	return f.Run(args, os.Stdin, out, problems, func(_ context.Context, p plan.Filled) (frame.Answer, error) {
		if c.soil != "" {
			var err error
			if p, err = p.With(plan.Figure{Path: "ground.soil", Value: c.soil}); err != nil {
				return frame.Answer{}, err
			}
		}
		a, err := compare(&p.Plan, c.insulation)
		if err != nil {
			return frame.Answer{}, err
		}
		draw := func(format string) (io.WriterTo, error) { return draw(format, a) }
		return frame.Answer{Text: strings.NewReader(write(a)), Data: data(a), Draw: draw}, nil
	})
}
