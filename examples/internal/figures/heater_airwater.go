package figures

import (
	"fmt"

	"cloche.example/airheat"
)

func airOrWater() Figure {
	return Figure{
		Name: "air-or-water", Title: "The same heat by air or by water", Subject: "heater and fuel", Package: "airheat",
		Question: "30 kW go to a house through ducts or through pipes. What flows, what drives it, and what freezes when it stops?",
		Sketch:   "Air of 45 °C in ducts, water of 60 and 40 °C in pipes, each from a heater outside the house.",
		Given: []Given{
			{"q", "heat wanted in the house", "W", 30e3, 1e3, 200e3},
			{"t_s", "water to the house", "°C", 60, 45, 90},
			{"V_w", "water in the circuit", "m³", 0.35, 0.02, 10},
			{"t_o", "outside air after a stop", "°C", -10, -30, -1},
		},
		Assumes: []string{"Air against 300 Pa, water against 30 kPa, both driven at an efficiency of 0.4 (common practice, no source). Water is cooled to 40 °C, air to 15 °C. A stopped circuit loses 12 W/K to the outside."},
		Change:  []string{"Warmer water: less of it flows, and the pump needs next to nothing."},
		Code:    "solveAirOrWater",
		Solve:   solveAirOrWater,
	}
}

func solveAirOrWater(v []float64) (r Result, err error) {
	a := airheat.AirOrWater{Load: v[0], House: 15, Outside: v[3], ByAir: airheat.DefaultAirCarrier(), ByWater: airheat.DefaultWaterCarrier()}
	a.ByAir.WallLoss, a.ByAir.Volume, a.ByAir.Metal = 15, 4, 3e4
	a.ByWater.Supply, a.ByWater.WallLoss, a.ByWater.Volume, a.ByWater.Metal, a.ByWater.Frost = v[1], 12, v[2], 1.5e5, 12
	air, water, err := a.Solve()
	if err != nil {
		return r, err
	}
	show := func(name string, c airheat.CarrierResult) {
		r.Lines = append(r.Lines, fmt.Sprintf("%-6s %7.4f m³/s  driven by %5.1f W, %.2f %% of the load  lost on the way %4.0f W  warm after %.1f min",
			name, c.VolumeFlow, c.Transport, 100*c.TransportShare, c.Loss, c.Response.Minutes()))
	}
	show("air", air)
	show("water", water)
	r.Lines = append(r.Lines, fmt.Sprintf("stopped water reaches 0 °C after %.1f h and is ice throughout after %.0f h more", water.CoolToFreezing.Hours(), water.FreezeThrough.Hours()), airheat.FrostCaution)
	r.Steps = []Step{
		{Says: "Air that must flow, for the load and its loss on the way.", Formula: "V_a = Q_a/(ρ c (45 - 15))", Values: numbers{"Q_a": air.Heat, "ρ": a.ByAir.Density, "c": a.ByAir.HeatCapacity}, Value: air.VolumeFlow, Unit: "m³/s"},
		{Says: "Water that must flow.", Formula: "V_p = Q_w/(988·4187 (t_s - 40))", Values: numbers{"Q_w": water.Heat, "t_s": v[1]}, Value: water.VolumeFlow, Unit: "m³/s"},
		{Says: "Power of the fan.", Formula: "P_a = 300 V_a/0.4", Values: numbers{"V_a": air.VolumeFlow}, Value: air.Transport, Unit: "W"},
		{Says: "Power of the pump.", Formula: "P_w = 30000 V_p/0.4", Values: numbers{"V_p": water.VolumeFlow}, Value: water.Transport, Unit: "W"},
		{Says: "From the stop to 0 °C.", Formula: "h_0 = C/12 ln(15/(-t_o) + 1)/3600", Source: "a body of one temperature", Values: numbers{"C": water.Inertia, "t_o": v[3]}, Value: water.CoolToFreezing.Hours(), Unit: "h", Within: 1e-6, Why: "rounding"},
	}
	r.Picture = bars("Power that drives the heat", "Two bars: the fan's is many times the pump's.", "%.1f W", "What it takes to move the same heat.", bar{"fan, for air", air.Transport}, bar{"pump, for water", water.Transport})
	return r, nil
}
