package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// Weather services state humidity over liquid water below freezing too. Air of
// -10 °C is stated in three ways, each over supercooled water, and is the same;
// over ice it is nearer to saturation.
func Example_overLiquidWaterBelowFreezing() {
	const t, p = -10.0, 101325.0 // °C, Pa
	s, err := psychro.RealGas.FromRelativeHumidityOver(psychro.Liquid, t, 0.80, p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("relative humidity  %.3f over liquid, %.3f over ice\n", s.RelativeHumidityOver(psychro.Liquid), s.RelativeHumidity())
	fmt.Printf("dew point          %.2f °C, frost point %.2f °C\n", s.DewPointOver(psychro.Liquid), s.DewPoint())
	fmt.Printf("wet bulb           %.2f °C supercooled, %.2f °C iced\n", s.WetBulbOver(psychro.Liquid), s.WetBulb())
	dew, _ := psychro.RealGas.FromDewPointOver(psychro.Liquid, t, s.DewPointOver(psychro.Liquid), p)
	bulb, _ := psychro.RealGas.FromWetBulbOver(psychro.Liquid, t, s.WetBulbOver(psychro.Liquid), p)
	fmt.Printf("humidity ratio     %.5f g/kg, %.5f by the dew point, %.5f by the wet bulb\n", 1000*s.HumidityRatio(), 1000*dew.HumidityRatio(), 1000*bulb.HumidityRatio())
	fmt.Printf("heat to evaporate  %.0f kJ/kg from liquid, %.0f from ice\n", psychro.LatentHeatOver(psychro.Liquid, t)/1000, psychro.LatentHeat(t)/1000)
	fmt.Printf("260 Pa saturate at %.2f °C over liquid, %.2f over ice\n", psychro.SaturationTemperatureOver(psychro.Liquid, 260), psychro.SaturationTemperature(260))
	// Output:
	// relative humidity  0.800 over liquid, 0.882 over ice
	// dew point          -12.79 °C, frost point -11.41 °C
	// wet bulb           -10.66 °C supercooled, -10.38 °C iced
	// humidity ratio     1.41579 g/kg, 1.41579 by the dew point, 1.41579 by the wet bulb
	// heat to evaporate  2525 kJ/kg from liquid, 2836 from ice
	// 260 Pa saturate at -11.22 °C over liquid, -9.99 over ice
}
