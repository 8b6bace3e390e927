package lighting_test

import (
	"fmt"

	"cloche.example/lighting"
)

// Configuration factors: what part of the light of one diffuse surface reaches
// a point or another surface.
func Example_configurationFactors() {
	fmt.Printf("point under a disc, radius 0.5 m, 1 m off: R²/(R²+h²) = %.3f\n", lighting.DiscFactor(0.5, 1))
	fmt.Printf("point under a strip 1 m wide, 1 m off: sin of the half angle = %.3f\n", lighting.StripFactor(0.5, 1))
	quarter := lighting.CornerFactor(lighting.Plates{A: 1.5, B: 0.6, Distance: 1.2})
	fmt.Printf("point under the middle of 3 by 1.2 m, 1.2 m off: four corners of %.4f = %.3f\n", quarter, 4*quarter)
	tilted := lighting.PolygonFactor(lighting.Point{}, lighting.Vector{X: 1, Z: 1}, lighting.Point{X: -1.5, Y: -0.6, Z: 1.2},
		lighting.Point{X: 1.5, Y: -0.6, Z: 1.2}, lighting.Point{X: 1.5, Y: 0.6, Z: 1.2}, lighting.Point{X: -1.5, Y: 0.6, Z: 1.2})
	fmt.Printf("the same for a sensor tilted by 45 degree: %.3f\n", tilted)
	fmt.Printf("disc of 0.5 m to one of 1 m, 2 m off: %.3f\n", lighting.CoaxialDiscsFactor(lighting.CoaxialDiscs{From: 0.5, To: 1, Distance: 2}))
	opposed := lighting.OpposedPlatesFactor(lighting.Plates{A: 1, B: 1, Distance: 1})
	adjacent := lighting.AdjacentPlatesFactor(lighting.AdjacentPlates{Common: 1, From: 1, To: 1})
	fmt.Printf("faces of a cube: %.6f opposite, %.6f beside; one and four of them make %.6f\n", opposed, adjacent, opposed+4*adjacent)

	light, err := lighting.NewCosinePower(100, 2.4)
	if err != nil {
		fmt.Println(err)
		return
	}
	f := lighting.Fixture{Light: light, At: lighting.Point{X: 1, Y: 1, Z: 1.5}}
	flux := lighting.CosineFlux(f, lighting.Point{}, lighting.Point{X: 2}, lighting.Point{X: 2, Y: 2}, lighting.Point{Y: 2})
	fmt.Printf("of 100 µmol/s a square of 2 m catches %.1f, 1.5 m below\n", flux)
	fmt.Printf("a sphere of 12 m² that reflects 0.8 has %.1f µmol/(m² s) all round\n", lighting.EnclosureMean(100, 12, 0.8))

	// Output:
	// point under a disc, radius 0.5 m, 1 m off: R²/(R²+h²) = 0.200
	// point under a strip 1 m wide, 1 m off: sin of the half angle = 0.447
	// point under the middle of 3 by 1.2 m, 1.2 m off: four corners of 0.0975 = 0.390
	// the same for a sensor tilted by 45 degree: 0.277
	// disc of 0.5 m to one of 1 m, 2 m off: 0.192
	// faces of a cube: 0.199825 opposite, 0.200044 beside; one and four of them make 1.000000
	// of 100 µmol/s a square of 2 m catches 52.7, 1.5 m below
	// a sphere of 12 m² that reflects 0.8 has 41.7 µmol/(m² s) all round
}
