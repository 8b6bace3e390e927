package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"

	"cloche.example/lighting"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/plot"
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
func (g grid) X(c int) float64    { return g.r.points.At(c).X - g.r.bed.X }
func (g grid) Y(r int) float64    { return g.r.points.At(r*g.r.points.Columns()).Y - g.r.bed.Y }

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
	if r.ppfd, err = lights.MapTo(nil, r.points); err != nil {
		return err
	}
	g := grid{r}
	// The finer grid reaches farther into corners than the one of the report.
	least, most := floats.Min(r.ppfd), floats.Max(r.ppfd)
	low, high := math.Floor(least), math.Ceil(most)+1
	colours := moreland.ExtendedBlackBody()
	colours.SetMin(low)
	colours.SetMax(high)

	p := plot.New()
	p.Title.Text = fmt.Sprintf("PPFD on the trays, µmol/(m² s): mean %.0f, U0 %.2f", r.stats.Mean, r.stats.U0)
	p.X.Label.Text, p.Y.Label.Text = "along the bed, m (the demo house is invented)", "across, m"
	heat := plotter.NewHeatMap(g, colours.Palette(shades))
	heat.Min, heat.Max = low, high
	p.Add(heat)
	if levels := between(least, most); len(levels) > 0 {
		p.Add(contours{g, levels})
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
		places[i] = plotter.XY{X: f.At.X - r.bed.X, Y: f.At.Y - r.bed.Y}
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
