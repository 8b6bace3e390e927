package psychro_test

import (
	"fmt"

	"cloche.example/psychro"
)

// Cooling with condensate: 5 m³/s of air of 30 °C and 50 % leave a coil
// saturated at 10 °C, example 3 of [HoF17] ch. 1, which reads 197 kW off its
// chart (from memory); ChemicaLogic, MoistAirTab example 4, computes 198.18.
func Example_coolingWithCondensate() {
	in, err := psychro.FromRelativeHumidity(30, 0.5, 101325)
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := psychro.Stream{State: in, DryAir: 5 / in.SpecificVolume()}.Coil(10)
	if err != nil {
		fmt.Println(err)
		return
	}
	out := c.Out.State
	fmt.Printf("dry air          %8.3f kg/s\n", c.Out.DryAir)
	fmt.Printf("enthalpies       %8.2f and %.2f kJ/kg\n", in.Enthalpy()/1000, out.Enthalpy()/1000)
	fmt.Printf("humidity ratios  %8.5f and %.5f kg/kg\n", in.HumidityRatio(), out.HumidityRatio())
	fmt.Printf("condensate       %8.5f kg/s, carries %.2f kW\n", c.Condensate, c.Drain/1000)
	fmt.Printf("sensible heat    %8.1f kW\n", c.Sensible/1000)
	fmt.Printf("latent heat      %8.1f kW\n", c.Latent/1000)
	fmt.Printf("total            %8.1f kW (chart 197, computed 198.18)\n", c.Heat/1000)
	few, err := psychro.Stream{State: in, DryAir: 5 / in.SpecificVolume()}.BypassedCoil(10, 0.15)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("15 %% past the coil: %.1f kW, out at %.1f °C and %.0f %%\n", few.Heat/1000, few.Out.State.Temperature(), 100*few.Out.State.RelativeHumidity())
	// Output:
	// dry air             5.701 kg/s
	// enthalpies          64.35 and 29.35 kJ/kg
	// humidity ratios   0.01337 and 0.00766 kg/kg
	// condensate        0.03255 kg/s, carries 1.37 kW
	// sensible heat       117.6 kW
	// latent heat          80.6 kW
	// total               198.2 kW (chart 197, computed 198.18)
	// 15 % past the coil: 168.5 kW, out at 13.0 °C and 91 %
}
