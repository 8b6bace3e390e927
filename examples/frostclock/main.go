// Command frostclock tells how many hours the demo house stays free of frost
// once its heat fails, for some outside temperatures and covers, after a fault
// of the heater (the fan still turns) and after a power cut (it does not).
//
//	go run ./examples/frostclock
//	go run ./examples/frostclock -inside 12 -outside -2,-6,-10 -figure frost.svg
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"cloche.example/internal/demo"
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
	var c choice
	f := flag.NewFlagSet("frostclock", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.Float64Var(&c.inside, "inside", demo.Inside, "air held until the failure, `°C`")
	f.Float64Var(&c.level, "level", 0, "air counted as frost, `°C` (default 0)")
	f.Float64Var(&c.wind, "wind", demo.Wind, "wind at the cover, `m/s`")
	f.Float64Var(&c.cloud, "cloud", demo.CloudCover, "cloud cover, `fraction` (default 0)")
	f.Float64Var(&c.still, "still", 0.5, "`fraction` of the heat exchange with structure and soil that is left without the fan")
	list := f.String("outside", "-2,-5,-8,-11,-14", "outside air, `°C` between commas")
	figure := f.String("figure", "", "draw the air over time at the coldest outside to this .svg, .png or .pdf `file`")
	if err := f.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(out, "frostclock tells how many hours a house stays free of frost once its heat fails.")
			f.SetOutput(out)
			f.PrintDefaults()
			return 0
		}
		return fail(problems, err)
	}
	if f.NArg() > 0 {
		return fail(problems, fmt.Errorf("%q is not understood; -h explains", f.Arg(0)))
	}
	for _, s := range strings.Split(*list, ",") {
		v, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
		if err != nil {
			return fail(problems, fmt.Errorf("-outside %q: numbers between commas, please", *list))
		}
		c.outside = append(c.outside, v)
	}
	rows, err := compute(c)
	if err != nil {
		return fail(problems, err)
	}
	if *figure != "" {
		if err := draw(*figure, c, rows); err != nil {
			return fail(problems, err)
		}
	}
	if _, err := io.WriteString(out, write(c, rows)); err != nil {
		return fail(problems, err)
	}
	return 0
}

func fail(w io.Writer, err error) int {
	fmt.Fprintln(w, "frostclock:", strings.ReplaceAll(err.Error(), "\n", "; "))
	return 2
}
