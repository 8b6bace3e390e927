package main

import (
	"fmt"
	"image/color"
	"io"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/page"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/report"
	"cloche.example/ventilation"
)

// points of a path.
const points = 120

// draw shows the section of a bay with its vents, and the paths of the air that
// falls from those that open first, by both ends of the band, at the coldest
// outside and the last opening.
func (d *draught) draw(format string) (io.WriterTo, error) {
	last := len(d.opened) - 1
	p := plot.New()
	p.Title.Text = "No vents: " + d.plan.Name
	if len(d.orders) > 0 {
		p.Title.Text = fmt.Sprintf("Cold air from vents open %g %%, %g °C outside: %s", d.opened[last], d.coldest(), d.plan.Name)
	}
	p.X.Label.Text, p.Y.Label.Text = "across the house, m", "above the ground outside, m"
	pic := picture{plot: p}
	pic.section(d.plan.House, d.vents.Crop)
	for _, v := range d.plan.Vents {
		pic.line("", page.PenOf(3).Color, 5, nil, pairs(fromplan.VentLine(d.plan.House, v)))
	}
	if len(d.plan.Vents) > 0 {
		pic.named("vents", page.PenOf(3).Color, 5, nil)
	}
	for i, o := range d.orders {
		pic.falls(d, o, d.rows[i][d.cold()].opened[last], page.PenOf(i).Color)
	}
	if pic.err != nil {
		return nil, pic.err
	}
	h := d.plan.House
	room := 0.13 * h.Span * float64(1+len(d.orders)) // for the legend
	p.Y.Max = h.RidgeHeight + 0.05*h.Span + room
	p.Y.Min = -h.Depth - 0.03*h.Span
	p.X.Min, p.X.Max = -0.03*h.Span, 1.03*h.Span
	p.Legend.Top, p.Legend.Left = true, true
	const width = 18 * vg.Centimeter
	height := (width-2*vg.Centimeter)*vg.Length((p.Y.Max-p.Y.Min)/(p.X.Max-p.X.Min)) + 2.4*vg.Centimeter
	return frame.Plots(format, width, min(height, 24*vg.Centimeter), p)
}

// picture keeps the first fault of its lines.
type picture struct {
	plot *plot.Plot
	err  error
}

// line adds a line, with a name in the legend unless that is empty.
func (p *picture) line(name string, c color.Color, width float64, dash []vg.Length, xy plotter.XYs) {
	l, err := plotter.NewLine(xy)
	if err != nil {
		if p.err == nil {
			p.err = err
		}
		return
	}
	l.Color, l.Dashes, l.Width = c, dash, vg.Points(width)
	p.plot.Add(l)
	if name != "" {
		p.plot.Legend.Add(name, l)
		p.plot.Legend.ThumbnailWidth, p.plot.Legend.Padding = vg.Points(28), vg.Points(3)
	}
}

// named puts a name in the legend for lines that stand already.
func (p *picture) named(name string, c color.Color, width float64, dash []vg.Length) {
	l := &plotter.Line{}
	l.Color, l.Dashes, l.Width = c, dash, vg.Points(width)
	p.plot.Legend.Add(name, l)
}

// section draws the outline of a bay, the ground and the top of the crop.
func (p *picture) section(h plan.House, crop float64) {
	grey := color.Gray{0x40}
	outline := plotter.XYs{{X: 0, Y: -h.Depth}, {X: 0, Y: h.EaveHeight}}
	outline = append(outline, pairs(fromplan.RoofLine(h))...)
	outline = append(outline, plotter.XY{X: h.Span, Y: -h.Depth}, plotter.XY{X: 0, Y: -h.Depth})
	p.line("", grey, 1.6, nil, outline)
	p.line("top of the crop", color.Gray{0x60}, 1.2, []vg.Length{vg.Points(2), vg.Points(2)}, plotter.XYs{{X: 0, Y: crop}, {X: h.Span, Y: crop}})
}

// falls draws the paths from the vents that open first.
func (p *picture) falls(d *draught, o order, a ventilation.ColdAir, c color.Color) {
	weak := []vg.Length{vg.Points(5), vg.Points(3)}
	names := [2]string{o.name + ", strongest bend", o.name + ", weakest bend"}
	said := false
	for _, k := range o.groups[0] {
		v, in := d.plan.Vents[d.from[k]], a.Inlets[k]
		if in.Flow == 0 || v.Place == "near end" || v.Place == "far end" {
			continue
		}
		x0, side := from(d.plan.House, v)
		for i, at := range []ventilation.Landing{in.Fall.Steep, in.Fall.Shallow} {
			xy := make(plotter.XYs, points+1)
			for j := range xy {
				x := at.Distance * float64(j) / points
				xy[j].X, xy[j].Y = x0+side*x, d.vents.Crop+in.Drop-in.Jet.Drop(x, i == 0)
			}
			dash, name := []vg.Length(nil), ""
			if i == 1 {
				dash = weak
			}
			if !said {
				name = fmt.Sprintf("%s: %s °C at the crop", names[i], report.Number(at.Temperature, 1))
			}
			p.line(name, c, 1.6, dash, xy)
		}
		said = true
	}
}

// from is where air enters by a vent of the section, and to which side it goes.
func from(h plan.House, v plan.Vent) (x, side float64) {
	switch v.Place {
	case "left side":
		return 0, 1
	case "right side":
		return h.Span, -1
	case "left roof":
		return fromplan.RidgeAt(h), -1
	}
	return fromplan.RidgeAt(h), 1
}

// pairs are the points of x, y in turn.
func pairs(xy []float64) plotter.XYs {
	p := make(plotter.XYs, len(xy)/2)
	for i := range p {
		p[i].X, p[i].Y = xy[2*i], xy[2*i+1]
	}
	return p
}
