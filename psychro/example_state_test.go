package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// The state of air of 40 °C with a wet bulb of 20 °C at sea level, as the
// handbook reads it off its chart [HoF17] ch. 1 example 1.
func Example_state() {
	s, err := psychro.FromWetBulb(40, 20, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("                      real gas   ideal form  handbook\n")
	ideal, _ := psychro.IdealGas.FromWetBulb(40, 20, 101325)
	fmt.Printf("humidity ratio kg/kg  %8.5f   %8.5f    0.0065\n", s.HumidityRatio(), ideal.HumidityRatio())
	fmt.Printf("dew point °C          %8.2f   %8.2f    7\n", s.DewPoint(), ideal.DewPoint())
	fmt.Printf("relative humidity     %8.4f   %8.4f    0.14\n", s.RelativeHumidity(), ideal.RelativeHumidity())
	fmt.Printf("enthalpy kJ/kg        %8.2f   %8.2f    56.7\n", s.Enthalpy()/1000, ideal.Enthalpy()/1000)
	fmt.Printf("volume m³/kg          %8.4f   %8.4f    0.896\n", s.SpecificVolume(), ideal.SpecificVolume())
	// Output:
	// real gas   ideal form  handbook
	// humidity ratio kg/kg   0.00645    0.00640    0.0065
	// dew point °C              7.49       7.43    7
	// relative humidity       0.1402     0.1398    0.14
	// enthalpy kJ/kg           56.86      56.72    56.7
	// volume m³/kg            0.8961     0.8962    0.896
}
