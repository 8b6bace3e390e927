package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// The deficit that a leaf feels is not the deficit of the air: a leaf in the
// shade is cooler than the air, one under lamps or sun warmer. Below the dew
// point the deficit is negative, and the leaf is wet.
func Example_leafDeficit() {
	s, err := psychro.FromRelativeHumidity(22, 0.75, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("air 22 °C, 75 %%: dew point %.1f °C, deficit %.0f Pa\n", s.DewPoint(), s.VapourPressureDeficit())
	for _, leaf := range []float64{16, 18, 20, 22, 24} {
		fmt.Printf("leaf %g °C: %5.0f Pa  wet: %v\n", leaf, s.VapourPressureDeficitAt(leaf), s.Condenses(leaf))
	}
	// Output:
	// air 22 °C, 75 %: dew point 17.4 °C, deficit 664 Pa
	// leaf 16 °C:  -166 Pa  wet: true
	// leaf 18 °C:    81 Pa  wet: false
	// leaf 20 °C:   357 Pa  wet: false
	// leaf 22 °C:   664 Pa  wet: false
	// leaf 24 °C:  1006 Pa  wet: false
}
