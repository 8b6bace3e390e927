// Command covers compares covers and combinations of covers for one house:
// what the house loses on the design night, what share goes to the sky, at
// which humidity it drips, and how much light it lets in.
//
//	go run ./examples/covers
//	go run ./examples/covers -plan house.json -outside -20 -cloud 0.5
//	go run ./examples/covers -figure covers.png
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
	f := frame.New("covers", "covers compares covers of one house on its design night.", "the losses")
	f.Figure("inside", "set_points.winter_night.temperature_c", "inside air")
	f.Figure("humidity", "set_points.winter_night.relative_humidity", "relative humidity inside")
	f.Figure("outside", "site.winter_night.temperature_c", "outside air")
	f.Figure("outside-humidity", "site.winter_night.relative_humidity", "relative humidity outside")
	f.Figure("wind", "site.winter_night.wind_m_s", "wind at the cover")
	f.Figure("cloud", "site.winter_night.cloud_fraction", "cloud cover")
	return f.Run(args, os.Stdin, out, problems, func(_ context.Context, p plan.Filled) (frame.Answer, error) {
		t, err := compare(&p.Plan)
		if err != nil {
			return frame.Answer{}, err
		}
		draw := func(format string) (io.WriterTo, error) { return draw(format, t) }
		return frame.Answer{Text: strings.NewReader(write(t)), Data: data(t), Draw: draw}, nil
	})
}
