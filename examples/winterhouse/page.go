package main

import (
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/page"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/report"
)

// newPage is the report as one HTML file.
func newPage(p *plan.Filled, a *answers.Result) *page.Page {
	d := page.New("Winter and summer: "+p.Name, p.Note)
	d.Section("Decisions")
	for _, c := range a.Decisions {
		if c.Verdict == "told" {
			continue
		}
		d.Verdict(c.Verdict == "holds", c.Ask, c.Answer, c.Cure)
	}
	for _, c := range a.Decisions {
		if c.Verdict == "told" {
			d.Paragraph(c.Ask + " " + c.Answer)
		}
	}
	for _, w := range a.Warnings {
		d.Note(w.Text)
	}

	d.Section("The house")
	d.Picture(crossSection(p, a))
	d.Picture(groundPlan(p, a))
	d.Section("Heat on the design night")
	d.Picture(lossBars(a))
	d.Table("Covers on the wet design night", []string{"part", "m²", "U in W/(m² K)", "dry W", "condensing W", "sky W", "all W", "inner face °C", "", "drips above"}, facetRows(a.Wet))
	d.Picture(frostCurve(a))
	if a.Light != nil {
		d.Section("Light")
		d.Picture(lightMap(a.Light))
	}
	d.Section("The year")
	d.Picture(budget(p, a))
	d.Table("What pays back", []string{"change", "costs, " + p.Currency, "saves kWh a year", "saves " + p.Currency + " a year", "years", "years with interest"}, savingRows(a))

	d.Section("Every figure")
	lines := new(report.Report)
	sections(lines, p, a)
	d.Code(lines.String())
	d.Section("Cautions")
	d.List(a.Cautions)
	if taken := p.Taken(); len(taken) > 0 {
		d.Section("Defaults taken")
		d.List(taken)
	}
	return d
}
