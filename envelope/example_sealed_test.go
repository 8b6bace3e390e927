package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// The declared U-value of double glazing 4-12-4 with air, step by step as
// EN 673 has it.
func Example_doubleGlazing() {
	unit := envelope.DefaultSealedUnit()
	unit.Glass = []float64{0.004, 0.004}
	unit.Spaces = []envelope.SealedSpace{{Width: 0.012, Gas: envelope.AirFilling(), Emittance: [2]float64{0.837, 0.837}}}
	r, err := unit.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("Double glazing 4-12-4, air, 283 K, 15 K across the space (EN 673)")
	fmt.Printf("radiation in the space     hr  %.3f W/(m² K)   eq. 4\n", r.HRad[0])
	fmt.Printf("Nusselt number             Nu  %.3f            eq. 7\n", r.Nusselt[0])
	fmt.Printf("gas in the space           hg  %.3f W/(m² K)   eq. 6\n", r.HGas[0])
	fmt.Printf("space                      R   %.4f m² K/W\n", r.RSpaces[0])
	fmt.Printf("glass, 2 × 4 mm            R   %.4f m² K/W     eq. 2\n", r.RGlass)
	fmt.Printf("surfaces                   R   %.4f m² K/W\n", unit.ROut+unit.RIn)
	fmt.Printf("thermal transmittance      U   %.3f W/(m² K)   eq. 1\n", r.U)
	fmt.Printf("declared                       %.1f; the tables print 2.8\n", r.U)
	unit.Spaces[0].Gas = envelope.MixGas(envelope.ArgonFilling(), envelope.AirFilling(), 0.9)
	if r, err = unit.Solve(); err == nil {
		fmt.Printf("with 90 %% of argon         U   %.3f W/(m² K)\n", r.U)
	}
	// Output:
	// Double glazing 4-12-4, air, 283 K, 15 K across the space (EN 673)
	// radiation in the space     hr  3.700 W/(m² K)   eq. 4
	// Nusselt number             Nu  1.000            eq. 7
	// gas in the space           hg  2.080 W/(m² K)   eq. 6
	// space                      R   0.1730 m² K/W
	// glass, 2 × 4 mm            R   0.0080 m² K/W     eq. 2
	// surfaces                   R   0.1700 m² K/W
	// thermal transmittance      U   2.849 W/(m² K)   eq. 1
	// declared                       2.8; the tables print 2.8
	// with 90 % of argon         U   2.693 W/(m² K)
}
