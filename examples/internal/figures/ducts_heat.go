package figures

import (
	"fmt"
	"math"

	"cloche.example/airheat"
)

func ductHeat() Figure {
	return Figure{
		Name: "duct-heat", Title: "Air that warms on its way", Subject: "ducts and fans", Package: "airheat",
		Question: "Cool air runs slowly through a duct in a warm room. How warm is it at the end?",
		Source:   "J. H. Lienhard, A Heat Transfer Textbook, example 7.6, as a companion to it works it",
		Sketch:   "A duct of 0.3 m, 15 m long: a film of air inside, the wall, a film outside of 5 W/(m² K).",
		Given:    ductHeatGiven(),
		Assumes:  []string{"Petukhov's formula for the film inside, properties of the air at 290 K as the source takes them."},
		Change:   []string{"Twice the speed: the film is better, yet the air has less time and ends cooler."},
		Code:     "solveDuctHeat",
		Solve:    solveDuctHeat,
	}
}

func ductHeatGiven() []Given {
	return []Given{
		{"v", "speed", "m/s", 1, 0.6, 20},
		{"t_1", "air at the inlet", "°C", 17, -10, 30},
		{"t_a", "air around the duct", "°C", 37, -10, 60},
		{"L", "length", "m", 15, 1, 100},
		{"h_o", "film outside", "W/(m² K)", 5, 0.5, 25},
	}
}

func solveDuctHeat(v []float64) (r Result, err error) {
	const diameter, viscosity, conductivity, prandtl = 0.3, 1.578e-5, 0.02623, 0.713
	air := airheat.AirProperties{Density: 1.217, Viscosity: 1.9e-5, HeatCapacity: 1007}
	re := v[0] * diameter / viscosity
	nu := airheat.DuctNusselt(re, prandtl)
	film := nu * conductivity / diameter
	u := 1 / (1/film + 1/v[4])
	area := math.Pi / 4 * diameter * diameter
	outlet := func(length float64) float64 {
		d := airheat.Duct{Section: airheat.Round(diameter), Length: length, HeatTransfer: u}
		h, err := d.Heat(v[0]*area, v[1], v[2], air)
		if err != nil {
			return math.NaN()
		}
		return h.Outlet
	}
	end := outlet(v[3])
	r.Lines = []string{
		fmt.Sprintf("film inside  %.3f W/(m² K)%s", film, said(ductHeatGiven(), v, "   source prints 4.371")),
		fmt.Sprintf("air          %g to %.3f °C after %g m%s", v[1], end, v[3], said(ductHeatGiven(), v, "   source prints 23.331")),
	}
	r.Printed = "4.371 W/(m² K), 2.8 per cent above what its own formula gives, and from that an outlet of 23.331 °C."
	r.Steps = []Step{
		{Says: "Reynolds number.", Formula: "Re = v D/ν", Values: numbers{"v": v[0], "D": diameter, "ν": viscosity}, Value: re, Figures: 5},
		{Says: "Nusselt number.", Symbol: "Nu", Source: "Pet70", Value: nu},
		{Says: "Film inside.", Formula: "h_i = Nu λ/D", Values: numbers{"Nu": nu, "λ": conductivity, "D": diameter}, Value: film, Unit: "W/(m² K)"},
		{Says: "Both films in a row.", Formula: "U = 1/(1/h_i + 1/h_o)", Values: numbers{"h_i": film, "h_o": v[4]}, Value: u, Unit: "W/(m² K)"},
		{Says: "The difference to the room dies out along the duct.", Formula: "t_2 = t_a - (t_a - t_1) exp(-4 U L/(ρ c v D))", Values: numbers{"t_a": v[2], "t_1": v[1], "U": u, "L": v[3], "ρ": air.Density, "c": air.HeatCapacity, "v": v[0], "D": diameter}, Value: end, Unit: "°C", Figures: 5},
	}
	r.Picture, err = chart{title: "Air along the duct", says: "A curve that nears the room's temperature along the duct.", x: "along the duct, m", y: "air, °C",
		curves: []curve{{"", along(0, 2*v[3], 60, outlet)}}, marks: []mark{{"end", v[3], end}}}.picture("Each stretch of duct takes the same share of what is left.")
	return r, err
}
