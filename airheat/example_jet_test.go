package airheat_test

import (
	"fmt"

	"cloche.example/airheat"
)

// A heater blows 0.25 m³/s, 25 K above the house, out of a level opening of
// 0.04 m²: throw, decay, and how far the warm jet rises.
func Example_jetThrow() {
	jet := airheat.DefaultJet(airheat.RoundJet)
	jet.Size = 0.2          // √0.04 m²
	jet.Speed = 0.25 / 0.04 // m/s
	jet.Excess, jet.House = 25, 15
	if err := jet.Check(); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("throw to 0.5 m/s  %6.2f m   K √A0 V0/V, K = %g\n", jet.Throw(0.5), jet.Velocity)
	fmt.Printf("Archimedes number %7.4f  g ΔT0 √A0/(T V0²)\n", jet.Archimedes())
	for _, x := range []float64{2, 4, 6} {
		h := jet.Height(x)
		fmt.Printf("at %g m: %5.2f m/s, %5.2f K, axis up by %5.2f to %5.2f m\n", x, jet.AxisSpeed(x), jet.AxisExcess(x), h.Least, h.Most)
	}
	fmt.Printf("inertia rules for %6.2f m\n", jet.ForcedLength())
	near, far := jet.Meets(1.8, 30)
	fmt.Printf("meets a film 1.8 m above after %.2f to %.2f m\n", near.Distance, far.Distance)
	// Output:
	// throw to 0.5 m/s   15.00 m   K √A0 V0/V, K = 6
	// Archimedes number  0.0044  g ΔT0 √A0/(T V0²)
	// at 2 m:  3.75 m/s, 12.50 K, axis up by  0.02 to  0.06 m
	// at 4 m:  1.88 m/s,  6.25 K, axis up by  0.16 to  0.45 m
	// at 6 m:  1.25 m/s,  4.17 K, axis up by  0.54 to  1.54 m
	// inertia rules for   1.61 m
	// meets a film 1.8 m above after 6.33 to 8.94 m
}
