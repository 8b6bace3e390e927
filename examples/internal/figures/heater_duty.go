package figures

import (
	"fmt"

	"cloche.example/airheat"
	"cloche.example/psychro"
)

func duty() Figure {
	return Figure{
		Name: "heater-duty", Title: "A heater's duty, on three flow bases", Subject: "heater and fuel", Package: "airheat", Example: "Example_dutyOnThreeFlowBases",
		Question: "60 kW go into 2,000 m³/h of air. By how much does it warm? It depends on where the flow is stated.",
		Sketch:   "The trade says that this lifts the air by about 100 K (common practice, no source). A cubic metre at the fan's inlet, at the outlet, or of standard air is not the same air.",
		Given: []Given{
			{"t", "air at the inlet", "°C", 20, -10, 30},
			{"φ", "its relative humidity", "fraction", 0.50, 0.05, 1},
			{"V", "stated flow", "m³/h", 2000, 1000, 50000},
			{"q", "heat to the air", "W", 60000, 1000, 80000},
		},
		Assumes: []string{"The ideal form of moist air at 101325 Pa; all the heat goes to the air."},
		Change:  []string{"Half the heat: the three answers draw together.", "A flow stated at the hot outlet always means less air and a greater rise."},
		Code:    "solveDuty",
		Solve:   solveDuty,
	}
}

func solveDuty(v []float64) (r Result, err error) {
	in, err := psychro.IdealGas.FromRelativeHumidity(v[0], v[1], 101325)
	if err != nil {
		return r, err
	}
	flow := v[2] / 3600 // m³/s
	r.Lines = []string{
		fmt.Sprintf("humidity ratio     %.5f kg/kg        [HoF17] ch. 1 eq. 20", in.HumidityRatio()),
		fmt.Sprintf("volume at inlet    %.4f m³/kg dry    eq. 26", in.SpecificVolume()),
		fmt.Sprintf("heat capacity      %.0f J/(kg K) dry  1006 + 1860 W, from eq. 30", in.HeatCapacity()),
		"",
		"flow stated at   dry air kg/s   rise K   outlet °C   1.2 × 1005 would need W",
	}
	var rows []bar
	var all []airheat.Duty
	for _, basis := range []airheat.FlowBasis{airheat.FanInlet, airheat.StandardAir, airheat.Outlet} {
		d, err := airheat.RiseFor(in, airheat.Flow{Value: flow, Basis: basis}, v[3])
		if err != nil {
			return r, err
		}
		all = append(all, d)
		rows = append(rows, bar{basis.String(), d.Rise})
		r.Lines = append(r.Lines, fmt.Sprintf("%-16s %12.4f %8.1f %11.1f %25.0f", basis, d.DryAir, d.Rise, d.Outlet, d.ByRule))
	}
	const gentle = 60.0 // °C
	need, err := airheat.PowerFor(in, airheat.Flow{Value: flow, Basis: airheat.FanInlet}, gentle)
	if err != nil {
		return r, err
	}
	size, err := airheat.FlowFor(in, v[3], gentle)
	if err != nil {
		return r, err
	}
	r.Lines = append(r.Lines, "", fmt.Sprintf("to %g °C           %.1f kW at that flow, or %.2f m³/s for %.3g kW", gentle, need.Power/1000, size.InletFlow, v[3]/1000), airheat.SupplyCaution)
	w, c := in.HumidityRatio(), in.HeatCapacity()
	r.Steps = []Step{
		{Says: "Heat capacity of the air with its vapour.", Formula: "c = 1006 + 1860 W", Source: "HoF17 ch. 1 eq. 30", Values: numbers{"W": w}, Value: c, Unit: "J/(kg K)"},
		{Says: "Dry air, when the flow is that of the inlet.", Formula: "m_1 = V/(3600 v)", Source: "HoF17 ch. 1 eq. 26", Values: numbers{"V": v[2], "v": in.SpecificVolume()}, Value: all[0].DryAir, Unit: "kg/s"},
		{Says: "Rise then.", Formula: "ΔT_1 = q/(m_1 c)", Values: numbers{"q": v[3], "m_1": all[0].DryAir, "c": c}, Value: all[0].Rise, Unit: "K"},
		{Says: "Dry air, when the flow is of standard air.", Formula: "m_2 = 1.2 V/(3600 (1 + W))", Values: numbers{"V": v[2], "W": w}, Value: all[1].DryAir, Unit: "kg/s"},
		{Says: "Dry air, when it is that of the outlet, whose volume the rise itself decides.", Formula: "m_3 = V/(3600 v_2)", Source: "solved", Values: numbers{"V": v[2], "v_2": all[2].OutletFlow / all[2].DryAir}, Value: all[2].DryAir, Unit: "kg/s"},
		{Says: "Rise then.", Formula: "ΔT_3 = q/(m_3 c)", Values: numbers{"q": v[3], "m_3": all[2].DryAir, "c": c}, Value: all[2].Rise, Unit: "K"},
	}
	r.Picture = bars("Rise by the place where the flow is stated", "Three bars of temperature rise; the one for the outlet is the longest.", "%.1f K", "The same heat and the same number of cubic metres, three rises.", rows...)
	return r, nil
}
