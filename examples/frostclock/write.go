package main

import (
	"cloche.example/airheat"
	"cloche.example/internal/demo"
	"cloche.example/internal/report"
)

// write prints the table.
func write(c choice, rows []row) string {
	var r report.Report
	r.Title("Hours to frost once the heat fails")
	r.Section("The house")
	r.Value("air held until the failure", c.inside, 1, "°C")
	r.Value("air counted as frost", c.level, 1, "°C")
	r.Value("wind at the cover", c.wind, 1, "m/s")
	r.Value("cloud cover", c.cloud, 2, "fraction")
	r.Section("Hours to frost")
	var table [][]string
	for _, v := range rows {
		table = append(table, []string{
			v.cover, report.Number(v.outside, 0), report.Number(v.outside-v.drive.SkyDrop, 0), report.Number(v.heat/1000, 1),
			hours(v.fault), band(v.faults), hours(v.cut), band(v.cuts), report.Number(v.fault.State.Soil, 1), report.Number(v.dark.Steady(v.drive).Air, 1),
		})
	}
	r.Table([]string{"cover", "outside °C", "sky °C", "heat kW", "heater fault h", "between h", "power cut h", "between h", "soil at the fault's frost °C", "settles at °C"}, table)
	r.Note("Heater fault: the fan still turns and draws heat from structure and soil. Power cut: %.0f %% of that exchange is left, so the air is the sooner cold while soil and benches keep their heat. Leakage and sky are in both.", 100*c.still)
	r.Note("Between: houses as measured hold 50 to 190 kJ for each m² of floor and kelvin in their first hour, with a median of 90 that stands in front. One capacity is no constant of a house: count on the shorter time.")
	r.Note("\"never\": the air stays above the level for a week, settling where the last column says for a power cut.")
	first := rows[0].fan.TimeConstants()
	r.Note("Three nodes (air, structure, soil) solved exactly; for the first row their time constants are %.1f min, %.1f h and %.0f h. The covers' loss is computed at the start and at the frost, and taken as a straight line between; soil that freezes gives some heat more and is left out.", first[0].Minutes(), first[1].Hours(), first[2].Hours())
	r.Section("Cautions")
	r.Note("%s", airheat.FrostCaution)
	r.Note("%s", demo.Note)
	return r.String()
}

func hours(e airheat.Event) string {
	if !e.Reached {
		return "never"
	}
	return report.Number(e.Time.Hours(), 2)
}

func band(e [2]airheat.Event) string { return hours(e[0]) + " – " + hours(e[1]) }
