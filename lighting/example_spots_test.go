package lighting_test

import (
	"fmt"

	"cloche.example/lighting"
)

// Downlights with a beam angle of 110 degree hang 1.15 m above trays, 1.2 m
// apart: do their spots meet, and is the light flat between them?
func Example_spotsAtTheHangingHeight() {
	const beam, height, spacing = 110.0, 1.15, 1.2 // degree, m, m

	m := lighting.BeamExponent(beam)
	fmt.Printf("1  m = ln 0.5/ln cos(%g/2) = %.4f\n", beam, m)
	angle := lighting.SpotAngle(m, 0.5)
	fmt.Printf("2  PPFD halves at acos 0.5^(1/(m+3)) = %.2f degree, not at %g: distance and the sensor's cosine count too\n", angle, beam/2)
	d := lighting.SpotDiameter(m, height, 0.5)
	fmt.Printf("3  spot diameter 2 h tan = %.3f m\n", d)
	fmt.Printf("4  two spots share %.3f m², %.1f %% of one\n", lighting.SpotOverlap(d, spacing), 100*lighting.SpotOverlapShare(d, spacing))
	fmt.Printf("5  flat between two at a spacing of 2 h/√(m+4) = %.3f m, or from %.3f m up at this spacing\n", lighting.FlatPair(m, height), lighting.FlatPairHeight(m, spacing))
	fmt.Printf("6  midway there is %.1f %% of the light under one\n", 100*lighting.Midway(m, height, spacing))
	// Output:
	// 1  m = ln 0.5/ln cos(110/2) = 1.2470
	// 2  PPFD halves at acos 0.5^(1/(m+3)) = 31.85 degree, not at 55: distance and the sensor's cosine count too
	// 3  spot diameter 2 h tan = 1.429 m
	// 4  two spots share 0.120 m², 7.5 % of one
	// 5  flat between two at a spacing of 2 h/√(m+4) = 1.004 m, or from 1.374 m up at this spacing
	// 6  midway there is 99.2 % of the light under one
}
