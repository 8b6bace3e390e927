package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// Heating: 10 m³/s of saturated air of 2 °C leave a coil at 40 °C, example 2 of
// [HoF17] ch. 1, which reads 490 kW off its chart (from memory).
func Example_heating() {
	in, err := psychro.FromRelativeHumidity(2, 1, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	stream := psychro.Stream{State: in, DryAir: 10 / in.SpecificVolume()}
	out, err := psychro.FromHumidityRatio(40, in.HumidityRatio(), 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	heat := stream.DryAir * (out.Enthalpy() - in.Enthalpy())
	fmt.Printf("volume of the entering air     v1 = %.4f m³/kg\n", in.SpecificVolume())
	fmt.Printf("dry air                    10/v1  = %.2f kg/s\n", stream.DryAir)
	fmt.Printf("humidity ratio                 W  = %.5f kg/kg, unchanged\n", in.HumidityRatio())
	fmt.Printf("enthalpies                 h1, h2 = %.2f, %.2f kJ/kg\n", in.Enthalpy()/1000, out.Enthalpy()/1000)
	fmt.Printf("heat               m (h2 - h1)    = %.1f kW (handbook 490)\n", heat/1000)
	back, err := stream.Heated(heat)
	fmt.Printf("and back: %.1f W give %.3f °C, %v\n", heat, back.State.Temperature(), err)
	// Output:
	// volume of the entering air     v1 = 0.7845 m³/kg
	// dry air                    10/v1  = 12.75 kg/s
	// humidity ratio                 W  = 0.00438 kg/kg, unchanged
	// enthalpies                 h1, h2 = 12.98, 51.53 kJ/kg
	// heat               m (h2 - h1)    = 491.4 kW (handbook 490)
	// and back: 491417.6 W give 40.000 °C, <nil>
}
