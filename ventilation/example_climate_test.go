package ventilation_test

import (
	"fmt"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// What a controller asks of an invented house on a spring morning: the heat that
// holds 18 °C, how far to open for 24 °C, or for a vapour deficit that suits the
// crop, and by which vent the air then comes in.
func Example_heatAndVents() {
	vents, err1 := ventilation.NewNetwork([]ventilation.Opening{
		{Name: "side", Height: 0.7, Area: 3.8, Discharge: 0.62},
		{Name: "ridge", Height: 2.9, Area: 2.8, Discharge: 0.60},
	}, []ventilation.Leak{{Height: 1.5, Flow: 0.02, Exponent: 0.65}}, nil)
	house, err2 := ventilation.NewClimate(ventilation.ClimateHouse{
		FloorArea: 95, Volume: 275, Cover: ventilation.DefaultSimpleCover(186), Floor: ventilation.DefaultFloorSurface(), Crop: ventilation.DefaultCanopy(2.5), Air: vents,
	})
	dawn, err3 := psychro.FromRelativeHumidity(4, 0.85, 97300)
	noon, err4 := psychro.FromRelativeHumidity(17, 0.50, 97300)
	early := ventilation.Weather{Air: dawn, Wind: 1, Sky: -8, Ground: 11}
	late := ventilation.Weather{Air: noon, Sun: 600, Wind: 1, Sky: 2, Ground: 12}
	warm, err5 := house.HeatFor(early, ventilation.Setting{}, 18)
	open, err6 := house.OpeningForTemperature(late, ventilation.Setting{}, 24)
	dry, err7 := house.OpeningForDeficit(late, ventilation.Setting{}, 800, 1000)
	paths, err8 := house.PathsTo(nil, late, ventilation.Setting{Opening: open.Opening}, open.State)
	for _, err := range []error{err1, err2, err3, err4, err5, err6, err7, err8} {
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	fmt.Printf("before sunrise   %.1f kW hold 18 °C; %.1f kg/h condense on the cover\n", warm.Heat/1000, 3600*warm.Condensed)
	fmt.Printf("water            %.2f kg/h become vapour, %.2f kg/h leave the air\n", 3600*warm.WaterIn, 3600*warm.WaterOut)
	fmt.Printf("24 °C at noon    vents open %.0f %%: %.1f °C, %.0f air changes an hour\n", 100*open.Opening, open.State.Temperature, open.State.AirChanges)
	fmt.Printf("                 in by the side %.2f kg/s, out by the ridge %.2f kg/s\n", paths[0].In, paths[1].Out)
	fmt.Printf("800 to 1000 Pa   met %v with the vents open %.0f %%: %.0f Pa at %.1f °C\n", dry.Met, 100*dry.Opening, dry.State.Deficit, dry.State.Temperature)
	// Output:
	// before sunrise   14.7 kW hold 18 °C; 2.3 kg/h condense on the cover
	// water            2.27 kg/h become vapour, 2.27 kg/h leave the air
	// 24 °C at noon    vents open 27 %: 24.0 °C, 6 air changes an hour
	//                  in by the side 0.49 kg/s, out by the ridge 0.49 kg/s
	// 800 to 1000 Pa   met true with the vents open 1 %: 1000 Pa at 31.7 °C
}
