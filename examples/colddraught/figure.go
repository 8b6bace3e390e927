package main

import (
	"fmt"
	"image/color"
	"slices"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/plotutil"
	"gonum.org/v1/plot/vg"
	_ "gonum.org/v1/plot/vg/vgimg" // .png
	_ "gonum.org/v1/plot/vg/vgpdf" // .pdf
	_ "gonum.org/v1/plot/vg/vgsvg" // .svg

	"cloche.example/internal/demo"
	"cloche.example/internal/program"
	"cloche.example/ventilation"
)

// points of a path.
const points = 120

// draw writes the paths of the air in the section of the house, from the ridge
// and from the side, each by both ends of the band.
func (h house) draw(file string) error {
	format, err := program.PictureFormat(file)
	if err != nil {
		return err
	}
	outside, opened := slices.Min(h.outside), h.opened[len(h.opened)-1]
	p := plot.New()
	p.Title.Text = fmt.Sprintf("Cold air from vents open %g %%, %g °C outside", opened, outside)
	p.X.Label.Text, p.Y.Label.Text = "across the house, m", "above grade, m"
	half := demo.Span / 2.0
	if err := line(p, "", color.Gray{0x40}, nil, plotter.XYs{{X: 0, Y: -demo.Depth}, {X: 0, Y: demo.EaveHeight}, {X: half, Y: demo.RidgeHeight}, {X: demo.Span, Y: demo.EaveHeight}, {X: demo.Span, Y: -demo.Depth}, {X: 0, Y: -demo.Depth}}); err != nil {
		return err
	}
	if err := line(p, "top of the crop", color.RGBA{G: 0x80, A: 0xff}, nil, plotter.XYs{{X: 0, Y: h.crop}, {X: demo.Span, Y: h.crop}}); err != nil {
		return err
	}
	for i, o := range orders {
		a, err := h.at(outside, o.order, opened/100)
		if err != nil {
			return err
		}
		in := a.Inlets[o.first]
		if in.Flow == 0 {
			continue
		}
		from, top := 0.0, h.crop+in.Drop
		if o.first == ridgeVents {
			from = half
		}
		for _, end := range []struct {
			name  string
			steep bool
			at    ventilation.Landing
			dash  []vg.Length
		}{{"strong bend", true, in.Fall.Steep, nil}, {"weak bend", false, in.Fall.Shallow, []vg.Length{vg.Points(4), vg.Points(3)}}} {
			xy := make(plotter.XYs, points+1)
			for k := range xy {
				x := end.at.Distance * float64(k) / points
				xy[k].X, xy[k].Y = from+x, top-in.Jet.Drop(x, end.steep)
			}
			if err := line(p, fmt.Sprintf("%s, %s: %.1f °C at the crop", o.name, end.name, end.at.Temperature), plotutil.Color(i), end.dash, xy); err != nil {
				return err
			}
		}
	}
	p.Legend.Top = true
	p.Y.Max = demo.RidgeHeight + 1.4 // room for the legend
	w, err := p.WriterTo(18*vg.Centimeter, 14*vg.Centimeter, format)
	if err != nil {
		return err
	}
	return program.WritePicture(file, w)
}

// line adds a line to p, with a name in the legend unless that is empty.
func line(p *plot.Plot, name string, c color.Color, dash []vg.Length, xy plotter.XYs) error {
	l, err := plotter.NewLine(xy)
	if err != nil {
		return err
	}
	l.Color, l.Dashes, l.Width = c, dash, vg.Points(1.5)
	p.Add(l)
	if name != "" {
		p.Legend.Add(name, l)
	}
	return nil
}
