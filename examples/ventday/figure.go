package main

import (
	"fmt"
	"io"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"cloche.example/examples/internal/frame"
)

// draw shows the day's temperatures above its openings.
func (d *day) draw(format string) (io.WriterTo, error) {
	warm, vents := plot.New(), plot.New()
	warm.Title.Text = "A clear summer day: " + d.plan.Name
	warm.Y.Label.Text, vents.Y.Label.Text = "air, °C", "opening, fraction"
	vents.X.Label.Text = "hour"
	for _, p := range []*plot.Plot{warm, vents} {
		p.Add(plotter.NewGrid())
		p.X.Tick.Marker = plot.ConstantTicks(ticks())
	}
	if err := frame.Line(warm, 5, "outside", d.line(func(i int) float64 { return d.steps[i].Weather.Air.Temperature() })); err != nil {
		return nil, err
	}
	for k, c := range d.courses {
		if err := frame.Line(warm, k, c.name, d.line(func(i int) float64 { return c.Points[i].State.Temperature })); err != nil {
			return nil, err
		}
		if k == wideOpen {
			continue
		}
		if err := frame.Line(vents, k, c.name, d.stairs(func(i int) float64 { return c.Points[i].Vents.Opening })); err != nil {
			return nil, err
		}
	}
	vents.Y.Min, vents.Y.Max = 0, 1
	for _, p := range []*plot.Plot{warm, vents} {
		p.X.Min, p.X.Max = 0, 24
		p.Legend.Top, p.Legend.Left = true, true
		p.Y.Max += 0.45 * (p.Y.Max - p.Y.Min) // room for the legend
	}
	vents.Y.Tick.Marker = plot.ConstantTicks{{Value: 0, Label: "0"}, {Value: 0.25}, {Value: 0.5, Label: "0.5"}, {Value: 0.75}, {Value: 1, Label: "1"}}
	return frame.Plots(format, 18*vg.Centimeter, 18*vg.Centimeter, warm, vents)
}

// line stands at the middles of the steps.
func (d *day) line(value func(int) float64) plotter.XYs {
	xy := make(plotter.XYs, len(d.steps))
	for i := range xy {
		xy[i].X, xy[i].Y = (float64(i)+0.5)*d.step.Hours(), value(i)
	}
	return xy
}

// stairs hold their value from the start of a step to its end.
func (d *day) stairs(value func(int) float64) (xy plotter.XYs) {
	for i := range d.steps {
		v, h := value(i), d.step.Hours()
		xy = append(xy, plotter.XY{X: float64(i) * h, Y: v}, plotter.XY{X: float64(i+1) * h, Y: v})
	}
	return xy
}

// ticks stand every three hours.
func ticks() (t []plot.Tick) {
	for h := 0; h <= 24; h += 3 {
		t = append(t, plot.Tick{Value: float64(h), Label: fmt.Sprint(h)})
	}
	return t
}
