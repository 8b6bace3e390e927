package main

import (
	"fmt"
	"io"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/frame"
)

// draw shows the air's course at the coldest outside temperature: above after
// the heater stopped, below after the power failed, with a line at the frost.
func draw(format string, c clock) (io.WriterTo, error) {
	rows := c.coldest()
	if len(rows) == 0 {
		return nil, fmt.Errorf("the air outside is not below the frost, %g °C: there is nothing to draw", c.plan.SetPoints.Limits.Frost)
	}
	frost := c.plan.SetPoints.Limits.Frost
	var plots []*plot.Plot
	for _, k := range []struct {
		title string
		air   func(answers.Moment) float64
	}{
		{"Air after the heater stops", func(m answers.Moment) float64 { return m.Stopped }},
		{"Air after the power fails, without emergency heat", func(m answers.Moment) float64 { return m.Alone }},
	} {
		p := plot.New()
		p.Title.Text = fmt.Sprintf("%s, %g °C outside", k.title, rows[0].outside)
		p.X.Label.Text, p.Y.Label.Text = "hours", "inside air, °C"
		p.Add(plotter.NewGrid())
		end := 0.0
		for i, r := range rows {
			var xy plotter.XYs
			for _, m := range r.frost.Course {
				xy = append(xy, plotter.XY{X: m.After.Hours(), Y: k.air(m)})
				end = m.After.Hours()
			}
			if err := frame.Line(p, i, r.cover, xy); err != nil {
				return nil, err
			}
		}
		line, err := plotter.NewLine(plotter.XYs{{X: 0, Y: frost}, {X: end, Y: frost}})
		if err != nil {
			return nil, err
		}
		line.Width = vg.Points(1)
		p.Add(line)
		p.Legend.Add("frost", line)
		p.Legend.Top = true
		plots = append(plots, p)
	}
	return frame.Plots(format, 18*vg.Centimeter, 22*vg.Centimeter, plots...)
}
