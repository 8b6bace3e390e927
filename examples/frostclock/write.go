package main

import (
	"fmt"

	"cloche.example/airheat"
	"cloche.example/examples/internal/answers"
	"cloche.example/internal/report"
)

// answer says in one line how long the house lasts.
func (r row) answer() string {
	f := r.frost
	text := fmt.Sprintf("%s, %g °C outside: frost %s after the heater stops, %s after the power fails", r.cover, r.outside, after(f.HeaterStops), after(f.PowerFails))
	if f.Emergency > 0 {
		text += fmt.Sprintf(", with the plan's emergency heat, whose fuel lasts %g h, %s", f.Lasts, after(f.Bridged))
	}
	return text + fmt.Sprintf(". Without power %s W keep it at the frost.", report.Number(f.EmergencyNeed, 0))
}

func after(m *float64) string { return answers.Minutes(m, "never") }

// write prints the answer.
func write(c clock) string {
	var r report.Report
	p := c.plan
	frost := p.SetPoints.Limits.Frost
	r.Title("Time to frost once the heat fails: %s", p.Name)
	r.Note("%s", p.Note)
	r.Section("Answer")
	if len(c.rows) == 0 {
		r.Note("The air outside on the design night, %g °C, is not below the frost, %g °C: none comes in.", p.Site.WinterNight.Temperature, frost)
	}
	for _, v := range c.coldest() {
		r.Note("%s", v.answer())
	}
	r.Section("The house")
	r.Value("air held until the failure", p.SetPoints.WinterNight.Temperature, 1, "°C")
	r.Value("air counted as frost", frost, 1, "°C")
	r.Value("wind at the cover", p.Site.WinterNight.Wind, 1, "m/s")
	r.Value("cloud cover", p.Site.WinterNight.Cloud, 2, "fraction")
	r.Text("cover as planned", p.Cover.Roof, "roof, "+p.Cover.SideWalls+" and "+p.Cover.EndWalls+" walls")
	if len(c.rows) == 0 {
		return r.String()
	}
	r.Section("Time to frost")
	var table [][]string
	for _, v := range c.rows {
		f := v.frost
		line := []string{v.cover, report.Number(v.outside, 0), report.Number(v.sky, 0), report.Number(v.heat/1000, 1), after(f.HeaterStops), band(f.StopsBetween), after(f.PowerFails), band(f.FailsBetween)}
		if f.Emergency > 0 {
			line = append(line, after(f.Bridged))
		}
		table = append(table, append(line, report.Number(f.EmergencyNeed/1000, 1), report.Number(f.Unheated, 1)))
	}
	header := []string{"cover", "outside °C", "sky °C", "heat kW", "heater stops", "between", "power fails", "between"}
	if c.rows[0].frost.Emergency > 0 {
		header = append(header, "with emergency heat")
	}
	r.Table(append(header, "needed kW", "unheated °C"), table)
	r.Note("Heater stops: the fan still turns and draws heat from structure and soil. Power fails: %.0f %% of that exchange is left, so the air is the sooner cold while soil and benches keep their heat. Leakage and sky are in both.", 100*p.HeatStorage.StillAir)
	r.Note("Between: houses as measured hold 50 to 190 kJ for each m² of floor and kelvin in their first hour. One capacity is no constant of a house: count on the shorter time.")
	r.Note("Needed: the heat that holds the air at the frost without a fan. Unheated: where the air settles in the end, from the loss on a straight line down to the outside air. \"never\": the air stays above the frost for a week.")
	first := c.rows[0].frost.Constants
	r.Note("Three nodes (air, structure, soil) solved exactly; for the first row their time constants are %.1f min, %.1f h and %.0f h. The covers' loss is computed at the start and at the frost, and taken as a straight line between; soil that freezes gives some heat more and is left out. The heat held is that of the worse of a wet and a dry night.", 60*first[0], first[1], first[2])
	if p.Screen != nil {
		r.Note("The plan's screen is drawn or open as its rule has it at night, with each cover.")
	}
	r.Section("Cautions")
	r.Note("%s", airheat.FrostCaution)
	r.Note("An emergency heater that burns in the house needs its flue and fresh air as any other: carbon monoxide kills unnoticed. Follow its maker, local codes and licensed practice.")
	return r.String()
}

func band(m [2]*float64) string { return after(m[0]) + " – " + after(m[1]) }

// warnings are those of the house as planned.
func warnings(c clock) []string {
	for _, r := range c.coldest() {
		if r.cover == planned && r.frost.PowerFails != nil && *r.frost.PowerFails < 60*r.frost.NightLength {
			return []string{r.answer()}
		}
	}
	return nil
}

// found is one row in JSON.
type found struct {
	Cover   string  `json:"cover"`
	Outside float64 `json:"outside_c"`
	Sky     float64 `json:"sky_c"`
	Heat    float64 `json:"heat_w"`
	answers.Frost
}

func data(c clock) any {
	d := struct {
		Rows []found `json:"rows"`
	}{Rows: []found{}}
	for _, r := range c.rows {
		d.Rows = append(d.Rows, found{r.cover, r.outside, r.sky, r.heat, r.frost})
	}
	return d
}
