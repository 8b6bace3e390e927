package figures

import (
	"fmt"
	"image/color"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"cloche.example/examples/internal/page"
)

// numbers are the values of the names in a formula.
type numbers = map[string]float64

// said returns the words, what a source prints, where the values are those of
// the problem as it was printed.
func said(given []Given, v []float64, words string) string {
	for i, g := range given {
		if v[i] != g.Value {
			return ""
		}
	}
	return words
}

// curve is one line, or one row of marks, of a chart.
type curve struct {
	name string // for the legend; empty for none
	at   plotter.XYs
}

// along computes a curve in n steps from a to b; a place without an answer is
// left out.
func along(a, b float64, n int, f func(x float64) float64) plotter.XYs {
	var at plotter.XYs
	for i := 0; i <= n; i++ {
		x := a + (b-a)*float64(i)/float64(n)
		if y := f(x); !math.IsNaN(y) && !math.IsInf(y, 0) {
			at = append(at, plotter.XY{X: x, Y: y})
		}
	}
	return at
}

// mark is a named point of a chart.
type mark struct {
	name string
	x, y float64
}

// chart is a plot of curves and named points.
type chart struct {
	title, says string // for the picture's title and description
	x, y        string // axes with their units
	curves      []curve
	marks       []mark
	zero        bool    // the upward axis begins at zero
	high        float64 // points; 0 for 250
}

func (c chart) plot() (*plot.Plot, error) {
	p := page.NewPlot(c.x, c.y)
	legend := 0
	for i, k := range c.curves {
		if len(k.at) == 0 {
			continue
		}
		line, err := plotter.NewLine(k.at)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", c.title, err)
		}
		pen := page.PenOf(i)
		line.Color, line.Dashes, line.Width = pen.Color, pen.Dashes, 1.6
		p.Add(line)
		if k.name != "" {
			p.Legend.Add(k.name, line)
			legend++
		}
	}
	if err := addDots(p, c.marks); err != nil {
		return nil, fmt.Errorf("%s: %w", c.title, err)
	}
	if c.zero {
		p.Y.Min = math.Min(p.Y.Min, 0)
	}
	if p.Y.Max-p.Y.Min < 1e-9*math.Max(1, math.Abs(p.Y.Max)) { // a level line stands in the middle
		half := math.Max(0.05*math.Abs(p.Y.Max), 1e-6)
		p.Y.Min, p.Y.Max = p.Y.Min-half, p.Y.Max+half
	}
	high := c.high
	if high == 0 {
		high = 250
	}
	room := 16 * float64(legend) // the legend stands above the curves and their names
	if legend > 0 && len(c.marks) > 0 {
		room += 14
	}
	share := math.Min(0.6, room/(high-60))
	p.Y.Max += share / (1 - share) * (p.Y.Max - p.Y.Min)
	if err := addNames(p, high-50, legend, c.marks, c.curves); err != nil {
		return nil, fmt.Errorf("%s: %w", c.title, err)
	}
	return p, nil
}

// picture draws the chart alone.
func (c chart) picture(caption string) (Picture, error) { return charts(c.title, c.says, caption, c) }

// charts draws several charts below one another.
func charts(title, says, caption string, all ...chart) (Picture, error) {
	var plots []*plot.Plot
	high := 0.0
	for _, c := range all {
		p, err := c.plot()
		if err != nil {
			return Picture{}, err
		}
		plots = append(plots, p)
		if c.high == 0 {
			c.high = 250
		}
		high += c.high
	}
	return Picture{SVG: page.Chart(title, says, 420, high, plots...), Caption: caption}, nil
}

// addDots sets a dot at each mark.
func addDots(p *plot.Plot, marks []mark) error {
	if len(marks) == 0 {
		return nil
	}
	xy := make(plotter.XYs, len(marks))
	for i, m := range marks {
		xy[i] = plotter.XY{X: m.x, Y: m.y}
	}
	dots, err := plotter.NewScatter(xy)
	if err != nil {
		return err
	}
	dots.GlyphStyle = draw.GlyphStyle{Color: page.PenOf(1).Color, Radius: 3.5, Shape: draw.CircleGlyph{}}
	p.Add(dots)
	return nil
}

// spot is the box of a name, points from the plot's lower left corner.
type spot struct{ x0, x1, y0, y1 float64 }

func (s spot) holds(x, y float64) bool { return x > s.x0 && x < s.x1 && y > s.y0 && y < s.y1 }

