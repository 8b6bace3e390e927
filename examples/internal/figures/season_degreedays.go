package figures

import (
	"fmt"

	"cloche.example/airheat"
)

func degreeDays() Figure {
	return Figure{
		Name: "degree-days", Title: "A year of heat by degree-days", Subject: "season", Package: "airheat",
		Question: "A building loses 133.7 kW when it is 21 K warmer than outside. What does a year of 2186 degree-days take?",
		Source:   "MurMck03 (W. R. Murphy, G. McKay, Energy Management), example 9.5",
		Sketch:   "Loss for each kelvin, times the kelvins of all days together, times the share of the day that is heated.",
		Given:    degreeDaysGiven(),
		Assumes:  []string{"Sun and people bring the rest up to the set-point: the base of the degree-days already counts them."},
		Change:   []string{"Heat all day: the share becomes 1 and the energy a fifth more.", "A base lower by 1 K takes one degree-day off each day of the season."},
		Code:     "solveDegreeDays",
		Solve:    solveDegreeDays,
	}
}

func degreeDaysGiven() []Given {
	return []Given{
		{"Q", "loss at the difference", "W", 133.7e3, 1e3, 1e7},
		{"ΔT", "that difference", "K", 21, 5, 50},
		{"D", "degree-days of the year", "K d", 2186, 100, 7000},
		{"f", "share for heating in part of the day", "fraction", 0.82, 0.1, 1},
	}
}

func solveDegreeDays(v []float64) (r Result, err error) {
	loss := v[0] / v[1]
	energy := airheat.DegreeDayEnergy(loss, v[2], v[3])
	r.Lines = []string{fmt.Sprintf("%.0f W/K and %g K d take %.0f GJ, %.0f MWh%s", loss, v[2], energy/1e9, energy/3.6e9, said(degreeDaysGiven(), v, "   source prints 986 GJ"))}
	r.Printed = "986 GJ."
	r.Steps = []Step{
		{Says: "Loss for each kelvin.", Formula: "H = Q/ΔT", Values: numbers{"Q": v[0], "ΔT": v[1]}, Value: loss, Unit: "W/K"},
		{Says: "A day has 86400 s.", Formula: "E = 86400 f H D/1e9", Source: "MurMck03 example 9.5", Values: numbers{"f": v[3], "H": loss, "D": v[2]}, Value: energy / 1e9, Unit: "GJ"},
	}
	r.Picture, err = chart{title: "Energy over the degree-days", says: "A straight line from nought.", x: "degree-days, K d", y: "energy, MWh", zero: true,
		curves: []curve{{"", along(0, 1.5*v[2], 10, func(d float64) float64 { return airheat.DegreeDayEnergy(loss, d, v[3]) / 3.6e9 })}},
		marks:  []mark{{"this year", v[2], energy / 3.6e9}}}.picture("Degree-days make a year one number; what the sun of each hour does, they cannot say.")
	return r, err
}
