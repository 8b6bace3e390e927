package main

import (
	"fmt"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/report"
)

func lights(r *report.Report, p *plan.Filled, a *answers.Result) {
	l := a.Light
	if l == nil {
		return
	}
	r.Section("Lighting")
	r.Text("lamps", fmt.Sprintf("%d × %d", l.Rows, l.PerRow), "rows × lamps in a row"+counted(p))
	r.Value("direct light on the lowest trays, mean", l.Mean, 1, "µmol/(m² s)")
	r.Value("  minimum", l.Minimum, 1, "µmol/(m² s)")
	r.Value("  maximum", l.Maximum, 1, "µmol/(m² s)")
	r.Text("  minimum over mean", report.Number(l.Even, 2), "wanted "+report.Number(l.EvenWanted, 2))
	r.Text("map", fmt.Sprintf("%d × %d", l.GridAlong, l.GridAcross), "points")
	r.Text("spot diameter at half the light", numberOr(l.Spot, 2, "-"), unitIf(l.Spot, "m"))
	r.Value("  lamp spacing along a row", l.Along, 2, "m")
	r.Value("  spacing between rows", l.Across, 2, "m")
	r.Value("daily light, lamps alone", l.DLI, 1, "mol/(m² d)")
	r.Value("daylight on the trays in the design month", l.Daylight, 1, "mol/(m² d)")
	r.Value("  of that outside", 100*a.Sun.OnTrays, 0, "%")
	r.Value("both together", l.Both, 1, "mol/(m² d)")
	r.Text(l.Crop+" needs, wants, can use", numberOr(l.Least, 0, "-")+", "+numberOr(l.Wanted, 0, "-")+", "+numberOr(l.Most, 0, "-"), "mol/(m² d)")
	r.Value("electric power", l.Power, 0, "W")
	r.Value("  on each m² of bed", l.PowerDensity, 1, "W/m²")
	r.Value("  of it heat into the house", l.Heat, 0, "W")
	r.Value("cost for the whole photoperiod", l.CostPerDay, 2, p.Currency+" per day")
}

// counted says where the count of lamps comes from.
func counted(p *plan.Filled) string {
	if p.Lights.KnownFrom != "target" {
		return ""
	}
	return fmt.Sprintf(", found for %g µmol/(m² s)", p.Lights.Target)
}

func water(r *report.Report, p *plan.Filled, a *answers.Result) {
	w := a.Water
	r.Section("Water on a day of month %d", w.Month)
	r.Value("crop", w.Crop, 0, "L")
	r.Value("  of it at night", w.Night, 0, "L")
	r.Value("to be given", w.Given, 0, "L")
	r.Value("  on each m² of floor", w.PerFloor, 1, "L/m²")
	r.Value("  drained off", w.Drained, 0, "L")
	r.Value("cost", w.CostPerDay, 2, p.Currency+" per day")
	if c := a.Carbon; c != nil {
		r.Section("Carbon dioxide")
		r.Value("kept at", c.Level, 0, "µmol/mol")
		r.Value("  leaks away", c.Lost, 3, "kg/h")
		r.Value("  cost of that", c.PerDay, 2, p.Currency+" per day")
	}
}

func power(r *report.Report, a *answers.Result) {
	r.Section("Electricity")
	for _, l := range a.Power.Loads {
		r.Value(l.Name, l.Power, 0, "W")
	}
	r.Value("all together", a.Power.Total, 0, "W")
	r.Value("  in each live wire, evenly spread", a.Power.Current, 1, "A")
}

func year(r *report.Report, p *plan.Filled, a *answers.Result) {
	y := a.Year
	r.Section("The year, by the monthly method")
	rows := [][]string{}
	for _, m := range y.Months {
		rows = append(rows, []string{fmt.Sprint(m.Month), report.Number(m.Outside, 1), report.Number(m.Loss, 0), report.Number(m.Sun, 0), report.Number(m.Lamps, 0),
			report.Number(m.Heat, 0), report.Number(m.HeatCost, 0), report.Number(m.LampCost, 0)})
	}
	r.Table([]string{"month", "°C", "loss kWh", "sun kWh", "lamps kWh", "heat kWh", "heating " + p.Currency, "lamps " + p.Currency}, rows)
	r.Value("heat of the heater", y.Heat, 0, "kWh")
	r.Value("  gains from sun and lamps put to use", y.Gains, 0, "kWh")
	r.Value("energy it takes", y.Energy, 0, "kWh")
	r.Value("  as it is sold", y.Amount, 0, y.Unit)
	if y.Emission > 0 {
		r.Value("  carbon dioxide of it", y.Emission, 0, "kg")
	}
	r.Value("lamps", y.LampEnergy, 0, "kWh")
	r.Value("fan and controls", y.FanEnergy, 0, "kWh")
	r.Value("heating", y.HeatCost, 0, p.Currency)
	r.Value("lamps", y.LampCost, 0, p.Currency)
	r.Value("fan and controls", y.FanCost, 0, p.Currency)
	r.Value("all together", y.Total, 0, p.Currency)
	r.Note("Kept at %s °C, the mean of the set-points; a month's loss is that of its hours that are colder, which lie about its mean by the normal law with %s K. In their mean it is %s W/K under the season's wind and cloud, covers wet in one hour and dry in another. At %s °C outside, the mean of the heated months, the crop's water makes %s %% inside. Evaporating it is the heater's work by night, and the sun's by day.",
		report.Number(y.SetPoint, 1), report.Number(answers.Deviation, 1), report.Number(y.Loss, 0), report.Number(y.Outside, 1), report.Number(100*y.Humidity, 0))
	if y.Vented > 0 {
		r.Note("So that it grows no damper than the plan's limit, %s m³/s of outside air are let in there by night.", report.Number(y.Vented, 3))
	}

	r.Section("What pays back")
	r.Table([]string{"", "costs " + p.Currency, "saves kWh/year", p.Currency + "/year", "years", "with interest"}, savingRows(a))
}

func savingRows(a *answers.Result) (rows [][]string) {
	for _, s := range a.Savings {
		if !s.Possible {
			rows = append(rows, []string{s.Name, "-", "-", "-", "-", "-"})
			continue
		}
		rows = append(rows, []string{s.Name, report.Number(s.Cost, 0), report.Number(s.Heat, 0), report.Number(s.Money, 0), numberOr(s.Years, 1, "never"), numberOr(s.Interest, 1, "never")})
	}
	return rows
}