// addNames writes the name of each mark beside its dot, at the one of four
// places where it meets least of the curves, the other names, the legend's lines
// and the edge, on a plot high points high.
func addNames(p *plot.Plot, high float64, legend int, marks []mark, curves []curve) error {
	const wide, line = 345.0, 12.0
	place := func(x, y float64) (px, py float64) {
		return wide * (x - p.X.Min) / (p.X.Max - p.X.Min), high * (y - p.Y.Min) / (p.Y.Max - p.Y.Min)
	}
	var taken []spot
	if legend > 0 {
		taken = append(taken, spot{0, 240, high - 16*float64(legend), high})
	}
	for _, m := range marks {
		px, py := place(m.x, m.y)
		taken = append(taken, spot{px - 4, px + 4, py - 4, py + 4})
	}
	dots := len(taken) - len(marks) // index of the first dot
	for i, m := range marks {
		if m.name == "" {
			continue
		}
		px, py := place(m.x, m.y)
		long := 6.2 * float64(len([]rune(m.name)))
		best, least := spot{}, math.Inf(1)
		var left, under bool
		for n := range 4 { // above and below to the right, then to the left
			s := spot{px + 5, px + 5 + long, py + 3, py + 3 + line}
			if n&1 == 1 {
				s.y0, s.y1 = py-3-line, py-3
			}
			if n&2 == 2 {
				s.x0, s.x1 = px-5-long, px-5
			}
			cost := 1e-3*float64(n) + 100*math.Max(0, s.x1-wide) + 100*math.Max(0, -s.x0) + 10*math.Max(0, -s.y0) + 10*math.Max(0, s.y1-high)
			for k, t := range taken {
				if k != dots+i && s.x0 < t.x1 && t.x0 < s.x1 && s.y0 < t.y1 && t.y0 < s.y1 {
					cost += 200
				}
			}
			for _, c := range curves {
				cost += crossed(s, c.at, place)
			}
			if cost < least {
				best, least, left, under = s, cost, n&2 == 2, n&1 == 1
			}
		}
		taken = append(taken, best)
		l, err := plotter.NewLabels(plotter.XYLabels{XYs: plotter.XYs{{X: m.x, Y: m.y}}, Labels: []string{m.name}})
		if err != nil {
			return err
		}
		style := &l.TextStyle[0]
		style.Font = font.Font{Typeface: "Liberation", Variant: "Sans", Size: 11}
		l.Offset = vg.Point{X: 5, Y: 4}
		if left {
			style.XAlign, l.Offset.X = draw.XRight, -5
		}
		if under {
			style.YAlign, l.Offset.Y = draw.YTop, -5
		}
		p.Add(l)
	}
	return nil
}

// crossed tells how much of a curve runs through a name: one for each point of
// the way.
func crossed(s spot, at plotter.XYs, place func(x, y float64) (float64, float64)) float64 {
	sum := 0.0
	for i := 1; i < len(at); i++ {
		x0, y0 := place(at[i-1].X, at[i-1].Y)
		x1, y1 := place(at[i].X, at[i].Y)
		if max(x0, x1) < s.x0 || min(x0, x1) > s.x1 || max(y0, y1) < s.y0 || min(y0, y1) > s.y1 {
			continue
		}
		n := 1 + int(math.Hypot(x1-x0, y1-y0))
		for k := range n {
			f := (float64(k) + 0.5) / float64(n)
			if s.holds(x0+f*(x1-x0), y0+f*(y1-y0)) {
				sum += math.Hypot(x1-x0, y1-y0) / float64(n)
			}
		}
	}
	return sum
}

// bar is one bar of a picture; a negative value reaches to the left.
type bar struct {
	name  string
	value float64
}

// bars draws values as bars with their names and numbers.
func bars(title, says, format, caption string, rows ...bar) Picture {
	const names, full, line = 150.0, 190.0, 22.0
	low, high := 0.0, 0.0
	for _, b := range rows {
		low, high = math.Min(low, b.value), math.Max(high, b.value)
	}
	if high == low {
		high = 1
	}
	d := page.NewDrawing(0, -line*float64(len(rows))-5, 420, 6, 420)
	zero := names - full*low/(high-low)
	for i, b := range rows {
		y := -line * float64(i+1)
		end := zero + full*b.value/(high-low)
		d.Text(page.End, names-6, y+7, b.name)
		if math.Abs(end-zero) > 0.3 {
			d.Polygon(page.Stroke{Color: css(page.PenOf(0).Color), Fill: css(page.PenOf(0).Color)}, zero, y+3, end, y+3, end, y+16, zero, y+16)
		}
		d.Text(page.Start, math.Max(zero, end)+6, y+7, fmt.Sprintf(format, b.value))
	}
	d.Line(page.Stroke{}, zero, 0, zero, -line*float64(len(rows)))
	return Picture{SVG: d.HTML(title, says), Caption: caption}
}

// css writes a colour for a drawing.
func css(c color.RGBA) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// drawn ends a drawing as a picture.
func drawn(d *page.Drawing, title, says, caption string) Picture {
	return Picture{SVG: d.HTML(title, says), Caption: caption}
}

// straight is the line from one point to another.
func straight(x0, y0, x1, y1 float64) plotter.XYs { return plotter.XYs{{X: x0, Y: y0}, {X: x1, Y: y1}} }

// points pairs the values of two columns.
func points(x, y []float64) plotter.XYs {
	at := make(plotter.XYs, len(x))
	for i := range x {
		at[i] = plotter.XY{X: x[i], Y: y[i]}
	}
	return at
}

// cosine is that of an angle in degree.
func cosine(angle float64) float64 { return math.Cos(angle * math.Pi / 180) }
