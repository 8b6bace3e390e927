package main

import (
	"fmt"
	"strings"

	"cloche.example/internal/report"
)

// text is the report for people.
func (a *answer) text() *report.Report {
	r := new(report.Report)
	p := &a.filled.Plan
	r.Title("A year of hours: %s", p.Name)
	if p.Note != "" {
		r.Note("%s", p.Note)
	}
	r.Note("%s", a.Site.words())
	r.Section("Decisions")
	for _, d := range a.Decisions {
		mark := map[string]string{"holds": "[holds]", "fails": "[FAILS]", "told": "[told] "}[d.Verdict]
		r.Line("%s %s", mark, d.Ask)
		r.Note("      %s", d.Answer)
		if d.Cure != "" {
			r.Note("      Cure: %s.", d.Cure)
		}
	}
	a.cureTable(r)
	if len(a.Durations) > 0 {
		r.Section("How long the heater gives how much")
		r.Table(durationHeads, a.durationRows())
	}
	for _, t := range a.tables() {
		r.Section("%s", t.name)
		r.Table(t.heads, t.rows)
	}
	a.closing(r)
	a.methodTable(r)
	if len(a.Bands) > 0 {
		r.Section("Published, for orientation")
		for _, line := range a.bandLines() {
			r.Note("%s", line)
		}
	}
	if len(a.Day) > 0 {
		r.Section("The day %s", a.Day[0].Time[:10])
		r.Table(dayHeads, dayRows(a.Day))
	}
	r.Section("How it was reckoned")
	r.Note("Air, water, light and heat of each hour are one steady state on the covers of the plan; soil and structure remember. The deep ground has the yearly wave of ISO 13370. Heat and vents hold the humidity as far as a tenth of the vents' opening and 3 K more heat do. Vents moved by hand are opened on days that are not cold and on which the shut house would be too warm. Lamps burn by clock, daylight and what the crop has had since midnight. Fans in walls and roof run, with their pads, in bright hours in which the vents wide open do not do. Carbon dioxide is given by day while the vents are shut.")
	for _, n := range a.Notes {
		r.Note("%s", n)
	}
	r.Section("Cautions")
	for _, c := range a.Cautions {
		r.Note("%s", c)
	}
	return r
}

// words tell where and when the weather was.
func (s *siteOf) words() string {
	said := fmt.Sprintf("Weather: %s, %s, %.2f degree north, %.2f degree east, %.0f m, %+g h; %d hours from %s to %s.", s.Name, s.Format, s.Latitude, s.Longitude, s.Altitude, s.Zone, s.Hours, s.First, s.Last)
	if s.Moved {
		said += " The site of the weather stands in place of the plan's."
	}
	return said
}

func (a *answer) cureTable(r *report.Report) {
	if len(a.Cures) == 0 {
		return
	}
	r.Section("Changes, each tried over the same hours")
	heads, rows := a.cureRows()
	r.Table(heads, rows)
}

func (a *answer) cureRows() (heads []string, rows [][]string) {
	heads = []string{"change", "heat saved kWh", "%", "saved " + a.filled.Currency, "costs", "years", "hours cold", "hot", "humid", "dark days"}
	for _, c := range a.Cures {
		if c.WhyNot != "" {
			rows = append(rows, []string{c.Name + ": " + c.WhyNot})
			continue
		}
		cost, years := "-", "-"
		if c.Cost != nil {
			cost, years = num(*c.Cost, 0), "never"
		}
		if c.Years != nil {
			years = num(*c.Years, 1)
		}
		rows = append(rows, []string{c.Name, num(c.Heat, 0), num(100*c.Share, 0), num(c.Money, 0), cost, years, fmt.Sprint(c.Cold), fmt.Sprint(c.Hot), fmt.Sprint(c.Humid), fmt.Sprint(c.Dark)})
	}
	return heads, rows
}

// closing prints what does not close.
func (a *answer) closing(r *report.Report) {
	c, w := a.Account.Closure, &a.Account.Whole
	r.Section("What closes")
	r.Value("stored in soil and structure", c.Stored, 0, "kWh")
	r.Value("gone into the deep ground", c.Deep, 0, "kWh")
	for _, row := range a.closingRows() {
		value, unit, _ := strings.Cut(row[1], " of ")
		r.Text(row[0], value, "of "+unit)
	}
	if w.Failed > 0 {
		why, _, _ := strings.Cut(a.year.Why.Error(), "\n")
		r.Note("%s without a steady state that closes count in no sum of heat and water. %s.", hours(w.Failed), why)
	}
}

// closingRows are the residues of the balances.
func (a *answer) closingRows() [][]string {
	c := a.Account.Closure
	return [][]string{
		{"heat, residue of the worst hour", below(c.HourHeat) + " of its heat"},
		{"water, residue of the worst hour", below(c.HourWater) + " of its water"},
		{"heat over all hours, stores included", below(c.Heat) + " of it"},
		{"water over all hours", below(c.Water) + " of it"},
	}
}

// below words a residue. Digits below what is asked are rounding, and differ
// between processors; the JSON has them.
func below(v float64) string {
	if v < asked {
		return "below 1e-6"
	}
	return fmt.Sprintf("%.1e", v)
}

// asked is to what part every balance must close.
const asked = 1e-6

func (a *answer) methodTable(r *report.Report) {
	if len(a.Methods) == 0 {
		return
	}
	r.Section("The same weather by short methods")
	heads, rows := a.methodRows()
	r.Table(heads, rows)
	r.Note("All have one coefficient of loss, %s W/K, but the months one each.", num(a.year.house.steady.Year.Loss, 0))
}

func (a *answer) methodRows() (heads []string, rows [][]string) {
	heads = []string{"method", "heat kWh", "of the hours'", "leaves out"}
	rows = append(rows, []string{"the whole house, hour by hour", num(a.Account.Whole.Heater, 0), "1.00", "-"})
	for _, m := range a.Methods {
		rows = append(rows, []string{m.Name, num(m.Heat, 0), num(m.Over, 2), m.Leaves})
	}
	return heads, rows
}
