package page

import (
	"bytes"
	"fmt"
	"html/template"
	"math"
	"strings"
)

// Drawing is a picture to scale. Coordinates are in the user's own unit,
// usually metres, x to the right and y upward.
type Drawing struct {
	body       bytes.Buffer
	x0, y0     float64 // lower left corner, in the user's unit
	x1, y1     float64 // upper right corner
	scale      float64 // points for a unit
	textPoints float64
}

// NewDrawing returns a drawing of the rectangle from (x0, y0) to (x1, y1), in
// the user's unit, width points of 1/72 inch wide.
func NewDrawing(x0, y0, x1, y1, width float64) *Drawing {
	return &Drawing{x0: x0, y0: y0, x1: x1, y1: y1, scale: width / (x1 - x0), textPoints: 11}
}

func (d *Drawing) at(x, y float64) (px, py float64) {
	return round((x - d.x0) * d.scale), round((d.y1 - y) * d.scale)
}

// round keeps hundredths of a point: the text stays short and alike on every
// processor.
func round(v float64) float64 { return math.Round(v*100) / 100 }

// Stroke is how a line of a drawing looks. The zero Stroke is a thin solid
// line in the page's ink.
type Stroke struct {
	Color string  // CSS colour; empty for the ink
	Width float64 // points; 0 for 1
	Dash  string  // as in SVG: "4 2"
	Fill  string  // CSS colour; empty for none
	Arrow bool    // an arrow head at the end
}

func (s Stroke) attributes() string {
	color, width, fill := s.Color, s.Width, s.Fill
	if color == "" {
		color = "currentColor"
	}
	if width == 0 {
		width = 1
	}
	if fill == "" {
		fill = "none"
	}
	a := fmt.Sprintf(`fill="%s" stroke="%s" stroke-width="%g"`, text(fill), text(color), width)
	if s.Dash != "" {
		a += fmt.Sprintf(` stroke-dasharray="%s"`, text(s.Dash))
	}
	return a
}

// Line draws through the points (x, y, x, y, ...), in the user's unit.
func (d *Drawing) Line(s Stroke, xy ...float64) {
	points := d.points(xy)
	fmt.Fprintf(&d.body, "<polyline points=\"%s\" %s/>\n", points, s.attributes())
	if n := len(xy); s.Arrow && n >= 4 {
		d.head(s, xy[n-4], xy[n-3], xy[n-2], xy[n-1])
	}
}

// Polygon draws a closed outline.
func (d *Drawing) Polygon(s Stroke, xy ...float64) {
	fmt.Fprintf(&d.body, "<polygon points=\"%s\" %s/>\n", d.points(xy), s.attributes())
}

// Circle draws a circle of radius, in the user's unit.
func (d *Drawing) Circle(s Stroke, x, y, radius float64) {
	px, py := d.at(x, y)
	fmt.Fprintf(&d.body, "<circle cx=\"%g\" cy=\"%g\" r=\"%g\" %s/>\n", px, py, round(radius*d.scale), s.attributes())
}

// Anchor says which point of a text stands at its place.
type Anchor string

// The anchors.
const (
	Start  Anchor = "start"
	Middle Anchor = "middle"
	End    Anchor = "end"
)

// Text writes words at (x, y), their base line there.
func (d *Drawing) Text(a Anchor, x, y float64, words string) {
	px, py := d.at(x, y)
	fmt.Fprintf(&d.body, "<text x=\"%g\" y=\"%g\" text-anchor=\"%s\" font-size=\"%g\" font-family=\"system-ui,sans-serif\">%s</text>\n", px, py, a, d.textPoints, text(words))
}

// Dimension draws a measure between two points with its words beside the
// middle.
func (d *Drawing) Dimension(x0, y0, x1, y1 float64, words string) {
	s := Stroke{Width: 0.7}
	d.Line(s, x0, y0, x1, y1)
	d.head(s, x0, y0, x1, y1)
	d.head(s, x1, y1, x0, y0)
	up := 3 / d.scale
	if math.Abs(x1-x0) >= math.Abs(y1-y0) {
		d.Text(Middle, (x0+x1)/2, (y0+y1)/2+up, words)
		return
	}
	d.Text(Start, (x0+x1)/2+up, (y0+y1)/2-up, words)
}

// head draws an arrow head at the second point.
func (d *Drawing) head(s Stroke, x0, y0, x1, y1 float64) {
	ax, ay := d.at(x0, y0)
	bx, by := d.at(x1, y1)
	long := math.Hypot(bx-ax, by-ay)
	if long == 0 {
		return
	}
	ux, uy := (bx-ax)/long, (by-ay)/long
	const size = 5
	color := s.Color
	if color == "" {
		color = "currentColor"
	}
	fmt.Fprintf(&d.body, "<polygon points=\"%g,%g %g,%g %g,%g\" fill=\"%s\"/>\n", bx, by,
		round(bx-size*ux+size*0.45*uy), round(by-size*uy-size*0.45*ux),
		round(bx-size*ux-size*0.45*uy), round(by-size*uy+size*0.45*ux), text(color))
}

func (d *Drawing) points(xy []float64) string {
	var b strings.Builder
	for i := 0; i+1 < len(xy); i += 2 {
		px, py := d.at(xy[i], xy[i+1])
		if i > 0 {
			b.WriteByte(' ')
		}
		fmt.Fprintf(&b, "%g,%g", px, py)
	}
	return b.String()
}

// HTML returns the drawing as an SVG element with its title and description.
func (d *Drawing) HTML(title, description string) template.HTML {
	box := fmt.Sprintf("0 0 %g %g", round((d.x1-d.x0)*d.scale), round((d.y1-d.y0)*d.scale))
	return head(box, title, description) + template.HTML(d.body.String()) + "</svg>\n"
}
