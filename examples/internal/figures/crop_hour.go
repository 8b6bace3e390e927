package figures

import (
	"errors"
	"fmt"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func rivalsOfAnHour() Figure {
	return Figure{
		Name: "rival-hours", Title: "An hour's water by rival equations", Subject: "moisture and crop", Package: "ventilation", Example: "Example_rivalsOfAnHour",
		Question: "A hot, windy hour in dry country. How much water does it take by published equations that differ in their surface, and by one that knows radiation alone?",
		Source:   "Asce05, appendix C, first hour, as open libraries carry it",
		Sketch:   "The same hour over clipped grass, over lucerne half a metre tall, and for comparison a crop inside, where there is no wind to speak of.",
		Given: []Given{
			{"t", "air", "°C", 30.9, 0, 45},
			{"e", "its vapour pressure", "Pa", 1090, 100, 4000},
			{"R_n", "net radiation of the hour", "MJ/m²", 1.44, 0.01, 3},
			{"u_2", "wind at 2 m", "m/s", 3.74, 0, 15},
			{"p", "pressure", "Pa", 85170, 65000, 105000},
		},
		Assumes: []string{"An hour of daylight; a tenth of the net radiation goes into the ground under grass, 4 % under lucerne. The crop inside: 400 W/m², a deficit of 1,000 Pa, LAI 3 and coefficients of our own, invented, since those of a crop must be fitted."},
		Change:  []string{"No wind: the surfaces come together, and radiation alone says more than any of them."},
		Code:    "solveRivalsOfAnHour",
		Solve:   solveRivalsOfAnHour,
	}
}

func solveRivalsOfAnHour(v []float64) (r Result, err error) {
	g := ventilation.Grass{Temperature: v[0], Saturation: psychro.FAO56Saturation(v[0]), Vapour: v[1], Net: 1e6 * v[2], Wind: v[3], Pressure: v[4]}
	if g.Vapour > g.Saturation {
		return r, fmt.Errorf("its vapour pressure: %g Pa is more than the %.0f Pa that saturate air of %g °C", v[1], g.Saturation, v[0])
	}
	short, err1 := ventilation.ShortReference.Hour(g)
	tall, err2 := ventilation.TallReference.Hour(g)
	g.Soil = 0.1 * g.Net
	fao, err3 := g.Hour()
	alone, err4 := g.PriestleyTaylor(1.26)
	inside, err5 := ventilation.SunAndDeficit{A: 0.5, B: 0.025, Extinction: 0.64, LAI: 3}.Solve(400, 1000)
	if err := errors.Join(err1, err2, err3, err4, err5); err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("ASCE, %-5v       %.3f mm", ventilation.ShortReference, short.ETo),
		fmt.Sprintf("ASCE, %-5v       %.3f mm", ventilation.TallReference, tall.ETo),
		fmt.Sprintf("FAO56             %.3f mm", fao.ETo),
		fmt.Sprintf("radiation alone   %.3f mm", alone),
		fmt.Sprintf("a crop inside     %.0f W/m² by sun, %.0f by deficit, %.3f mm", inside.BySun, inside.ByDeficit, 3600*inside.Transpired),
	}
	r.Printed = "0.61 mm over grass and 0.82 mm over lucerne."
	under := func(e ventilation.ReferenceEvapotranspiration) float64 { return e.Slope + e.Psychro*e.Factor }
	of := func(e ventilation.ReferenceEvapotranspiration) numbers {
		return numbers{"t": v[0], "e": v[1], "R_n": v[2], "u_2": v[3], "e_s": g.Saturation, "Δ": e.Slope, "γ": e.Psychro, "N": under(e)}
	}
	r.Steps = []Step{
		{Says: "Saturation.", Formula: "e_s = 610.8 exp(17.27 t/(t + 237.3))", Source: "FAO56 eq. 11", Values: numbers{"t": v[0]}, Value: g.Saturation, Unit: "Pa"},
		{Says: "Its slope.", Formula: "Δ = 4098 e_s/(t + 237.3)^2", Source: "FAO56 eq. 13", Values: numbers{"t": v[0], "e_s": g.Saturation}, Value: short.Slope, Unit: "Pa/K"},
		{Says: "Psychrometric constant.", Formula: "γ = 0.000665 p", Source: "FAO56 eq. 8", Values: numbers{"p": v[4]}, Value: short.Psychro, Unit: "Pa/K"},
		{Says: "What divides both parts over clipped grass.", Formula: "N = Δ + γ (1 + 0.24 u_2)", Source: "Asce05 table 1", Values: of(short), Value: under(short), Unit: "Pa/K"},
		{Says: "Over clipped grass, by radiation and by wind and dryness.", Formula: "E_s = (0.408 Δ R_n 0.9 + γ 37/(t + 273) u_2 (e_s - e)/1000)/N", Source: "Asce05 eq. 1", Values: of(short), Value: short.ETo, Unit: "mm"},
		{Says: "The same over lucerne.", Formula: "N = Δ + γ (1 + 0.25 u_2)", Source: "Asce05 table 1", Values: of(tall), Value: under(tall), Unit: "Pa/K"},
		{Says: "Over lucerne.", Formula: "E_t = (0.408 Δ R_n 0.96 + γ 66/(t + 273) u_2 (e_s - e)/1000)/N", Source: "Asce05 eq. 1", Values: of(tall), Value: tall.ETo, Unit: "mm"},
		{Says: "Grass with the resistance of a whole day.", Formula: "N = Δ + γ (1 + 0.34 u_2)", Source: "FAO56 eq. 53", Values: of(fao), Value: under(fao), Unit: "Pa/K"},
		{Says: "Over that grass.", Formula: "E_f = (0.408 Δ R_n 0.9 + γ 37/(t + 273) u_2 (e_s - e)/1000)/N", Source: "FAO56 eq. 53", Values: of(fao), Value: fao.ETo, Unit: "mm"},
		{Says: "By radiation alone.", Formula: "E_r = 1.26 · 0.408 Δ R_n 0.9/(Δ + γ)", Source: "PriestleyT72, from memory", Values: of(short), Value: alone, Unit: "mm"},
		{Says: "The crop inside, by sun and deficit.", Formula: "E_i = 3600/2450000 (0.5 (1 - exp(-0.64 · 3)) 400 + 0.025 · 3 · 1000)", Source: "Baille94", Value: 3600 * inside.Transpired, Unit: "mm"},
	}
	r.Picture = bars("An hour's water by five equations", "Five bars: grass, lucerne, grass by the older equation, radiation alone, and a crop inside.", "%.3f mm", "The taller and rougher the surface, the more the wind takes.",
		bar{"grass, ASCE", short.ETo}, bar{"lucerne, ASCE", tall.ETo}, bar{"grass, FAO56", fao.ETo}, bar{"radiation alone", alone}, bar{"a crop inside", 3600 * inside.Transpired})
	return r, nil
}
