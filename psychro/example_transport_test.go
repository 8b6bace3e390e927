package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// What carries heat, momentum and vapour: dry air by temperature alone, and
// saturated air. The Lewis factor hardly moves.
func Example_transport() {
	fmt.Println("   °C  viscosity Pa s  saturated   W/(m K)  saturated  vapour m²/s  Lewis factor")
	for _, t := range []float64{-10, 0, 15, 30, 60} {
		s, err := psychro.FromRelativeHumidity(t, 1, 101325)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%5.0f  %14.4g  %9.4g  %8.5f  %9.5f  %11.4g  %12.3f\n", t, psychro.Viscosity(t), s.Viscosity(),
			psychro.Conductivity(t), s.Conductivity(), psychro.VapourDiffusivity(t, 101325), s.LewisFactor())
	}
	// Output:
	// °C  viscosity Pa s  saturated   W/(m K)  saturated  vapour m²/s  Lewis factor
	//   -10       1.666e-05  1.664e-05   0.02334    0.02332    2.036e-05         0.896
	//     0       1.716e-05  1.711e-05   0.02414    0.02409    2.178e-05         0.897
	//    15       1.789e-05  1.774e-05   0.02533    0.02519    2.399e-05         0.897
	//    30       1.861e-05  1.822e-05   0.02650    0.02615     2.63e-05         0.892
	//    60       1.999e-05  1.812e-05   0.02879    0.02720     3.12e-05         0.850
}
