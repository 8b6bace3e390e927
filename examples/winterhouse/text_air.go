package main

import (
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/report"
	"cloche.example/ventilation"
)

func ducts(r *report.Report, a *answers.Result) {
	d := a.Ducts
	if d == nil {
		return
	}
	r.Section("Fan, ducts and tube together")
	r.Value("flow at the fan", d.Flow, 3, "m³/s")
	r.Value("  stated for the heater", d.Stated, 3, "m³/s")
	r.Value("pressure", d.Pressure, 0, "Pa")
	r.Value("electricity of the fan", d.Electric, 0, "W")
	rows := [][]string{}
	for _, b := range d.Branches {
		rows = append(rows, []string{b.Name, report.Number(b.Flow, 3), report.Number(b.Loss, 1)})
	}
	r.Table([]string{"branch", "m³/s", "Pa"}, rows)
	if t := d.Tube; t != nil {
		r.Value("holes", 1000*t.Hole, 1, "mm")
		r.Value("  weakest row over strongest", 100*t.Evenness, 1, "%")
		r.Value("pressure of the tube", t.Pressure, 0, "Pa")
		r.Value("air at the first row", t.First, 1, "°C")
		r.Value("  at the last", t.Last, 1, "°C")
		r.Text("jet blown down at 45 degrees, at the crop", numberOr(t.AtCrop, 1, "does not reach it"), "°C")
		r.Text("  its speed", numberOr(t.CropWind, 2, "-"), "m/s")
	}
}

func summer(r *report.Report, a *answers.Result) {
	s := a.Summer
	r.Section("Summer noon")
	r.Value("outside air", s.Outside, 1, "°C")
	r.Value("sun kept in the house", s.SunKept, 0, "W")
	r.Value("vents in wall and roof", s.Vents, 1, "m²")
	rows := [][]string{}
	for _, c := range []struct {
		name string
		n    *answers.Noon
	}{{"all vents, calm", s.Calm}, {"all vents, wind of " + report.Number(s.Wind, 1) + " m/s", s.Windy}, {"side vents alone, calm", s.SidesAlone}, {"ridge and roof vents alone, calm", s.RidgeAlone}} {
		if c.n == nil {
			continue
		}
		rows = append(rows, []string{c.name, report.Number(c.n.Inside, 1), report.Number(c.n.Rise, 1), report.Number(c.n.Flow, 2), report.Number(c.n.Changes, 0), numberOr(c.n.Neutral, 2, "none")})
	}
	for _, c := range []struct {
		name string
		n    *answers.Fogged
	}{{"all vents and fog, calm", s.Fog}, {"all vents and fog, in that wind", s.FogWindy}} {
		if c.n != nil {
			rows = append(rows, []string{c.name, report.Number(c.n.Noon.Inside, 1), report.Number(c.n.Noon.Rise, 1), report.Number(c.n.Noon.Flow, 2), report.Number(c.n.Noon.Changes, 0), numberOr(c.n.Noon.Neutral, 2, "none")})
		}
	}
	if q := s.Pads; q != nil {
		rows = append(rows, []string{"pads and fans, vents shut", report.Number(q.Inside, 1), report.Number(q.Rise, 1), report.Number(q.Flow, 2), report.Number(ventilation.AirChanges(q.Flow, a.Shape.Volume), 0), "none"})
	}
	r.Table([]string{"", "inside °C", "rise K", "m³/s", "changes/h", "neutral level m"}, rows)
	if f := s.Fog; f != nil {
		r.Value("fog evaporated, calm", f.Evaporated, 1, "kg/h of "+report.Number(f.Water, 1)+" sprayed")
		r.Value("  humidity inside", 100*f.Humidity, 0, "%")
	}
	if q := s.Pads; q != nil {
		r.Value("air behind the pads", q.Supply, 1, "°C")
		r.Value("  water for them", q.Water, 1, "kg/h")
		r.Value("  humidity inside", 100*q.Humidity, 0, "%")
	}
	allowed := report.Number(s.Allowed, 1)
	r.Text("vent area for a rise of "+allowed+" K, calm", numberOr(s.Needed, 1, "no area is enough"), unitIf(s.Needed, "m²"))
	r.Text("  in that wind", numberOr(s.NeededWind, 1, "no area is enough"), unitIf(s.NeededWind, "m²"))
}

