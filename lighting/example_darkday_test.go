package lighting_test

import (
	"fmt"

	"cloche.example/lighting"
)

// A dark day in December: 2.1 MJ/m² falls outside, 62 % of its light reaches
// the bed, and lettuce wants 14 mol/(m² d). The lamps give 160 µmol/(m² s).
func Example_darkDay() {
	const (
		global        = 2.1e6 // J/(m² d)
		transmittance = 0.62
		target        = 14.0  // mol/(m² d)
		ppfd          = 160.0 // µmol/(m² s)
	)
	outside := lighting.OutdoorDLI(global, lighting.DaylightFaust)
	inside := lighting.InsideDLI(outside, transmittance)
	missing := lighting.Deficit(target, inside)
	run, err := lighting.LightingTime(missing, ppfd)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("outside  2.1 MJ x %.3f µmol/J = %.2f mol/(m² d)\n", lighting.DaylightFaust, outside)
	fmt.Printf("inside   x %.2f = %.2f mol/(m² d)\n", transmittance, inside)
	fmt.Printf("missing  %g - %.2f = %.2f mol/(m² d)\n", target, inside, missing)
	fmt.Printf("lamps    %.2f / (0.0036 x %g) = %.1f h\n", missing, ppfd, run.Hours())
	fmt.Printf("power    %.0f W/m² at 2.8 µmol/J and 85 %% on the bed\n", lighting.PowerDensity(ppfd, 2.8, 0.85))

	// Output:
	// outside  2.1 MJ x 2.016 µmol/J = 4.23 mol/(m² d)
	// inside   x 0.62 = 2.62 mol/(m² d)
	// missing  14 - 2.62 = 11.38 mol/(m² d)
	// lamps    11.38 / (0.0036 x 160) = 19.7 h
	// power    67 W/m² at 2.8 µmol/J and 85 % on the bed
}
