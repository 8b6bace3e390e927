package airheat_test

import (
	"fmt"

	"cloche.example/airheat"
	"cloche.example/psychro"
)

// 60 kW into 2,000 m³/h of air that enters at 20 °C: the trade says that this
// lifts it by about 100 K (common practice, no source). It depends on where
// the flow is stated.
func Example_dutyOnThreeFlowBases() {
	in, err := psychro.IdealGas.FromRelativeHumidity(20, 0.50, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	flow := 2000.0 / 3600 // m³/s
	fmt.Printf("humidity ratio     %.5f kg/kg        [HoF17] ch. 1 eq. 20\n", in.HumidityRatio())
	fmt.Printf("volume at inlet    %.4f m³/kg dry    eq. 26\n", in.SpecificVolume())
	fmt.Printf("heat capacity      %.0f J/(kg K) dry  1006 + 1860 W, from eq. 30\n\n", in.HeatCapacity())
	fmt.Println("flow stated at   dry air kg/s   rise K   outlet °C   1.2 × 1005 would need W")
	for _, basis := range []airheat.FlowBasis{airheat.FanInlet, airheat.StandardAir, airheat.Outlet} {
		d, err := airheat.RiseFor(in, airheat.Flow{Value: flow, Basis: basis}, 60000)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-16s %12.4f %8.1f %11.1f %25.0f\n", basis, d.DryAir, d.Rise, d.Outlet, d.ByRule)
	}
	need, e1 := airheat.PowerFor(in, airheat.Flow{Value: flow, Basis: airheat.FanInlet}, 60)
	size, e2 := airheat.FlowFor(in, 60000, 60)
	if e1 != nil || e2 != nil {
		fmt.Println(e1, e2)
		return
	}
	fmt.Printf("\nto 60 °C           %.1f kW at that flow, or %.2f m³/s for 60 kW\n", need.Power/1000, size.InletFlow)
	fmt.Println(airheat.SupplyCaution)
	// Output:
	// humidity ratio     0.00726 kg/kg        [HoF17] ch. 1 eq. 20
	// volume at inlet    0.8402 m³/kg dry    eq. 26
	// heat capacity      1020 J/(kg K) dry  1006 + 1860 W, from eq. 30
	//
	// flow stated at   dry air kg/s   rise K   outlet °C   1.2 × 1005 would need W
	// fan inlet              0.6613     89.0       109.0                     59631
	// standard air           0.6619     88.9       108.9                     59576
	// outlet                 0.4605    127.8       147.8                     85627
	//
	// to 60 °C           27.0 kW at that flow, or 1.24 m³/s for 60 kW
	// Hot supply air softens film, scorches leaves and burns skin. Keep outlets clear of film, crop and people; follow the maker's limits, local codes and licensed practice.
}
