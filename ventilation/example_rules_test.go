package ventilation_test

import (
	"fmt"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Rules of practice for a first size, and the heat of drying. The house is
// invented: 12 by 24 m, 900 m up.
func Example_rulesOfPractice() {
	rates := ventilation.DefaultFanRates(12 * 24)
	rates.Altitude, rates.Distance, rates.Light = 900, 24, 45000
	f, err1 := rates.Solve()
	mixing, err2 := ventilation.CirculatingFans{Floor: 12 * 24, Flow: 0.75, Diameter: 0.5}.Solve()
	inside, err3 := psychro.FromRelativeHumidity(18, 0.85, 90900)
	outside, err4 := psychro.FromRelativeHumidity(5, 0.90, 90900)
	dry, err5 := ventilation.HeatToDry(inside, outside)
	for _, err := range []error{err1, err2, err3, err4, err5} {
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	fmt.Printf("factors: altitude %.3f, light %.3f, rise %.3f, house %.3f; velocity %.3f\n", f.ByAltitude, f.ByLight, f.ByRise, f.House, f.Velocity)
	fmt.Printf("fans in summer %.2f m³/s, least in winter %.2f m³/s\n", f.Summer, f.Winter)
	fmt.Printf("circulating    %.2f m³/s by %d fans, at most %.0f m apart\n", mixing.Total, mixing.Count, mixing.Throw)
	fmt.Printf("an insect screen of porosity 0.5 leaves %.2f of the flow\n", ventilation.ScreenFactor(0.5))
	fmt.Printf("a kilogram of water out: %.0f kg of air, %.2f MJ, of it %.2f to warm the air\n", dry.Air, dry.Total/1e6, dry.Sensible/1e6)
	// Output:
	// factors: altitude 1.114, light 0.836, rise 1.000, house 0.931; velocity 1.127
	// fans in summer 13.19 m³/s, least in winter 3.26 m³/s
	// circulating    2.93 m³/s by 4 fans, at most 15 m apart
	// an insect screen of porosity 0.5 leaves 0.75 of the flow
	// a kilogram of water out: 146 kg of air, 4.46 MJ, of it 1.93 to warm the air
}
