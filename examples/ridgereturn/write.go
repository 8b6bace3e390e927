package main

import (
	"fmt"
	"io"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"cloche.example/airheat"
	"cloche.example/examples/internal/frame"
	"cloche.example/internal/report"
)

// answer says in a few lines what the planned house gains.
func (c comparison) answer() string {
	q, layered := c.planned.ridge, "warmer"
	if c.warmer(c.planned) < 0 {
		layered = "cooler"
	}
	text := fmt.Sprintf("With %s %% of the heat rising past the crop the ridge is %s K %s than the crop. ", percent(c.planned.share, 0), report.Number(math.Abs(c.warmer(c.planned)), 1), layered)
	if q.Costs {
		return text + fmt.Sprintf("Drawing the heater's air from it costs %s W, %s %% of the heat: it carries heat to the roof. Draw it low.", report.Number(-q.SavingHeat, 0), percent(-q.Saving, 1))
	}
	return text + fmt.Sprintf("Drawing the heater's air from it saves %s W, %s %% of the heat; the warmer return looks like %s %% at the coil.", report.Number(q.SavingHeat, 0), percent(q.Saving, 1), percent(q.CoilView, 1))
}

// write prints the comparison.
func write(c comparison) string {
	var r report.Report
	l, fans := c.layers, c.plan.Heater.MixingFans
	r.Title("Return from the ridge: apparent gain and saving: %s", c.plan.Name)
	r.Note("%s", c.plan.Note)
	r.Section("Answer")
	r.Note("%s", c.answer())
	r.Note("Mixing fans of %s W instead: %s W of heat saved, %s W after their electricity at what it is worth.", report.Number(fans.Power, 0), report.Number(c.planned.fans.SavingHeat, 0), report.Number(c.planned.fans.NetSaving, 0))
	r.Section("The house on its design night")
	r.Value("air at the crop", l.Lower, 1, "°C")
	r.Value("outside air", l.Outside, 1, "°C")
	r.Value("loss of the lower layer: walls, ground, leakage", l.LowerLoss, 0, "W/K")
	r.Value("loss of the upper layer: roof", l.UpperLoss, 0, "W/K")
	r.Value("flow through the heater", l.HeaterFlow, 2, "m³/s, from "+c.from)
	r.Value("mixing between the layers", l.Mixing, 2, "m³/s")
	r.Value("heat capacity of the air", l.HeatCapacity, 0, "J/(m³ K)")

	r.Section("Over the share of heat that rises past the crop")
	var table [][]string
	for _, v := range c.rows {
		q, mark := v.ridge, ""
		if v.share == c.planned.share {
			mark = "plan"
		}
		table = append(table, []string{
			percent(v.share, 0), report.Number(c.warmer(v), 1), report.Number(q.Floor.Heat, 0),
			percent(q.CoilView, 1), percent(q.Saving, 1), percent(q.Bound, 1),
			report.Number(q.SavingHeat, 0), report.Number(v.fans.SavingHeat, 0), report.Number(v.fans.NetSaving, 0), mark,
		})
	}
	r.Table([]string{"rises %", "ridge warmer K", "heat W", "at coil %", "saves %", "bound %", "saves W", "fans save W", "fans net W", ""}, table)
	r.Note("At coil: the apparent gain, the warmer return over the coil's rise. It is no saving: a coil that gets warmer air lets out warmer air, and the house still loses what it loses.")
	r.Note("Saves: what the roof loses less because the ridge is cooler then, of the heat with the return at the crop. Bound: with both layers at the crop's temperature; no arrangement that leaves the ridge the warmer layer saves more.")
	r.Note("A negative figure is a cost: where the heat is given low and little of it rises, the ridge is the cooler layer, and drawing the heater's air through it carries heat to the roof.")
	r.Note("The share and the mixing are not known without measuring: measure the ridge against the crop on a cold night and read the row with that difference. A ridge much cooler than the crop overturns by itself, so the first rows end sooner than they say.")
	r.Note("Fans: %.2f m³/s moved by %.0f W in place of a return from the ridge; they raise the loss of the upper layer by %.0f %% and their power heats the house and is taken off the heater's heat. Net: with a joule of electricity worth %.1f of heat.", fans.Flow, fans.Power, 100*(fans.Film-1), fans.WorthOfElectricity)
	r.Section("Supply air")
	r.Value("with the return at the crop", c.planned.ridge.Floor.Supply, 1, "°C")
	r.Value("with the return from the ridge", c.planned.ridge.Ridge.Supply, 1, "°C")
	for _, w := range airheat.DefaultSupplyLimits().Warnings(max(c.planned.ridge.Ridge.Supply, c.planned.ridge.Floor.Supply)) {
		r.Note("Warning: %s.", w)
	}
	r.Section("Cautions")
	r.Note("%s", airheat.SupplyCaution)
	r.Note("Fans start without warning: guard them, and switch them off at an isolator before reaching in. Wiring in wet rooms is left to a licensed electrician.")
	return r.String()
}

