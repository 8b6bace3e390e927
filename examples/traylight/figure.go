package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"

	"cloche.example/lighting"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/palette/moreland"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	_ "gonum.org/v1/plot/vg/vgimg" // .png
	_ "gonum.org/v1/plot/vg/vgpdf" // .pdf
	_ "gonum.org/v1/plot/vg/vgsvg" // .svg
)

// grid is the map as the plotters read it.
type grid struct{ r result }

func (g grid) Dims() (c, r int)   { return g.r.points.Columns(), len(g.r.ppfd) / g.r.points.Columns() }
func (g grid) Z(c, r int) float64 { return g.r.ppfd[r*g.r.points.Columns()+c] }
func (g grid) X(c int) float64    { return g.r.points.At(c).X }
func (g grid) Y(r int) float64    { return g.r.points.At(r * g.r.points.Columns()).Y }

// The picture: the map keeps the bed's proportions as far as its height allows.
const (
	mapWidth   = 22 * vg.Centimeter
	scaleWidth = 3 * vg.Centimeter
	shades     = 64
)

// drawMap writes the map with contours and their values, the fixtures as crosses,
// and a scale.
func drawMap(file string, r result) error {
	lights, err := lighting.NewLights(r.layout...)
	if err != nil {
		return err
	}
	across := max(5, int(math.Min(200, 200*r.bed.Width/r.bed.Length)))
	if r.points, err = r.bed.Grid(200, across); err != nil {
		return err
	}
	if r.ppfd, err = lights.Map(r.points); err != nil {
		return err
	}
	g := grid{r}
	low, high := math.Floor(r.stats.Minimum), math.Ceil(r.stats.Maximum)+1
	colours := moreland.ExtendedBlackBody()
	colours.SetMin(low)
	colours.SetMax(high)

	p := plot.New()
	p.Title.Text = fmt.Sprintf("PPFD on the trays, µmol/(m² s): mean %.0f, U0 %.2f", r.stats.Mean, r.stats.U0)
	p.X.Label.Text, p.Y.Label.Text = "along the bed, m", "across, m"
	heat := plotter.NewHeatMap(g, colours.Palette(shades))
	heat.Min, heat.Max = low, high
	p.Add(heat)
	if levels := between(r.stats.Minimum, r.stats.Maximum); len(levels) > 0 {
		p.Add(plotter.NewContour(g, levels, nil))
		values, err := labels(g, levels)
		if err != nil {
			return err
		}
		if values != nil {
			p.Add(values)
		}
	}
	places := make(plotter.XYs, len(r.layout))
	for i, f := range r.layout {
		places[i] = plotter.XY{X: f.At.X, Y: f.At.Y}
	}
	marks, err := plotter.NewScatter(places)
	if err != nil {
		return err
	}
	marks.Shape = draw.CrossGlyph{}
	p.Add(marks)

	s := plot.New()
	s.Title.Text = " "
	// An empty axis, so that the scale stands beside the map alone.
	s.X.Label.Text = " "
	s.X.Tick.Marker = plot.ConstantTicks{{Value: 0.5, Label: " "}}
	s.X.Width, s.X.Tick.Width = 0, 0
	s.Y.Padding = 0
	s.Add(&plotter.ColorBar{ColorMap: colours, Vertical: true, Colors: shades})
	return save(file, p, s, r.bed.Width/r.bed.Length)
}

// save draws the map with its scale to the right.
func save(file string, p, scale *plot.Plot, ratio float64) error {
	tall := mapWidth*vg.Length(math.Min(math.Max(ratio, 0.2), 1.2)) + 2.5*vg.Centimeter
	c, err := draw.NewFormattedCanvas(mapWidth+scaleWidth, tall, strings.TrimPrefix(filepath.Ext(file), "."))
	if err != nil {
		return fmt.Errorf("figure %s: the name must end in .png, .svg or .pdf", file)
	}
	whole := draw.New(c)
	p.Draw(draw.Crop(whole, 0, -scaleWidth, 0, 0))
	scale.Draw(draw.Crop(whole, mapWidth, 0, 0, 0))
	f, err := os.Create(file)
	if err != nil {
		return err
	}
	_, err = c.WriteTo(f)
	if closed := f.Close(); err == nil {
		err = closed
	}
	return err
}

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
				if math.Abs(other.X-g.X(c)) < 0.03*g.r.bed.Length && math.Abs(other.Y-g.Y(r)) < 0.05*g.r.bed.Width {
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
	for i := range l.TextStyle {
		l.TextStyle[i].Font = font.From(plot.DefaultFont, 8)
	}
	return l, nil
}
