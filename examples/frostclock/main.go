// Command frostclock tells how long a house stays free of frost once its heat
// fails, for some outside temperatures and covers, after a fault of the heater
// (the fan still turns) and after a power failure (it does not).
//
//	go run ./examples/frostclock
//	go run ./examples/frostclock -plan house.json -figure frost.svg
//	go run ./examples/frostclock -inside 12 -outside -2,-6,-10
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
	var outside []float64
	f := frame.New("frostclock", "frostclock tells how long a house stays free of frost once its heat fails.", "the air over time at the coldest outside")
	f.Figure("inside", "set_points.winter_night.temperature_c", "air held until the failure")
	f.Figure("frost", "set_points.limits.frost_c", "air counted as frost")
	f.Figure("wind", "site.winter_night.wind_m_s", "wind at the cover")
	f.Figure("cloud", "site.winter_night.cloud_fraction", "cloud cover")
	f.Figure("still-air", "heat_storage.still_air_fraction", "heat exchange with structure and soil that is left without the fan")
	f.Figure("emergency", "emergency_heat.power_w", "emergency heat")
	f.Numbers(&outside, "outside", "outside air, `°C` between commas; without it some down to the plan's design night")
	return f.Run(args, os.Stdin, out, problems, func(_ context.Context, p plan.Filled) (frame.Answer, error) {
		c, err := compute(&p.Plan, outside)
		if err != nil {
			return frame.Answer{}, err
		}
		draw := func(format string) (io.WriterTo, error) { return draw(format, c) }
		return frame.Answer{Text: strings.NewReader(write(c)), Data: data(c), Warnings: warnings(c), Draw: draw}, nil
	})
}
