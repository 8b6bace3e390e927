package figures

import (
	"fmt"

	"cloche.example/examples/internal/page"
	"cloche.example/lighting"
)

// bedMap is a map of a bed with the fixtures above it, under a few words.
type bedMap struct {
	says   string
	map_   lighting.BedMap
	layout lighting.Layout
}

// maps draws maps of one bed, several of them in two columns, with one scale
// of fills for all.
func maps(title, says, caption string, bed lighting.Bed, all ...bedMap) Picture {
	const width, line = 420.0, 16.0 // points
	columns := min(len(all), 2)
	wide := (width - 12*float64(columns+1)) / float64(columns)
	unit := bed.Length / wide // metres in a point
	high := bed.Width / unit
	if high > 280 { // a bed across the page
		high, wide, unit = 280, bed.Length*280/bed.Width, bed.Width/280
	}
	rows := (len(all) + columns - 1) / columns
	step := high + line + 10
	bottom := 44.0
	d := page.NewDrawing(0, 0, width*unit, (float64(rows)*step+bottom)*unit, width)
	cells := page.Cells{Length: bed.Length, Width: bed.Width, Low: all[0].map_.Evenness.Minimum}
	for _, m := range all {
		cells.Low, cells.High = min(cells.Low, m.map_.Evenness.Minimum), max(cells.High, m.map_.Evenness.Maximum)
	}
	for i, m := range all {
		x := (12 + float64(i%columns)*(wide+12)) * unit
		y := (bottom + float64(rows-1-i/columns)*step) * unit
		cells.Columns, cells.Values = m.map_.Points.Columns(), m.map_.PPFD
		d.Cells(cells, x, y)
		for _, f := range m.layout {
			d.Circle(page.Stroke{Width: 0.8, Color: "#000", Fill: "#fff"}, x+f.At.X-bed.X, y+f.At.Y-bed.Y, 2.2*unit)
		}
		d.Text(page.Start, x, y+bed.Width+5*unit, m.says)
	}
	d.Scale(cells, 12*unit, (width-12)*unit, 22*unit, 12*unit)
	return drawn(d, title, says, caption)
}

// evenly says how even a map is, in the words that stand above it.
func evenly(m lighting.BedMap) string {
	return fmt.Sprintf("%.0f to %.0f, mean %.0f", m.Evenness.Minimum, m.Evenness.Maximum, m.Evenness.Mean)
}
