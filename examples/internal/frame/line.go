package frame

import (
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"cloche.example/examples/internal/page"
)

// Line adds a line to a plot in the k-th pen, with its name in the legend.
func Line(p *plot.Plot, k int, name string, xy plotter.XYs) error {
	line, err := plotter.NewLine(xy)
	if err != nil {
		return err
	}
	pen := page.PenOf(k)
	line.Color, line.Dashes, line.Width = pen.Color, pen.Dashes, vg.Points(1.6)
	p.Add(line)
	if name != "" {
		p.Legend.Add(name, line)
		p.Legend.ThumbnailWidth, p.Legend.Padding = vg.Points(28), vg.Points(3)
	}
	return nil
}
