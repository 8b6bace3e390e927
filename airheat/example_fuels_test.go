package airheat_test

import (
	"fmt"
	"log"
	"time"

	"cloche.example/airheat"
)

// The ready-made fuels, a coal by its composition, and a gas by its parts.
func Example_fuels() {
	for _, f := range airheat.Fuels() {
		fmt.Printf("%-13s %5.1f MJ/kg lower, %5.1f higher\n", f.Name, f.Lower/1e6, f.Higher/1e6)
	}
	coal := airheat.Composition{Carbon: 0.74, Hydrogen: 0.046, Oxygen: 0.075, Nitrogen: 0.014, Sulphur: 0.008, Water: 0.045, Ash: 0.072}
	higher, lower := airheat.Dulong(coal)
	fmt.Printf("a coal by Dulong %.1f and %.1f, by Boie %.1f MJ/kg\n", higher/1e6, lower/1e6, airheat.Boie(coal)/1e6)
	declared, err := airheat.NewFuel("coal as declared", coal, 29e6)
	if err != nil {
		log.Fatal(err)
	}
	gas, err := airheat.NewGasFuel("biogas", airheat.GasShares{Methane: 0.6, CarbonDioxide: 0.4})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%s %.1f MJ/kg higher, %s %.1f MJ/kg lower\n", declared.Name, declared.Higher/1e6, gas.Name, gas.Lower/1e6)
	// Output:
	// natural gas    50.0 MJ/kg lower,  55.5 higher
	// propane        46.3 MJ/kg lower,  50.3 higher
	// light oil      42.7 MJ/kg lower,  45.6 higher
	// wood           14.3 MJ/kg lower,  15.8 higher
	// wood pellets   16.8 MJ/kg lower,  18.2 higher
	// straw          14.4 MJ/kg lower,  15.9 higher
	// hard coal      29.0 MJ/kg lower,  30.1 higher
	// a coal by Dulong 30.4 and 29.6, by Boie 30.7 MJ/kg
	// coal as declared 30.1 MJ/kg higher, biogas 17.7 MJ/kg lower
}

// What a fire takes and leaves: the air it needs, the loss by three short forms
// from an analysis of the gas, and what an unflued heater gives to a house.
func Example_fireInTheHouse() {
	oil, _ := airheat.FindFuel("light oil")
	air := airheat.DefaultCombustionAir()
	ratio, err := oil.AirRatioFromCO2(air, 0.12)
	if err != nil {
		log.Fatal(err)
	}
	gas, err := oil.Burn(air, ratio)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("air ratio %.3f at 12 %% of CO2, %.2f %% of O2; a fire of 30 kW draws %.1f m³/h\n", ratio, 100*gas.DryO2, 3600*oil.CombustionAirFlow(gas, 30e3, 10, 101325))
	fmt.Printf("200 ppm of CO are %.3f %% of the heat\n", 100*oil.UnburntLoss(gas, 200e-6))
	own, err := oil.SiegertFor(180, 20)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("Siegert's constants of this oil: A2 %.3f, B %.4f\n", own.A2, own.B)
	a := airheat.GasAnalysis{CO2: 0.1433, O2: 0.0454, CO: 0.0011, N2: 0.8102} // [BWSteam11] p. 262
	dry := airheat.DryGasFromAnalysis(a, 0.7857)
	fmt.Printf("analysis: %.2f kg of dry gas a kg of fuel, %.2f MJ/kg in it, %.3f MJ/kg by CO\n", dry, airheat.DryGasLoss(dry, 1005, 222)/1e6, airheat.IncompleteCarbonLoss(a, 0.7857)/1e6)
	gasHeater, _ := airheat.FindFuel("propane")
	d, err := gasHeater.DirectFired(10e3)
	if err != nil {
		log.Fatal(err)
	}
	// The volume made is counted at 0 °C, the exchange at 20 °C.
	house := airheat.MixedGas{Source: d.CO2Volume * 293.15 / 273.15, Flow: 0.05, Volume: 240}
	fmt.Printf("10 kW of propane without a flue: %.2f kg/h of water, %.2f %% of CO2 after an hour\n", 3600*d.Water, 100*house.ShareAfter(time.Hour))
	fmt.Printf("to a hundredth at 2 air changes per hour: %.1f h\n", airheat.PurgeTime(100, 2).Hours())
	fmt.Println(airheat.CombustionCaution)
	// Output:
	// air ratio 1.266 at 12 % of CO2, 4.64 % of O2; a fire of 30 kW draws 37.1 m³/h
	// 200 ppm of CO are 0.079 % of the heat
	// Siegert's constants of this oil: A2 0.676, B 0.0067
	// analysis: 13.82 kg of dry gas a kg of fuel, 3.08 MJ/kg in it, 0.141 MJ/kg by CO
	// 10 kW of propane without a flue: 1.27 kg/h of water, 0.37 % of CO2 after an hour
	// to a hundredth at 2 air changes per hour: 2.3 h
	// Burning fuel makes carbon monoxide, which kills without smell. A fired heater needs its own combustion air, a sound flue, a carbon monoxide alarm and yearly service; directly fired heaters also give off water vapour, carbon dioxide and, from bad combustion, ethylene, which harms plants. Local codes and licensed practice decide.
}
