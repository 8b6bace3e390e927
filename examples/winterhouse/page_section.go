package main

import (
	"fmt"
	"html/template"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/page"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/report"
)

// Strokes of the drawings: vents are broad, lamps filled, ground broken.
var (
	ventLine  = page.Stroke{Width: 5, Color: "#1f6fb4"}
	ductLine  = page.Stroke{Width: 1.6, Color: "#c65a11", Dash: "6 2"}
	lampLine  = page.Stroke{Width: 1, Color: "#a87b00", Fill: "#a87b00"}
	thinLine  = page.Stroke{Width: 0.7}
	brokeLine = page.Stroke{Width: 0.7, Dash: "3 3"}
)

// pictureWidth is that of all pictures, points.
const pictureWidth = 560

// metres prints a length.
func metres(x float64) string { return report.Number(x, 2) + " m" }

// crossSection draws one bay across the ridge, seen along it.
func crossSection(p *plan.Filled, a *answers.Result) (template.HTML, string) {
	h := p.House
	side := 0.28 * h.Span
	d := page.NewDrawing(-side, -h.Depth-0.12*h.Span, h.Span+side, h.RidgeHeight+0.14*h.Span, pictureWidth)
	outline := fromplan.RoofLine(h)
	d.Polygon(page.Stroke{Width: 1.6, Fill: "var(--soft)"}, append([]float64{0, -h.Depth, 0, h.EaveHeight}, append(outline, h.Span, -h.Depth)...)...)
	d.Line(thinLine, -side, 0, 0, 0)
	d.Line(thinLine, h.Span, 0, h.Span+side, 0)
	d.Text(page.Start, -side+0.02*h.Span, 0.02*h.Span, "ground")
	if w := h.DwarfWall.Height; w > 0 {
		d.Line(page.Stroke{Width: 4}, 0, 0, 0, w)
		d.Line(page.Stroke{Width: 4}, h.Span, 0, h.Span, w)
	}
	for _, v := range p.Vents {
		sectionVent(d, h, v)
	}
	if t := p.PerforatedTube; t != nil {
		z := min(p.Crop.Height+t.AboveCrop-h.Depth, h.RidgeHeight-t.Diameter)
		d.Circle(ductLine, h.Span/2, z, t.Diameter/2)
		d.Text(page.Start, h.Span/2+t.Diameter/2+0.02*h.Span, z-0.01*h.Span, "tube")
	}
	if l := p.Lights; l != nil {
		lampSection(d, h, l, a.Light.Rows)
	}
	if z := p.Crop.Height - h.Depth; p.Crop.LeafArea > 0 {
		d.Line(brokeLine, 0.04*h.Span, z, 0.96*h.Span, z)
		d.Text(page.Start, 0.05*h.Span, z+0.012*h.Span, "top of the crop")
	}
	d.Dimension(0, -h.Depth-0.06*h.Span, h.Span, -h.Depth-0.06*h.Span, metres(h.Span))
	d.Dimension(h.Span+0.07*h.Span, 0, h.Span+0.07*h.Span, h.EaveHeight, metres(h.EaveHeight))
	d.Dimension(-0.08*h.Span, 0, -0.08*h.Span, h.RidgeHeight, metres(h.RidgeHeight))
	if h.Depth > 0 {
		d.Dimension(h.Span+0.07*h.Span, -h.Depth, h.Span+0.07*h.Span, 0, metres(h.Depth))
	}
	said := fmt.Sprintf("A %s %s wide, its eave %s and its ridge %s above the ground, its floor %s below it.", h.Shape, metres(h.Span), metres(h.EaveHeight), metres(h.RidgeHeight), metres(h.Depth))
	caption := "Cross-section to scale, seen along the ridge: broad lines are vents, dots lamps, the broken circle the tube."
	if h.Bays > 1 {
		caption += fmt.Sprintf(" One of %d bays.", h.Bays)
	}
	return d.HTML("Cross-section of the house", said+" "+ventWords(p)), caption
}

// sectionVent draws a vent of side, ridge or roof; those of the ends lie in the
// drawing's plane.
func sectionVent(d *page.Drawing, h plan.House, v plan.Vent) {
	xy := fromplan.VentLine(h, v)
	if v.Place == "near end" || v.Place == "far end" {
		d.Polygon(page.Stroke{Width: 1.4, Color: ventLine.Color, Dash: "4 2"}, xy...)
		return
	}
	d.Line(ventLine, xy...)
}

func lampSection(d *page.Drawing, h plan.House, l *plan.Lights, rows int) {
	left := (h.Span - l.BedWidth) / 2
	for tier := range l.Tiers {
		tray := l.TraysAboveFloor - h.Depth + float64(tier)*l.TierRise
		d.Line(page.Stroke{Width: 2}, left, tray, left+l.BedWidth, tray)
		for row := range rows {
			x := left + l.BedWidth*(float64(row)+0.5)/float64(rows)
			d.Circle(lampLine, x, tray+l.HeightAboveTrays, 0.012*h.Span)
		}
	}
}

// ventWords lists the vents for those who cannot see the drawing.
func ventWords(p *plan.Filled) string {
	s := ""
	for _, v := range p.Vents {
		s += fmt.Sprintf(" %s: %s, %s, %s by %s, its middle %s above the ground.", v.Name, v.Kind, v.Place, metres(v.Length), metres(v.Height), metres(v.Centre))
	}
	return s
}
