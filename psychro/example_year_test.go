package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// A column of hours, here six of an invented day at 340 m. The fourth hour's
// humidity was written in per cent: it is refused and stays a gap.
func Example_columnsOfHours() {
	temperature := []float64{-4, 2, 9, 14, 11, 5}           // °C
	humidity := []float64{0.95, 0.88, 0.70, 62, 0.66, 0.81} // fraction
	pressure := psychro.StandardPressure(340)               // Pa, one for the column

	ratio := psychro.HumidityRatioFromRelativeHumidityTo(nil, temperature, humidity, pressure)
	deficit := psychro.VapourPressureDeficitFromRelativeHumidityTo(nil, temperature, humidity, pressure)
	dew := psychro.DewPointFromHumidityRatioTo(nil, temperature, ratio, pressure)
	bulb := psychro.WetBulbFromHumidityRatioTo(nil, temperature, ratio, pressure)
	back := psychro.RelativeHumidityFromHumidityRatioTo(nil, temperature, ratio, pressure)
	fmt.Println("   °C   g/kg  deficit Pa  dew point  wet bulb     rh")
	for i := range temperature {
		fmt.Printf("%5.0f  %5.2f  %10.0f  %9.2f  %8.2f  %5.2f\n", temperature[i], 1000*ratio[i], deficit[i], dew[i], bulb[i], back[i])
	}
	states, err := psychro.StatesFromRelativeHumidityTo(nil, temperature, humidity, pressure)
	fmt.Printf("last hour %.1f kJ/kg\n%v\n", states[5].Enthalpy()/1000, err)
	// Output:
	// °C   g/kg  deficit Pa  dew point  wet bulb     rh
	//    -4   2.68          22      -4.60     -4.24   0.95
	//     2   4.01          85       0.22      1.24   0.88
	//     9   5.20         346       3.83      6.44   0.70
	//    14    NaN         NaN        NaN       NaN    NaN
	//    11   5.61         448       4.90      7.86   0.66
	//     5   4.57         166       2.02      3.63   0.81
	// last hour 16.5 kJ/kg
	// 1 of 6 refused, the first at index 3: relative humidity is 62, allowed 0 to 1 (fraction); saturation; to accept a sensor's 1.01, clip it before: min(rh, 1)
}
