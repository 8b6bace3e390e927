package page

import (
	"bytes"
	"fmt"
	"html/template"
	"image/color"
	"math"
	"regexp"
	"strconv"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"
)

// Pen is how one of several lines, bars or areas is drawn. Pens differ by dash
// and lightness as well as by hue, so that they stay apart for red-green blind
// readers and on a black-and-white printer.
type Pen struct {
	Color  color.RGBA
	Dashes []vg.Length
}

// pens go from dark to light; their hues are blue, vermilion, green-blue,
// ochre, violet and grey, each with a contrast of 3 to 1 or more against white
// and against the dark page.
var pens = []Pen{
	{color.RGBA{0x1f, 0x6f, 0xb4, 0xff}, nil},
	{color.RGBA{0xc6, 0x5a, 0x11, 0xff}, []vg.Length{6, 2}},
	{color.RGBA{0x1b, 0x8a, 0x7a, 0xff}, []vg.Length{2, 2}},
	{color.RGBA{0xa8, 0x7b, 0x00, 0xff}, []vg.Length{8, 2, 2, 2}},
	{color.RGBA{0x8d, 0x5f, 0xb0, 0xff}, []vg.Length{4, 4}},
	{color.RGBA{0x7a, 0x7a, 0x7a, 0xff}, []vg.Length{1, 3}},
}

// PenOf returns the pen of the k-th thing drawn, k counted from 0; after six
// they come again.
func PenOf(k int) Pen {
	n := len(pens)
	return pens[((k%n)+n)%n]
}

// ink is the colour of axes and words: it follows the page, light or dark.
var ink = color.RGBA{0, 0, 0, 0xff}

// NewPlot returns an empty plot in the page's style: sans-serif words, no
// title, since the picture has one of its own.
func NewPlot(x, y string) *plot.Plot {
	p := plot.New()
	p.BackgroundColor = color.Transparent
	p.X.Label.Text, p.Y.Label.Text = x, y
	face := font.Font{Typeface: "Liberation", Variant: "Sans", Size: 12}
	for _, axis := range []*plot.Axis{&p.X, &p.Y} {
		axis.Label.TextStyle.Font = face
		axis.Tick.Label.Font = face
		axis.Color, axis.Tick.Color = ink, ink
		axis.Tick.Marker = Ticks{}
	}
	p.Legend.TextStyle.Font = face
	p.Legend.Top, p.Legend.Left = true, true // words may turn out wider than reckoned: they run to the right
	p.Legend.ThumbnailWidth, p.Legend.Padding, p.Legend.XOffs = 26, 3, 6
	return p
}

// Ticks stand at round numbers, four to eight of them with a label and smaller
// ones between.
type Ticks struct{}

// Ticks returns those of an axis.
func (Ticks) Ticks(low, high float64) []plot.Tick {
	span := high - low
	if !(span > 0) || math.IsInf(span, 0) {
		return plot.DefaultTicks{}.Ticks(low, high)
	}
	step := math.Pow(10, math.Floor(math.Log10(span/4)))
	between := 5
	switch n := span / 4 / step; {
	case n >= 5:
		step *= 5
	case n >= 2:
		step, between = step*2, 4
	}
	var all []plot.Tick
	small := step / float64(between)
	for i := math.Ceil(low/small - 1e-9); i*small <= high+1e-9*span; i++ {
		t := plot.Tick{Value: i * small}
		if math.Mod(i, float64(between)) == 0 {
			t.Label = strconv.FormatFloat(math.Round(t.Value*1e9)/1e9, 'g', 6, 64)
			if t.Label == "-0" {
				t.Label = "0"
			}
		}
		all = append(all, t)
	}
	return all
}

// Chart draws plots below one another as one inline SVG of width and height,
// points of 1/72 inch, with the title and the description that a screen reader
// reads. Black follows the page's ink and white its paper.
func Chart(title, description string, width, height float64, plots ...*plot.Plot) template.HTML {
	canvas := vgsvg.NewWith(vgsvg.UseWH(vg.Length(width), vg.Length(height)))
	grid := make([][]*plot.Plot, len(plots))
	for i, p := range plots {
		grid[i] = []*plot.Plot{p}
	}
	tiles := draw.Tiles{Rows: len(plots), Cols: 1, PadY: 10, PadTop: 4, PadBottom: 4, PadLeft: 4, PadRight: 10}
	parts := plot.Align(grid, tiles, draw.New(canvas))
	for i, p := range plots {
		p.Draw(parts[i][0])
	}
	var b bytes.Buffer
	if _, err := canvas.WriteTo(&b); err != nil {
		return template.HTML("<p>" + text(title+": "+err.Error()) + "</p>")
	}
	return inline(b.String(), title, description)
}

var (
	opening = regexp.MustCompile(`(?s)^.*?<svg [^>]*viewBox="([^"]*)"[^>]*>`)
	face    = regexp.MustCompile(`font-family:[^;"]*;font-variant:[^;"]*;font-weight:([^;"]*);font-style:[^;"]*;`)
)

// inline turns a whole SVG document into an element for a page.
func inline(doc, title, description string) template.HTML {
	m := opening.FindStringSubmatch(doc)
	if m == nil {
		return template.HTML("<p>" + text(title) + "</p>")
	}
	doc = strings.TrimPrefix(doc, m[0])
	doc = face.ReplaceAllString(doc, "font-family:system-ui,sans-serif;font-weight:$1;")
	doc = strings.NewReplacer("#000000", "currentColor", "fill:#FFFFFF", "fill:var(--paper)", "stroke:#FFFFFF", "stroke:var(--paper)", "#808080", "var(--faint)").Replace(doc)
	return head(m[1], title, description) + template.HTML(doc)
}

// head opens an SVG element that names and describes itself.
func head(viewBox, title, description string) template.HTML {
	most := "" // words in a picture stay near the size of those around it
	if box := strings.Fields(viewBox); len(box) == 4 {
		if wide, err := strconv.ParseFloat(box[2], 64); err == nil {
			most = fmt.Sprintf(" style=\"max-width:%.0fpx\"", 1.5*wide)
		}
	}
	return template.HTML(fmt.Sprintf("<svg role=\"img\"%s viewBox=\"%s\" xmlns=\"http://www.w3.org/2000/svg\"><title>%s</title><desc>%s</desc>\n", most, viewBox, text(title), text(description)))
}
