package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// Correlations of convection beside each other: outside over the wind, inside
// over the difference, and across an upright gap of 20 mm by 1 m.
func Example_convection() {
	fmt.Println("outside, W/(m² K), in wind of     1 m/s  5 m/s")
	for _, m := range []envelope.OutsideConvection{envelope.OutsideISO6946, envelope.OutsideWatmuff, envelope.OutsideBot, envelope.OutsidePapadakis} {
		fmt.Printf("  %-30v  %5.1f  %5.1f\n", m, m.Coefficient(1), m.Coefficient(5))
	}
	fmt.Printf("  %-30s  %5.1f  %5.1f\n", "Mitchell, building of 300 m³", envelope.Mitchell(1, 300), envelope.Mitchell(5, 300))
	fmt.Printf("  %-30s  %5.1f  %5.1f\n", "McAdams, with radiation in it", envelope.McAdams(1), envelope.McAdams(5))
	fmt.Println("inside, W/(m² K), roof of 30 degree, face colder by  5 K   15 K")
	face := envelope.InnerSurface{Air: 15, Tilt: 30, Height: 4, Pressure: 101325}
	for _, m := range []envelope.InsideConvection{envelope.InsideISO15099, envelope.InsideISO6946, envelope.InsidePapadakis, envelope.InsideBaille, envelope.InsidePlate} {
		near, far := face, face
		near.Surface, far.Surface = 10, 0
		fmt.Printf("  %-46v  %5.2f  %5.2f\n", m, m.Coefficient(near), m.Coefficient(far))
	}
	const ra, pr, aspect = 2e4, 0.71, 50.0
	fmt.Printf("Nusselt number of the gap at Ra %.0f: %.2f by ISO 15099, %.2f by MacGregor and Emery\n",
		ra, envelope.GapNusselt(ra, aspect, 90), envelope.MacGregorEmery(ra, pr, aspect))
	fmt.Printf("and of one plate at Ra 1e9: %.0f by Churchill and Chu\n", envelope.ChurchillChu(1e9, pr))
	// Output:
	// outside, W/(m² K), in wind of     1 m/s  5 m/s
	//   ISO 6946                          8.0   24.0
	//   Watmuff                           5.8   17.8
	//   Bot                               4.0    9.1
	//   Papadakis                         7.7   15.8
	//   Mitchell, building of 300 m³      5.0   10.6
	//   McAdams, with radiation in it     9.5   22.7
	// inside, W/(m² K), roof of 30 degree, face colder by  5 K   15 K
	//   ISO 15099                                        2.70   3.93
	//   ISO 6946                                         5.00   5.00
	//   Papadakis                                        3.16   4.39
	//   Baille                                           3.74   5.38
	//   upright plate                                    1.93   2.78
	// Nusselt number of the gap at Ra 20000: 1.69 by ISO 15099, 1.54 by MacGregor and Emery
	// and of one plate at Ra 1e9: 123 by Churchill and Chu
}
