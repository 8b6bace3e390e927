package main

import (
	"fmt"
	"html/template"
	"math"

	"gonum.org/v1/plot/plotter"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/page"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/report"
)

// lossBars draws the terms of the wet night's loss, one bar below the other.
func lossBars(a *answers.Result) (template.HTML, string) {
	terms := a.Wet.Terms
	most := 0.0
	for _, t := range terms {
		most = max(most, math.Abs(t.Loss))
	}
	const high, left, room = 18.0, 170.0, 300.0
	d := page.NewDrawing(0, -high*float64(len(terms)), pictureWidth, 4, pictureWidth)
	said := ""
	for i, t := range terms {
		y := -high * float64(i)
		d.Text(page.End, left-6, y-high+6, t.Name)
		w := room * math.Abs(t.Loss) / most
		d.Box(page.Stroke{Width: 0.6, Fill: "#1f6fb4"}, left, y-high+3, left+w, y-2)
		words := report.Number(t.Loss, 0) + " W, " + report.Number(100*t.Share, 0) + " %"
		d.Text(page.Start, left+w+5, y-high+6, words)
		said += t.Name + " " + words + "; "
	}
	return d.HTML("Where the heat goes on the wet design night", said), "Terms of the loss on the wet design night, " + report.Number(a.Wet.Total, 0) + " W in all."
}

// frostCurve draws the air after a power failure.
func frostCurve(a *answers.Result) (template.HTML, string) {
	f := a.Frost
	var alone, bridged, frost plotter.XYs
	for _, m := range f.Course {
		h := m.After.Hours()
		alone, bridged = append(alone, plotter.XY{X: h, Y: m.Alone}), append(bridged, plotter.XY{X: h, Y: m.Bridged})
		frost = append(frost, plotter.XY{X: h, Y: f.Frost})
	}
	p := page.NewPlot("hours after the power fails", "inside air, °C")
	p.Legend.XOffs = 150 // clear of the fall at the start
	for i, c := range []struct {
		name string
		xy   plotter.XYs
	}{{"without heat", alone}, {"with the emergency heat", bridged}, {"frost", frost}} {
		if i == 1 && f.Emergency == 0 {
			continue
		}
		line, err := plotter.NewLine(c.xy)
		if err != nil {
			continue
		}
		line.Color, line.Dashes = page.PenOf(i).Color, page.PenOf(i).Dashes
		p.Add(line)
		p.Legend.Add(c.name, line)
	}
	said := fmt.Sprintf("The air falls to %s °C %s after the power fails, and with the plan's emergency heat: %s.", report.Number(f.Frost, 0), answers.Minutes(f.PowerFails, "never"), answers.Minutes(f.Bridged, "never"))
	return page.Chart("Air after a power failure on the design night", said, pictureWidth, 260, p), said
}

// lightMap draws the map of the lamps, cells without lines between.
func lightMap(l *answers.Light) (template.HTML, string) {
	bed := l.Bed()
	scale := bed.Width / 20
	d := page.NewDrawing(-scale, -5*scale, bed.Length+scale, bed.Width+scale, pictureWidth)
	cells := page.Cells{Length: bed.Length, Width: bed.Width, Columns: l.GridAlong, Values: l.PPFD, Low: l.Minimum, High: l.Maximum}
	d.Cells(cells, 0, 0)
	d.Scale(cells, 0, bed.Length, -2*scale, scale)
	said := fmt.Sprintf("Between %s and %s µmol/(m² s), %s in the mean, on %d by %d points of the bed; the corners are darkest.", report.Number(l.Minimum, 0), report.Number(l.Maximum, 0), report.Number(l.Mean, 0), l.GridAlong, l.GridAcross)
	return d.HTML("Light of the lamps on the lowest trays", said), "Direct light of the lamps at harvest, µmol/(m² s): the scale below runs from the darkest place to the brightest."
}

// budget draws what heating and lamps cost each month, one on the other.
func budget(p *plan.Filled, a *answers.Result) (template.HTML, string) {
	most := 1e-9
	for _, m := range a.Year.Months {
		most = max(most, m.HeatCost+m.LampCost)
	}
	const high, wide, left = 170.0, 38.0, 60.0
	d := page.NewDrawing(0, -24, pictureWidth, high+44, pictureWidth)
	said := ""
	for i, m := range a.Year.Months {
		x := left + wide*float64(i)
		heat, lamp := high*m.HeatCost/most, high*m.LampCost/most
		d.Box(page.Stroke{Width: 0.6, Fill: "#1f6fb4"}, x+4, 0, x+wide-4, heat)
		d.Box(page.Stroke{Width: 0.8, Fill: "var(--faint)"}, x+4, heat, x+wide-4, heat+lamp)
		d.Text(page.Middle, x+wide/2, heat+lamp+4, report.Number(m.HeatCost+m.LampCost, 0))
		d.Text(page.Middle, x+wide/2, -16, [...]string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"}[i])
		said += fmt.Sprintf("month %d heating %s, lamps %s; ", m.Month, report.Number(m.HeatCost, 0), report.Number(m.LampCost, 0))
	}
	d.Line(thinLine, left, 0, left+12*wide, 0)
	d.Box(page.Stroke{Width: 0.6, Fill: "#1f6fb4"}, left, high+26, left+12, high+36)
	d.Text(page.Start, left+18, high+26, "heating")
	d.Box(page.Stroke{Width: 0.8, Fill: "var(--faint)"}, left+90, high+26, left+102, high+36)
	d.Text(page.Start, left+108, high+26, "lamps")
	return d.HTML("What heating and lamps cost in each month", said), "Heating and lamps in each month, " + p.Currency + "; the year costs " + report.Number(a.Year.Total, 0) + " with fan and controls."
}
