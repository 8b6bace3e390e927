package figures

import (
	"fmt"
	"math"

	"cloche.example/airheat"
	"cloche.example/psychro"
)

func sweatingDuct() Figure {
	return Figure{
		Name: "sweating-duct", Title: "A duct that sweats inside", Subject: "ducts and fans", Package: "airheat", Example: "Example_sweatingDuct",
		Question: "Humid air runs through a duct in a cold shed. Where does its wall get wet, and how much water is that?",
		Sketch:   "A duct of 0.3 m, 10 m long, through a shed of -5 °C.",
		Given: []Given{
			{"t", "air at the inlet", "°C", 22, 5, 40},
			{"φ", "its relative humidity", "fraction", 0.85, 0.1, 1},
			{"t_s", "air in the shed", "°C", -5, -20, 5},
			{"U", "from the air inside through the wall to the shed", "W/(m² K)", 6, 0.5, 6.5},
			{"v", "speed", "m/s", 4, 2, 15},
		},
		Assumes: []string{"Lewis number 1 at the wet wall; the film inside by Petukhov's formula."},
		Change:  []string{"Insulate the duct to 0.5 W/(m² K): the wall comes above the dew point and stays dry."},
		Code:    "solveSweatingDuct",
		Solve:   solveSweatingDuct,
	}
}

func solveSweatingDuct(v []float64) (res Result, err error) {
	in, err := psychro.IdealGas.FromRelativeHumidity(v[0], v[1], 101325)
	if err != nil {
		return res, err
	}
	const diameter = 0.3 // m
	speed := v[4]
	re := speed * diameter * in.Density() / in.Viscosity()
	film := airheat.DuctNusselt(re, 0.71) * in.Conductivity() / diameter
	solve := func(u float64) (airheat.DuctDew, error) {
		duct := airheat.Duct{Section: airheat.Round(diameter), Length: 10, HeatTransfer: u}
		return duct.Dew(film, speed*duct.Section.Area()/in.SpecificVolume(), in, v[2])
	}
	r, err := solve(v[3])
	if err != nil {
		return res, err
	}
	wet := "dry all along"
	if !math.IsNaN(r.WetFrom) {
		wet = fmt.Sprintf("wet from %.1f m on", r.WetFrom)
	}
	res.Lines = []string{
		fmt.Sprintf("film inside   %.1f W/(m² K) at Re %.0f", film, re),
		fmt.Sprintf("air           %.1f to %.1f °C, wall down to %.1f °C, dew point %.1f °C", v[0], r.Outlet, r.ColdestWall, r.DewPoint),
		fmt.Sprintf("water         %.2f kg/h, %s, frost %t", 3600*r.Water, wet, r.Frost),
	}
	f8 := 1 / (8 * math.Pow(1.82*math.Log10(re)-1.64, 2))
	nu := airheat.DuctNusselt(re, 0.71)
	res.Steps = []Step{
		{Says: "Reynolds number.", Formula: "Re = v D ρ/μ", Values: numbers{"v": speed, "D": diameter, "ρ": in.Density(), "μ": in.Viscosity()}, Value: re, Figures: 5},
		{Says: "Nusselt number; c is an eighth of the friction factor of a smooth duct.", Formula: "Nu = c Re Pr/(1.07 + 12.7 sqrt(c) (Pr^(2/3) - 1))", Source: "Pet70", Values: numbers{"c": f8, "Re": re, "Pr": 0.71}, Value: nu, Within: 1e-3, Why: "the constant 1.07 is rounded"},
		{Says: "Film inside.", Formula: "h = Nu k/D", Values: numbers{"Nu": nu, "k": in.Conductivity(), "D": diameter}, Value: film, Unit: "W/(m² K)"},
		{Says: "Inside of the wall at the inlet, were it dry.", Formula: "t_w = t - U/h (t - t_s)", Values: numbers{"t": v[0], "U": v[3], "h": film, "t_s": v[2]}, Value: v[0] - v[3]/film*(v[0]-v[2]), Unit: "°C"},
		{Says: "Dew point of the air: what is colder gets wet.", Symbol: "t_d", Value: r.DewPoint, Unit: "°C"},
		{Says: "Water along the whole duct; its heat keeps the wall warmer than dry.", Symbol: "m", Source: "balances of heat and water, in cells", Value: 3600 * r.Water, Unit: "kg/h"},
	}
	res.Picture, err = chart{title: "Water over the insulation", says: "The water rises with the heat that the wall lets through; below some value the duct stays dry.", x: "through the wall, W/(m² K)", y: "water, kg/h", zero: true,
		curves: []curve{{"", along(0.2, math.Min(10, 0.95*film), 40, func(u float64) float64 {
			d, err := solve(u)
			if err != nil {
				return math.NaN()
			}
			return 3600 * d.Water
		})}}, marks: []mark{{"here", v[3], 3600 * r.Water}}}.picture("Insulation that keeps the wall above the dew point keeps it dry.")
	return res, err
}
