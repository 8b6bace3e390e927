package figures

import (
	"fmt"

	"cloche.example/airheat"
	"cloche.example/envelope"
)

func freezeOut() Figure {
	return Figure{
		Name: "freezing-out", Title: "A house opened to the frost", Subject: "warming and freezing", Package: "airheat", Example: "Example_freezeOut",
		Question: "A house stands open for three frosty nights. How deep does the frost go, and what does the water in the soil hold back?",
		Sketch:   "An invented house of 90 m², nights colder than days. Water that freezes gives off heat and slows the frost.",
		Given: []Given{
			{"t_n", "nights", "°C", -8, -20, 0},
			{"t_t", "days", "°C", -1, -10, 5},
			{"w", "water in the soil", "kg/m³", 200, 0, 400},
			{"t_b", "soil surface counted below", "°C", -1, -5, -0.1},
		},
		Assumes: []string{"14 hours of night and 10 of day, three times; a column of soil of the house's floor, air kept saturated by wet surfaces."},
		Change:  []string{"Dry soil lets the frost down ten times as deep: the water is the shelter."},
		Code:    "solveFreezeOut",
		Solve:   solveFreezeOut,
	}
}

func solveFreezeOut(v []float64) (r Result, err error) {
	open := airheat.FreezeOut{
		Nodes: envelope.Nodes{
			AirCapacity: 4.2e5, StructureCapacity: 2.6e6, SoilCapacity: 1, // J/K
			Cover: 640, Leakage: 2500, AirStructure: 780, StructureOutside: 35, SoilDeep: 1, // W/K
		},
		Soil: airheat.DefaultSoilColumn(90), WetAir: 250, Deep: 7, Start: 5, AirLimit: -4, SoilLimit: v[3],
		Outside: make([]float64, 72),
	}
	open.Soil.Water = v[2]
	for h := range open.Outside {
		open.Outside[h] = v[0]
		if h%24 >= 14 { // 14 hours of night from the start on, then 10 of day
			open.Outside[h] = v[1]
		}
	}
	dry := open
	dry.Soil.Water = 0
	var courses []airheat.FreezeCourse
	for _, f := range []airheat.FreezeOut{open, dry} {
		c, err := f.Solve()
		if err != nil {
			return r, err
		}
		courses = append(courses, c)
		r.Lines = append(r.Lines, fmt.Sprintf("soil with %.0f kg/m³ of water", f.Soil.Water))
		if c.AirFirst == airheat.Forever {
			r.Lines = append(r.Lines, fmt.Sprintf("  air      never below %g °C, lowest %.1f °C", f.AirLimit, c.LowestAir))
		} else {
			r.Lines = append(r.Lines, fmt.Sprintf("  air      below %g °C after %.2f h, %.1f h in all, lowest %.1f °C", f.AirLimit, c.AirFirst.Hours(), c.AirBelow.Hours(), c.LowestAir))
		}
		if c.SurfaceFirst == airheat.Forever {
			r.Lines = append(r.Lines, fmt.Sprintf("  surface  never below %g °C, lowest %.1f °C", f.SoilLimit, c.LowestSoil))
		} else {
			r.Lines = append(r.Lines, fmt.Sprintf("  surface  below %g °C after %.2f h, %.1f h in all, lowest %.1f °C", f.SoilLimit, c.SurfaceFirst.Hours(), c.SurfaceBelow.Hours(), c.LowestSoil))
		}
		r.Lines = append(r.Lines, fmt.Sprintf("  frost to %.3f m, %.1f kWh went", c.FrostDepth, c.Released/3.6e6))
	}
	r.Lines = append(r.Lines, airheat.FreezeCaution)
	wet := courses[0]
	r.Steps = []Step{
		{Says: "Heat that a cubic metre of this soil gives off while its water freezes.", Formula: "q = 333.6e3 w/3.6e6", Source: "heat of fusion, rounded", Values: numbers{"w": v[2]}, Value: 333.6e3 * v[2] / 3.6e6, Unit: "kWh/m³"},
		{Says: "Heat that went while the house stood open: the march through the hours, layer by layer.", Symbol: "E", Source: "heat contents with the latent heats", Value: wet.Released / 3.6e6, Unit: "kWh"},
		{Says: "Depth of frost in the wet soil.", Symbol: "z", Source: "layers counted by their frozen share", Value: wet.FrostDepth, Unit: "m"},
		{Says: "The same in dry soil of the same conductivity.", Symbol: "z_d", Value: courses[1].FrostDepth, Unit: "m"},
	}
	var hours []float64
	for h := range open.Outside {
		hours = append(hours, float64(h+1))
	}
	r.Picture, err = chart{title: "Three nights of frost", says: "The air follows the nights and days; the surface of the wet soil stays near nought, that of dry soil sinks well below.", x: "hours", y: "°C", curves: []curve{
		{"air", points(hours, wet.Air)}, {"wet surface", points(hours, wet.Surface)}, {"dry surface", points(hours, courses[1].Surface)},
	}}.picture("Water that freezes holds the surface just below nought.")
	return r, err
}
