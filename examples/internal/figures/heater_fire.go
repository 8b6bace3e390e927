package figures

import (
	"fmt"
	"time"

	"cloche.example/airheat"
)

func fireInTheHouse() Figure {
	return Figure{
		Name: "fire-and-air", Title: "What a fire takes and leaves", Subject: "heater and fuel", Package: "airheat", Example: "Example_fireInTheHouse",
		Question: "How much air must a fire get, what does its gas tell, and what would a heater without a flue do to the house's air?",
		Source:   "BWSteam11 p. 262 for the analysis of a flue gas; the heaters are our own",
		Sketch:   "A flued oil heater; the analysis of a steam boiler's gas; a propane heater without a flue in a house of 240 m³.",
		Given:    fireGiven(),
		Assumes:  []string{"Complete combustion but for the carbon monoxide stated; a well mixed house."},
		Change:   []string{"Watch the carbon dioxide of the unflued heater: it doubles with its heat, and so does the water."},
		Code:     "solveFire",
		Solve:    solveFire,
	}
}

func fireGiven() []Given {
	return []Given{
		{"CO_2", "carbon dioxide in the oil heater's dry gas", "fraction", 0.12, 0.06, 0.15},
		{"q", "heat of the oil fire", "W", 30e3, 1e3, 200e3},
		{"q_p", "heat of the unflued propane heater", "W", 10e3, 1e3, 40e3},
		{"V", "air exchanged with outside", "m³/s", 0.05, 0.005, 1},
	}
}

func solveFire(v []float64) (r Result, err error) {
	oil, _ := airheat.FindFuel("light oil")
	air := airheat.DefaultCombustionAir()
	ratio, err := oil.AirRatioFromCO2(air, v[0])
	if err != nil {
		return r, err
	}
	gas, err := oil.Burn(air, ratio)
	if err != nil {
		return r, err
	}
	own, err := oil.SiegertFor(180, 20)
	if err != nil {
		return r, err
	}
	a := airheat.GasAnalysis{CO2: 0.1433, O2: 0.0454, CO: 0.0011, N2: 0.8102} // [BWSteam11] p. 262
	dry := airheat.DryGasFromAnalysis(a, 0.7857)
	gasHeater, _ := airheat.FindFuel("propane")
	d, err := gasHeater.DirectFired(v[2])
	if err != nil {
		return r, err
	}
	// The volume made is counted at 0 °C, the exchange at 20 °C.
	house := airheat.MixedGas{Source: d.CO2Volume * 293.15 / 273.15, Flow: v[3], Volume: 240}
	r.Lines = []string{
		fmt.Sprintf("air ratio %.3f at %.3g %% of CO2, %.2f %% of O2; a fire of %.3g kW draws %.1f m³/h", ratio, 100*v[0], 100*gas.DryO2, v[1]/1000, 3600*oil.CombustionAirFlow(gas, v[1], 10, 101325)),
		fmt.Sprintf("200 ppm of CO are %.3f %% of the heat", 100*oil.UnburntLoss(gas, 200e-6)),
		fmt.Sprintf("Siegert's constants of this oil: A2 %.3f, B %.4f", own.A2, own.B),
		fmt.Sprintf("analysis: %.2f kg of dry gas a kg of fuel, %.2f MJ/kg in it, %.3f MJ/kg by CO", dry, airheat.DryGasLoss(dry, 1005, 222)/1e6, airheat.IncompleteCarbonLoss(a, 0.7857)/1e6),
		fmt.Sprintf("%.3g kW of propane without a flue: %.2f kg/h of water, %.2f %% of CO2 after an hour", v[2]/1000, 3600*d.Water, 100*house.ShareAfter(time.Hour)),
		fmt.Sprintf("to a hundredth at 2 air changes per hour: %.1f h", airheat.PurgeTime(100, 2).Hours()),
		airheat.CombustionCaution,
	}
	after := house.ShareAfter(time.Hour)
	r.Steps = []Step{
		{Says: "Dry gas of the boiler, from its analysis by volume.", Formula: "m = (11 CO_2 + 8 O_2 + 7 (CO + N_2))/(3 (CO_2 + CO)) C", Source: "BWSteam11", Values: numbers{"CO_2": a.CO2, "O_2": a.O2, "CO": a.CO, "N_2": a.N2, "C": 0.7857}, Value: dry, Unit: "kg/kg"},
		{Says: "Water that the propane makes.", Formula: "w = q_p m_w/H", Source: "atoms", Values: numbers{"q_p": v[2], "m_w": 1.634, "H": gasHeater.Lower}, Value: d.Water, Unit: "kg/s", Within: 5e-3, Why: "1.634 kg of water for a kilogram of propane, rounded"},
		{Says: "Carbon dioxide in the house after an hour.", Formula: "x = G/V (1 - exp(-3600 V/240))", Source: "well mixed air", Values: numbers{"G": house.Source, "V": v[3]}, Value: after},
		{Says: "Time to thin a gas a hundredfold at two air changes per hour.", Formula: "h = ln(100)/2", Value: airheat.PurgeTime(100, 2).Hours(), Unit: "h"},
	}
	r.Printed = "13.7 of dry gas for one of coal by weight; the formula on the same page gives 13.82."
	r.Picture, err = chart{title: "Carbon dioxide of an unflued heater", says: "A curve that rises and levels off at the share that the exchange of air carries away.", x: "hours", y: "carbon dioxide, %", zero: true,
		curves: []curve{{"", along(0, 6, 60, func(h float64) float64 { return 100 * house.ShareAfter(time.Duration(h*3600)*time.Second) })}},
		marks:  []mark{{"an hour", 1, 100 * after}}}.picture("Without a flue all the gas stays: the house's leaks are its only flue.")
	return r, err
}
