package airheat_test

import (
	"fmt"

	"cloche.example/airheat"
	"cloche.example/envelope"
)

// An invented house of 90 m² is opened for three nights of −8 °C with days of
// −1 °C: when the air and the soil surface first fall below their limits, how
// long they stay there, how deep the frost goes, and what the water in the soil
// holds back.
func Example_freezeOut() {
	open := airheat.FreezeOut{
		Nodes: envelope.Nodes{
			AirCapacity: 4.2e5, StructureCapacity: 2.6e6, SoilCapacity: 1, // J/K
			Cover: 640, Leakage: 2500, AirStructure: 780, StructureOutside: 35, SoilDeep: 1, // W/K
		},
		Soil: airheat.DefaultSoilColumn(90), WetAir: 250, Deep: 7, Start: 5, AirLimit: -4, SoilLimit: -1,
		Outside: make([]float64, 72),
	}
	for h := range open.Outside {
		open.Outside[h] = -8
		if h%24 >= 14 { // 14 hours of night from the start on, then 10 of day
			open.Outside[h] = -1
		}
	}
	dry := open
	dry.Soil.Water = 0
	for _, f := range []airheat.FreezeOut{open, dry} {
		c, err := f.Solve()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("soil with %.0f kg/m³ of water\n", f.Soil.Water)
		fmt.Printf("  air      below %g °C after %.2f h, %.1f h in all, lowest %.1f °C\n", f.AirLimit, c.AirFirst.Hours(), c.AirBelow.Hours(), c.LowestAir)
		if c.SurfaceFirst == airheat.Forever {
			fmt.Printf("  surface  never below %g °C, lowest %.1f °C\n", f.SoilLimit, c.LowestSoil)
		} else {
			fmt.Printf("  surface  below %g °C after %.2f h, %.1f h in all, lowest %.1f °C\n", f.SoilLimit, c.SurfaceFirst.Hours(), c.SurfaceBelow.Hours(), c.LowestSoil)
		}
		fmt.Printf("  frost to %.3f m, %.1f kWh went\n", c.FrostDepth, c.Released/3.6e6)
	}
	fmt.Println(airheat.FreezeCaution)
	// Output:
	// soil with 200 kg/m³ of water
	//   air      below -4 °C after 0.13 h, 41.9 h in all, lowest -7.0 °C
	//   surface  never below -1 °C, lowest -0.8 °C
	//   frost to 0.026 m, 149.2 kWh went
	// soil with 0 kg/m³ of water
	//   air      below -4 °C after 0.13 h, 41.9 h in all, lowest -7.3 °C
	//   surface  below -1 °C after 8.27 h, 40.2 h in all, lowest -3.3 °C
	//   frost to 0.250 m, 101.4 kWh went
	// Before a house is opened to the frost, drain pipes, tanks and heaters, and take out what must not freeze. Cold that kills one pest spares another: the species, its stage and how dry it is decide. This model gives temperatures only.
}
