package main

import (
	"fmt"
	"slices"
	"time"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/plotutil"
	"gonum.org/v1/plot/vg"
	_ "gonum.org/v1/plot/vg/vgimg" // .png
	_ "gonum.org/v1/plot/vg/vgpdf" // .pdf
	_ "gonum.org/v1/plot/vg/vgsvg" // .svg

	"cloche.example/internal/program"
)

// points of a curve.
const points = 240

// draw writes the air's course at the coldest outside temperature: a full line
// after a heater fault, a broken one after a power cut.
func draw(file string, c choice, rows []row) error {
	format, err := program.PictureFormat(file)
	if err != nil {
		return err
	}
	coldest := slices.Min(c.outside)
	p := plot.New()
	p.Title.Text = fmt.Sprintf("Air after the heat fails, %g °C outside", coldest)
	p.X.Label.Text, p.Y.Label.Text = "hours", "air, °C"
	p.Add(plotter.NewGrid())
	span := time.Duration(0)
	var shown []row
	for _, r := range rows {
		if r.outside == coldest {
			shown = append(shown, r)
			span = max(span, min(r.fault.Time, r.cut.Time)*3/2)
		}
	}
	span = min(max(span, time.Hour), 48*time.Hour)
	for i, r := range shown {
		for _, k := range []struct {
			name string
			dash []vg.Length
			cut  bool
		}{{"heater fault", nil, false}, {"power cut", []vg.Length{vg.Points(4), vg.Points(3)}, true}} {
			xy := make(plotter.XYs, points+1)
			for j := range xy {
				t := span * time.Duration(j) / points
				h := r.fan
				if k.cut {
					h = r.dark
				}
				xy[j].X, xy[j].Y = t.Hours(), h.After(r.start, r.drive, t).Air
			}
			line, err := plotter.NewLine(xy)
			if err != nil {
				return err
			}
			line.Color, line.Dashes, line.Width = plotutil.Color(i), k.dash, vg.Points(1.5)
			p.Add(line)
			p.Legend.Add(r.cover+", "+k.name, line)
		}
	}
	p.Legend.Top = true
	w, err := p.WriterTo(18*vg.Centimeter, 12*vg.Centimeter, format)
	if err != nil {
		return err
	}
	return program.WritePicture(file, w)
}
