package main

import (
	"fmt"
	"image/color"
	"math"
	"strconv"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
)

// between returns about six round levels inside the map's values.
func between(low, high float64) (levels []float64) {
	raw := (high - low) / 6
	if !(raw > 1e-6) {
		return nil
	}
	step := math.Pow(10, math.Floor(math.Log10(raw)))
	for _, k := range []float64{5, 2} {
		if k*step <= raw {
			step *= k
			break
		}
	}
	for v := math.Ceil(low/step) * step; v < high; v += step {
		levels = append(levels, v)
	}
	return levels
}

// labels writes each level's value where its contour first crosses the middle
// row or the middle column of the map.
func labels(g grid, levels []float64) (*plotter.Labels, error) {
	var at plotter.XYLabels
	nx, ny := g.Dims()
	for _, v := range levels {
		crosses := func(a, b float64) bool { return (a-v)*(b-v) < 0 }
		add := func(c, r int) {
			for _, other := range at.XYs {
				if math.Abs(other.X-g.X(c)) < 0.045*g.bed.Length && math.Abs(other.Y-g.Y(r)) < 0.06*g.bed.Width {
					return
				}
			}
			at.XYs = append(at.XYs, plotter.XY{X: g.X(c), Y: g.Y(r)})
			at.Labels = append(at.Labels, fmt.Sprintf("%.4g", v))
		}
		for c := 1; c < nx; c++ {
			if crosses(g.Z(c-1, ny/2), g.Z(c, ny/2)) {
				add(c, ny/2)
				break
			}
		}
		for r := 1; r < ny; r++ {
			if crosses(g.Z(nx/2, r-1), g.Z(nx/2, r)) {
				add(nx/2, r)
				break
			}
		}
	}
	if len(at.XYs) == 0 {
		return nil, nil
	}
	l, err := plotter.NewLabels(at)
	if err != nil {
		return nil, err
	}
	for i, text := range at.Labels {
		l.TextStyle[i].Font = font.From(plot.DefaultFont, 8)
		// Black is hard to read on the dark lower half of the colours.
		if v, _ := strconv.ParseFloat(text, 64); v < (levels[0]+levels[len(levels)-1])/2 {
			l.TextStyle[i].Color = color.White
		}
	}
	return l, nil
}
