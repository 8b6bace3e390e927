package main

import (
	"io"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/page"
)

const watts = 1000 // per kW

// draw writes a bar picture of the losses of the house: what the air drives
// through the covers, what the sky drives, and the rest.
func draw(format string, t table) (io.WriterTo, error) {
	p := plot.New()
	p.Title.Text = "Loss by cover: " + t.plan.Name
	p.X.Label.Text = "kW"
	p.Y.Tick.Label.Font.Size, p.Legend.TextStyle.Font.Size = vg.Points(9), vg.Points(9)
	n := len(t.rows)
	parts := [3]plotter.Values{make(plotter.Values, n), make(plotter.Values, n), make(plotter.Values, n)}
	names := make([]string, n)
	top := 0.0
	for i, r := range t.rows {
		j := n - 1 - i // the first on top
		cover := r.loss.Cover + r.loss.Frame
		parts[0][j], parts[1][j], parts[2][j] = (r.loss.Total-cover)/watts, (cover-r.loss.CoverSky)/watts, r.loss.CoverSky/watts
		names[j] = r.name
		top = max(top, r.loss.Total/watts)
	}
	var below *plotter.BarChart
	for i, label := range []string{"ground, leakage, door", "covers, driven by the air", "covers, driven by the sky"} {
		bars, err := plotter.NewBarChart(parts[i], vg.Points(11))
		if err != nil {
			return nil, err
		}
		bars.Horizontal, bars.Color = true, page.PenOf(i).Color
		if below != nil {
			bars.StackOn(below)
		}
		p.Add(bars)
		p.Legend.Add(label, bars)
		below = bars
	}
	p.X.Min, p.X.Max = 0, 1.05*top
	p.NominalY(names...)
	return frame.Plots(format, 24*vg.Centimeter, 15*vg.Centimeter, p)
}
