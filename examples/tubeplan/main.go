// Command tubeplan plans a perforated film tube for a house: the holes for a
// wanted evenness, pressure and heat row by row, the jets and where they go, and
// the flow at which the heater's fan, the ducts and the tube agree.
//
//	go run ./examples/tubeplan
//	go run ./examples/tubeplan -plan house.json -figure tube.svg
//	go run ./examples/tubeplan -diameter 0.5 -evenness 0.95
//	go run ./examples/tubeplan -hole 0.05 -fan-table fan.txt
package main

import (
	"context"
	"io"
	"os"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/plan"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	f := frame.New("tubeplan", "tubeplan plans a perforated tube for a house.", "flow and temperature along the tube")
	f.Figure("diameter", "perforated_tube.diameter_m", "inside diameter of the tube")
	f.Figure("lead-in", "perforated_tube.lead_in_m", "from the fan to the first row")
	f.Figure("pitch", "perforated_tube.pitch_m", "from row to row")
	f.Figure("rows", "perforated_tube.rows_count", "rows of holes")
	f.Figure("holes", "perforated_tube.holes_per_row_count", "holes in a row")
	f.Figure("hole", "perforated_tube.hole_diameter_m", "diameter of the holes; without it they are found for the evenness")
	f.Figure("evenness", "perforated_tube.evenness_fraction", "wanted of the weakest row over the strongest")
	f.Figure("crop", "perforated_tube.above_crop_m", "from the tube down to the crop")
	f.Figure("flow", "heater.flow_m3_s", "stated flow of the heater, for which holes are sized")
	f.Figure("power", "heater.power_w", "heat that the heater gives to the air")
	f.Figure("inside", "set_points.winter_night.temperature_c", "house air")
	table := f.String("fan-table", "", "table of the fan, a `file` with a flow in m³/s and a pressure in Pa on each line, flows rising; - for standard input")
	return f.Run(args, os.Stdin, out, problems, func(_ context.Context, p plan.Filled) (frame.Answer, error) {
		p, err := withFan(p, *table, os.Stdin)
		if err != nil {
			return frame.Answer{}, err
		}
		t, err := solve(p)
		if err != nil {
			return frame.Answer{}, err
		}
		return frame.Answer{Text: t.write(), Data: t.data(), Warnings: t.warnings(), Draw: t.draw}, nil
	})
}
