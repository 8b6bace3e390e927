package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// Mixing: 2 m³/s of air of 4 °C with a wet bulb of 2 °C and 6.25 m³/s of 25 °C
// and 50 % give 19.5 °C with a wet bulb of 14.6 °C in example 4 of [HoF17] ch. 1
// (read off its chart; from memory). The second mixture is the one that steams:
// warm moist air meets frost.
func Example_mixing() {
	const p = 101325
	flow := func(s psychro.State, err error) func(volume float64) psychro.Stream {
		if err != nil {
			panic(err)
		}
		return func(volume float64) psychro.Stream {
			return psychro.Stream{State: s, DryAir: volume / s.SpecificVolume()}
		}
	}
	mix, err := psychro.Mix(flow(psychro.FromWetBulb(4, 2, p))(2), flow(psychro.FromRelativeHumidity(25, 0.5, p))(6.25))
	if err != nil {
		fmt.Println(err)
		return
	}
	s := mix.Air.State
	fmt.Printf("dry air %.3f kg/s, %.2f °C, wet bulb %.2f °C (handbook 19.5, 14.6)\n", mix.Air.DryAir, s.Temperature(), s.WetBulb())

	mix, err = psychro.Mix(flow(psychro.FromRelativeHumidity(20, 0.95, p))(1), flow(psychro.FromRelativeHumidity(-12, 0.8, p))(1))
	if err != nil {
		fmt.Println(err)
		return
	}
	s = mix.Air.State
	fmt.Printf("fog: %.2f °C, %.0f %%, %.2f g/s of droplets in %.3f kg/s of air\n",
		s.Temperature(), 100*s.RelativeHumidity(), 1000*mix.FogLiquid, mix.Air.DryAir)
	// Output:
	// dry air 9.820 kg/s, 19.63 °C, wet bulb 14.56 °C (handbook 19.5, 14.6)
	// fog: 6.11 °C, 100 %, 3.12 g/s of droplets in 2.529 kg/s of air
}
