package main

import (
	"cloche.example/airheat"
	"cloche.example/internal/report"
)

func (d *design) heatText(r *report.Report, p plan) {
	h := d.Heater
	r.Section("Heater")
	r.Value("needed on the design night", h.Needed, 0, "W")
	r.Value("heater", h.Power, 0, "W")
	r.Value("  margin", 100*h.Margin, 0, "%")
	r.Text("flow, stated at: "+p.Heater.FlowBasis, report.Number(p.Heater.Flow, 3), "m³/s")
	r.Value("  at the inlet", h.Inlet, 3, "m³/s")
	r.Value("  at the outlet", h.Outlet, 3, "m³/s")
	r.Value("  mass", h.Mass, 3, "kg/s")
	r.Value("supply air at full power", h.Supply, 1, "°C")
	r.Value("  rise", h.Rise, 1, "K")
	r.Text("supply air at the needed power", numberOr(h.SupplyAt, 1, "too hot"), "°C")
	r.Value("the rule 1.2 × 1005 would say for this rise", h.ByRule, 0, "W")
	r.Value("the house's air passes the heater", h.Passes, 1, "per h")
	if h.Margin < 0 {
		r.Note("Warning: the heater cannot hold the house on the design night.")
	}
	for _, w := range airheat.DefaultSupplyLimits().Warnings(h.Supply) {
		r.Note("Warning: %s.", w)
	}

	d.seasonText(r, p)
	t := d.Time
	r.Section("Warm-up and frost")
	r.Value("unheated air, design night", t.Start, 1, "°C")
	r.Text("warm-up from there at full heat", numberOr(t.WarmUp, 2, "never"), "h")
	r.Value("full heat would settle at", t.WouldReach, 1, "°C")
	r.Text("air at 0 °C after the heater stops", numberOr(t.HeaterOut, 2, "never"), "h")
	r.Text("air at 0 °C after the power fails", numberOr(t.PowerCut, 2, "never"), "h")
	r.Note("Three nodes, air, structure and soil, with time constants of %.2f, %.1f and %.0f h. Without power the fan stands still and half of the exchange with structure and soil remains.", t.Constants[0], t.Constants[1], t.Constants[2])
}

func (d *design) lightText(r *report.Report, p plan) {
	l := d.Light
	r.Section("Lighting")
	r.Value("PPFD on the trays, mean", l.Mean, 1, "µmol/(m² s)")
	r.Value("  minimum", l.Minimum, 1, "µmol/(m² s)")
	r.Value("  maximum", l.Maximum, 1, "µmol/(m² s)")
	r.Value("  minimum over mean", l.U0, 2, "")
	r.Value("spot diameter at half the light", l.Spot, 2, "m")
	r.Value("  fixture spacing along a row", l.AlongRow, 2, "m")
	r.Value("  spacing between rows", l.Across, 2, "m")
	if l.Meet {
		r.Note("The spots meet at tray height both ways.")
	} else {
		r.Note("The spots do not meet at tray height both ways.")
	}
	r.Value("daily light, lamps alone", l.DLI, 1, "mol/(m² d)")
	r.Value("daylight on the trays in the design month", d.Sun.Daylight, 1, "mol/(m² d)")
	r.Value("  of that outside", 100*d.Sun.OnTrays, 0, "%")
	r.Value("both together", l.DLIAll, 1, "mol/(m² d)")
	d.cropText(r)
	r.Value("electric power", l.Power, 0, "W")
	r.Value("  of it heat into the house", l.Heat, 0, "W")
	r.Value("cost", l.Cost, 2, p.Lighting.Currency+" per day")
}

func (d *design) summerText(r *report.Report, p plan) {
	s := d.Summer
	r.Section("Summer noon")
	r.Value("outside air", p.Summer.Outside, 1, "°C")
	r.Value("vent area", s.Have, 1, "m²")
	for _, c := range []struct {
		name string
		noon
	}{{"in calm", s.Calm}, {"in wind of " + report.Number(p.Summer.Wind, 1) + " m/s", s.Windy}} {
		r.Value("inside air, "+c.name, c.Inside, 1, "°C")
		r.Value("  rise", c.Rise, 1, "K")
		r.Value("  flow", c.Flow, 2, "m³/s")
		r.Value("  air changes", c.Changes, 0, "per h")
	}
	r.Text("neutral level in calm, above grade", numberOr(s.Calm.Neutral, 2, "none"), "m")
	r.Text("vent area for a rise of "+report.Number(p.Summer.AllowedRise, 1)+" K in calm", numberOr(s.Area, 1, "none does"), "m²")
}
