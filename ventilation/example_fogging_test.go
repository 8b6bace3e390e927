package ventilation_test

import (
	"fmt"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Fog in the air that passes an invented house, the layer that whitening adds to
// its cover, and what that shade does to the house's heat.
func Example_fogAndWhitening() {
	air, err := psychro.FromRelativeHumidity(34, 0.35, 97300)
	if err != nil {
		fmt.Println(err)
		return
	}
	fog, err := ventilation.Fogging{Spray: 0.015, Evaporates: 0.6, Water: 18}.Into(psychro.Stream{State: air, DryAir: 3})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("fog          %.1f K cooler, %.0f %% of the way to saturation, %.1f kg/h drip\n", fog.Fall, 100*fog.Efficiency, 3600*fog.Dripped)
	cover := ventilation.Optics{Transmittance: 0.62, Reflectance: 0.12}
	layer, err := ventilation.LayerFor(cover, 0.31, 0.1)
	if err != nil {
		fmt.Println(err)
		return
	}
	b, err := ventilation.Shade{Place: ventilation.Whitewash, Layer: layer, Drawn: 1, Cover: cover, U: 5.8, Outside: 23}.Balance()
	if err != nil {
		fmt.Println(err)
		return
	}
	s := b.Apply(ventilation.Setting{Opening: 1}, 800, 95)
	fmt.Printf("whitening    transmits %.2f, reflects %.2f: light %.2f of the bare cover's\n", layer.Transmittance, layer.Reflectance, b.Factor)
	fmt.Printf("as a Setting shade %.2f, heat %+.0f W at 800 W/m²\n", s.Shade, s.Heat)
	// Output:
	// fog          7.2 K cooler, 59 % of the way to saturation, 21.6 kg/h drip
	// whitening    transmits 0.47, reflects 0.43: light 0.50 of the bare cover's
	// as a Setting shade 0.50, heat +2032 W at 800 W/m²
}
