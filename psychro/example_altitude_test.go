package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// What altitude changes for air of 20 °C and 60 %: the saturation pressure
// hardly, the air about the vapour much. A fan moves the same volume with less
// mass; a kilogram of air holds more water. The last column is the pressure by
// the shorter formula of [FAO56] eq. 7, Pa.
func Example_altitude() {
	fmt.Println("    m      Pa   g/kg   kJ/kg  m³/kg  kg/m³  wet bulb  dew point  standard °C   FAO56")
	for z := 0.0; z <= 5000; z += 1000 {
		p := psychro.StandardPressure(z)
		s, err := psychro.FromRelativeHumidity(20, 0.6, p)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%5.0f  %6.0f  %5.2f  %6.2f  %.3f  %.3f  %8.2f  %9.2f  %11.1f  %6.0f\n", psychro.StandardAltitude(p), p,
			1000*s.HumidityRatio(), s.Enthalpy()/1000, s.SpecificVolume(), s.Density(), s.WetBulb(), s.DewPoint(),
			psychro.StandardTemperature(z), psychro.FAO56Pressure(z))
	}
	// Output:
	// m      Pa   g/kg   kJ/kg  m³/kg  kg/m³  wet bulb  dew point  standard °C   FAO56
	//     0  101325   8.77   42.37  0.842  1.198     15.14      12.01         15.0  101300
	//  1000   89875   9.90   45.28  0.951  1.062     14.92      12.01          8.5   90025
	//  2000   79495  11.22   48.63  1.077  0.939     14.71      12.01          2.0   79788
	//  3000   70108  12.75   52.53  1.224  0.827     14.49      12.01         -4.5   70515
	//  4000   61640  14.54   57.09  1.397  0.726     14.28      12.01        -11.0   62135
	//  5000   54020  16.64   62.44  1.599  0.636     14.08      12.01        -17.5   54580
}
