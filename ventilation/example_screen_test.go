package ventilation_test

import (
	"fmt"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// An insect screen, the same area as the 1.5 m² vent it covers: its loss
// depends on the speed, so there is no one discharge coefficient.
func Example_insectScreen() {
	screen, err := ventilation.ValeraScreens.Screen(0.40, 0.0003)
	if err != nil {
		fmt.Println(err)
		return
	}
	mu, rho := psychro.Viscosity(25), ventilation.DryAirDensity(25, 101325)
	vent := ventilation.Opening{Height: 2.8, Area: 1.5, Discharge: 0.6}
	clean, err := screen.Over(vent, 1.5, mu)
	if err != nil {
		fmt.Println(err)
		return
	}
	screen.Blocked = 0.3
	dusty, err := screen.Over(vent, 1.5, mu)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("permeability %.3g m², inertial factor %.3f\n", screen.Permeability, screen.Inertia)
	fmt.Println("dp Pa  Cd bare  screened  30 % dusty")
	for _, dp := range []float64{0.1, 0.5, 2, 10} {
		fmt.Printf("%5.1f    %.3f    %.3f      %.3f\n", dp, vent.EffectiveDischarge(dp, rho), clean.EffectiveDischarge(dp, rho), dusty.EffectiveDischarge(dp, rho))
	}
	// Output:
	// permeability 1.95e-09 m², inertial factor 0.164
	// dp Pa  Cd bare  screened  30 % dusty
	//   0.1    0.600    0.083      0.059
	//   0.5    0.600    0.166      0.120
	//   2.0    0.600    0.257      0.195
	//  10.0    0.600    0.346      0.273
}
