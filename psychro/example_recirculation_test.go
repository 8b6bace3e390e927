package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// A room with 0.6 m³/s of winter air of 2 °C and 85 %, and 1.4 kg/s of its own
// air led back, so that what enters is mild. It gains 15 kW of heat and 4 kg/h
// of vapour from the crop. The figures are invented.
func Example_recirculation() {
	fresh, err := psychro.FromRelativeHumidity(2, 0.85, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := psychro.RecirculatedRoom{
		Fresh:         psychro.Stream{State: fresh, DryAir: 0.6 / fresh.SpecificVolume()},
		Recirculated:  1.4,
		Heat:          15e3,
		Water:         4.0 / 3600,
		WaterEnthalpy: psychro.SteamEnthalpy(20),
	}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	show := func(name string, s psychro.Stream) {
		fmt.Printf("%-7s %.3f kg/s  %5.2f °C  %2.0f %%  %.2f g/kg\n", name, s.DryAir, s.State.Temperature(), 100*s.State.RelativeHumidity(), 1000*s.State.HumidityRatio())
	}
	show("supply", r.Supply.Air)
	show("room", r.Room)
	// Output:
	// supply  2.166 kg/s  14.51 °C  45 %  4.66 g/kg
	// room    0.766 kg/s  21.34 °C  33 %  5.17 g/kg
}
