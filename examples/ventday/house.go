package main

import (
	"context"
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/internal/program"
	"cloche.example/ventilation"
)

// course is one way to run the vents.
type course struct {
	name string
	ventilation.DayCourse
}

// The courses by index.
const (
	byHand = iota
	automatic
	wideOpen
)

// day is what the report prints.
type day struct {
	choice
	house   *answers.House
	climate *ventilation.Climate
	steps   []ventilation.DayStep
	courses []course // by hand, automatic, wide open
	pad     float64  // fraction, of the way to the wet bulb while fans run
	openBy  float64  // h, start of the step in which a shut house first asks for air; NaN for none
}

// watched are vents that stop at an interrupt and tell how far the day is. They
// move in the plan's order.
type watched struct {
	ventilation.Vents
	day  *day
	ctx  context.Context
	tell func(at time.Duration)
}

func (w watched) Opening(m ventilation.VentMoment) (ventilation.VentOpening, error) {
	if err := w.ctx.Err(); err != nil {
		return ventilation.VentOpening{}, err
	}
	w.tell(m.Time)
	m.At = func(opening float64) (ventilation.ClimateState, error) { return w.day.at(m.Step, opening, false) }
	return w.Vents.Opening(m)
}

// compute runs the day with the vents by hand, automatic, and wide open.
func compute(ctx context.Context, c choice, progress *program.Meter) (*day, error) {
	d := &day{choice: c}
	var err error
	if d.house, err = answers.NewHouse(c.plan); err != nil {
		return nil, err
	}
	if d.climate, err = d.house.Climate(false); err != nil {
		return nil, err
	}
	if d.steps, err = c.steps(d.house); err != nil {
		return nil, err
	}
	hours := func(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }
	limits := ventilation.DefaultDayLimits()
	limits.Temperature = c.plan.SetPoints.Limits.Hot
	v := c.plan.VentControl
	ways := []struct {
		name  string
		vents ventilation.Vents
	}{
		{"by hand", ventilation.Schedule{{At: hours(v.HandFrom), Opening: v.Hand}, {At: hours(v.HandUntil)}}},
		{"automatic", fromplan.VentRule(c.plan, c.plan.SetPoints.Day.VentTemperature)},
		{"wide open", ventilation.Schedule{{Opening: 1}}},
	}
	if c.plan.Pads != nil {
		if d.pad, err = fromplan.PadEfficiency(c.plan); err != nil {
			return nil, err
		}
	}
	for i, k := range ways {
		tell := func(at time.Duration) { progress.At((float64(i) + at.Hours()/24) / float64(len(ways))) }
		dayCourse, err := d.climate.Day(d.steps, c.step, watched{k.vents, d, ctx, tell}, limits)
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if err != nil {
			return nil, fmt.Errorf("vents %s: %w", k.name, err)
		}
		if err := d.run(&dayCourse, limits); err != nil {
			return nil, fmt.Errorf("vents %s: %w", k.name, err)
		}
		d.courses = append(d.courses, course{k.name, dayCourse})
	}
	return d, d.shut()
}

// shut finds when the house with its vents shut first asks for air.
func (d *day) shut() error {
	d.openBy = math.NaN()
	for i, step := range d.steps {
		s, err := d.climate.Solve(step.Weather, step.Setting)
		if err != nil && !errors.Is(err, ventilation.ErrNoSolution) {
			return fmt.Errorf("vents shut: %w", err)
		}
		if err != nil || s.Temperature > d.plan.SetPoints.Day.VentTemperature { // without a solution it would pass 80 °C
			d.openBy = float64(i) * d.step.Hours()
			return nil
		}
	}
	return nil
}
