package figures

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/psychro"
)

func leakage() Figure {
	return Figure{
		Name: "leakage", Title: "How a closed house leaks", Subject: "the whole house", Package: "envelope",
		Question: "A pressure test says how leaky a house is at 50 Pa. How much air does it exchange in a winter night, by warmth and by wind?",
		Sketch:   "Warm air rises and leaves through the gaps of the roof, cold air comes in below; wind presses on one side.",
		Given: []Given{
			{"n_50", "air changes per hour at 50 Pa", "1/h", 10, 1, 100},
			{"V", "volume of the house", "m³", 275, 20, 5000},
			{"t_i", "inside air", "°C", 15, 1, 30},
			{"t_o", "outside air", "°C", -10, -25, 14},
			{"v", "wind", "m/s", 4, 0, 15},
		},
		Assumes: []string{"Leaks over 3 m of height, half of them in roof and floor, more in the roof; an exponent of 0.65; a house in half-open land. 80 % inside, 85 % outside."},
		Change:  []string{"Still air: the warmth alone makes about two thirds of the air changes of this night.", "The two do not add up: they share the same gaps."},
		Code:    "solveLeakage",
		Solve:   solveLeakage,
	}
}

func solveLeakage(v []float64) (r Result, err error) {
	inside, e1 := psychro.FromRelativeHumidity(v[2], 0.8, 101325)
	outside, e2 := psychro.FromRelativeHumidity(v[3], 0.85, 101325)
	if err := errors.Join(e1, e2); err != nil {
		return r, err
	}
	l := envelope.DefaultLeakage()
	l.Model, l.At50 = envelope.LeakagePressure, v[0]
	const height = 3.0
	flow := func(wind float64) (envelope.LeakageFlow, error) {
		return l.Flow(v[1], height, envelope.HouseAir{Inside: inside, Outside: outside, Wind: wind})
	}
	f, err := flow(v[4])
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("stack %.2f Pa moves %.4f m³/s, wind %.2f Pa moves %.4f m³/s", f.StackPressure, f.Stack, f.WindPressure, f.Wind),
		fmt.Sprintf("together %.4f m³/s, %.2f air changes per hour", f.Volume, f.AirChanges),
		fmt.Sprintf("heat %.0f W to warm the air, %.0f W carried off as vapour", f.Sensible, f.Latent),
	}
	r.Steps = []Step{
		{Says: "Pressure of the warm column.", Formula: "p_s = ρ 9.80665 H (t_i - t_o)/(t_i + 273.15)", Source: "WalWil98", Values: numbers{"ρ": outside.Density(), "H": height, "t_i": v[2], "t_o": v[3]}, Value: f.StackPressure, Unit: "Pa", Within: 1e-6, Why: "rounding"},
		{Says: "Pressure of the sheltered wind.", Formula: "p_v = ρ (0.8 v)^2/2", Source: "WalWil98", Values: numbers{"ρ": outside.Density(), "v": v[4]}, Value: f.WindPressure, Unit: "Pa", Within: 1e-6, Why: "rounding"},
		{Says: "Both together: less than their sum, since they work against each other on some sides.", Formula: "V = (V_s^(1/n) + V_v^(1/n) - (V_s V_v)^(1/(2 n))/3)^n", Source: "WalWil98", Values: numbers{"V_s": f.Stack, "V_v": f.Wind, "n": l.Exponent}, Value: f.Volume, Unit: "m³/s", Within: 1e-6, Why: "rounding"},
		{Says: "Air changes.", Formula: "N = 3600 V_l/V", Values: numbers{"V_l": f.Volume, "V": v[1]}, Value: f.AirChanges, Unit: "1/h"},
		{Says: "Heat to warm what comes in.", Formula: "q = m c (t_i - t_o)", Values: numbers{"m": f.DryAir, "c": outside.HeatCapacity(), "t_i": v[2], "t_o": v[3]}, Value: f.Sensible, Unit: "W"},
	}
	r.Picture, err = chart{title: "Air changes over the wind", says: "A curve that begins at the stack's share and rises with the wind.", x: "wind, m/s", y: "air changes per hour", zero: true,
		curves: []curve{{"", along(0, 15, 60, func(wind float64) float64 {
			f, err := flow(wind)
			if err != nil {
				return math.NaN()
			}
			return f.AirChanges
		})}}, marks: []mark{{"here", v[4], f.AirChanges}}}.picture("In still air the warmth alone drives the exchange.")
	return r, err
}
