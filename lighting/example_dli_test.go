package lighting_test

import (
	"fmt"
	"time"

	"cloche.example/lighting"
)

// What a PPFD held for a photoperiod adds up to, and which crops it serves.
func Example_dailyLight() {
	const ppfd = 180.0 // µmol/(m² s)
	photoperiod := 16 * time.Hour

	dli := lighting.DLI(ppfd, photoperiod)
	fmt.Printf("%.0f µmol/(m² s) x %.0f s x 1e-6 = %.2f mol/(m² d)\n", ppfd, photoperiod.Seconds(), dli)
	for _, name := range []string{"lettuce", "spinach, young", "tomato"} {
		c, _ := lighting.FindCropLight(name)
		fmt.Printf("%-15s least %g, target %g: %s\n", c.Name, c.Least, c.Target, c.Serves(dli))
	}
	fmt.Printf("for 17 mol/(m² d) in the same time: %.0f µmol/(m² s)\n", lighting.PPFDFor(17, photoperiod))

	// Output:
	// 180 µmol/(m² s) x 57600 s x 1e-6 = 10.37 mol/(m² d)
	// lettuce         least 12, target 17: too dark
	// spinach, young  least 14, target 17: too dark
	// tomato          least 15, target 25: too dark
	// for 17 mol/(m² d) in the same time: 295 µmol/(m² s)
}
