package main

import (
	"errors"
	"fmt"
	"image/color"
	"io"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"cloche.example/examples/internal/frame"
)

// draw shows the intensities of the planes 0-180 and 90-270 as polar curves,
// straight down at the bottom, with rings and their values.
func (d *reading) draw(format string) (io.WriterTo, error) {
	curves := [2]plotter.XYs{}
	top := 0.0
	for i := range curves {
		for g := -180.0; g <= 180; g++ {
			c := 90 * float64(i)
			if g < 0 {
				c += 180
			}
			v := d.table.Intensity(math.Abs(g), c)
			top = max(top, v)
			sin, cos := math.Sincos(g * math.Pi / 180)
			curves[i] = append(curves[i], plotter.XY{X: v * sin, Y: -v * cos})
		}
	}
	if top == 0 {
		return nil, errors.New("the file holds no light")
	}
	p := plot.New()
	p.Title.Text = "Intensity in cd, straight down at the bottom: " + d.name
	p.HideAxes()
	if err := rings(p, top); err != nil {
		return nil, err
	}
	for i, name := range []string{"plane 0-180", "plane 90-270"} {
		if err := frame.Line(p, i, name, curves[i]); err != nil {
			return nil, err
		}
	}
	p.Legend.Top, p.Legend.Left = true, true
	reach := 1.15 * step(top) * math.Ceil(top/step(top))
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = -reach, reach, -reach, 1.12*reach // room for the legend
	return frame.Plots(format, 16*vg.Centimeter, 17*vg.Centimeter, p)
}

// step is a round distance between rings: three to six of them.
func step(top float64) float64 {
	s := math.Pow(10, math.Floor(math.Log10(top)))
	for _, k := range []float64{0.2, 0.5, 1, 2} {
		if top/(k*s) <= 6 {
			return k * s
		}
	}
	return 2 * s
}

// rings adds circles of equal intensity with their values, and a line every 30
// degree.
func rings(p *plot.Plot, top float64) error {
	grey := color.Gray{190}
	add := func(xy plotter.XYs) error {
		line, err := plotter.NewLine(xy)
		if err != nil {
			return err
		}
		line.Color, line.Width = grey, vg.Points(0.5)
		p.Add(line)
		return nil
	}
	s := step(top)
	n := math.Ceil(top / s)
	var names plotter.XYLabels
	for k := 1.0; k <= n; k++ {
		var xy plotter.XYs
		for a := 0.0; a <= 360; a += 2 {
			sin, cos := math.Sincos(a * math.Pi / 180)
			xy = append(xy, plotter.XY{X: k * s * sin, Y: -k * s * cos})
		}
		if err := add(xy); err != nil {
			return err
		}
		names.XYs = append(names.XYs, plotter.XY{X: 0.26 * k * s, Y: 0.966 * k * s})
		names.Labels = append(names.Labels, fmt.Sprintf("%g", k*s))
	}
	for a := 0.0; a < 360; a += 30 {
		sin, cos := math.Sincos(a * math.Pi / 180)
		if err := add(plotter.XYs{{X: 0, Y: 0}, {X: n * s * sin, Y: -n * s * cos}}); err != nil {
			return err
		}
		names.XYs = append(names.XYs, plotter.XY{X: 1.05*n*s*sin - 0.03*n*s, Y: -1.05*n*s*cos - 0.02*n*s})
		names.Labels = append(names.Labels, fmt.Sprintf("%g°", math.Min(a, 360-a)))
	}
	labels, err := plotter.NewLabels(names)
	if err != nil {
		return err
	}
	p.Add(labels)
	return nil
}
