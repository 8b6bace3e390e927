package main

import (
	"fmt"
	"html/template"
	"math"

	"gonum.org/v1/plot/plotter"

	"cloche.example/examples/internal/page"
)

// pictureWidth is that of all pictures, points of 1/72 inch.
const pictureWidth = 400

// newPage is the report as one HTML file.
func (a *answer) newPage() *page.Page {
	p := &a.filled.Plan
	d := page.New("A year of hours: "+p.Name, p.Note)
	s := a.Site
	d.Paragraph(s.words())
	d.Section("Decisions")
	for _, c := range a.Decisions {
		if c.Verdict == "told" {
			d.Paragraph(c.Ask + " " + c.Answer)
		} else {
			d.Verdict(c.Verdict == "holds", c.Ask, c.Answer, c.Cure)
		}
	}
	if heads, rows := a.cureRows(); len(rows) > 0 {
		d.Table("Changes, each tried over the same hours", heads, rows)
	}
	d.Section("The heater")
	d.Picture(a.duration())
	d.Section("Energy and water by the month")
	d.Picture(a.monthBars("Heat that comes", "MWh", []string{"sun", "lamps", "heater", "burner, water", "soil, structure"}, func(t *sums) []float64 {
		return []float64{t.Sun + t.SunCover, t.Lamps, t.Heater, max(0, t.Burner+t.Water), max(0, -t.Ground) + max(0, -t.Tubes-t.TubeWater) + max(0, -t.Structure)}
	}))
	d.Picture(a.monthBars("Heat that goes", "MWh", []string{"covers to air", "covers to sky", "vents and leaks", "vapour", "soil, structure"}, func(t *sums) []float64 {
		return []float64{t.CoverAir, t.CoverSky, t.Leakage + t.Venting + t.Drying, t.Latent, max(0, t.Ground) + max(0, t.Tubes+t.TubeWater) + max(0, t.Structure)}
	}))
	d.Picture(a.monthBars("Where the water goes", "t", []string{"condensed", "in tubes", "fell as mist", "vented"}, func(t *sums) []float64 { return []float64{t.Condensed, t.InTubes, t.Fell, t.Vented} }))
	d.Section("Every hour")
	d.Picture(a.carpet("Inside temperature", "°C", func(i int) float64 { return a.year.State[i].Temperature }))
	d.Picture(a.carpet("Inside relative humidity", "%", func(i int) float64 { return 100 * a.year.State[i].RelativeHumidity }))
	d.Picture(a.lightByDay())
	d.Section("Two days")
	d.Picture(a.dayPicture("The day of the heater's peak", a.Account.Peak.At.hour))
	d.Picture(a.dayPicture("The hottest day", a.Account.Hottest.hour))
	d.Section("Tables")
	if len(a.Durations) > 0 {
		d.Table("How long the heater gives how much", durationHeads, a.durationRows())
	}
	for _, t := range a.tables() {
		d.Table(t.name, t.heads, t.rows)
	}
	d.Table("What closes", []string{"balance", "residue"}, a.closingRows())
	if heads, rows := a.methodRows(); len(a.Methods) > 0 {
		d.Table("The same weather by short methods", heads, rows)
	}
	if len(a.Bands) > 0 {
		d.Section("Published, for orientation")
		d.List(a.bandLines())
	}
	d.Section("Notes and cautions")
	d.List(append(append([]string{}, a.Notes...), a.Cautions...))
	return d
}

// line is one of a chart.
type line struct {
	name string
	xy   plotter.XYs
}

func chart(title, said, x, y string, high float64, lines ...line) template.HTML {
	p := page.NewPlot(x, y)
	for i, l := range lines {
		one, err := plotter.NewLine(l.xy)
		if err != nil {
			continue
		}
		one.Color, one.Dashes = page.PenOf(i).Color, page.PenOf(i).Dashes
		p.Add(one)
		if len(lines) > 1 {
			p.Legend.Add(l.name, one)
		}
	}
	if n := len(lines); n > 1 { // room for the legend above the lines
		p.Y.Max += 0.09 * float64(n) * (p.Y.Max - p.Y.Min)
	}
	return page.Chart(title, said, pictureWidth, high, p)
}

// duration draws the heater's power over the hours in which it is at least that.
func (a *answer) duration() (template.HTML, string) {
	list := a.year.heats()
	var xy plotter.XYs
	step := max(1, len(list)/400)
	for i := 0; i < len(list); i += step {
		xy = append(xy, plotter.XY{X: float64(i), Y: list[i] / 1000})
	}
	xy = append(xy, plotter.XY{X: float64(len(list)), Y: 0})
	said := fmt.Sprintf("The heater works in %s; its greatest mean over an hour is %s kW of %s kW.", hours(len(list)), num(a.Account.Peak.Heat/1000, 1), num(a.filled.Heater.Power/1000, 1))
	return chart("How long the heater gives how much", said, "hours", "at least kW", 260, line{"heater", xy}), said
}

// lightByDay draws what each day brings to the trays.
func (a *answer) lightByDay() (template.HTML, string) {
	var sun, both plotter.XYs
	y := a.year
	least := math.Inf(1)
	for i := (24 - y.house.weather.Time[0].Hour()) % 24; i+24 <= len(y.State); i += 24 {
		d, l := 0.0, 0.0
		for k := i; k < i+24; k++ {
			d += y.lit(k) * 0.0036
			l += y.Burn[k] * y.house.lamps.ppfd * 0.0036
		}
		at := float64(i/24) + 1
		sun, both = append(sun, plotter.XY{X: at, Y: d}), append(both, plotter.XY{X: at, Y: d + l})
		least = min(least, d+l)
	}
	said := fmt.Sprintf("Light on the trays by the day; the darkest day has %s mol/m² with its lamps.", num(least, 1))
	return chart("Light on the trays by the day", said, "day", "mol/(m² d)", 260, line{"daylight", sun}, line{"with lamps", both}), said
}
