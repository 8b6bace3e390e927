package frame

import (
	"image/color"
	"io"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	_ "gonum.org/v1/plot/vg/vgimg" // .png
	_ "gonum.org/v1/plot/vg/vgpdf" // .pdf
	_ "gonum.org/v1/plot/vg/vgsvg" // .svg

	"cloche.example/examples/internal/page"
)

// Plots draws plots below one another, their axes aligned, as a picture of
// width and height with a margin that keeps long words whole.
func Plots(format string, width, height vg.Length, plots ...*plot.Plot) (io.WriterTo, error) {
	canvas, err := Canvas(format, width, height)
	if err != nil {
		return nil, err
	}
	grid := make([][]*plot.Plot, len(plots))
	for i, p := range plots {
		grid[i] = []*plot.Plot{p}
		p.Add(paper{})
		for _, axis := range []*plot.Axis{&p.X, &p.Y} {
			if _, own := axis.Tick.Marker.(plot.DefaultTicks); own {
				axis.Tick.Marker = page.Ticks{}
			}
		}
	}
	const margin = 3 * vg.Millimeter
	parts := plot.Align(grid, draw.Tiles{Rows: len(plots), Cols: 1, PadY: margin, PadTop: margin, PadBottom: margin, PadLeft: 2 * margin, PadRight: 2 * margin}, draw.New(canvas))
	for i, p := range plots {
		p.Draw(parts[i][0])
	}
	return canvas, nil
}

// paper hides the grid behind the legend.
type paper struct{}

// Plot fills the legend's place.
func (paper) Plot(c draw.Canvas, p *plot.Plot) {
	r := p.Legend.Rectangle(c) // of the right size, and on the wrong side
	if wide := r.Max.X - r.Min.X; wide > 1 {
		r.Min.X = c.Max.X - wide
		if p.Legend.Left {
			r.Min.X = c.Min.X
		}
		r.Max.X = r.Min.X + wide
		c.FillPolygon(color.White, []vg.Point{r.Min, {X: r.Max.X, Y: r.Min.Y}, r.Max, {X: r.Min.X, Y: r.Max.Y}})
	}
}

// Canvas returns an empty picture of a format, svg, png or pdf.
func Canvas(format string, width, height vg.Length) (vg.CanvasWriterTo, error) {
	c, err := draw.NewFormattedCanvas(width, height, format)
	if err == nil && format == "pdf" {
		c = western{c}
	}
	return c, err
}

// western writes words in the code page that the writer of PDF files takes them
// for: Windows 1252, which is Latin-1 with some signs more.
type western struct{ vg.CanvasWriterTo }

// FillString writes a word.
func (w western) FillString(f font.Face, at vg.Point, s string) {
	w.CanvasWriterTo.FillString(f, at, inWestern(s))
}

// signs of Windows 1252 that Latin-1 lacks.
var signs = map[rune]byte{'€': 0x80, '…': 0x85, '‘': 0x91, '’': 0x92, '“': 0x93, '”': 0x94, '•': 0x95, '–': 0x96, '—': 0x97, '−': '-', 'μ': 0xb5, 'Δ': 'd'}

func inWestern(s string) string {
	var b strings.Builder
	for _, r := range s {
		sign, known := signs[r]
		switch {
		case known:
			b.WriteByte(sign)
		case r < 0x100:
			b.WriteByte(byte(r))
		default:
			b.WriteByte('?')
		}
	}
	return b.String()
}
