package main

import (
	"cloche.example/internal/demo"
	"cloche.example/internal/report"
)

const joulesPerKWh = 3.6e6

// write prints the rows.
func write(c choice, sky float64, rows []row) string {
	var r report.Report
	r.Title("Digging the house in")
	r.Note("%s", demo.Note)
	r.Section("House and site")
	r.Value("floor", demo.Span*demo.Length, 1, "m²")
	r.Value("eave above the floor", demo.EaveHeight+demo.Depth, 2, "m at every depth")
	r.Text("cover", "film", "double, the inner one infrared-absorbing")
	r.Value("inside", c.inside, 1, "°C day and night")
	r.Value("design night outside", c.outside, 1, "°C, clear, in January")
	r.Value("sky on that night", sky, 1, "°C")
	r.Value("year outside, mean", c.mean, 1, "°C")
	r.Value("swing of the monthly means", c.swing, 1, "K")
	s := soils[c.soil]
	r.Text("soil", c.soil, "")
	r.Value("its conductivity", s.Conductivity, 1, "W/(m K), from "+report.Number(s.ConductivityLow, 1)+" dry to "+report.Number(s.ConductivityHigh, 1)+" wet")
	half := len(rows) / 2
	table(&r, "Bare ground", rows[:half], rows[0])
	table(&r, "Insulated with "+report.Number(c.insulation, 1)+" m² K/W", rows[half:], rows[0])
	r.Note("At 0 m the insulation runs %.1f m down the edge; deeper, it covers the buried wall.", edgeDepth)
	r.Section("How it was computed")
	r.Note("Ground by ISO 13370 with its yearly part: on the design night the mean flow of January, which is more than the annual mean. The standard's total is good to some per cent; its split into wall and floor is not shown, being a convention.")
	r.Note("Cover by its long-wave layer balance on each facet, 4 %% added for the frame; one air change an hour, with its vapour; facets below the dew point drip.")
	r.Note("The year is the sum of twelve months at their mean temperatures, with the sky %.0f K below the air. Sun, lamps and set-back are left out, so the year compares depths and does not foretell a fuel bill.", skyBelow)
	r.Section("Cautions")
	r.Note("Sides of a pit collapse without warning: depth, slope and shoring, retaining walls, footings, drainage, the water table and frost heave are matters of local codes and of a licensed engineer. Heavy gases, carbon monoxide among them, and cold air gather in a sunken floor: an unflued heater does not belong there.")
	return r.String()
}

// table prints rows beside the reference.
func table(r *report.Report, title string, rows []row, reference row) {
	r.Section("%s", title)
	lines := [][]string{{"m", "m²", "W", "mean W", "Jan. W", "most W", "W", "W", "%", "kWh", "kWh", "%"}}
	for _, x := range rows {
		n := report.Number
		saved := func(v, of float64) string { return n(100*(1-v/of), 1) }
		lines = append(lines, []string{
			n(x.depth, 2), n(x.cover, 1), n(x.design.Cover+x.design.Frame, 0), n(x.design.Ground.Steady, 0), n(x.design.Ground.Total, 0), n(x.ground.Total, 0),
			n(x.design.Leakage.Total, 0), n(x.design.Total, 0), saved(x.design.Total, reference.design.Total),
			n(x.year/joulesPerKWh, 0), n(x.intoYear/joulesPerKWh, 0), saved(x.year, reference.year),
		})
	}
	r.Table([]string{"depth", "cover", "covers", "ground,", "ground,", "ground,", "air", "design", "saves", "year", "ground", "saves"}, lines)
}
