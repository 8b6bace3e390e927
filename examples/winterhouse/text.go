package main

import (
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/report"
)

// text is the report for people.
func text(p *plan.Filled, a *answers.Result) *report.Report {
	r := new(report.Report)
	r.Title("Winter and summer: %s", p.Name)
	if p.Note != "" {
		r.Note("%s", p.Note)
	}
	decisions(r, a)
	sections(r, p, a)
	r.Section("Cautions")
	for _, c := range a.Cautions {
		r.Note("%s", c)
	}
	if taken := p.Taken(); len(taken) > 0 {
		r.Section("Defaults taken, %d of them", len(p.Defaults))
		for _, line := range taken {
			r.Note("%s", line)
		}
	}
	return r
}

// sections print every term.
func sections(r *report.Report, p *plan.Filled, a *answers.Result) {
	site(r, p, a)
	covers(r, a)
	loss(r, a)
	heater(r, p, a)
	ducts(r, a)
	frost(r, a)
	summer(r, a)
	drying(r, p, a)
	fresh(r, a)
	doors(r, a)
	lights(r, p, a)
	water(r, p, a)
	power(r, a)
	year(r, p, a)
}

func decisions(r *report.Report, a *answers.Result) {
	r.Section("Decisions")
	for _, d := range a.Decisions {
		mark := map[string]string{"holds": "[holds]", "fails": "[FAILS]", "told": "[told] "}[d.Verdict]
		r.Line("%s %s", mark, d.Ask)
		r.Note("      %s", d.Answer)
		if d.Cure != "" {
			r.Note("      Cure: %s", d.Cure)
		}
	}
	for _, w := range a.Warnings {
		r.Note("Note: %s", w.Text)
	}
}

func site(r *report.Report, p *plan.Filled, a *answers.Result) {
	r.Section("Site and design air")
	r.Value("altitude", p.Site.Altitude, 0, "m")
	r.Value("pressure", a.Air.Pressure, 0, "Pa")
	r.Value("inside air", a.Air.Inside, 1, "°C")
	r.Value("  relative humidity, wet night", 100*a.Wet.Humidity, 0, "%")
	r.Value("  dew point", a.Air.InsideDew, 1, "°C")
	r.Value("  wet bulb", a.Air.InsideWet, 1, "°C")
	r.Value("  humidity ratio", 1000*a.Air.InsideW, 2, "g/kg dry air")
	r.Value("outside air, design night", a.Air.Outside, 1, "°C")
	r.Value("  dew point (frost point below 0 °C)", a.Air.OutsideDew, 1, "°C")
	r.Value("  humidity ratio", 1000*a.Air.OutsideW, 2, "g/kg dry air")
	r.Value("wind at the cover", p.Site.WinterNight.Wind, 1, "m/s")
	r.Value("sky, Berdahl and Martin with cloud", a.Air.Sky, 1, "°C")

	r.Section("Shape")
	r.Text("shape", p.House.Shape, "")
	r.Value("floor", a.Shape.Floor, 1, "m²")
	r.Value("cover against the air", a.Shape.Cover, 1, "m²")
	r.Value("cover over floor", a.Shape.Ratio, 2, "")
	r.Value("volume", a.Shape.Volume, 1, "m³")
	r.Value("  of it below ground", a.Shape.BelowGrade, 1, "m³")
	r.Value("floor perimeter", a.Shape.Perimeter, 1, "m")
	r.Note("Snow and wind on this shape are the structure's affair: see the cautions.")
}
