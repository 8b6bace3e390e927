package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// An air heater takes in 1.5 m³/s of air of 12 °C and 85 %, at 340 m, and adds
// 100, 150 and 200 kW. Past the boiling point the relative humidity is small,
// and dew point, wet bulb and enthalpy are as good as below. Hot supply air can
// burn people and scorch film and plants: keep to the maker's distances.
func Example_hotAir() {
	in, err := psychro.FromRelativeHumidity(12, 0.85, psychro.StandardPressure(340))
	if err != nil {
		fmt.Println(err)
		return
	}
	stream := psychro.Stream{State: in, DryAir: 1.5 / in.SpecificVolume()}
	fmt.Println("   kW      °C   m³/s     rh  dew point  wet bulb  J/(kg K)")
	for _, heat := range []float64{0, 100e3, 150e3, 200e3} {
		out, err := stream.Heated(heat)
		if err != nil {
			fmt.Println(err)
			return
		}
		s := out.State
		fmt.Printf("%5.0f  %6.1f  %5.3f  %.3f  %9.2f  %8.2f  %8.1f\n", heat/1000, s.Temperature(), out.VolumeFlow(), s.RelativeHumidity(),
			s.DewPoint(), s.WetBulb(), s.HeatCapacity())
	}
	_, err = stream.Heated(400e3)
	fmt.Println(err)
	// Output:
	// kW      °C   m³/s     rh  dew point  wet bulb  J/(kg K)
	//     0    12.0  1.500  0.850       9.56     10.61    1020.5
	//   100    67.6  1.793  0.042       9.56     27.53    1023.1
	//   150    95.3  1.939  0.014       9.56     32.98    1025.5
	//   200   122.9  2.085  0.006       9.56     37.37    1028.4
	// heat is 400000, allowed -4388.29 to 340491 W; saturated to the hottest air of this humidity ratio
}
