package figures

import (
	"fmt"
	"image/color"
	"math"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"cloche.example/examples/internal/page"
	"cloche.example/psychro"
)

// airPoint is a state of air on a moist-air chart: °C and kg/kg.
type airPoint struct {
	name string
	t, w float64
}

func airOf(name string, s psychro.State) airPoint {
	return airPoint{name, s.Temperature(), s.HumidityRatio()}
}

// airChart draws the path through the points on a moist-air chart for pressure
// p, Pa: saturation as a full line, 20 to 80 % thin.
func airChart(title, says, caption string, p float64, path ...airPoint) (Picture, error) {
	low, high, top := math.Inf(1), math.Inf(-1), 0.0
	for _, a := range path {
		low, high, top = math.Min(low, a.t), math.Max(high, a.t), math.Max(top, a.w)
	}
	margin := math.Max(3, 0.15*(high-low))
	low, high, top = low-margin, high+margin, math.Max(1300*top, 1)
	c := page.NewPlot("temperature, °C", "humidity ratio, g/kg")
	var others []curve
	grey, last := color.RGBA{0x8a, 0x8a, 0x86, 0xff}, math.Inf(1)
	for _, rh := range []float64{1, 0.8, 0.6, 0.4, 0.2} {
		at := along(low, high, 120, func(t float64) float64 {
			s, err := psychro.FromRelativeHumidity(t, rh, p)
			if err != nil || 1000*s.HumidityRatio() > top {
				return math.NaN()
			}
			return 1000 * s.HumidityRatio()
		})
		if len(at) < 2 {
			continue
		}
		others = append(others, curve{"", at})
		line, err := plotter.NewLine(at)
		if err != nil {
			return Picture{}, err
		}
		line.Width, line.Color, line.Dashes = 0.7, grey, []vg.Length{3, 2}
		if rh == 1 {
			line.Width, line.Color, line.Dashes = 1.2, color.RGBA{A: 0xff}, nil
		}
		c.Add(line)
		end := at[len(at)-1]
		if math.Abs(end.X-last) < 0.07*(high-low) && end.Y > 0.9*top {
			continue // no room for its name
		}
		last = end.X
		crowded := false
		for _, a := range path {
			crowded = crowded || math.Abs(a.t-end.X) < 0.15*(high-low) && math.Abs(1000*a.w-end.Y) < 0.12*top
		}
		if crowded {
			continue
		}
		others = append(others, curve{"", straight(end.X-0.08*(high-low), end.Y+0.025*top, end.X, end.Y+0.025*top)}) // its name
		l, err := plotter.NewLabels(plotter.XYLabels{XYs: plotter.XYs{end}, Labels: []string{fmt.Sprintf("%.0f %%", 100*rh)}})
		if err != nil {
			return Picture{}, err
		}
		l.TextStyle[0].Font = font.Font{Typeface: "Liberation", Variant: "Sans", Size: 10}
		l.TextStyle[0].XAlign = draw.XRight
		l.Offset = vg.Point{X: -2, Y: 2}
		c.Add(l)
	}
	c.X.Min, c.X.Max, c.Y.Min, c.Y.Max = low, high, 0, top
	var marks []mark
	var way plotter.XYs
	for _, a := range path {
		way = append(way, plotter.XY{X: a.t, Y: 1000 * a.w})
		marks = append(marks, mark{a.name, a.t, 1000 * a.w})
	}
	line, err := plotter.NewLine(way)
	if err != nil {
		return Picture{}, err
	}
	line.Width, line.Color = 2, page.PenOf(0).Color
	c.Add(line)
	c.X.Min, c.X.Max, c.Y.Min, c.Y.Max = low, high, 0, top
	if err := addDots(c, marks); err != nil {
		return Picture{}, err
	}
	c.X.Min, c.X.Max, c.Y.Min, c.Y.Max = low, high, 0, top
	if err := addNames(c, 210, 0, marks, append(others, curve{"", way}, curve{"", way})); err != nil {
		return Picture{}, err
	}
	c.X.Min, c.X.Max, c.Y.Min, c.Y.Max = low, high, 0, top
	return Picture{SVG: page.Chart(title, says, 420, 280, c), Caption: caption}, nil
}
