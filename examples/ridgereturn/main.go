// Command ridgereturn compares what a return of warm air from the ridge seems
// to gain at the heater's coil with what it really saves the house on its design
// night, over how layered the air is, and with mixing fans.
//
//	go run ./examples/ridgereturn
//	go run ./examples/ridgereturn -plan house.json -figure ridge.svg
//	go run ./examples/ridgereturn -flow 1.2 -mixing 0.05
package main

import (
	"context"
	"io"
	"os"
	"strings"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/plan"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	f := frame.New("ridgereturn", "ridgereturn compares the apparent gain at the coil of a return from the ridge with what the house saves.", "gain and saving over the ridge's warmth")
	f.Figure("inside", "set_points.winter_night.temperature_c", "air at the crop")
	f.Figure("outside", "site.winter_night.temperature_c", "outside air")
	f.Figure("flow", "heater.flow_m3_s", "flow through the heater; then fan and ducts are not solved for it")
	f.Figure("rising", "heater.ridge_return.rising_fraction", "heat that rises past the crop")
	f.Figure("mixing", "heater.ridge_return.mixing_m3_s", "air that mixes between the layers by itself")
	f.Figure("fan-flow", "heater.mixing_fans.flow_m3_s", "air that mixing fans would move between the layers")
	f.Figure("fan-power", "heater.mixing_fans.power_w", "electricity of the mixing fans")
	f.Figure("loss-factor", "heater.mixing_fans.film_factor", "by which the fans raise the loss of the upper layer")
	f.Figure("electricity-worth", "heater.mixing_fans.worth_of_electricity_ratio", "joules of heat that a joule of electricity is worth")
	return f.Run(args, os.Stdin, out, problems, func(_ context.Context, p plan.Filled) (frame.Answer, error) {
		c, err := compare(&p.Plan, f.Given("flow"))
		if err != nil {
			return frame.Answer{}, err
		}
		draw := func(format string) (io.WriterTo, error) { return draw(format, c) }
		return frame.Answer{Text: strings.NewReader(write(c)), Data: data(c), Warnings: c.warnings(), Draw: draw}, nil
	})
}
