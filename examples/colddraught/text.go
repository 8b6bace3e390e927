package main

import (
	"errors"
	"fmt"

	"cloche.example/internal/demo"
	"cloche.example/internal/report"
	"cloche.example/ventilation"
)

// report prints the tables.
func (h house) report() (*report.Report, error) {
	r := &report.Report{}
	r.Title("Cold air on the crop: ridge vents or side vents first")
	r.Note(demo.Note)
	r.Section("The house")
	r.Value("house air", h.inside, 1, "°C")
	r.Value("chill limit of the crop", h.limit, 1, "°C")
	r.Value("wind at the ridge", h.wind, 1, "m/s")
	r.Value("side vents above the crop", max(0, sideHeight-h.crop), 2, "m")
	r.Value("ridge vents above the crop", max(0, ridgeHeight-h.crop), 2, "m")
	for _, o := range orders {
		r.Section("Coldest air at the crop, %s, °C", o.name)
		header := []string{"outside °C"}
		for _, p := range h.opened {
			header = append(header, fmt.Sprintf("%g %%", p))
		}
		var rows [][]string
		for _, t := range h.outside {
			row := []string{report.Number(t, 0)}
			for _, p := range append(append([]float64(nil), h.opened...), 200) {
				a, err := h.at(t, o.order, p/100)
				if err != nil {
					return nil, err
				}
				row = append(row, cell(a))
			}
			rows = append(rows, row)
		}
		r.Table(append(header, "and the others"), rows)
	}
	r.Note("A mark ! lies below the chill limit. A dash: the vents let no air in, it leaves by them and enters by cracks.")
	if err := h.limits(r); err != nil {
		return nil, err
	}
	r.Section("Notes")
	r.Note("Each run of vents is a slot whose air enters as a jet, level at the side and 45 degrees down at the ridge, and falls by its weight. Of the published band of the fall and of the rival laws of dilution the coldest answer is shown; a jet that falls steeply draws in more air than that answer knows, and the crop may see half the chill.")
	r.Note("Open the high vents first and little: the air has the more way to mix. Below 5 °C outside keep low vents shut (common practice, no source). The jets do not meet, and leaks are spent before they reach the crop.")
	r.Note("Vents must close in storm and frost; drives, ropes and structure follow local codes and licensed practice.")
	return r, nil
}

// limits prints how far the vents may open, and what the air wanted costs.
func (h house) limits(r *report.Report) error {
	var widest, wanted [][]string
	for _, t := range h.outside {
		most, air := []string{report.Number(t, 0)}, []string{report.Number(t, 0)}
		h.vents.Outside = t
		flow := h.air / 3600 * ventilation.DryAirDensity(t, h.pressure)
		for _, o := range orders {
			a, err := h.vents.Widest(o.order)
			if err != nil {
				return err
			}
			most = append(most, share(a, o.first), report.Number(3600*a.Air.Volume, 0), report.Number(ventilation.AirChanges(a.Air.Volume, h.volume), 1))
			a, err = h.vents.ForFlow(o.order, flow)
			switch {
			case errors.Is(err, ventilation.ErrNoSolution):
				air = append(air, "too small", "-")
			case err != nil:
				return err
			default:
				air = append(air, share(a, o.first), cell(a))
			}
		}
		widest, wanted = append(widest, most), append(wanted, air)
	}
	r.Section("How far they may open, and the air that then enters")
	r.Table([]string{"outside °C", "ridge first", "m³/h", "1/h", "side first", "m³/h", "1/h"}, widest)
	r.Section("To let in %s m³/h, cracks included", report.Number(h.air, 0))
	r.Table([]string{"outside °C", "ridge first", "°C at the crop", "side first", "°C at the crop"}, wanted)
	return nil
}

// share says how far the first vents of an order are open, and the others.
func share(a ventilation.ColdAir, first int) string {
	s := report.Number(100*a.Fractions[first], 0) + " %"
	if others := a.Fractions[1-first]; others > 0 {
		s += " + " + report.Number(100*others, 0) + " %"
	}
	return s
}

func cell(a ventilation.ColdAir) string {
	switch {
	case a.By < 0:
		return "-"
	case a.Chill:
		return report.Number(a.Coldest, 1) + "!"
	}
	return report.Number(a.Coldest, 1)
}
