// Command driplimit prints when the roof of a house drips at night: for a range
// of outside temperatures and inside humidities, the temperature of its inner
// face, the humidity at which condensation begins, and how much water forms.
//
//	go run ./examples/driplimit
//	go run ./examples/driplimit -plan house.json -figure drip.svg
//	go run ./examples/driplimit -cover "single glass" -inside 18 -outside 5,0,-5
package main

import (
	"context"
	"io"
	"os"
	"strings"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/plan"
)

// choice is what the user may set besides the plan; what is not given follows
// from the plan.
type choice struct {
	cover             string
	outside, humidity []float64 // °C, fraction
	tilt, slope       *float64  // degree, m
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	var c choice
	f := frame.New("driplimit", "driplimit prints when a roof drips, at night, over outside temperature and inside humidity.", "the humidity at which dripping begins")
	f.StringVar(&c.cover, "cover", "", "ready-made cover or one of the plan's own, by `name`, in place of the plan's roof: "+strings.Join(names(), ", "))
	f.Figure("inside", "set_points.winter_night.temperature_c", "inside air")
	f.Figure("outside-humidity", "site.winter_night.relative_humidity", "relative humidity outside")
	f.Figure("cloud", "site.winter_night.cloud_fraction", "cloud cover")
	f.Figure("wind", "site.winter_night.wind_m_s", "wind at the cover")
	f.Figure("altitude", "site.altitude_m", "altitude above sea level")
	tilt := f.Float64("tilt", 0, "tilt of the cover, `degree` from flat, 0 to 180, in place of the roof's")
	slope := f.Float64("slope", 0, "length of the cover along its slope, `m`, 0.01 to 100, in place of the roof's")
	f.Numbers(&c.outside, "outside", "outside temperatures, `°C` between commas; without it from 10 °C down to the plan's design night")
	f.Numbers(&c.humidity, "humidity", "inside relative humidities, `fractions` between commas; without it from 0.5 to 0.95 with the plan's")
	return f.Run(args, os.Stdin, out, problems, func(_ context.Context, p plan.Filled) (frame.Answer, error) {
		if f.Given("tilt") {
			c.tilt = tilt
		}
		if f.Given("slope") {
			c.slope = slope
		}
		r, err := newRoof(&p.Plan, c)
		if err != nil {
			return frame.Answer{}, err
		}
		nights, err := r.table()
		if err != nil {
			return frame.Answer{}, err
		}
		draw := func(format string) (io.WriterTo, error) { return r.draw(format) }
		return frame.Answer{Text: r.write(nights), Data: r.data(nights), Warnings: r.warnings(nights), Draw: draw}, nil
	})
}
