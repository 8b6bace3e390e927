package ventilation_test

import (
	"fmt"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Transpiration of a crop in given air two ways: leaves whose own temperature
// closes their balance, and Penman-Monteith with the resistances and the net
// radiation of those leaves.
func Example_transpiration() {
	air, err := psychro.FromRelativeHumidity(25, 0.60, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	crop := ventilation.DefaultCanopy(2.5)
	s, err := crop.Solve(air, 400, 25, 0.8)
	if err != nil {
		fmt.Println(err)
		return
	}
	leaf := 2 * crop.LAI
	big, err := ventilation.PenmanMonteith(air, s.Sun.Canopy-s.Longwave, s.Boundary/leaf, s.Stomata.Resistance/leaf)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("sun on the leaves        %.0f of 400 W/m²\n", s.Sun.Canopy)
	fmt.Printf("resistances on 2 LAI     %.0f s/m of the air, %.0f s/m of the stomata\n", s.Boundary, s.Stomata.Resistance)
	fmt.Printf("leaves                   %.2f °C, sensible %.0f W/m², latent %.0f W/m²\n", s.Temperature, s.Heat, s.Latent)
	fmt.Printf("Penman-Monteith          %.2f °C, sensible %.0f W/m², latent %.0f W/m²\n", big.Temperature, big.Heat, big.Latent)
	fmt.Printf("transpired               %.3f and %.3f kg/(m² h)\n", 3600*s.Transpired, 3600*big.Transpired)
	// Output:
	// sun on the leaves        224 of 400 W/m²
	// resistances on 2 LAI     230 s/m of the air, 355 s/m of the stomata
	// leaves                   25.52 °C, sensible 14 W/m², latent 206 W/m²
	// Penman-Monteith          25.52 °C, sensible 14 W/m², latent 206 W/m²
	// transpired               0.304 and 0.304 kg/(m² h)
}
