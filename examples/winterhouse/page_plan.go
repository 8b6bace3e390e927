package main

import (
	"fmt"
	"html/template"
	"math"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/page"
	"cloche.example/examples/internal/plan"
)

// frame maps places along and across the house, m, onto the drawing: the ridge
// runs to the right, the left side is above.
type frame struct{ length, width float64 }

func (f frame) at(along, across float64) (x, y float64) { return along, f.width - across }

// groundPlan draws the house from above.
func groundPlan(p *plan.Filled, a *answers.Result) (template.HTML, string) {
	h := p.House
	f := frame{h.Length, float64(h.Bays)*h.Span + float64(h.Bays-1)*h.GutterWidth}
	edge := max(0.14*f.width, 0.09*f.length)
	for _, x := range h.Annexes {
		edge = max(edge, x.Reach+0.08*f.width)
	}
	right := 0.4*edge + 0.12*(f.length+edge) // room for a measure's words
	d := page.NewDrawing(-edge, -edge, f.length+max(edge, right), f.width+edge, pictureWidth)
	d.Box(page.Stroke{Width: 1.6, Fill: "var(--soft)"}, 0, 0, f.length, f.width)
	for b := range h.Bays {
		y := ridgeAt(h, b)
		_, py := f.at(0, y)
		d.Line(brokeLine, 0, py, f.length, py)
	}
	for _, x := range h.Annexes {
		planAnnex(d, f, x)
	}
	for _, door := range h.Doors {
		planDoor(d, f, door)
	}
	for _, v := range p.Vents {
		planVent(d, f, h, v)
	}
	if t := p.PerforatedTube; t != nil {
		_, y := f.at(0, f.width/2)
		d.Line(ductLine, 0, y, min(t.LeadIn+float64(t.Rows-1)*t.Pitch, f.length), y)
	}
	lamps := 0
	if l := p.Lights; l != nil {
		lamps = planLamps(d, f, l, a.Light.Rows, a.Light.PerRow)
	}
	north(d, f, edge, h.RidgeAzimuth)
	d.Dimension(0, -0.45*edge, f.length, -0.45*edge, metres(f.length))
	d.Dimension(f.length+0.35*edge, 0, f.length+0.35*edge, f.width, metres(f.width))
	said := fmt.Sprintf("A floor of %s by %s, the ridge towards %.0f degrees from north, with %d vents, %d doors and %d lamps.", metres(f.length), metres(f.width), h.RidgeAzimuth, len(p.Vents), len(h.Doors), lamps)
	return d.HTML("Ground plan of the house", said+" "+ventWords(p)), "Ground plan to scale, the near end on the left: broad lines are vents, dots lamps over their bed, the broken line the tube, gaps doors."
}

// ridgeAt is how far the ridge of a bay lies from the left side, m.
func ridgeAt(h plan.House, bay int) float64 {
	from := float64(bay) * (h.Span + h.GutterWidth)
	switch h.Shape {
	case "lean-to":
		return from
	case "uneven gable":
		return from + h.RidgeOffset
	}
	return from + h.Span/2
}

// onWall is the line of a length centred on a wall.
func (f frame) onWall(place string, length float64) (x0, y0, x1, y1 float64) {
	switch place {
	case "near end":
		return 0, (f.width - length) / 2, 0, (f.width + length) / 2
	case "far end":
		return f.length, (f.width - length) / 2, f.length, (f.width + length) / 2
	case "right side":
		return (f.length - length) / 2, 0, (f.length + length) / 2, 0
	}
	return (f.length - length) / 2, f.width, (f.length + length) / 2, f.width
}

func planVent(d *page.Drawing, f frame, h plan.House, v plan.Vent) {
	switch v.Place {
	case "ridge", "left roof", "right roof":
		each := v.Length / float64(h.Bays)
		shift := map[string]float64{"left roof": -h.Span / 6, "right roof": h.Span / 6}[v.Place]
		for b := range h.Bays {
			_, y := f.at(0, ridgeAt(h, b)+shift)
			d.Line(ventLine, (f.length-each)/2, y, (f.length+each)/2, y)
		}
	default:
		x0, y0, x1, y1 := f.onWall(v.Place, v.Length)
		d.Line(ventLine, x0, y0, x1, y1)
	}
}

// planDoor draws a gap with the leaf that stands open.
func planDoor(d *page.Drawing, f frame, door plan.Door) {
	x0, y0, x1, y1 := f.onWall(door.Place, door.Width)
	d.Line(page.Stroke{Width: 4, Color: "var(--paper)"}, x0, y0, x1, y1)
	out := map[string][2]float64{"near end": {-1, 0}, "far end": {1, 0}, "right side": {0, -1}, "left side": {0, 1}}[door.Place]
	d.Line(thinLine, x0, y0, x0+out[0]*door.Width, y0+out[1]*door.Width)
}

func planAnnex(d *page.Drawing, f frame, x plan.Annex) {
	x0, y0, x1, y1 := f.onWall(x.Place, x.Width)
	switch x.Place {
	case "near end":
		x1 = -x.Reach
	case "far end":
		x1 = f.length + x.Reach
	case "right side":
		y1 = -x.Reach
	default:
		y1 = f.width + x.Reach
	}
	d.Box(page.Stroke{Width: 1.2, Fill: "var(--soft)"}, x0, y0, x1, y1)
	d.Text(page.Middle, (x0+x1)/2, (y0+y1)/2, x.Use)
}

// most dots of lamps that a drawing shows.
const mostDots = 400

func planLamps(d *page.Drawing, f frame, l *plan.Lights, rows, perRow int) int {
	x, y := (f.length-l.BedLength)/2, (f.width-l.BedWidth)/2
	d.Box(page.Stroke{Width: 0.9}, x, y, x+l.BedLength, y+l.BedWidth)
	count := rows * perRow
	step := int(math.Ceil(float64(count) / mostDots))
	for i := 0; i < count; i += step {
		row, at := i/perRow, i%perRow
		d.Circle(lampLine, x+l.BedLength*(float64(at)+0.5)/float64(perRow), y+l.BedWidth*(float64(row)+0.5)/float64(rows), 0.006*f.length)
	}
	return count * l.Tiers
}

// north draws an arrow; the ridge, to the right, points to azimuth.
func north(d *page.Drawing, f frame, edge, azimuth float64) {
	s, c := math.Sincos((azimuth - 0) * math.Pi / 180) // north is so far to the left of the ridge
	x, y, long := -0.55*edge, f.width+0.4*edge, 0.35*edge
	d.Line(page.Stroke{Width: 1.2, Arrow: true}, x-long*c, y-long*s, x+long*c, y+long*s)
	d.Text(page.Start, x+0.5*edge, y, "N")
}
