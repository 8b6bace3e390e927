package frame

import (
	"io"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	_ "gonum.org/v1/plot/vg/vgimg" // .png
	_ "gonum.org/v1/plot/vg/vgpdf" // .pdf
	_ "gonum.org/v1/plot/vg/vgsvg" // .svg
)

// Plots draws plots below one another, their axes aligned, as a picture of
// width and height with a margin that keeps long words whole.
func Plots(format string, width, height vg.Length, plots ...*plot.Plot) (io.WriterTo, error) {
	canvas, err := draw.NewFormattedCanvas(width, height, format)
	if err != nil {
		return nil, err
	}
	grid := make([][]*plot.Plot, len(plots))
	for i, p := range plots {
		grid[i] = []*plot.Plot{p}
	}
	const margin = 3 * vg.Millimeter
	parts := plot.Align(grid, draw.Tiles{Rows: len(plots), Cols: 1, PadY: margin, PadTop: margin, PadBottom: margin, PadLeft: 2 * margin, PadRight: 2 * margin}, draw.New(canvas))
	for i, p := range plots {
		p.Draw(parts[i][0])
	}
	return canvas, nil
}
