// Command ventday runs a plan's house through a clear summer day, hour by hour:
// vents opened and shut by hand twice a day beside vents that follow the
// temperature, with wind and rain limits.
//
//	go run ./examples/ventday
//	go run ./examples/ventday -plan house.json -figure day.svg
//	go run ./examples/ventday -shade-transmittance 0.6 -fog 150
//	go run ./examples/ventday -squall 15 -step 10m
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"time"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/program"
)

// choice is the plan with what only this program asks.
type choice struct {
	plan   *plan.Plan
	squall float64 // h; below zero for none
	step   time.Duration
}

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, in io.Reader, out, problems io.Writer) int {
	f := frame.New("ventday", "ventday runs a house through a summer day, vents by hand and automatic.", "temperatures and openings")
	f.Figure("mean", "site.summer_day.temperature_c", "outside air, mean of the day")
	f.Figure("swing", "site.summer_day.swing_k", "half the outside air's daily range")
	f.Figure("dew", "site.summer_day.dew_point_c", "dew point outside")
	f.Figure("wind", "site.summer_day.wind_m_s", "top wind of the day at ridge height")
	f.Figure("shade-transmittance", "shade.transmittance_fraction", "sun that the shade lets through; gives the house a shade")
	f.Figure("fog", "fog.spray_g_m2_h", "water that fog nozzles spray on each m² of floor; gives the house fog")
	f.Figure("limit", "set_points.limits.hot_c", "inside air above which hours count as too hot")
	f.Figure("leaf-area", "crop.leaf_area_ratio", "leaf area over floor area")
	f.Figure("hand-from", "vent_control.hand_from_h", "hour at which the vents are opened by hand")
	f.Figure("hand-until", "vent_control.hand_until_h", "hour at which they are shut by hand")
	f.Figure("hand", "vent_control.hand_fraction", "how far they are opened by hand")
	f.Figure("start", "set_points.day.vent_temperature_c", "inside air at which automatic vents begin to open")
	f.Figure("band", "vent_control.band_k", "band over which automatic vents open")
	squall := f.Float64("squall", -1, "`hour` at which a squall with rain lasts an hour; -1 for none")
	step := f.Duration("step", time.Hour, "`step`, 1m to 2h, a part of the day, as 1h or 10m")
	return f.Run(args, in, out, problems, func(ctx context.Context, p plan.Filled) (frame.Answer, error) {
		c := choice{&p.Plan, *squall, *step}
		if err := c.check(); err != nil {
			return frame.Answer{}, err
		}
		progress := program.NewMeter(problems, "the day")
		defer progress.Done()
		d, err := compute(ctx, c, progress)
		if err != nil {
			return frame.Answer{}, err
		}
		return frame.Answer{Text: d.write(), Data: d.data(), Warnings: d.warnings(), Draw: d.draw}, nil
	})
}

// check joins the faults of what only this program asks.
func (c choice) check() (err error) {
	if c.step < time.Minute || c.step > 2*time.Hour || (24*time.Hour)%c.step != 0 {
		err = fmt.Errorf("-step is %s: a part of the day, 1m to 2h", c.step)
	}
	if !(c.squall >= -1 && c.squall <= 23) {
		err = errors.Join(err, fmt.Errorf("-squall is %g: an hour, 0 to 23, or -1 for none", c.squall))
	}
	if len(c.plan.Vents)+len(c.plan.VentFans) == 0 {
		err = errors.Join(err, errors.New("the plan has neither vents nor vent_fans: nothing moves the air"))
	}
	if v := c.plan.VentControl; v.HandFrom >= v.HandUntil {
		err = errors.Join(err, fmt.Errorf("vents opened by hand at vent_control.hand_from_h %g must be shut later, and vent_control.hand_until_h is %g", v.HandFrom, v.HandUntil))
	}
	return errors.Join(err, fromplan.VentRule(c.plan, c.plan.SetPoints.Day.VentTemperature).Check())
}
