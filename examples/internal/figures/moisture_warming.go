package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func dryingByHeating() Figure {
	return Figure{
		Name: "drying-by-heating", Title: "Drying air by heating it", Subject: "moisture and crop", Package: "psychro",
		Question: "House air of 80 per cent is warmed by some six kelvins. How dry is it then, and is there less water in it?",
		Source:   "a grower's magazine (gpnmag.com), which warms air of 80 per cent from 68 to 79 °F",
		Sketch:   "A closed house, a heater, no vent open.",
		Given:    warmedGiven(),
		Assumes:  []string{"No water is added or taken; a pressure of 101325 Pa. Plants would evaporate more into the drier air."},
		Change:   []string{"A common rule says that 11 K more halve the relative humidity (common practice, no source): try it from 5 and from 25 °C."},
		Code:     "solveDryingByHeating",
		Solve:    solveDryingByHeating,
	}
}

func warmedGiven() []Given {
	return []Given{
		{"t_1", "air before", "°C", 20, 0, 25},
		{"φ_1", "its relative humidity", "fraction", 0.8, 0.1, 1},
		{"t_2", "air after", "°C", 26.11, 25.5, 50},
	}
}

func solveDryingByHeating(v []float64) (r Result, err error) {
	in, err := psychro.FromRelativeHumidity(v[0], v[1], 101325)
	if err != nil {
		return r, err
	}
	out, err := psychro.FromHumidityRatio(v[2], in.HumidityRatio(), 101325)
	if err != nil {
		return r, err
	}
	r.Steps = []Step{
		{Says: "Water in the air, before and after.", Symbol: "W", Source: "IAPWS saturation, enhancement factor", Value: in.HumidityRatio(), Unit: "kg/kg"},
		{Says: "The vapour pressure stays, saturation rises.", Formula: "φ_2 = φ_1 e_1/e_2", Values: numbers{"φ_1": v[1], "e_1": in.SaturationVapourPressure(), "e_2": out.SaturationVapourPressure()}, Value: out.RelativeHumidity(), Within: 1e-6, Why: "rounding"},
		{Says: "Heat for each kilogram of dry air.", Formula: "q = h_2 - h_1", Values: numbers{"h_1": in.Enthalpy() / 1000, "h_2": out.Enthalpy() / 1000}, Value: (out.Enthalpy() - in.Enthalpy()) / 1000, Unit: "kJ/kg"},
		{Says: "Deficit of the air afterwards.", Formula: "D = (1 - φ_2) e_2", Values: numbers{"φ_2": out.RelativeHumidity(), "e_2": out.SaturationVapourPressure()}, Value: out.VapourPressureDeficit(), Unit: "Pa", Within: 1e-6, Why: "rounding"},
	}
	r.Lines = []string{
		fmt.Sprintf("%g °C and %.0f %% become %g °C and %.1f %%%s", v[0], 100*v[1], v[2], 100*out.RelativeHumidity(), said(warmedGiven(), v, " (source 56)")),
		fmt.Sprintf("dew point %.2f °C before, %.2f °C after; deficit %.0f Pa, then %.0f Pa", in.DewPoint(), out.DewPoint(), in.VapourPressureDeficit(), out.VapourPressureDeficit()),
	}
	r.Printed = "56 per cent, rounded between °F and °C."
	r.Picture, err = airChart("Heating on the chart", "A level line to the right: the relative humidity falls, the humidity ratio stays.", "Drier to the plant, with as much water as before: only a vent or a cold face takes it out.", 101325, airOf("before", in), airOf("after", out))
	return r, err
}
