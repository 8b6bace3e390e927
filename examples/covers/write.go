package main

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/plotutil"
	"gonum.org/v1/plot/vg"

	"cloche.example/internal/demo"
	"cloche.example/internal/report"
)

// write prints the comparison.
func write(out io.Writer, n night, sky float64, rows []row) {
	var r report.Report
	r.Title("Covers of one house on one night")
	r.Note("%s", demo.Note)
	r.Section("Night")
	r.Value("inside air", n.inside, 1, "°C")
	r.Value("relative humidity inside", 100*n.humidity, 0, "%")
	r.Value("outside air and ground", n.outside, 1, "°C")
	r.Value("sky (Berdahl and Martin, with clouds)", sky, 1, "°C")
	r.Value("wind at the cover", n.wind, 1, "m/s")
	area := 0.0
	for _, f := range house() {
		area += f.area
	}
	r.Value("cover above grade", area, 1, "m²")
	r.Section("Covers")
	header := []string{"cover", "loss W", "of first", "sky share", "U roof", "U dry air", "face °C", "drips above", "water kg/h", "light"}
	var table [][]string
	for _, c := range rows {
		share := "-"
		if c.loss > 0 {
			share = report.Number(100*c.sky/c.loss, 0) + " %"
		}
		drip := "never"
		if c.drip < 1 {
			drip = report.Number(100*c.drip, 0) + " %"
		}
		light := "-"
		if !math.IsNaN(c.light) {
			light = report.Number(100*c.light, 0) + " %"
		}
		table = append(table, []string{c.name, report.Number(c.loss, 0), report.Number(100*c.loss/rows[0].loss, 0) + " %", share,
			report.Number(c.u, 2), report.Number(c.uAir, 2), report.Number(c.face, 1), drip, report.Number(c.water, 1), light})
	}
	r.Table(header, table)
	r.Section("How to read it")
	r.Note("Loss is through roof and walls above grade alone: ground, leakage, doors and frame come on top. Each face is wet where its dry temperature lies below the dew point inside, which closes clear film to long-wave radiation and adds latent heat. U roof divides the loss of the roof by the difference of air temperatures and holds the sky's part; U dry air leaves the sky and the latent heat out and is what a table of U-values means, W/(m² K). Drips above is the relative humidity inside above which the coldest dry face drips.")
	r.Note("Light is for clean, dry covers at normal incidence, typical values; a drawn screen is for the night.")
	r.Section("Cautions")
	r.Note("A cover carries snow and wind, and screens and films burn: structure and fire follow local codes and a licensed engineer. Values of real covers differ by make and age; measure or ask for them.")
	_, _ = r.WriteTo(out)
}

// draw writes a bar picture of the losses: what the air and what the sky
// drives.
func draw(file string, rows []row) error {
	p := plot.New()
	p.Title.Text = "Loss through the cover of the demo house (invented)"
	p.X.Label.Text = "W"
	p.X.Min = 0
	p.X.Max = 1.05 * slices.MaxFunc(rows, func(a, b row) int { return cmp.Compare(a.loss, b.loss) }).loss
	air, sky := make(plotter.Values, len(rows)), make(plotter.Values, len(rows))
	names := make([]string, len(rows))
	for i, r := range rows {
		j := len(rows) - 1 - i
		air[j], sky[j], names[j] = r.loss-r.sky, r.sky, r.name
	}
	first, err := plotter.NewBarChart(air, vg.Points(12))
	if err != nil {
		return err
	}
	second, err := plotter.NewBarChart(sky, vg.Points(12))
	if err != nil {
		return err
	}
	first.Horizontal, second.Horizontal = true, true
	first.Color, second.Color = plotutil.Color(0), plotutil.Color(1)
	second.StackOn(first)
	top := p.X.Max
	p.Add(first, second)
	p.X.Max = top
	p.Legend.Add("driven by the air", first)
	p.Legend.Add("driven by the sky", second)
	p.Legend.Top = false
	p.NominalY(names...)
	picture, err := p.WriterTo(18*vg.Centimeter, 12*vg.Centimeter, strings.TrimPrefix(filepath.Ext(file), "."))
	if err != nil {
		return fmt.Errorf("figure: %w", err)
	}
	var b bytes.Buffer
	if _, err := picture.WriteTo(&b); err != nil {
		return fmt.Errorf("figure: %w", err)
	}
	return os.WriteFile(file, b.Bytes(), 0o644)
}
