package lighting_test

import (
	"fmt"
	"math"

	"cloche.example/lighting"
)

// A diffuse disc of 0.5 m radius that emits 300 µmol/(m² s) hangs 1 m above a
// tray: as many points, by its configuration factor, and as a single point.
func Example_discByPointsAndByFactor() {
	const radius, height, emitted = 0.5, 1.0, 300.0 // m, m, µmol/(m² s)
	total := emitted * math.Pi * radius * radius

	// One Lambertian point for each of 40 rings' segments of equal area.
	var fixtures lighting.Layout
	const rings = 40
	for i := range rings {
		n := 2*i + 1 // so that every point has the same area
		for k := range n {
			r := radius * (float64(i) + 0.5) / rings
			s, c := math.Sincos(2 * math.Pi * float64(k) / float64(n))
			light, err := lighting.NewCosinePower(total/(rings*rings), 1)
			if err != nil {
				fmt.Println(err)
				return
			}
			fixtures = append(fixtures, lighting.Fixture{Light: light, At: lighting.Point{X: r * c, Y: r * s, Z: height}})
		}
	}
	lights, err := lighting.NewLights(fixtures...)
	if err != nil {
		fmt.Println(err)
		return
	}
	below, _ := lighting.NewPoints(lighting.Receiver{Normal: lighting.Up()})
	ppfd, err := lights.MapTo(nil, below)
	if err != nil {
		fmt.Println(err)
		return
	}

	factor := lighting.DiscFactor(radius, height)
	fmt.Printf("photon flux of the disc     π R² M = %.1f µmol/s\n", total)
	fmt.Printf("%d points, Σ I cos φ/r²   E = %.2f µmol/(m² s)\n", len(fixtures), ppfd[0])
	fmt.Printf("factor R²/(R²+h²) = %.2f    E = %.2f µmol/(m² s)\n", factor, emitted*factor)
	point := total / math.Pi / (height * height)
	fmt.Printf("as one point, I0/h²         E = %.2f µmol/(m² s), %.0f %% too much: the disc is only one diameter away\n", point, 100*(point/(emitted*factor)-1))
	// Output:
	// photon flux of the disc     π R² M = 235.6 µmol/s
	// 1600 points, Σ I cos φ/r²   E = 60.00 µmol/(m² s)
	// factor R²/(R²+h²) = 0.20    E = 60.00 µmol/(m² s)
	// as one point, I0/h²         E = 75.00 µmol/(m² s), 25 % too much: the disc is only one diameter away
}
