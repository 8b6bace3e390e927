package main

import (
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/report"
)

func covers(r *report.Report, a *answers.Result) {
	r.Section("Covers on the wet design night")
	r.Table([]string{"part", "m²", "U", "dry W", "condensing W", "sky W", "all W", "inner °C", "", "drips above"}, facetRows(a.Wet))
	r.Note("U in W/(m² K), inside air to outside air, under the sky of %s °C: all W over area and difference, with the heat that condensing water brings.", report.Number(a.Air.Sky, 1))
	r.Value("condensate on the cover", a.Wet.Condensate, 2, "L/h")
	r.Value("water that must evaporate to hold the humidity", a.Wet.Evaporation, 1, "kg/h")
	r.Value("water that crop and soil set free", a.Crop, 1, "kg/h")
	r.Value("  humidity that it makes", 100*a.Settled, 0, "%")
	r.Section("Ground and buried walls (ISO 13370)")
	r.Value("design month", a.Wet.GroundMonth, 0, "W")
	r.Value("  annual mean part", a.Wet.GroundYear, 0, "W")
	r.Value("  seasonal part", a.Wet.GroundMonth-a.Wet.GroundYear, 0, "W")
	r.Section("Leakage")
	r.Value("air changes", a.Wet.AirChanges, 2, "per h")
	r.Value("flow", a.Wet.LeakageFlow, 3, "m³/s")
}

func facetRows(n answers.Night) (rows [][]string) {
	for _, f := range n.Facets {
		drip, above := "no drip", "never"
		if f.Drips {
			drip = "drips"
		}
		if f.DripsAbove != nil {
			above = report.Number(100**f.DripsAbove, 0) + " %"
		}
		rows = append(rows, []string{f.Name, report.Number(f.Area, 1), report.Number(f.U, 2), report.Number(f.Dry, 0), report.Number(f.Condensing, 0),
			report.Number(f.Sky, 0), report.Number(f.Loss, 0), report.Number(f.Inner, 1), drip, above})
	}
	return rows
}

func loss(r *report.Report, a *answers.Result) {
	r.Section("Design heat loss")
	for _, t := range a.Wet.Terms {
		r.Text(t.Name, report.Number(t.Loss, 0), "W   "+report.Number(100*t.Share, 1)+" %")
	}
	r.Value("total, wet night", a.Wet.Total, 0, "W")
	r.Value("  with every cover dry, just below dripping", a.Wet.DryFilm, 0, "W")
	r.Value("  of it carried by vapour", a.Wet.Latent, 0, "W")
	r.Value("  per kelvin", a.Wet.Coefficient, 1, "W/K")
	r.Value("  per floor area", a.Wet.PerFloor, 1, "W/m²")
	r.Value("total, dry night", a.Dry.Total, 0, "W")
	r.Value("  inside relative humidity", 100*a.Dry.Humidity, 0, "%")
}

func heater(r *report.Report, p *plan.Filled, a *answers.Result) {
	h := a.Heater
	r.Section("Heater")
	r.Value("needed on the "+h.Worse+" design night", h.Needed, 0, "W")
	r.Value("heater", h.Power, 0, "W")
	r.Value("  margin", 100*h.Margin, 0, "%")
	if h.Ridge != 0 {
		r.Value("air from the ridge takes off the need", h.Ridge, 0, "W")
		r.Value("  air that enters the heater", h.InletAir, 1, "°C")
	}
	r.Text("flow by "+h.FlowFrom+", at the inlet", report.Number(h.Inlet, 3), "m³/s")
	r.Value("  at the outlet", h.Outlet, 3, "m³/s")
	r.Value("  mass", h.Mass, 3, "kg/s")
	r.Value("  house volumes", h.Passes, 1, "per h")
	r.Value("supply air at full heat", h.Supply, 1, "°C")
	r.Value("  rise", h.Rise, 1, "K")
	r.Text("supply air at the needed heat", numberOr(h.SupplyAt, 1, "too hot"), "°C")
	r.Text("flow for "+report.Number(h.PlantsBear, 0)+" °C, which leaves bear", numberOr(h.PlantsFlow, 3, "none"), "m³/s")
	r.Value("heat by the sea-level rule", h.BySeaLevel, 0, "W")
	unit := "W of fuel, lower heating value"
	if p.Heater.Kind != "burner" {
		unit = "W of electricity"
	}
	r.Value("energy on that night", h.FuelPerHour, 0, unit)

	g := a.Ridge
	r.Section("Air from the ridge, in the heated months' mean")
	r.Value("upper layer, air drawn low in the house", g.UpperLow, 1, "°C")
	r.Value("upper layer, air drawn from the ridge", g.UpperRidge, 1, "°C")
	r.Value("apparent gain at the coil", 100*g.AtCoil, 1, "%")
	r.Value("saving of the house", 100*g.Saving, 1, "%")
	r.Value("  in heat", g.SavingHeat, 0, "W")
	r.Value("  bound, fully mixed", 100*g.Bound, 1, "%")
	if g.Costs {
		r.Note("The air under the ridge is cooler than that at the crop: the cover takes more heat than rises to it. Drawing from there costs heat.")
	}
}

func frost(r *report.Report, a *answers.Result) {
	t := a.Frost
	r.Section("Warm-up and frost")
	r.Value("unheated air, design night", t.Unheated, 1, "°C")
	r.Text("warm-up from there at full heat", answers.Minutes(t.WarmUp, "it never gets there"), "")
	r.Value("full heat would settle at", t.Settles, 1, "°C")
	level := report.Number(t.Frost, 0) + " °C"
	r.Text("air at "+level+" after the heater stops", answers.Minutes(t.HeaterStops, "it stays above"), "")
	r.Text("  houses as measured lie between", between(t.StopsBetween), "")
	r.Text("air at "+level+" after the power fails", answers.Minutes(t.PowerFails, "it stays above"), "")
	r.Text("  houses as measured lie between", between(t.FailsBetween), "")
	r.Text("  with the plan's emergency heat", answers.Minutes(t.Bridged, "it stays above"), "")
	r.Value("heat that holds it off without power", t.EmergencyNeed, 0, "W")
	r.Value("  emergency heat of the plan", t.Emergency, 0, "W")
	r.Value("night", t.NightLength, 1, "h")
	r.Note("The loss is that of the design night, vapour included. Three nodes, air, structure and soil, with time constants of %s min, %s h and %s h. Without power the fan stands still.",
		report.Number(60*t.Constants[0], 0), report.Number(t.Constants[1], 1), report.Number(t.Constants[2], 0))
}

// between prints two times.
func between(t [2]*float64) string {
	return answers.Minutes(t[0], "never") + " and " + answers.Minutes(t[1], "never")
}

// numberOr prints a number, or the word for one that does not exist.
func numberOr(x *float64, decimals int, none string) string {
	if x == nil {
		return none
	}
	return report.Number(*x, decimals)
}
