// Command ventday runs the demo house through an invented clear summer day,
// hour by hour: vents opened and shut by hand twice a day beside vents that
// follow the temperature, with wind and rain limits.
//
//	go run ./examples/ventday
//	go run ./examples/ventday -shade 0.4 -fog 150 -figure day.svg
//	go run ./examples/ventday -squall 15 -step 10m
package main

import (
	"io"
	"os"
	"strings"
	"time"

	"cloche.example/internal/program"
	"cloche.example/ventilation"
)

// choice is what the user may set.
type choice struct {
	mean, swing, dew, wind, squall float64 // °C, K, °C, m/s, h
	shade, fog, coolAbove          float64 // fraction, g/(m² h), W/m²
	open, shut, hand               float64 // h, h, fraction
	limit, lai                     float64 // °C, dimensionless
	rule                           ventilation.OpeningRule
	step                           time.Duration
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	var c choice
	rule := ventilation.DefaultOpeningRule()
	f := program.New("ventday", "ventday runs a house through a summer day, vents by hand and automatic.")
	f.Float64Var(&c.mean, "mean", 23, "outside air over the day, `°C`")
	f.Float64Var(&c.swing, "swing", 7, "half the outside air's daily range, `K`")
	f.Float64Var(&c.dew, "dew", 13, "dew point outside, `°C`")
	f.Float64Var(&c.wind, "wind", 2.5, "top wind of the day at ridge height, `m/s`")
	f.Float64Var(&c.squall, "squall", -1, "`hour` at which a squall with rain lasts an hour; -1 for none")
	f.Float64Var(&c.shade, "shade", 0, "`fraction` of the sun that a screen outside keeps off")
	f.Float64Var(&c.fog, "fog", 0, "water that fogging sprays, as far as it evaporates in the air, `g/(m² h)` of floor")
	f.Float64Var(&c.coolAbove, "cool-above", 400, "sun outside above which shade and fog are used, `W/m²`")
	f.Float64Var(&c.open, "open", 9, "`hour` at which the vents are opened by hand")
	f.Float64Var(&c.shut, "shut", 19, "`hour` at which they are shut by hand")
	f.Float64Var(&c.hand, "hand", 0.5, "`fraction` to which they are opened by hand")
	f.Float64Var(&c.limit, "limit", 28, "inside air above which hours count as too hot, `°C`")
	f.Float64Var(&c.lai, "lai", 2.5, "leaf area index of the crop, `dimensionless`; 0 for none")
	f.Float64Var(&c.rule.Start, "start", rule.Start, "automatic: inside air at which the vents begin to open, `°C`")
	f.Float64Var(&c.rule.Band, "band", rule.Band, "automatic: over how many `K` they open")
	f.Float64Var(&c.rule.DeadBand, "dead-band", rule.DeadBand, "automatic: `fraction`; smaller moves are not made")
	f.Float64Var(&c.rule.Step, "stops", rule.Step, "automatic: the drive stops at multiples of this `fraction`; 0 anywhere")
	f.Float64Var(&c.rule.Least, "least", rule.Least, "automatic: `fraction` always open")
	f.Float64Var(&c.rule.Most, "most", rule.Most, "automatic: `fraction` at most open")
	f.Float64Var(&c.rule.WindLow, "wind-low", rule.WindLow, "automatic: wind above which the vents are lowered, `m/s`")
	f.Float64Var(&c.rule.WindHigh, "wind-high", rule.WindHigh, "automatic: wind at which they are lowered to -wind-most, `m/s`")
	f.Float64Var(&c.rule.WindMost, "wind-most", rule.WindMost, "automatic: `fraction` in high wind")
	f.Float64Var(&c.rule.RainMost, "rain-most", rule.RainMost, "automatic: `fraction` in rain")
	f.DurationVar(&c.step, "step", time.Hour, "`step`, as 1h or 10m, a part of the day")
	file := f.String("figure", "", "draw temperatures and openings to this .svg, .png or .pdf `file`")
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		r, err := compute(c)
		if err == nil && *file != "" {
			err = figure(*file, c, r)
		}
		if err != nil {
			return nil, err
		}
		return strings.NewReader(write(c, r)), nil
	})
}
