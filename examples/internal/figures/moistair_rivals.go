package figures

import (
	"fmt"
	"math"

	"cloche.example/psychro"
)

func rivals() Figure {
	return Figure{
		Name: "rivals", Title: "Saturation by four formulas", Subject: "moist air", Package: "psychro", Example: "Example_rivals",
		Question: "The handbooks give different formulas for saturation. How far do they lie apart?",
		Given: []Given{
			{"t", "temperature for the steps", "°C", 20, 1, 59},
			{"p", "pressure", "Pa", 101325, 70e3, 110e3},
		},
		Assumes: []string{"Over liquid water. The measure is the IAPWS line; the last column says what leaving out the enhancement factor costs."},
		Change:  []string{"Any temperature: the choice of a formula counts for less than the enhancement factor that many leave out."},
		Code:    "solveRivals",
		Solve:   solveRivals,
	}
}

func solveRivals(v []float64) (r Result, err error) {
	t0, p := v[0], v[1]
	off := func(v, ps float64) float64 { return 100 * (v/ps - 1) }
	hyland := func(t float64) float64 {
		return off(psychro.HylandWexler(psychro.Liquid, t), psychro.SaturationPressure(t))
	}
	fao := func(t float64) float64 { return off(psychro.FAO56Saturation(t), psychro.SaturationPressure(t)) }
	wmo := func(t float64) float64 {
		return off(psychro.WMOMagnus(psychro.Liquid, t), psychro.SaturationPressure(t))
	}
	none := func(t float64) float64 { return off(1/psychro.EnhancementFactor(t, p), 1) }
	r.Lines = []string{"   °C        Pa  Hyland-Wexler     FAO56       WMO   no factor"}
	for _, t := range []float64{1, 10, 20, 30, 40, 50} {
		r.Lines = append(r.Lines, fmt.Sprintf("%5.0f  %8.2f  %13.3f  %8.3f  %8.3f  %10.3f", t, psychro.SaturationPressure(t), hyland(t), fao(t), wmo(t), none(t)))
	}
	r.Lines = append(r.Lines, fmt.Sprintf("enhancement factor at %.0f Pa: %.5f by [WMO08] at any temperature, %.5f at %g °C", p, psychro.WMOEnhancement(p), psychro.EnhancementFactor(t0, p), t0))
	r.Steps = []Step{
		{Says: "The measure: the industrial formulation's saturation line.", Symbol: "p_s", Source: "IapwsIF07 eq. 30", Value: psychro.SaturationPressure(t0), Unit: "Pa", Figures: 6},
		{Says: "Hyland and Wexler: five powers of the absolute temperature and its logarithm.", Symbol: "p_s", Source: "HoF17 ch. 1 eq. 6", Value: psychro.HylandWexler(psychro.Liquid, t0), Unit: "Pa", Figures: 6},
		{Says: "The evapotranspiration paper.", Formula: "p_s = 610.8 exp(17.27 t/(t + 237.3))", Source: "FAO56 eq. 11", Values: numbers{"t": t0}, Value: psychro.FAO56Saturation(t0), Unit: "Pa", Figures: 6},
		{Says: "The weather services.", Formula: "p_s = 611.2 exp(17.62 t/(243.12 + t))", Source: "WMO08 annex 4.B", Values: numbers{"t": t0}, Value: psychro.WMOMagnus(psychro.Liquid, t0), Unit: "Pa", Figures: 6},
		{Says: "The enhancement factor: saturated air holds more vapour than pure water would give.", Symbol: "f", Source: "HylWex83 eq. 18", Value: psychro.EnhancementFactor(t0, p), Figures: 6},
	}
	curves := []curve{{"Hyland-Wexler", along(1, 60, 59, hyland)}, {"FAO56", along(1, 60, 59, fao)}, {"WMO", along(1, 60, 59, wmo)}, {"no factor", along(1, 60, 59, none)}}
	r.Picture, err = chart{title: "Differences from the IAPWS line", says: fmt.Sprintf("Four lines over temperature; at %g °C the furthest lies %.2f per cent off.", t0, math.Abs(none(t0))), x: "temperature, °C", y: "difference, %", curves: curves}.picture("All formulas lie closer together than the step that many leave out.")
	return r, err
}
