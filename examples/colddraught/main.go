// Command colddraught tells how cold the air is that falls on the crop from the
// vents of a plan's house in winter, when the high vents open first and when the
// low ones do, and how far each may open.
//
//	go run ./examples/colddraught
//	go run ./examples/colddraught -plan house.json -figure path.svg
//	go run ./examples/colddraught -limit 12 -outside -15,-5,5 -air 800
package main

import (
	"context"
	"io"
	"os"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/plan"
)

// choice is the plan with what only this program asks.
type choice struct {
	plan    *plan.Plan
	wind    float64   // m/s
	air     float64   // m³/h; below zero for what drying asks
	outside []float64 // °C; none for those of the plan
	opened  []float64 // per cent
}

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, in io.Reader, out, problems io.Writer) int {
	c := choice{opened: []float64{5, 10, 25, 50, 100}}
	f := frame.New("colddraught", "colddraught tells how cold the air is that falls on the crop from high and low vents.", "the fall at the coldest outside")
	f.Figure("inside", "set_points.winter_night.temperature_c", "house air")
	f.Figure("limit", "set_points.limits.chill_c", "coldest air that may fall on the crop")
	f.Figure("crop", "crop.height_m", "top of the crop above the floor")
	f.Float64Var(&c.wind, "wind", 0, "wind at ridge height, `m/s`")
	f.Float64Var(&c.air, "air", -1, "air wanted, `m³/h` of outside air; without it what drying on the plan's winter morning asks")
	f.Numbers(&c.outside, "outside", "outside air, `°C` between commas; without it from the plan's winter night to its winter morning")
	f.Numbers(&c.opened, "opened", "openings of the first vents, `per cent` between commas")
	return f.Run(args, in, out, problems, func(_ context.Context, p plan.Filled) (frame.Answer, error) {
		c.plan = &p.Plan
		h, err := c.house(f.Given("air"))
		if err != nil {
			return frame.Answer{}, err
		}
		d, err := h.solve()
		if err != nil {
			return frame.Answer{}, err
		}
		return frame.Answer{Text: d.write(), Data: d.data(), Warnings: d.warnings(), Draw: d.draw}, nil
	})
}
