package ventilation_test

import (
	"fmt"
	"math"

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
	clear := screen
	screen.Blocked = 0.3
	dusty, err := screen.Over(vent, 1.5, mu)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("pressure drop at 1 m/s of the clean screen %.2f Pa, of the dusty one %.2f Pa\n", clear.PressureDrop(1, rho, mu), screen.PressureDrop(1, rho, mu))
	fmt.Printf("permeability %.3g m², inertial factor %.3f\n", screen.Permeability, screen.Inertia)
	cd := func(o ventilation.Opening, dp float64) float64 {
		return o.MassFlow(dp, rho) / (o.Area * math.Sqrt(2*rho*dp))
	}
	fmt.Println("dp Pa  Cd bare  screened  30 % dusty")
	for _, dp := range []float64{0.1, 0.5, 2, 10} {
		fmt.Printf("%5.1f    %.3f    %.3f      %.3f\n", dp, cd(vent, dp), cd(clean, dp), cd(dusty, dp))
	}
	// A tall vent with a screen is given as points, one above the other.
	tall := ventilation.Opening{Height: 1, Vertical: 1, Area: 3, Discharge: 0.6}
	points := tall.Points(10)
	for i := range points {
		if points[i], err = screen.Over(points[i], 0.3, mu); err != nil {
			fmt.Println(err)
			return
		}
	}
	fmt.Printf("a tall vent as %d points from %.2f to %.2f m\n", len(points), points[0].Height, points[9].Height)
	// Output:
	// pressure drop at 1 m/s of the clean screen 4.15 Pa, of the dusty one 6.73 Pa
	// permeability 1.95e-09 m², inertial factor 0.164
	// dp Pa  Cd bare  screened  30 % dusty
	//   0.1    0.600    0.083      0.059
	//   0.5    0.600    0.166      0.120
	//   2.0    0.600    0.257      0.195
	//  10.0    0.600    0.346      0.273
	// a tall vent as 10 points from 0.55 to 1.45 m
}
