package ventilation_test

import (
	"fmt"

	"cloche.example/ventilation"
)

// One and the same shade, half of the light let through, in three places over
// a single cover: the light inside is the same, the heat is not.
func Example_shading() {
	s := ventilation.Shade{
		Layer: ventilation.Optics{Transmittance: 0.50, Reflectance: 0.25}, Drawn: 1,
		Cover: ventilation.Optics{Transmittance: 0.80, Reflectance: 0.10}, U: 5.8, Outside: 23,
	}
	fmt.Println("place            light in  reflected  to outside  heat in  of the bare house's")
	for place, name := range []string{"screen outside", "whitewash", "screen inside"} {
		s.Place = ventilation.ShadePlace(place)
		b, err := s.Balance()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-15s  %8.3f  %9.3f  %10.3f  %7.3f  %6.3f\n", name, b.Transmitted, b.Reflected, b.ToOutside, b.Transmitted+b.CoverInward+b.ShadeInward, b.InwardFactor)
	}
	// Output:
	// place            light in  reflected  to outside  heat in  of the bare house's
	// screen outside      0.410      0.276       0.301    0.423   0.513
	// whitewash           0.410      0.276       0.235    0.489   0.593
	// screen inside       0.410      0.264       0.090    0.646   0.783
}
