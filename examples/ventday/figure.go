package main

import (
	"fmt"
	"image/color"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/plotutil"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	_ "gonum.org/v1/plot/vg/vgimg" // .png
	_ "gonum.org/v1/plot/vg/vgpdf" // .pdf
	_ "gonum.org/v1/plot/vg/vgsvg" // .svg

	"cloche.example/internal/program"
)

// figure writes the day's temperatures above its openings.
func figure(file string, c choice, r result) error {
	format, err := program.PictureFormat(file)
	if err != nil {
		return err
	}
	warm, vents := plot.New(), plot.New()
	warm.Title.Text = "A clear summer day, vents by hand and automatic"
	warm.Y.Label.Text, vents.Y.Label.Text = "air, °C", "opening"
	vents.X.Label.Text = "hour"
	vents.Y.Min, vents.Y.Max = 0, 1
	for _, p := range []*plot.Plot{warm, vents} {
		p.Add(plotter.NewGrid())
		p.Legend.Top, p.Legend.Left = true, true
		p.X.Min, p.X.Max = 0, 24
		p.X.Tick.Marker = plot.ConstantTicks(ticks())
	}
	err = add(warm, "outside", color.Gray{Y: 110}, []vg.Length{vg.Points(2), vg.Points(2)}, c, len(r.steps), func(i int) float64 { return r.steps[i].Weather.Air.Temperature() })
	for k, d := range r.courses {
		if err != nil {
			return err
		}
		if err = add(warm, d.name, plotutil.Color(k), nil, c, len(d.Points), func(i int) float64 { return d.Points[i].State.Temperature }); err == nil && k < 2 {
			err = add(vents, d.name, plotutil.Color(k), nil, c, len(d.Points), func(i int) float64 { return d.Points[i].Position.Opening })
		}
	}
	if err != nil {
		return err
	}
	page, err := draw.NewFormattedCanvas(18*vg.Centimeter, 18*vg.Centimeter, format)
	if err != nil {
		return err
	}
	plots := [][]*plot.Plot{{warm}, {vents}}
	parts := plot.Align(plots, draw.Tiles{Rows: 2, Cols: 1, PadY: vg.Points(12), PadTop: vg.Points(6), PadRight: vg.Points(12), PadLeft: vg.Points(4), PadBottom: vg.Points(4)}, draw.New(page))
	for i := range plots {
		plots[i][0].Draw(parts[i][0])
	}
	return program.WritePicture(file, page)
}

// add draws n values at the middles of the steps.
func add(p *plot.Plot, name string, c color.Color, dash []vg.Length, day choice, n int, value func(int) float64) error {
	xy := make(plotter.XYs, n)
	for i := range xy {
		xy[i].X, xy[i].Y = (float64(i)+0.5)*day.step.Hours(), value(i)
	}
	line, err := plotter.NewLine(xy)
	if err != nil {
		return err
	}
	line.Color, line.Dashes, line.Width = c, dash, vg.Points(1.5)
	p.Add(line)
	p.Legend.Add(name, line)
	return nil
}

// ticks stand every three hours.
func ticks() (t []plot.Tick) {
	for h := 0; h <= 24; h += 3 {
		t = append(t, plot.Tick{Value: float64(h), Label: fmt.Sprint(h)})
	}
	return t
}
