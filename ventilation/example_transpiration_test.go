package ventilation_test

import (
	"fmt"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// An hour by rival equations: reference surfaces outdoors (the first hour of ASCE's
// appendix C prints 0.61 and 0.82 mm), and a crop inside with coefficients of its own,
// here invented.
func Example_rivalsOfAnHour() {
	g := ventilation.Grass{Temperature: 30.9, Saturation: psychro.FAO56Saturation(30.9), Vapour: 1090, Net: 1.440e6, Wind: 3.74, Pressure: 85170}
	for _, surface := range []ventilation.ASCEReference{ventilation.ShortReference, ventilation.TallReference} {
		e, err := surface.Hour(g)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("ASCE, %-5v       %.3f mm\n", surface, e.ETo)
	}
	g.Soil = 0.1 * g.Net
	fao, err1 := g.Hour()
	alone, err2 := g.PriestleyTaylor(1.26)
	inside, err3 := ventilation.SunAndDeficit{A: 0.5, B: 0.025, Extinction: 0.64, LAI: 3}.Solve(400, 1000)
	for _, err := range []error{err1, err2, err3} {
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	fmt.Printf("FAO56             %.3f mm\n", fao.ETo)
	fmt.Printf("radiation alone   %.3f mm\n", alone)
	fmt.Printf("a crop inside     %.0f W/m² by sun, %.0f by deficit, %.3f mm\n", inside.BySun, inside.ByDeficit, 3600*inside.Transpired)
	// Output:
	// ASCE, short       0.612 mm
	// ASCE, tall        0.821 mm
	// FAO56             0.579 mm
	// radiation alone   0.545 mm
	// a crop inside     171 W/m² by sun, 75 by deficit, 0.361 mm
}
