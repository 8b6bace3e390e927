package main

import (
	"fmt"
	"time"

	"cloche.example/internal/demo"
	"cloche.example/internal/report"
)

// write prints the report.
func write(c choice, r result) string {
	var p report.Report
	p.Title("A summer day: vents by hand and automatic")
	p.Section("The house and its vents")
	house := r.climate.House()
	p.Value("floor", house.FloorArea, 1, "m²")
	p.Value("leaf area index", c.lai, 1, "m²/m²")
	for _, o := range house.Air.Openings() {
		p.Text(o.Name, report.Number(o.Area, 2), fmt.Sprintf("m², discharge %.2f, %.2f m above grade, pressure coefficient %+.2f", o.Discharge, o.Height, o.PressureCoefficient))
	}
	p.Section("The two ways")
	p.Text("by hand", report.Number(c.hand, 2), fmt.Sprintf("of the opening from %s to %s, else shut", hour(c.open), hour(c.shut)))
	p.Text("automatic", report.Number(c.rule.Start, 1), fmt.Sprintf("°C begins to open, wide open %g K above", c.rule.Band))
	p.Text("  in wind", report.Number(c.rule.WindMost, 2), fmt.Sprintf("of the opening from %g m/s on, lowered from %g m/s", c.rule.WindHigh, c.rule.WindLow))
	p.Text("  in rain", report.Number(c.rule.RainMost, 2), "of the opening")
	if c.shade > 0 || c.fog > 0 {
		p.Text("shade and fog", report.Number(c.coolAbove, 0), fmt.Sprintf("W/m² and more: %.0f %% of the sun kept off, %g g/(m² h) of water", 100*c.shade, c.fog))
	}
	p.Section("Hour by hour")
	p.Table([]string{"time", "sun W/m²", "outside °C", "wind m/s", "hand", "°C", "kPa", "auto", "°C", "kPa", "leaves °C", "changes 1/h", "set by"}, table(c, r))
	p.Note("Opening as a fraction, inside air, vapour pressure deficit; leaves, air changes and what set the vents are those of the automatic house. The time is that of the step's start.")
	p.Section("The day side by side")
	p.Table([]string{"", r.courses[0].name, r.courses[1].name, r.courses[2].name}, summary(c, r))
	p.Section("Notes")
	p.Note("Steady balance of heat, water and air in each step; heat stored in soil and structure is left out, which would lower the afternoon's peak and lift the evening. The vents of the automatic house are taken as come to rest. \"Wide open\" is the best these vents can do by day.")
	p.Note("The day is an invented clear 15 July; its formulas stand in weather.go. Discharge and pressure coefficients are uncertain by 20 %% and more. Gusts exceed the mean wind: vents must be held and shut in time; structure and drives follow local codes and licensed practice.")
	if c.fog > 0 {
		p.Note("Fogging wants clean water, and leaves dry before night: warm stagnant water breeds germs that harm people who breathe the mist.")
	}
	p.Note(demo.Note)
	return p.String()
}

// table has one row an hour, whatever the step.
func table(c choice, r result) (rows [][]string) {
	every := max(1, int(time.Hour/c.step))
	hand, auto := r.courses[0].Points, r.courses[1].Points
	for i := 0; i < len(auto); i += every {
		w, a, b := r.steps[i].Weather, hand[i], auto[i]
		rows = append(rows, []string{
			hour(b.Time.Hours()), report.Number(w.Sun, 0), report.Number(w.Air.Temperature(), 1), report.Number(w.Wind, 1),
			report.Number(a.Position.Opening, 2), report.Number(a.State.Temperature, 1), report.Number(a.State.Deficit/1000, 2),
			report.Number(b.Position.Opening, 2), report.Number(b.State.Temperature, 1), report.Number(b.State.Deficit/1000, 2),
			report.Number(b.State.Canopy, 1), report.Number(b.State.AirChanges, 0), b.Position.By.String(),
		})
	}
	return rows
}

// summary has one row a figure and one column a course.
func summary(c choice, r result) [][]string {
	rows := [][]string{
		{"mean inside, °C"}, {"hottest, °C"}, {"  at"}, {"coolest, °C"},
		{"hours above " + report.Number(c.limit, 0) + " °C"}, {"degree-hours above, K h"},
		{"deficit least, kPa"}, {"deficit most, kPa"}, {"hours humid, below 0.3 kPa"}, {"hours dry, above 1.2 kPa"},
		{"transpired, kg"}, {"fog sprayed, kg"}, {"settled as mist, kg"}, {"moves of the vents"},
	}
	for _, d := range r.courses {
		for i, v := range []string{
			report.Number(d.Mean, 1), report.Number(d.High, 1), hour(d.HighAt.Hours()), report.Number(d.Low, 1),
			report.Number(d.Above.Hours(), 1), report.Number(d.DegreeHours, 1),
			report.Number(d.DeficitLow/1000, 2), report.Number(d.DeficitHigh/1000, 2), report.Number(d.Humid.Hours(), 1), report.Number(d.Dry.Hours(), 1),
			report.Number(d.Transpired, 0), report.Number(d.Water, 0), report.Number(d.Dripped, 0), fmt.Sprint(d.Moves),
		} {
			rows[i] = append(rows[i], v)
		}
	}
	return rows
}

// hour writes an hour of the day as 08:30.
func hour(h float64) string {
	m := int(h*60 + 0.5)
	return fmt.Sprintf("%02d:%02d", m/60, m%60)
}
