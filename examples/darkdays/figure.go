package main

import (
	"fmt"
	"image/color"
	"io"
	"slices"
	"time"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"cloche.example/examples/internal/frame"
)

// draw writes the year day by day: daylight on the bed, the lamps' light on top
// of it, and the light wanted; an invented year says so.
func draw(format string, r result, invented bool) (io.WriterTo, error) {
	var floor, day, both plotter.XYs
	for i, d := range r.year.Days {
		for _, x := range []float64{float64(i), float64(i + 1)} { // a day is a bar
			floor = append(floor, plotter.XY{X: x})
			day = append(day, plotter.XY{X: x, Y: d.Daylight})
			both = append(both, plotter.XY{X: x, Y: d.Daylight + d.Lamps})
		}
	}
	p := plot.New()
	p.Title.Text = "Daily light on the bed: " + r.crop.Name
	if invented {
		p.Title.Text += ", in an invented year"
	}
	p.Y.Label.Text = "mol/(m² d)"
	p.X.Tick.Marker = months(len(r.year.Days))
	for _, layer := range []struct {
		name      string
		low, high plotter.XYs
		colour    color.Color
	}{
		{"lamps", day, both, color.RGBA{0x1f, 0x6f, 0xb4, 0xff}},
		{"daylight", floor, day, color.RGBA{235, 190, 60, 255}},
	} {
		edge := slices.Clone(layer.low)
		slices.Reverse(edge)
		area, err := plotter.NewPolygon(append(slices.Clone(layer.high), edge...))
		if err != nil {
			return nil, err
		}
		area.Color, area.LineStyle.Width = layer.colour, 0
		p.Add(area)
		p.Legend.Add(layer.name, area)
	}
	wanted, err := plotter.NewLine(plotter.XYs{{X: 0, Y: r.target}, {X: float64(len(r.year.Days)), Y: r.target}})
	if err != nil {
		return nil, err
	}
	wanted.Dashes, wanted.Width = []vg.Length{vg.Points(5), vg.Points(3)}, vg.Points(1.2)
	p.Add(wanted)
	p.Legend.Add(fmt.Sprintf("wanted, %g", r.target), wanted)
	p.Legend.Top, p.Legend.Padding = true, vg.Points(3)
	p.X.Min, p.X.Max, p.Y.Min = 0, float64(len(r.year.Days)), 0
	p.Y.Max *= 1.2 // room for the legend
	return frame.Plots(format, 20*vg.Centimeter, 11*vg.Centimeter, p)
}

// months marks the first day of each month of a year of that many days.
func months(days int) plot.ConstantTicks {
	year := 2023
	if days == 366 {
		year = 2024
	}
	var t plot.ConstantTicks
	for m := time.January; m <= time.December; m++ {
		first := time.Date(year, m, 1, 0, 0, 0, 0, time.UTC)
		t = append(t, plot.Tick{Value: float64(first.YearDay() - 1), Label: m.String()[:3]})
	}
	return t
}
