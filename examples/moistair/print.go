package main

import (
	"fmt"

	"cloche.example/internal/report"
	"cloche.example/psychro"
)

// rows are the lines of the table: label, scale, decimals.
var rows = []struct {
	label    string
	value    func(q psychro.Properties) float64
	decimals int
}{
	{"pressure, Pa", func(q psychro.Properties) float64 { return q.Pressure }, 0},
	{"dry bulb, °C", func(q psychro.Properties) float64 { return q.Temperature }, 2},
	{"relative humidity, %", func(q psychro.Properties) float64 { return 100 * q.RelativeHumidity }, 2},
	{"humidity ratio, g/kg dry air", func(q psychro.Properties) float64 { return 1000 * q.HumidityRatio }, 3},
	{"specific humidity, g/kg moist air", func(q psychro.Properties) float64 { return 1000 * q.SpecificHumidity }, 3},
	{"absolute humidity, g/m³", func(q psychro.Properties) float64 { return 1000 * q.AbsoluteHumidity }, 3},
	{"vapour mole fraction, %", func(q psychro.Properties) float64 { return 100 * q.MoleFraction }, 4},
	{"degree of saturation, %", func(q psychro.Properties) float64 { return 100 * q.DegreeOfSaturation }, 2},
	{"vapour pressure, Pa", func(q psychro.Properties) float64 { return q.VapourPressure }, 1},
	{"saturation vapour pressure, Pa", func(q psychro.Properties) float64 { return q.SaturationVapourPressure }, 1},
	{"vapour pressure deficit, Pa", func(q psychro.Properties) float64 { return q.VapourPressureDeficit }, 1},
	{"dew or frost point, °C", func(q psychro.Properties) float64 { return q.DewPoint }, 2},
	{"wet bulb, °C", func(q psychro.Properties) float64 { return q.WetBulb }, 2},
	{"enthalpy, kJ/kg dry air", func(q psychro.Properties) float64 { return q.Enthalpy / 1000 }, 2},
	{"entropy, J/(kg K)", func(q psychro.Properties) float64 { return q.Entropy }, 1},
	{"specific volume, m³/kg dry air", func(q psychro.Properties) float64 { return q.SpecificVolume }, 4},
	{"density, kg/m³", func(q psychro.Properties) float64 { return q.Density }, 4},
	{"heat capacity, J/(kg K)", func(q psychro.Properties) float64 { return q.HeatCapacity }, 1},
	{"latent heat, kJ/kg", func(q psychro.Properties) float64 { return q.LatentHeat / 1000 }, 1},
	{"viscosity, µPa s", func(q psychro.Properties) float64 { return 1e6 * q.Viscosity }, 2},
	{"conductivity, mW/(m K)", func(q psychro.Properties) float64 { return 1000 * q.Conductivity }, 2},
	{"vapour diffusivity, mm²/s", func(q psychro.Properties) float64 { return 1e6 * q.VapourDiffusivity }, 2},
	{"Prandtl number", func(q psychro.Properties) float64 { return q.PrandtlNumber }, 3},
	{"Schmidt number", func(q psychro.Properties) float64 { return q.SchmidtNumber }, 3},
	{"psychrometric constant, Pa/K", func(q psychro.Properties) float64 { return q.PsychrometricConstant }, 2},
}

func (j job) report(states, ends []psychro.State) *report.Report {
	r := new(report.Report)
	r.Title("Moist air, %v", j.model)
	if j.note != "" {
		r.Note("%s", j.note)
	}
	r.Section("State")
	table(r, states)
	if ends != nil {
		r.Section("Second state")
		table(r, ends)
		r.Section("From the first to the second, per kg of dry air")
		for i, s := range states {
			dh, dw := ends[i].Enthalpy()-s.Enthalpy(), ends[i].HumidityRatio()-s.HumidityRatio()
			if len(states) > 1 {
				r.Line("at %.0f Pa", j.pressures[i])
			}
			r.Value("enthalpy", dh/1000, 3, "kJ/kg")
			r.Value("water", 1000*dw, 3, "g/kg")
			if dw != 0 {
				r.Value("enthalpy per water, the slope of the process", dh/dw/1000, 1, "kJ/kg")
			}
		}
	}
	r.Section("Notes")
	r.Note("Relative humidity is vapour pressure over that of saturated air; below 0.01 °C saturation, dew point and wet bulb are over ice. Enthalpy is zero for dry air and liquid water at 0 °C.")
	if s := states[0]; s.Temperature() < psychro.TriplePoint {
		r.Note("Over liquid water, as weather services state it: relative humidity %.1f %%, dew point %.2f °C.",
			100*s.RelativeHumidityOver(psychro.Liquid), s.DewPointOver(psychro.Liquid))
	}
	if s := states[0]; s.WetBulb() >= psychro.TriplePoint && s.WetBulbOver(psychro.Ice) <= psychro.TriplePoint {
		r.Note("An iced bulb would be in equilibrium with this air too, at %.2f °C.", s.WetBulbOver(psychro.Ice))
	}
	return r
}

func table(r *report.Report, states []psychro.State) {
	header := []string{""}
	body := make([][]string, len(rows))
	for k, row := range rows {
		body[k] = []string{row.label}
		for _, s := range states {
			body[k] = append(body[k], report.Number(row.value(s.Properties()), row.decimals))
		}
	}
	for i := range states {
		header = append(header, fmt.Sprintf("air %d", i+1))
	}
	r.Table(header, body)
}
