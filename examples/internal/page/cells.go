package page

import (
	"fmt"
	"math"
	"strconv"
)

// Cells is a rectangle of equal cells, each filled by its value: dark for the
// lowest, light for the highest.
type Cells struct {
	Length, Width float64 // in the drawing's unit
	Columns       int     // along x
	Values        []float64
	Low, High     float64 // of the scale of fills
}

// fill goes from dark, at 0, to light, at 1.
func fill(x float64) string {
	mix := func(dark, light float64) int { return int(math.Round(dark + (light-dark)*min(1, max(0, x)))) }
	return fmt.Sprintf("#%02x%02x%02x", mix(0x10, 0xff), mix(0x3a, 0xf4), mix(0x6e, 0xc8))
}

func (c Cells) fill(v float64) string { return fill((v - c.Low) / max(c.High-c.Low, 1e-9)) }

// Cells draws the cells, in rows along x, with their corner of the smallest x
// and y at (x0, y0), and a thin line around them.
func (d *Drawing) Cells(c Cells, x0, y0 float64) {
	rows := len(c.Values) / c.Columns
	dx, dy := c.Length/float64(c.Columns), c.Width/float64(rows)
	for i, v := range c.Values {
		color := c.fill(v)
		x, y := x0+float64(i%c.Columns)*dx, y0+float64(i/c.Columns)*dy
		d.Box(Stroke{Width: 0.4, Color: color, Fill: color}, x, y, x+dx, y+dy)
	}
	d.Box(Stroke{Width: 0.7}, x0, y0, x0+c.Length, y0+c.Width)
}

// Scale draws the fills of the cells as six boxes from x0 to x1, their lower
// edge at y0, each with its value, rounded, below it.
func (d *Drawing) Scale(c Cells, x0, x1, y0, high float64) {
	wide := (x1 - x0) / 6
	for i := range 6 {
		v := c.Low + (c.High-c.Low)*float64(i)/5
		x := x0 + wide*float64(i)
		d.Box(Stroke{Width: 0.5, Fill: c.fill(v)}, x, y0, x+wide, y0+high)
		d.Text(Middle, x+wide/2, y0-12/d.scale, strconv.FormatFloat(v, 'f', 0, 64))
	}
}

// Box draws a rectangle with its sides along x and y.
func (d *Drawing) Box(s Stroke, x0, y0, x1, y1 float64) {
	d.Polygon(s, x0, y0, x1, y0, x1, y1, x0, y1)
}