func fresh(r *report.Report, a *answers.Result) {
	f := a.Fresh
	r.Section("Least ventilation in winter")
	r.Value("rule of practice for fans", f.Rule, 3, "m³/s")
	if f.OutsideDry {
		r.Value("against damp, on the design night", f.Damp, 3, "m³/s")
	} else {
		r.Text("against damp, on the design night", "-", "outside air is as damp as the house may be")
	}
	r.Value("  the house leaks", f.Leakage, 3, "m³/s")
	r.Value("  by opening vents", f.Vent, 3, "m³/s")
	r.Value("  warming that", f.Warming, 0, "W")
	r.Value("for carbon dioxide, by day in that month", f.Carbon, 3, "m³/s, keeps "+report.Number(f.Kept, 0)+" µmol/mol")
	r.Value("  in light on the crop of", f.PAR, 0, "µmol/(m² s)")
	r.Value("  warming what the leaks do not bring", f.DayWarming, 0, "W in the month's mean air")
	r.Note("Carbon dioxide is that of tomato leaves over the whole floor, the only crop with published figures here: less air lets it sink and slows growth, given gas makes the air needless.")
}

func unitIf(x *float64, unit string) string {
	if x == nil {
		return ""
	}
	return unit
}

func drying(r *report.Report, p *plan.Filled, a *answers.Result) {
	d := a.Drying
	r.Section("Winter drying by venting")
	r.Value("outside air", p.Site.WinterMorning.Temperature, 1, "°C")
	r.Value("  humidity ratio", 1000*d.OutsideW, 2, "g/kg dry air")
	r.Value("inside, wanted relative humidity", 100*d.Wanted, 0, "%")
	r.Value("  humidity ratio", 1000*d.InsideW, 2, "g/kg dry air")
	r.Value("vapour from crop and soil", d.Released, 2, "kg/h")
	if !d.Possible {
		r.Note("This outside air cannot hold the wanted humidity: heat the house or allow more.")
		return
	}
	r.Value("  condenses on the cover first", d.Condensed, 2, "kg/h")
	r.Value("  left to the air", d.ToAir, 2, "kg/h")
	r.Value("flow needed", d.Flow, 3, "m³/s")
	r.Value("  air changes", d.Changes, 2, "per h")
	r.Value("  the house leaks", d.Leakage, 3, "m³/s")
	r.Value("  by opening vents", d.Vent, 3, "m³/s")
	r.Value("heat it takes, sensible", d.Sensible, 0, "W")
	r.Value("  latent", d.Latent, 0, "W")
	r.Value("  heat recovery would save", d.Saved, 0, "W")
	r.Value("over "+report.Number(d.Hours, 1)+" h", d.Heat, 1, "kWh")
	r.Text("  energy of the heater", numberOr(d.Fuel, 1, "beyond it"), unitIf(d.Fuel, "kWh"))
	r.Text("  cost", numberOr(d.Cost, 2, "-"), unitIf(d.Cost, p.Currency))
	r.Note("Under the season's wind and cloud. Open the ridge first and a little: cold air falls.")
}

func doors(r *report.Report, a *answers.Result) {
	if len(a.Doors) == 0 {
		return
	}
	r.Section("Passages through doors, in the heated months' mean")
	rows := [][]string{}
	for _, d := range a.Doors {
		lobby := "none"
		if d.Lobby {
			lobby = "saves " + report.Number(100*d.Saved, 0) + " %"
		}
		rows = append(rows, []string{d.Name, report.Number(d.Each, 0), report.Number(d.Daily, 2), lobby})
	}
	r.Table([]string{"door", "Wh each", "kWh a day", "lobby"}, rows)
}
