// Command frostclock tells how many hours the demo house stays free of frost
// once its heat fails, for some outside temperatures and covers, after a fault
// of the heater (the fan still turns) and after a power cut (it does not).
//
//	go run ./examples/frostclock
//	go run ./examples/frostclock -inside 12 -outside -2,-6,-10 -figure frost.svg
package main

import (
	"io"
	"os"
	"strings"

	"cloche.example/internal/demo"
	"cloche.example/internal/program"
)

// choice is what the user may set.
type choice struct {
	inside, level, still, wind float64
	cloud                      float64
	outside                    []float64
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	c := choice{outside: []float64{-2, -5, -8, -11, -14}}
	f := program.New("frostclock", "frostclock tells how many hours a house stays free of frost once its heat fails.")
	f.Float64Var(&c.inside, "inside", demo.Inside, "air held until the failure, `°C`")
	f.Float64Var(&c.level, "level", 0, "air counted as frost, `°C` (default 0)")
	f.Float64Var(&c.wind, "wind", demo.Wind, "wind at the cover, `m/s`")
	f.Float64Var(&c.cloud, "cloud", demo.CloudCover, "cloud cover, `fraction` (default 0)")
	f.Float64Var(&c.still, "still", 0.5, "`fraction` of the heat exchange with structure and soil that is left without the fan")
	f.Numbers(&c.outside, "outside", "outside air, `°C` between commas")
	figure := f.String("figure", "", "draw the air over time at the coldest outside to this .svg, .png or .pdf `file`")
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		rows, err := compute(c)
		if err == nil && *figure != "" {
			err = draw(*figure, c, rows)
		}
		if err != nil {
			return nil, err
		}
		return strings.NewReader(write(c, rows)), nil
	})
}
