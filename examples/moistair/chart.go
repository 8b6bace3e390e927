package main

import (
	"fmt"
	"image/color"
	"io"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"cloche.example/examples/internal/frame"
	"cloche.example/psychro"
)

// Inks of the chart.
var (
	inkSaturation = color.RGBA{R: 24, G: 60, B: 92, A: 255}
	inkHumidity   = color.RGBA{R: 110, G: 150, B: 180, A: 255}
	inkBulb       = color.RGBA{R: 150, G: 170, B: 110, A: 255}
	inkState      = color.RGBA{R: 190, G: 60, B: 30, A: 255}
)

// drawChart draws a psychrometric chart at the pressure of the state: dry bulb to
// the right, humidity ratio upwards, lines of relative humidity and of wet
// bulb, the state, and the straight way to the end if there is one.
func drawChart(format string, s psychro.State, end *psychro.State) (io.WriterTo, error) {
	c := chart{Plot: plot.New(), model: s.Model(), p: s.Pressure()}
	c.frame(s, end)
	c.Title.Text = fmt.Sprintf("Moist air at %.0f Pa, %v", c.p, c.model)
	c.X.Label.Text, c.Y.Label.Text = "dry bulb, °C", "humidity ratio, g/kg dry air"
	for tw := 5 * math.Ceil(c.left/5); tw < c.right; tw += 5 {
		c.bulb(tw)
	}
	for _, rh := range []float64{0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1} {
		c.humidity(rh)
	}
	points := plotter.XYs{{X: s.Temperature(), Y: 1000 * s.HumidityRatio()}}
	if end != nil {
		points = append(points, plotter.XY{X: end.Temperature(), Y: 1000 * end.HumidityRatio()})
		c.line(points, inkState, 2)
	}
	dots, err := plotter.NewScatter(points)
	if err != nil {
		return nil, err
	}
	dots.GlyphStyle = draw.GlyphStyle{Color: inkState, Radius: 4, Shape: draw.CircleGlyph{}}
	c.Add(dots)
	return frame.Plots(format, 22*vg.Centimeter, 15*vg.Centimeter, c.Plot)
}

type chart struct {
	*plot.Plot
	model            psychro.Model
	p                float64
	left, right, top float64 // °C, °C, g/kg
}

// frame sets the ends of the axes so that both states lie well inside.
func (c *chart) frame(s psychro.State, end *psychro.State) {
	c.left, c.right, c.top = -10, 45, 24
	for _, e := range []*psychro.State{&s, end} {
		if e != nil {
			c.left = min(c.left, 5*math.Floor((e.Temperature()-3)/5))
			c.right = max(c.right, 5*math.Ceil((e.Temperature()+3)/5))
			c.top = max(c.top, 4*math.Ceil((1000*e.HumidityRatio()+2)/4))
		}
	}
	c.X.Min, c.X.Max, c.Y.Min, c.Y.Max = c.left, c.right, 0, c.top
}

// humidity draws a line of constant relative humidity, the last of them
// saturation.
func (c *chart) humidity(rh float64) {
	var xy plotter.XYs
	for t := c.left; t <= c.right; t += 0.25 {
		s, err := c.model.FromRelativeHumidity(t, rh, c.p)
		if err != nil || 1000*s.HumidityRatio() > c.top {
			break
		}
		xy = append(xy, plotter.XY{X: t, Y: 1000 * s.HumidityRatio()})
	}
	ink, width := inkHumidity, vg.Length(0.7)
	if rh == 1 {
		ink, width = inkSaturation, 1.8
	}
	c.line(xy, ink, width)
	if rh < 1 && len(xy) > 3 {
		c.label(xy[len(xy)-3], fmt.Sprintf("%.0f %%", 100*rh), ink)
	}
}

// bulb draws a line of constant wet bulb, from saturation down to dry air.
func (c *chart) bulb(tw float64) {
	var xy plotter.XYs
	for t := tw; t <= c.right; t += 0.5 {
		s, err := c.model.FromWetBulb(t, tw, c.p)
		if err != nil {
			break
		}
		if 1000*s.HumidityRatio() <= c.top {
			xy = append(xy, plotter.XY{X: t, Y: 1000 * s.HumidityRatio()})
		}
	}
	c.line(xy, inkBulb, 0.5)
	if len(xy) > 4 && tw >= 0 {
		c.label(xy[0], fmt.Sprintf("%g °C wet", tw), inkBulb)
	}
}

func (c *chart) line(xy plotter.XYs, ink color.Color, width vg.Length) {
	if len(xy) < 2 {
		return
	}
	if l, err := plotter.NewLine(xy); err == nil {
		l.LineStyle = draw.LineStyle{Color: ink, Width: width}
		c.Add(l)
	}
}

func (c *chart) label(at plotter.XY, words string, ink color.Color) {
	l, err := plotter.NewLabels(plotter.XYLabels{XYs: plotter.XYs{at}, Labels: []string{words}})
	if err != nil {
		return
	}
	style := c.X.Tick.Label
	style.Color, style.XAlign, style.YAlign = ink, text.XRight, text.YBottom
	style.Font.Size = 7
	l.TextStyle = []text.Style{style}
	c.Add(l)
}
