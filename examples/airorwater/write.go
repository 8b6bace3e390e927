package main

import (
	"fmt"
	"io"
	"math"
	"time"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"cloche.example/airheat"
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/page"
	"cloche.example/internal/report"
)

const joulesPerKWh = 3.6e6

// write sets the two results side by side.
func write(c comparison) *report.Report {
	r := new(report.Report)
	a, air, water := c.asked, c.air, c.water
	r.Title("Air or water for %.1f kW at %.0f °C outside: %s", a.Load/1000, a.Outside, c.plan.Name)
	r.Note("%s", c.plan.Note)
	r.Section("Answer")
	more := air.Transport - water.Transport
	r.Note("Carrying the heat takes %s W of electricity with air and %s W with water: in 1000 hours at this load %s %s more for air.", report.Number(air.Transport, 0), report.Number(water.Transport, 0), report.Number(more*c.plan.Prices.ElectricityPerKWh, 0), c.plan.Currency)
	r.Note("After a cold start air is warm in %s, water in %s; stopped, they hold %s and %s kWh above the house.", span(air.Response), span(water.Response), report.Number(air.Stored/joulesPerKWh, 2), report.Number(water.Stored/joulesPerKWh, 2))
	if water.CoolToFreezing == airheat.Forever {
		r.Note("Neither freezes at this air outside.")
	} else {
		r.Note("Stopped at %.0f °C outside, the water reaches 0 °C in %s; air cannot freeze.", a.Outside, span(water.CoolToFreezing))
	}
	r.Section("Side by side")
	row := func(label string, decimals int, unit string, x, y float64) []string {
		return []string{label, report.Number(x, decimals), report.Number(y, decimals), unit}
	}
	r.Table([]string{"", "air", "water", ""}, [][]string{
		row("supply", 1, "°C", a.ByAir.Supply, a.ByWater.Supply),
		row("return", 1, "°C", a.ByAir.Return, a.ByWater.Return),
		row("heat per kilogram and kelvin", 0, "J/(kg K)", a.ByAir.HeatCapacity, a.ByWater.HeatCapacity),
		row("density", 3, "kg/m³", a.ByAir.Density, a.ByWater.Density),
		row("lost on the way", 0, "W", air.Loss, water.Loss),
		row("heat from the heater", 0, "W", air.Heat, water.Heat),
		row("mass flow", 3, "kg/s", air.MassFlow, water.MassFlow),
		row("volume flow", 2, "L/s", 1000*air.VolumeFlow, 1000*water.VolumeFlow),
		row("pressure", 0, "Pa", a.ByAir.Pressure, a.ByWater.Pressure),
		row("electricity for transport", 1, "W", air.Transport, water.Transport),
		row("its share of the load", 3, "%", 100*air.TransportShare, 100*water.TransportShare),
		row("fluid in the circuit", 1, "kg", air.Content, water.Content),
		row("heat capacity of the circuit", 1, "kJ/K", air.Inertia/1000, water.Inertia/1000),
		row("heat held above the house", 2, "kWh", air.Stored/joulesPerKWh, water.Stored/joulesPerKWh),
		{"fluid passes once in", span(air.Transit), span(water.Transit), ""},
		{"warm after a cold start in", span(air.Response), span(water.Response), ""},
		{"stopped, at 0 °C after", span(air.CoolToFreezing), span(water.CoolToFreezing), ""},
		{"and frozen through after another", span(air.FreezeThrough), span(water.FreezeThrough), ""},
	})
	r.Section("Notes")
	if !c.given {
		r.Note("The load is what the house needs on the worse of a wet and a dry design night.")
	}
	r.Note("Air has the density of the site's pressure at the supply temperature. A fan's electricity ends as heat in the house, a pump's nearly so; it is paid as electricity.")
	r.Note("Air gathers at the ridge, water pipes warm from below: what either loses through the roof is another account.")
	r.Section("Cautions")
	r.Note("Pipes freeze first where they are thin and in a draught, long before the mean does; a split pipe floods electrical parts. Drain, or use glycol and its own figures.")
	r.Note("A heater with a flue needs its own air and a carbon monoxide alarm; hot water under pressure needs its safety valve and expansion vessel. Fans start without warning: guard them. Local codes and licensed practice decide.")
	for _, w := range airheat.DefaultSupplyLimits().Warnings(a.ByAir.Supply) {
		r.Note("Warning: %s.", w)
	}
	r.Note("%s", airheat.SupplyCaution)
	return r
}

