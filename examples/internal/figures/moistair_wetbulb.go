package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func wetBulb() Figure {
	return Figure{
		Name: "wet-bulb", Title: "From two thermometers to humidity", Subject: "moist air", Package: "psychro",
		Question: "One thermometer is dry, the other sits in a wet wick. How moist is the air?",
		Source:   "P. K. Nag, Basic and Applied Thermodynamics, example 15.2",
		Sketch:   "The wick cools until the heat that it takes from the air is just what its evaporating water carries away.",
		Given:    wetBulbGiven(),
		Assumes:  []string{"The ideal form of moist air; air moves past the wick at a few metres a second, no radiation falls on it."},
		Change:   []string{"Bring the bulbs together: at no difference the air is saturated.", "A lower pressure at the same two readings means moister air."},
		Code:     "solveWetBulb",
		Solve:    solveWetBulb,
	}
}

func wetBulbGiven() []Given {
	return []Given{
		{"t", "dry bulb", "°C", 30, 1, 60},
		{"t_w", "wet bulb", "°C", 20, 1, 40},
		{"p", "pressure", "Pa", 100e3, 60e3, 110e3},
	}
}

func solveWetBulb(v []float64) (r Result, err error) {
	t, tw, p := v[0], v[1], v[2]
	s, err := psychro.IdealGas.FromWetBulb(t, tw, p)
	if err != nil {
		return r, err
	}
	bulb, err := psychro.IdealGas.FromRelativeHumidity(tw, 1, p)
	if err != nil {
		return r, err
	}
	pw, ps := s.VapourPressure(), s.SaturationVapourPressure()
	r.Steps = []Step{
		{Says: "Saturation pressure at the wet bulb.", Symbol: "p_w", Source: "HoF17 ch. 1 eq. 6", Value: bulb.VapourPressure(), Unit: "Pa"},
		{Says: "Humidity ratio of air saturated there.", Formula: "W_s = 0.621945 p_w/(p - p_w)", Source: "HoF17 ch. 1 eq. 21", Values: numbers{"p_w": bulb.VapourPressure(), "p": p}, Value: bulb.HumidityRatio(), Unit: "kg/kg", Figures: 5, Within: 1e-5, Why: "the factor is rounded"},
		{Says: "Humidity ratio of the air: drier by what the wick gave off.", Formula: "W = ((2501 - 2.326 t_w) W_s - 1.006 (t - t_w))/(2501 + 1.86 t - 4.186 t_w)", Source: "HoF17 ch. 1 eq. 33", Values: numbers{"t": t, "t_w": tw, "W_s": bulb.HumidityRatio()}, Value: s.HumidityRatio(), Unit: "kg/kg", Figures: 5, Within: 2e-3, Why: "the handbook rounds the enthalpies in its equation"},
		{Says: "Its vapour pressure.", Formula: "e = p W/(0.621945 + W)", Source: "HoF17 ch. 1 eq. 20", Values: numbers{"p": p, "W": s.HumidityRatio()}, Value: pw, Unit: "Pa", Within: 1e-5, Why: "the factor is rounded"},
		{Says: "Relative humidity.", Formula: "φ = e/e_s", Source: "HoF17 ch. 1 eq. 22", Values: numbers{"e": pw, "e_s": ps}, Value: s.RelativeHumidity()},
	}
	r.Lines = []string{fmt.Sprintf("dry %g °C, wet %g °C, %g Pa: W %.6f kg/kg%s, relative humidity %.1f %%", t, tw, p, s.HumidityRatio(), said(wetBulbGiven(), v, " (source 0.010722)"), 100*s.RelativeHumidity())}
	r.Printed = "0.010722 kg/kg, from steam tables."
	r.Picture, err = airChart("From the wet bulb to the air", "From the wet bulb on the saturation curve down along a slanted line to the dry bulb.", "Along the line of the wet bulb, evaporating water trades warmth for humidity.", p, airOf("wet bulb", bulb), airOf("the air", s))
	return r, err
}