func percent(v float64, decimals int) string { return report.Number(100*v, decimals) }

// found is one degree of layering in JSON.
type found struct {
	Share      float64 `json:"rising_fraction"`
	Warmer     float64 `json:"ridge_over_crop_k"`
	Heat       float64 `json:"heat_with_low_return_w"`
	AtCoil     float64 `json:"apparent_gain_at_coil_fraction"`
	Saving     float64 `json:"saving_of_house_fraction"`
	SavingHeat float64 `json:"saving_of_house_w"`
	Bound      float64 `json:"bound_fully_mixed_fraction"`
	Costs      bool    `json:"ridge_is_cooler"`
	Supply     float64 `json:"supply_with_low_return_c"`
	SupplyHigh float64 `json:"supply_with_ridge_return_c"`
	Fans       float64 `json:"mixing_fans_save_w"`
	FansNet    float64 `json:"mixing_fans_net_w"`
}

func data(c comparison) any {
	of := func(r row) found {
		q := r.ridge
		return found{r.share, c.warmer(r), q.Floor.Heat, q.CoilView, q.Saving, q.SavingHeat, q.Bound, q.Costs, q.Floor.Supply, q.Ridge.Supply, r.fans.SavingHeat, r.fans.NetSaving}
	}
	d := struct {
		Lower float64 `json:"lower_layer_loss_w_k"`
		Upper float64 `json:"upper_layer_loss_w_k"`
		Flow  float64 `json:"heater_flow_m3_s"`
		Plan  found   `json:"as_planned"`
		Rows  []found `json:"rows"`
	}{Lower: c.layers.LowerLoss, Upper: c.layers.UpperLoss, Flow: c.layers.HeaterFlow, Plan: of(c.planned)}
	for _, r := range c.rows {
		d.Rows = append(d.Rows, of(r))
	}
	return d
}

// draw shows apparent gain, saving and bound over how much warmer the ridge is.
func draw(format string, c comparison) (io.WriterTo, error) {
	p := plot.New()
	p.Title.Text = "Return from the ridge: " + c.plan.Name
	p.X.Label.Text, p.Y.Label.Text = "ridge warmer than the crop, K", "% of the heat"
	p.Add(plotter.NewGrid())
	var lines [3]plotter.XYs
	for _, r := range c.rows {
		for i, v := range []float64{r.ridge.CoilView, r.ridge.Saving, r.ridge.Bound} {
			lines[i] = append(lines[i], plotter.XY{X: c.warmer(r), Y: 100 * v})
		}
	}
	for i, name := range []string{"apparent gain at the coil", "saving of the house", "bound: fully mixed"} {
		if err := frame.Line(p, i, name, lines[i]); err != nil {
			return nil, err
		}
	}
	here, err := plotter.NewScatter(plotter.XYs{{X: c.warmer(c.planned), Y: 100 * c.planned.ridge.Saving}})
	if err != nil {
		return nil, err
	}
	here.Radius = vg.Points(4)
	p.Add(here)
	p.Legend.Add("as planned", here)
	p.Legend.Left, p.Legend.Top = true, true
	return frame.Plots(format, 18*vg.Centimeter, 12*vg.Centimeter, p)
}