// span is a time as a person would say it.
func span(d time.Duration) string {
	switch {
	case d == airheat.Forever:
		return "never"
	case d < 2*time.Minute:
		return report.Number(d.Seconds(), 1) + " s"
	}
	m := d.Minutes()
	return answers.Minutes(&m, "never")
}

// minutes is a time in JSON, null for never.
func minutes(d time.Duration) *float64 {
	if m := d.Minutes(); d != airheat.Forever && !math.IsInf(m, 0) {
		return &m
	}
	return nil
}

// found is one carrier in JSON.
type found struct {
	Loss      float64  `json:"lost_on_the_way_w"`
	Heat      float64  `json:"heat_from_heater_w"`
	Density   float64  `json:"density_kg_m3"`
	Mass      float64  `json:"mass_flow_kg_s"`
	Volume    float64  `json:"volume_flow_m3_s"`
	Transport float64  `json:"transport_w"`
	Share     float64  `json:"transport_over_load_fraction"`
	Content   float64  `json:"fluid_kg"`
	Inertia   float64  `json:"heat_capacity_j_k"`
	Stored    float64  `json:"held_above_house_kwh"`
	Transit   *float64 `json:"passes_once_in_min"`
	Response  *float64 `json:"warm_after_cold_start_min"`
	Freezing  *float64 `json:"stopped_at_0_c_after_min"` // null: never
	Frozen    *float64 `json:"frozen_through_after_another_min"`
}

func data(c comparison) any {
	of := func(in airheat.Carrier, r airheat.CarrierResult) found {
		return found{r.Loss, r.Heat, in.Density, r.MassFlow, r.VolumeFlow, r.Transport, r.TransportShare, r.Content, r.Inertia, r.Stored / joulesPerKWh,
			minutes(r.Transit), minutes(r.Response), minutes(r.CoolToFreezing), minutes(r.FreezeThrough)}
	}
	return struct {
		Load  float64 `json:"load_w"`
		Air   found   `json:"air"`
		Water found   `json:"water"`
	}{c.asked.Load, of(c.asked.ByAir, c.air), of(c.asked.ByWater, c.water)}
}

// draw shows three pairs of bars, each on its own scale.
func (c comparison) draw(format string) (io.WriterTo, error) {
	var plots []*plot.Plot
	for _, k := range []struct {
		label      string
		air, water float64
	}{
		{"electricity for transport, W", c.air.Transport, c.water.Transport},
		{"warm after a cold start, min", c.air.Response.Minutes(), c.water.Response.Minutes()},
		{"heat held above the house, kWh", c.air.Stored / joulesPerKWh, c.water.Stored / joulesPerKWh},
	} {
		p := plot.New()
		p.X.Label.Text = k.label
		for i, v := range []float64{k.water, k.air} { // the first on top
			bar, err := plotter.NewBarChart(plotter.Values{v}, vg.Points(16))
			if err != nil {
				return nil, err
			}
			bar.Horizontal, bar.XMin, bar.Color = true, float64(i), page.PenOf(i).Color
			p.Add(bar)
			words, err := plotter.NewLabels(plotter.XYLabels{XYs: plotter.XYs{{X: v, Y: float64(i)}}, Labels: []string{fmt.Sprintf(" %.3g", v)}})
			if err != nil {
				return nil, err
			}
			p.Add(words)
		}
		p.NominalY("water", "air")
		p.X.Min, p.X.Max = 0, 1.15*max(k.air, k.water, 1e-9)
		plots = append(plots, p)
	}
	plots[0].Title.Text = fmt.Sprintf("Air or water for %.1f kW: %s", c.asked.Load/1000, c.plan.Name)
	return frame.Plots(format, 18*vg.Centimeter, 14*vg.Centimeter, plots...)
}
