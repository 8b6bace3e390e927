package main

import (
	"cloche.example/airheat"
	"cloche.example/internal/demo"
	"cloche.example/internal/report"
)

// write prints the comparison.
func write(c choice, l layers, rows []row) string {
	var r report.Report
	r.Title("Return from the ridge: the coil's view and the house's saving")
	r.Section("The house")
	r.Value("air at the crop", c.inside, 1, "°C")
	r.Value("outside air, clear night", c.outside, 1, "°C")
	r.Value("loss of the lower layer: walls, ground, leakage", l.lower, 0, "W/K")
	r.Value("loss of the upper layer: roof", l.upper, 0, "W/K")
	r.Value("flow through the heater", c.flow, 2, "m³/s")
	r.Value("mixing between the layers", c.mixing, 2, "m³/s")
	r.Value("heat capacity of the air", l.capacity, 0, "J/(m³ K)")

	r.Section("Over the share of heat that rises past the crop")
	table := [][]string{}
	for _, v := range rows {
		q := v.ridge
		table = append(table, []string{
			percent(v.share, 0), report.Number(q.Floor.Upper-c.inside, 1), report.Number(q.Floor.Heat, 0),
			percent(q.CoilView, 1), percent(q.Saving, 1), percent(q.Bound, 1),
			report.Number(q.SavingHeat, 0), report.Number(v.fans.SavingHeat, 0), report.Number(v.fans.NetSaving, 0),
		})
	}
	r.Table([]string{"rises %", "ridge warmer K", "heat W", "coil view %", "real %", "bound %", "real W", "fans W", "fans net W"}, table)
	r.Note("Coil view: the warmer return over the coil's rise. It is no saving: a coil that gets warmer air lets out warmer air, and the house still loses what it loses.")
	r.Note("Real: what the roof loses less because the ridge is cooler then, of the heat with the return at the crop. Bound: with both layers at the crop's temperature; no arrangement that leaves the ridge the warmer layer saves more.")
	r.Note("A negative figure is a cost: where the heat is given low and little of it rises, the ridge is the cooler layer, and drawing the heater's air through it carries heat to the roof.")
	r.Note("The share and the mixing are not known without measuring: measure the ridge against the crop on a cold night and read the row with that difference. A ridge much cooler than the crop overturns by itself, so the first rows end sooner than they say.")
	r.Note("Fans: %.2f m³/s moved by %.0f W in place of a return from the ridge; they raise the loss of the upper layer by %.0f %% and their power heats the house and is taken off the heater's heat. Net: with a joule of electricity worth %.1f of heat.", c.fanFlow, c.fanPower, 100*(c.film-1), c.worth)
	r.Section("Supply air")
	worst := rows[len(rows)-1].ridge
	r.Value("return at the crop, supply at the last row", worst.Floor.Supply, 1, "°C")
	r.Value("return from the ridge, supply at the last row", worst.Ridge.Supply, 1, "°C")
	for _, w := range airheat.DefaultSupplyLimits().Warnings(max(worst.Ridge.Supply, worst.Floor.Supply)) {
		r.Note("Warning: %s.", w)
	}
	r.Note("%s", airheat.SupplyCaution)
	r.Note("%s", demo.Note)
	return r.String()
}

func percent(v float64, decimals int) string { return report.Number(100*v, decimals) }
