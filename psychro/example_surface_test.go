package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// Condensation on the inner face of a cold cover by the Lewis relation: the
// air of a house at night, the film's inner face, and a usual coefficient of
// free convection. A litre is a kilogram.
func Example_condensation() {
	s, err := psychro.FromRelativeHumidity(15, 0.9, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := s.VapourFlux(4, 3.5)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("dew point            %7.2f °C, face at 4 °C\n", s.DewPoint())
	fmt.Printf("humidity ratios      %7.5f in the air, %.5f at the face\n", s.HumidityRatio(), v.Saturation)
	fmt.Printf("Lewis number         %7.3f at %.1f °C\n", v.Lewis, v.Film)
	fmt.Printf("coefficient          %7.5f kg/(m² s)\n", v.Coefficient)
	fmt.Printf("flux                 %7.1f g/(m² h)\n", v.Flux*3.6e6)
	fmt.Printf("heat                 %7.1f W/m² latent, %.1f W/m² by convection\n", v.Latent, 3.5*(15-4))
	// Output:
	// dew point              13.37 °C, face at 4 °C
	// humidity ratios      0.00961 in the air, 0.00505 at the face
	// Lewis number           0.850 at 9.5 °C
	// coefficient          0.00383 kg/(m² s)
	// flux                    62.7 g/(m² h)
	// heat                    43.4 W/m² latent, 38.5 W/m² by convection
}
