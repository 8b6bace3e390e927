package airheat_test

import (
	"fmt"

	"cloche.example/airheat"
)

// Wood by its moisture: heating value NCV = NCVdry (1 - M) - 2.443 M
// [IsoFuel21], flue loss at 180 °C with 8 % of oxygen, dew point of the gas.
func Example_woodByMoisture() {
	wood := airheat.Wood()
	air := airheat.DefaultCombustionAir()
	fmt.Println("moisture   lower MJ/kg   higher MJ/kg   of dry wood's heat   flue loss   dew point °C")
	for _, m := range []float64{0.08, 0.15, 0.20, 0.30, 0.45, 0.60} {
		f, err := wood.MoistFuel(m)
		if err != nil {
			fmt.Println(err)
			return
		}
		ratio, err := f.AirRatioFromO2(air, 0.08)
		if err != nil {
			fmt.Println(err)
			return
		}
		l, err := f.FlueLoss(airheat.FlueState{Drawn: air, AirRatio: ratio, AirTemperature: 15, FlueTemperature: 180, Pressure: 101325})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%6.0f %% %13.2f %14.2f %18.1f %% %9.1f %% %14.1f\n", 100*m, f.Lower/1e6, f.Higher/1e6, 100*f.Lower/(18.5e6*(1-m)), 100*l.OfLower, l.DewPoint)
	}
	fmt.Println(airheat.CombustionCaution)
	// Output:
	// moisture   lower MJ/kg   higher MJ/kg   of dry wood's heat   flue loss   dew point °C
	//      8 %         16.82          18.23               98.9 %      10.2 %           45.1
	//     15 %         15.36          16.84               97.7 %      10.4 %           47.4
	//     20 %         14.31          15.85               96.7 %      10.7 %           49.2
	//     30 %         12.22          13.87               94.3 %      11.3 %           52.8
	//     45 %          9.08          10.90               89.2 %      12.7 %           58.8
	//     60 %          5.93           7.92               80.2 %      15.5 %           65.7
	// Burning fuel makes carbon monoxide, which kills without smell. A fired heater needs its own combustion air, a sound flue, a carbon monoxide alarm and yearly service; directly fired heaters also give off water vapour, carbon dioxide and, from bad combustion, ethylene, which harms plants. Local codes and licensed practice decide.
}
