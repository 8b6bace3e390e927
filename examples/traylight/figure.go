package main

import (
	"context"
	"fmt"
	"image"
	"io"
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/palette"
	"gonum.org/v1/plot/palette/moreland"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"cloche.example/examples/internal/frame"
	"cloche.example/lighting"
)

// grid is the map as the plotters read it.
type grid struct {
	points *lighting.Points
	bed    lighting.Bed
	ppfd   []float64
}

func (g grid) Dims() (c, r int)   { return g.points.Columns(), len(g.ppfd) / g.points.Columns() }
func (g grid) Z(c, r int) float64 { return g.ppfd[r*g.points.Columns()+c] }
func (g grid) X(c int) float64    { return g.points.At(c).X - g.bed.X }
func (g grid) Y(r int) float64    { return g.points.At(r*g.points.Columns()).Y - g.bed.Y }

// The picture: the map keeps the bed's proportions as far as its height allows.
const (
	mapWidth   = 22 * vg.Centimeter
	scaleWidth = 3 * vg.Centimeter
	shades     = 128        // of the scale
	finer      = 5          // dots of the picture in each cell, each way
	pairs      = 40_000_000 // of lamp and point, some seconds
)

// newGrid maps the bed finely, as far as the count of lamps allows.
func newGrid(ctx context.Context, r *result) (g grid, err error) {
	lights, err := lighting.NewLights(r.layout...)
	if err != nil {
		return g, err
	}
	l := r.plan.Lights
	step := math.Min(math.Max(l.BedLength, l.BedWidth)/200, l.HeightAboveTrays/5)
	step = math.Max(step, math.Sqrt(r.bed.Area()*float64(len(r.layout))/pairs))
	g.bed = r.bed
	if g.points, err = r.bed.GridFor(5 * step); err != nil { // a fifth of it apart
		return g, err
	}
	g.ppfd, err = lights.MapParallelTo(ctx, nil, g.points, nil)
	return g, err
}

// drawMap draws the map with contours and their values, the lamps as crosses, and
// a scale.
func drawMap(ctx context.Context, format string, r *result) (io.WriterTo, error) {
	g, err := newGrid(ctx, r)
	if err != nil {
		return nil, err
	}
	// The finer grid reaches farther into corners than the one of the report.
	least, most := floats.Min(g.ppfd), floats.Max(g.ppfd)
	low, high := math.Floor(least), math.Ceil(most)+1
	colours := moreland.ExtendedBlackBody()
	colours.SetMin(low)
	colours.SetMax(high)

	p := plot.New()
	p.Title.Text = fmt.Sprintf("Light on the trays at harvest, µmol/(m² s): mean %.0f, least over mean %.2f: %s", r.stats.Mean, r.stats.U0, r.plan.Name)
	p.X.Label.Text, p.Y.Label.Text = "along the bed, m", "across, m"
	p.Add(plotter.NewImage(picture(g, colours), 0, 0, r.bed.Length, r.bed.Width))
	if levels := between(least, most); len(levels) > 0 {
		p.Add(contours{g, levels})
		values, err := labels(g, levels)
		if err != nil {
			return nil, err
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
		return nil, err
	}
	marks.Shape = draw.CrossGlyph{}
	p.Add(marks)
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, r.bed.Length, 0, r.bed.Width

	s := plot.New()
	s.Title.Text = " "
	// An empty axis, so that the scale stands beside the map alone.
	s.X.Label.Text = " "
	s.X.Tick.Marker = plot.ConstantTicks{{Value: 0.5, Label: " "}}
	s.X.Width, s.X.Tick.Width = 0, 0
	s.Y.Padding = 0
	s.Add(scale{colours})
	s.X.Min, s.X.Max, s.Y.Min, s.Y.Max = 0, 1, low, high
	return placed(format, p, s, r.bed.Width/r.bed.Length)
}

// picture is the map as one image, its light running evenly from cell to cell:
// cells drawn one by one would leave hairs between them.
func picture(g grid, colours palette.ColorMap) image.Image {
	nx, ny := g.Dims()
	img := image.NewRGBA(image.Rect(0, 0, nx*finer, ny*finer))
	for j := range ny * finer {
		y := (float64(j)+0.5)/finer - 0.5
		for i := range nx * finer {
			x := (float64(i)+0.5)/finer - 0.5
			if c, err := colours.At(g.at(x, y)); err == nil {
				img.Set(i, ny*finer-1-j, c)
			}
		}
	}
	return img
}

// at is the light between the middles of the cells; beyond the outermost it is
// theirs.
func (g grid) at(x, y float64) float64 {
	nx, ny := g.Dims()
	along := func(v float64, n int) (int, float64) {
		v = min(max(v, 0), float64(n-1))
		i := min(int(v), n-2)
		return i, v - float64(i)
	}
	i, u := along(x, nx)
	j, v := along(y, ny)
	return (1-v)*((1-u)*g.Z(i, j)+u*g.Z(i+1, j)) + v*((1-u)*g.Z(i, j+1)+u*g.Z(i+1, j+1))
}

// scale is the row of colours from the darkest below to the brightest. Each shade
// is drawn up to the top, over the one before, so that no hair stays between two.
// It is no image beside the map's: their order in a PDF would change by chance.
type scale struct{ palette.ColorMap }

// Plot draws the shades.
func (s scale) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	for k := range shades {
		v := s.Min() + (s.Max()-s.Min())*float64(k)/shades
		colour, err := s.At(v)
		if err != nil {
			continue
		}
		c.FillPolygon(colour, []vg.Point{{X: x(0), Y: y(v)}, {X: x(1), Y: y(v)}, {X: x(1), Y: y(s.Max())}, {X: x(0), Y: y(s.Max())}})
	}
}

// placed draws the map with its scale to the right.
func placed(format string, p, scale *plot.Plot, ratio float64) (io.WriterTo, error) {
	tall := mapWidth*vg.Length(math.Min(math.Max(ratio, 0.2), 1.2)) + 2.5*vg.Centimeter
	c, err := frame.Canvas(format, mapWidth+scaleWidth, tall)
	if err != nil {
		return nil, err
	}
	whole := draw.New(c)
	const margin = 2 * vg.Millimeter
	p.Draw(draw.Crop(whole, margin, -scaleWidth, margin, -margin))
	scale.Draw(draw.Crop(whole, mapWidth, -margin, margin, -margin))
	return c, nil
}
