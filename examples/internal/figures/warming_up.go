package figures

import (
	"fmt"
	"math"
	"time"

	"cloche.example/airheat"
	"cloche.example/envelope"
)

func warmUp() Figure {
	return Figure{
		Name: "warm-up", Title: "A frosty morning: warming up, and failing", Subject: "warming and freezing", Package: "airheat", Example: "Example_warmUp",
		Question: "How long does a cold house take to warm up, what heater does a wanted time ask for, and how long has it until frost when the heater fails?",
		Sketch:   "Three stores of heat: the air, the structure with all that is in it, and the soil.",
		Given: []Given{
			{"q", "heat of the heater", "W", 34000, 20000, 100000},
			{"t_o", "outside air", "°C", -8, -20, -1},
			{"t_s", "temperature wanted", "°C", 15, 2, 25},
			{"m", "minutes for the wanted warm-up", "min", 20, 5, 240},
		},
		Assumes: []string{"Linear exchange between the three stores; constant weather. A house warms from its unheated steady state."},
		Change:  []string{"Twice the heat does not halve the time: it more than halves it."},
		Code:    "solveWarmUp",
		Solve:   solveWarmUp,
	}
}

func solveWarmUp(v []float64) (r Result, err error) {
	nodes := envelope.Nodes{
		AirCapacity: 4.2e5, StructureCapacity: 2.6e6, SoilCapacity: 3.1e7, // J/K
		Cover: 640, Leakage: 95, AirStructure: 780, AirSoil: 520, StructureOutside: 35, SoilDeep: 60, // W/K
	}
	house, err := airheat.NewTransient(nodes)
	if err != nil {
		return r, err
	}
	set := v[2]
	d := envelope.Drive{Heat: v[0], Outside: v[1], Deep: 8}
	tau := house.TimeConstants()
	cold := d
	cold.Heat = 0
	s := house.Steady(cold)
	r.Lines = []string{
		fmt.Sprintf("time constants     %.1f min, %.2f h, %.1f h", tau[0].Minutes(), tau[1].Hours(), tau[2].Hours()),
		fmt.Sprintf("unheated           air %.2f, structure %.2f, soil %.2f °C", s.Air, s.Structure, s.Soil),
	}
	up, err := house.WarmUp(d, set, airheat.Forever)
	if err != nil {
		return r, err
	}
	if up.Reached {
		r.Lines = append(r.Lines, fmt.Sprintf("to %g °C           %.1f min with %.0f W; the soil is then at %.2f °C", set, up.Time.Minutes(), d.Heat, up.State.Soil))
	} else {
		r.Lines = append(r.Lines, fmt.Sprintf("to %g °C           never with %.0f W; it would settle at %.2f °C", set, d.Heat, up.Limiting))
	}
	w, err := house.PowerForWarmUp(d, set, time.Duration(v[3]*60)*time.Second)
	if err != nil {
		return r, err
	}
	less := d
	less.Heat = 15000
	weak, err := house.WarmUp(less, set, airheat.Forever)
	if err != nil {
		return r, err
	}
	q, held := house.HoldingHeat(less, set)
	fails, err := house.CoolDown(house, less, airheat.HeatFailure{SetPoint: set, Share: 0, Level: 0, Limit: airheat.Forever})
	if err != nil {
		return r, err
	}
	r.Lines = append(r.Lines,
		fmt.Sprintf("in %.3g min          %.0f W", v[3], w),
		fmt.Sprintf("with 15 kW         reached: %t; it would settle at %.2f °C", weak.Reached, weak.Limiting),
		fmt.Sprintf("to hold %g °C      %.0f W", set, q),
		fmt.Sprintf("heater fails       frost after %.2f h; the soil is then at %.2f °C", fails.Time.Hours(), fails.State.Soil),
		airheat.FrostCaution)
	r.Steps = []Step{
		{Says: "Heat that holds the set-point: through the cover and the leaks, and what the structure and the soil pass on.", Formula: "q_h = (H_c + H_l) (t_s - t_o) + 780 (t_s - t_b) + 520 (t_s - t_g)", Source: "balance of the air",
			Values: numbers{"H_c": 640, "H_l": 95, "t_s": set, "t_o": v[1], "t_b": held.Structure, "t_g": held.Soil}, Value: q, Unit: "W", Within: 1e-6, Why: "rounding"},
		{Says: "The soil, held so, lies between the air and the ground below.", Formula: "t_g = (520 t_s + 60 t_d)/(520 + 60)", Source: "balance of the soil", Values: numbers{"t_s": set, "t_d": d.Deep}, Value: held.Soil, Unit: "°C"},
		{Says: "The three rates at which a difference dies out; the slowest.", Symbol: "τ_3", Source: "eigenvalues of the three balances", Value: tau[2].Hours(), Unit: "h"},
		{Says: "Frost after the failure, by the exact solution.", Symbol: "h_f", Source: "where the air meets 0 °C", Value: fails.Time.Hours(), Unit: "h"},
	}
	start := held
	after := less
	after.Heat = 0
	span := math.Min(48, math.Max(2, 1.5*fails.Time.Hours()))
	at := func(pick func(airheat.Temperatures) float64) func(float64) float64 {
		return func(h float64) float64 {
			return pick(house.After(start, after, time.Duration(h*float64(time.Hour))))
		}
	}
	r.Picture, err = chart{title: "The house after the heater fails", says: "Air, structure and soil cool; the air falls fast at first and then follows the soil.", x: "hours after the failure", y: "°C", curves: []curve{
		{"air", along(0, span, 120, at(func(t airheat.Temperatures) float64 { return t.Air }))},
		{"structure", along(0, span, 120, at(func(t airheat.Temperatures) float64 { return t.Structure }))},
		{"soil", along(0, span, 120, at(func(t airheat.Temperatures) float64 { return t.Soil }))},
	}, marks: []mark{{"frost", fails.Time.Hours(), 0}}}.picture("The air falls at once to what the soil can hold, then both sink.")
	return r, err
}
