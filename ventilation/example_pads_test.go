package ventilation_test

import (
	"fmt"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Air of 37 °C with a wet bulb of 21.5 °C drawn through pads of efficiency
// 0.75: the source prints 25.4 °C.
func Example_evaporativePads() {
	outside, err := psychro.FromWetBulb(37, 21.5, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	wall := ventilation.PadWall{Area: 6, Efficiency: 0.75, Speed: 1.2, Cycles: 4}
	c, err := wall.Cool(outside, 7.2)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("face speed           V/A                    %.2f m/s\n", c.Speed)
	fmt.Printf("depression           t0 - twb               %.2f K\n", 37-c.WetBulb)
	fmt.Printf("behind the pads      t0 - eta (t0 - twb)    %.3f °C (printed 25.4 °C)\n", c.Supply.Temperature())
	fmt.Printf("relative humidity    from %.2f to            %.2f\n", outside.RelativeHumidity(), c.Supply.RelativeHumidity())
	fmt.Printf("dry air              V/v                    %.3f kg/s\n", c.DryAir)
	fmt.Printf("sensible cooling     m c (t0 - t)           %.1f kW\n", c.Cooling/1000)
	fmt.Printf("water evaporated     m (W - W0)             %.1f kg/h\n", 3600*c.Evaporated)
	fmt.Printf("bleed                E/(cycles - 1)         %.1f kg/h\n", 3600*c.Bled)
	// Output:
	// face speed           V/A                    1.20 m/s
	// depression           t0 - twb               15.50 K
	// behind the pads      t0 - eta (t0 - twb)    25.375 °C (printed 25.4 °C)
	// relative humidity    from 0.25 to            0.71
	// dry air              V/v                    8.070 kg/s
	// sensible cooling     m c (t0 - t)           96.2 kW
	// water evaporated     m (W - W0)             141.0 kg/h
	// bleed                E/(cycles - 1)         47.0 kg/h
}
