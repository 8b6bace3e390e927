package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// A screen under glass, with its edges sealed as in a hot box and drawn as in a
// house, before a roof of 30 degree at 15 °C inside and 0 °C outside.
func ExampleWithScreen() {
	k := envelope.DefaultCoverConditions()
	k.SkyDrop, k.Wind = 20, 4
	glass := envelope.SingleGlass()
	sealed, err := envelope.WithSealedScreen(glass, envelope.AluminisedScreen())
	if err != nil {
		fmt.Println(err)
		return
	}
	drawn, err := envelope.WithScreen(glass, envelope.AluminisedScreen())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, sky := range []envelope.SkyPattern{envelope.SkyEven, envelope.SkyWeighted} {
		k.Sky = sky
		fmt.Printf("clear sky, %s\n", sky)
		bare := 0.0
		for _, c := range []struct {
			name  string
			cover envelope.Cover
		}{{"glass", glass}, {"with a screen, sealed", sealed}, {"with a screen, drawn", drawn}} {
			s, err := c.cover.Solve(k)
			if err != nil {
				fmt.Println(err)
				return
			}
			if bare == 0 {
				bare = s.FluxIn
			}
			fmt.Printf("  %-21s %5.1f W/m²  saves %2.0f %%\n", c.name, s.FluxIn, 100*(1-s.FluxIn/bare))
		}
	}
	// Output:
	// clear sky, even
	//   glass                 103.6 W/m²  saves  0 %
	//   with a screen, sealed  39.3 W/m²  saves 62 %
	//   with a screen, drawn   47.0 W/m²  saves 55 %
	// clear sky, weighted to the horizon
	//   glass                 103.0 W/m²  saves  0 %
	//   with a screen, sealed  39.1 W/m²  saves 62 %
	//   with a screen, drawn   46.8 W/m²  saves 55 %
}
