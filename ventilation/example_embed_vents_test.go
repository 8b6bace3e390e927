package ventilation_test

import (
	"errors"
	"fmt"

	"cloche.example/ventilation"
)

// How much vent keeps an invented house of 6 by 15 m within 4 K of 28 °C
// outside, at noon with 700 W/m², calm and with wind: 70 % of the sun comes in,
// half of it evaporates water.
func Example_ventsForSummerNoon() {
	const shelter, across = ventilation.SemiSheltered, 180 // the ridge vent opens to the lee
	south, err1 := ventilation.TallVent{Name: "south wall", Bottom: 0.4, Top: 1.2, Width: 12, Discharge: 0.6, PressureCoefficient: shelter.Coefficient(ventilation.WindFaceWall, 0)}.Opening()
	north, err2 := ventilation.TallVent{Name: "north wall", Bottom: 0.4, Top: 1.2, Width: 12, Discharge: 0.6, PressureCoefficient: shelter.Coefficient(ventilation.WindFaceWall, across)}.Opening()
	ridge, err3 := ventilation.RidgeVent{Length: 12, Depth: 0.8, Pitch: 25, Ridge: 3.2, Angle: 35}.
		Opening(ventilation.FlapGeometry, 0.6, shelter.Coefficient(ventilation.WindFaceMidRoof, across))
	vents, err4 := ventilation.NewNetwork([]ventilation.Opening{south, north, ridge}, nil, nil)
	if err := errors.Join(err1, err2, err3, err4); err != nil {
		fmt.Println(err)
		return
	}
	load := ventilation.Load{Solar: 0.70 * 700 * 6 * 15, Transpired: 0.5, Loss: 6.5 * 170}
	for _, wind := range []float64{0, 1, 3} {
		need, err := vents.AreaForRise(load, ventilation.Outdoors{Temperature: 28, Pressure: 101325, Wind: wind}, 4)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f m/s: %.1f m² of vent, %.2f times these, for %.2f m³/s in and %.2f out\n", wind, need.Area, need.Factor, need.Volume, need.Air.VolumeOut)
	}
	// Output:
	// 0 m/s: 43.6 m² of vent, 1.51 times these, for 3.74 m³/s in and 3.79 out
	// 1 m/s: 22.9 m² of vent, 0.79 times these, for 3.74 m³/s in and 3.79 out
	// 3 m/s: 8.0 m² of vent, 0.28 times these, for 3.74 m³/s in and 3.79 out
}
