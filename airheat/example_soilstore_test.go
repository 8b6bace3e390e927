package airheat_test

import (
	"fmt"
	"time"

	"cloche.example/airheat"
	"cloche.example/psychro"
)

// Eight tubes of 12 m under the beds take humid ridge air for eight sunny hours
// and give the heat back to house air in the night: heat in and out, water that
// condenses, fan cost.
func Example_soilStore() {
	s := airheat.DefaultSoilStore()
	s.Tubes, s.Diameter, s.Length, s.Spacing = 8, 0.16, 12, 0.5
	store, err := airheat.NewSoilStore(s, 14)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("soil around the tubes %.1f kWh/K, at 14 °C\n", store.Capacity()/3.6e6)
	ridge, err := psychro.IdealGas.FromRelativeHumidity(28, 0.75, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	const flow = 0.4 // m³/s
	day, night := airheat.DryAir(28, 101325), airheat.DryAir(9, 101325)
	for _, moist := range []bool{false, true} {
		store, _ = airheat.NewSoilStore(s, 14)
		var in, out, up, water, fan float64
		var last airheat.StoreStep
		for range 8 {
			if moist {
				r, err := store.StepMoist(flow, ridge, day, time.Hour, false)
				if err != nil {
					fmt.Println(err)
					return
				}
				water += r.Water * 3600
				last = r.StoreStep
			} else if last, err = store.Step(flow, 28, day, time.Hour, false); err != nil {
				fmt.Println(err)
				return
			}
			in += last.Heat * 3600
			up += last.Up * 3600
			fan += last.FanPower * 3600
		}
		evening := last.Outlet
		for range 10 {
			r, err := store.Step(flow, 9, night, time.Hour, true)
			if err != nil {
				fmt.Println(err)
				return
			}
			out -= r.Heat * 3600
			up += r.Up * 3600
			fan += r.FanPower * 3600
			last = r
		}
		fmt.Printf("water counted: %t\n", moist)
		fmt.Printf("  day    %5.1f kWh in, %4.1f kg of water to drain, air at last out at %4.1f °C\n", in/3.6e6, water, evening)
		fmt.Printf("  night  %5.1f kWh back, air at last out at %4.1f °C\n", out/3.6e6, last.Outlet)
		fmt.Printf("  floor  %5.1f kWh up into the house\n", up/3.6e6)
		fmt.Printf("  fan    %5.2f kWh of electricity\n", fan/3.6e6)
	}
	// Output:
	// soil around the tubes 12.3 kWh/K, at 14 °C
	// water counted: false
	//   day     20.3 kWh in,  0.0 kg of water to drain, air at last out at 23.0 °C
	//   night   12.3 kWh back, air at last out at 11.2 °C
	//   floor   -0.1 kWh up into the house
	//   fan     0.29 kWh of electricity
	// water counted: true
	//   day     37.8 kWh in, 30.6 kg of water to drain, air at last out at 24.0 °C
	//   night   14.8 kWh back, air at last out at 11.6 °C
	//   floor    2.5 kWh up into the house
	//   fan     0.29 kWh of electricity
}
