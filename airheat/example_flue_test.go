package airheat_test

import (
	"fmt"

	"cloche.example/airheat"
)

// The flue loss of light oil at 180 °C, air at 20 °C, 5 % of oxygen in the dry
// gas: by the integral, on both heating values, and by the Siegert form.
func Example_flueLossBothWays() {
	oil := airheat.LightOil()
	air := airheat.DefaultCombustionAir()
	const o2, flue, room, pressure = 0.05, 180.0, 20.0, 101325.0
	siegert, _ := airheat.FindSiegert("light oil")
	s, err := oil.Stoichiometry(air)
	if err != nil {
		fmt.Println(err)
		return
	}
	ratio, _ := oil.AirRatioFromO2(air, o2)
	l, err := oil.FlueLoss(airheat.FlueState{Drawn: air, AirRatio: ratio, AirTemperature: room, FlueTemperature: flue, Pressure: pressure})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("least air              %.2f kg/kg, %.2f m³/kg at 0 °C\n", s.AirMass, s.AirVolume)
	fmt.Printf("greatest CO2           %.2f %% of the dry gas\n", 100*s.CO2Max)
	fmt.Printf("air ratio              %.3f exact, %.3f by 21/(21 - O2)\n", ratio, airheat.AirRatioRule(o2))
	fmt.Printf("CO2 in the dry gas     %.2f %%\n", 100*l.Gas.DryCO2)
	fmt.Printf("dew point              %.1f °C\n", l.DewPoint)
	fmt.Printf("acid dew point         %.0f °C, with 2 %% of the sulphur as trioxide\n", l.Gas.AcidDewPoint(pressure, 0.02))
	fmt.Printf("sensible loss          %.3f MJ/kg of oil\n", l.Sensible/1e6)
	fmt.Printf("latent loss            %.3f MJ/kg of oil\n", l.Latent/1e6)
	fmt.Printf("of the lower value     %.2f %%\n", 100*l.OfLower)
	fmt.Printf("of the higher value    %.2f %%\n", 100*l.OfHigher)
	fmt.Printf("Siegert form           %.2f %% of the lower value (constants from memory)\n", 100*siegert.Siegert(flue, room, o2))
	fmt.Printf("useful heat either way %.2f and %.2f MJ/kg\n", (1-l.OfLower)*oil.Lower/1e6, (1-l.OfHigher)*oil.Higher/1e6)
	fmt.Println(airheat.CombustionCaution)
	// Output:
	// least air              14.43 kg/kg, 11.17 m³/kg at 0 °C
	// greatest CO2           15.41 % of the dry gas
	// air ratio              1.293 exact, 1.313 by 21/(21 - O2)
	// CO2 in the dry gas     11.73 %
	// dew point              45.4 °C
	// acid dew point         115 °C, with 2 % of the sulphur as trioxide
	// sensible loss          3.346 MJ/kg of oil
	// latent loss            2.882 MJ/kg of oil
	// of the lower value     7.84 %
	// of the higher value    13.66 %
	// Siegert form           7.92 % of the lower value (constants from memory)
	// useful heat either way 39.35 and 39.35 MJ/kg
	// Burning fuel makes carbon monoxide, which kills without smell. A fired heater needs its own combustion air, a sound flue, a carbon monoxide alarm and yearly service; directly fired heaters also give off water vapour, carbon dioxide and, from bad combustion, ethylene, which harms plants. Local codes and licensed practice decide.
}
