package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// Humidifying: what 2 kg/s of air of 20 °C with a wet bulb of 8 °C become when
// steam of 110 °C, a spray of water, or a wet pad brings water into them. Steam
// to a dew point of 13 °C is example 5 of [HoF17] ch. 1: 21 °C off its chart
// (from memory); ChemicaLogic, MoistAirTab example 5, computes 21.14 °C and
// 0.0151 kg/s.
func Example_humidifying() {
	in, err := psychro.FromWetBulb(20, 8, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	stream := psychro.Stream{State: in, DryAir: 2}
	goal, err := psychro.FromDewPoint(20, 13, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	water := stream.DryAir * (goal.HumidityRatio() - in.HumidityRatio())
	fmt.Printf("before  %.2f °C  W %.5f kg/kg  wet bulb %.2f °C\n", in.Temperature(), in.HumidityRatio(), in.WetBulb())
	steam, err := stream.Changed(0, water, psychro.SteamEnthalpy(110))
	s := steam.Air.State
	fmt.Printf("steam   %.2f °C  W %.5f kg/kg  wet bulb %.2f °C  %.4f kg/s %v\n", s.Temperature(), s.HumidityRatio(), s.WetBulb(), water, err)
	spray, err := stream.Changed(0, 0.006, psychro.LiquidEnthalpy(in.WetBulb()))
	s = spray.Air.State
	fmt.Printf("spray   %.2f °C  W %.5f kg/kg  wet bulb %.2f °C  %.4f kg/s %v\n", s.Temperature(), s.HumidityRatio(), s.WetBulb(), 0.006, err)
	pad, err := stream.Pad(0.75)
	s = pad.Out.State
	fmt.Printf("pad     %.2f °C  W %.5f kg/kg  wet bulb %.2f °C  %.4f kg/s %v\n", s.Temperature(), s.HumidityRatio(), s.WetBulb(), pad.Evaporated, err)
	// Output:
	// before  20.00 °C  W 0.00180 kg/kg  wet bulb 8.00 °C
	// steam   21.15 °C  W 0.00937 kg/kg  wet bulb 16.08 °C  0.0151 kg/s <nil>
	// spray   12.60 °C  W 0.00480 kg/kg  wet bulb 8.00 °C  0.0060 kg/s <nil>
	// pad     11.00 °C  W 0.00545 kg/kg  wet bulb 8.00 °C  0.0073 kg/s <nil>
}
