package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// The same covers dry and with water on the inner face. Water closes a clear
// film to long-wave radiation, so the film loses less by radiation; it brings
// latent heat to glass, which was opaque before, so glass loses more.
func Example_wetOrDry() {
	k := envelope.DefaultCoverConditions()
	k.Inside, k.InsideHumidity = 15, 0.9
	k.Outside, k.SkyDrop, k.Wind = -5, 17, 2
	fmt.Println("15 °C and 90 % inside, -5 °C outside, sky -22 °C, 2 m/s; W/m²")
	fmt.Println("cover         face   total  convection  long-wave  latent   litres/(h 100 m²)")
	for _, c := range []struct {
		name  string
		cover envelope.Cover
	}{{"clear film", envelope.SingleFilm()}, {"glass", envelope.SingleGlass()}} {
		for _, wet := range []envelope.InnerFace{envelope.InnerDry, envelope.InnerWet} {
			k.InnerFace = wet
			s, err := c.cover.Solve(k)
			if err != nil {
				fmt.Println(err)
				return
			}
			word := "dry"
			if s.WetShare > 0 {
				word = "wet"
			}
			fmt.Printf("%-12s  %s  %6.1f  %10.1f  %9.1f  %6.1f  %6.1f\n", c.name, word,
				s.FluxIn, s.InConvective, s.InRadiative, s.InLatent, s.Condensate*3600*100)
		}
	}
	// Output:
	// 15 °C and 90 % inside, -5 °C outside, sky -22 °C, 2 m/s; W/m²
	// cover         face   total  convection  long-wave  latent   litres/(h 100 m²)
	// clear film    dry   184.0        59.7      124.4     0.0     0.0
	// clear film    wet   165.7        49.0       63.0    53.7     7.7
	// glass         dry   122.2        58.9       63.2     0.0     0.0
	// glass         wet   158.5        46.5       60.7    51.3     7.4
}
