package lighting_test

import (
	"fmt"
	"math"

	"cloche.example/lighting"
)

// Downlights with a beam angle of 110 degree hang 1.15 m above trays, 1.2 m
// apart: do their spots meet, and is the light flat between them?
func Example_spotsAtTheHangingHeight() {
	const beam, height, spacing = 110.0, 1.15, 1.2 // degree, m, m

	light, err := lighting.FromBeamAngle(220, beam) // µmol/s
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("1  m = ln 0.5/ln cos(%g/2) = %.4f\n", beam, light.Exponent())
	fmt.Printf("2  PPFD halves at acos 0.5^(1/(m+3)) = %.2f degree, not at %g: distance and the sensor's cosine count too\n", light.SpotAngle(0.5), beam/2)
	d := light.SpotDiameter(height, 0.5)
	shared := lighting.SpotOverlap(d, spacing)
	fmt.Printf("3  spot diameter 2 h tan = %.3f m, %.1f µmol/(m² s) in its middle\n", d, light.SpotPPFD(height, 0))
	fmt.Printf("4  two spots share %.3f m², %.1f %% of one\n", shared, 100*shared/(math.Pi/4*d*d))
	fmt.Printf("5  flat between two at a spacing of 2 h/√(m+4) = %.3f m, or from %.3f m up at this spacing\n", light.FlatPair(height), spacing/light.FlatPair(1))
	fmt.Printf("6  flat within four at a side of %.3f m, within a ring at a radius of %.3f m\n", light.FlatSquare(height), light.FlatRing(height))
	fmt.Printf("7  midway there is %.1f %% of the light under one\n", 100*light.Midway(height, spacing))
	fmt.Printf("8  %.0f %% of the photons leave within the beam angle of %.0f degree\n", 100*light.ConeShare(beam/2), light.BeamAngle())
	// Output:
	// 1  m = ln 0.5/ln cos(110/2) = 1.2470
	// 2  PPFD halves at acos 0.5^(1/(m+3)) = 31.85 degree, not at 55: distance and the sensor's cosine count too
	// 3  spot diameter 2 h tan = 1.429 m, 59.5 µmol/(m² s) in its middle
	// 4  two spots share 0.120 m², 7.5 % of one
	// 5  flat between two at a spacing of 2 h/√(m+4) = 1.004 m, or from 1.374 m up at this spacing
	// 6  flat within four at a side of 1.116 m, within a ring at a radius of 0.789 m
	// 7  midway there is 99.2 % of the light under one
	// 8  71 % of the photons leave within the beam angle of 110 degree
}
