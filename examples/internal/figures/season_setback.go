package figures

import (
	"fmt"
	"math"

	"cloche.example/airheat"
	"cloche.example/envelope"
)

func setBack() Figure {
	return Figure{
		Name: "night-set-back", Title: "A lower set-point at night", Subject: "season", Package: "airheat",
		Question: "What does a lower temperature at night save, and what does the mean of day and night have to do with it?",
		Sketch:   "Twelve hours of day, twelve of night, every day like the one before. The house's stores pass heat from day to night.",
		Given: []Given{
			{"t_d", "set-point by day", "°C", 16, 10, 24},
			{"t_n", "set-point by night", "°C", 12, 2, 16},
			{"t_o", "outside air", "°C", -5, -20, 1},
			{"C", "heat capacity of the structure", "MJ/K", 3, 0.1, 100},
			{"H", "loss of the cover", "W/K", 600, 50, 1500},
		},
		Assumes: []string{"Constant weather, a heater of 40 kW, no sun; three stores of heat."},
		Change:  []string{"A structure ten times as heavy changes next to nothing: what the stores hold back at dusk they ask for at dawn."},
		Code:    "solveSetBack",
		Solve:   solveSetBack,
	}
}

func solveSetBack(v []float64) (r Result, err error) {
	solve := func(night float64) (airheat.SetBack, error) {
		house, err := airheat.NewTransient(envelope.Nodes{AirCapacity: 4e5, StructureCapacity: 1e6 * v[3], SoilCapacity: 3e7, Cover: v[4], Leakage: 90, AirStructure: 700, AirSoil: 500, SoilDeep: 60})
		if err != nil {
			return airheat.SetBack{}, err
		}
		return house.NightSetBack(envelope.Drive{Outside: v[2], Deep: 8}, airheat.SetPoints{Day: v[0], Night: night, DayStarts: 7, DayEnds: 19}, 40e3)
	}
	if v[1] > v[0] {
		return r, fmt.Errorf("set-point by night is %g, which lies above that by day of %g °C", v[1], v[0])
	}
	s, err := solve(v[1])
	if err != nil {
		return r, err
	}
	mean := (v[0] + v[1]) / 2
	bound := (v[0] - mean) / (v[0] - v[2])
	r.Lines = []string{
		fmt.Sprintf("%.0f kWh a day instead of %.0f: the set-back saves %.1f %%", s.HeatPerDay/3.6e6, s.ConstantHeat/3.6e6, 100*s.Saving),
		fmt.Sprintf("lowest air %.1f °C; in the morning %.0f min to be warm again", s.Lowest, s.Recovery.Minutes()),
		fmt.Sprintf("by the mean of the set-points alone %.1f %%", 100*bound),
	}
	r.Steps = []Step{
		{Says: "Mean set-point.", Formula: "t_m = (t_d + t_n)/2", Values: numbers{"t_d": v[0], "t_n": v[1]}, Value: mean, Unit: "°C"},
		{Says: "What a house that followed its set-points at once would save.", Formula: "s_m = (t_d - t_m)/(t_d - t_o)", Source: "loss in proportion to the difference; the ground is left out", Values: numbers{"t_d": v[0], "t_m": mean, "t_o": v[2]}, Value: bound},
		{Says: "What this house saves: its air lags behind, and the ground below gives its own.", Formula: "s = 1 - E/E_c", Source: "exact solution in steps of 5 min", Values: numbers{"E": s.HeatPerDay / 3.6e6, "E_c": s.ConstantHeat / 3.6e6}, Value: s.Saving, Within: 1e-6, Why: "rounding"},
		{Says: "Time until the air is back at the day's set-point.", Symbol: "τ", Value: s.Recovery.Minutes(), Unit: "min"},
	}
	r.Picture, err = chart{title: "Saving over the night's set-point", says: "The saving falls to nought as the night's set-point nears the day's.", x: "set-point by night, °C", y: "saving, %", zero: true,
		curves: []curve{{"", along(math.Max(2, v[0]-12), v[0], 24, func(t float64) float64 {
			s, err := solve(t)
			if err != nil {
				return math.NaN()
			}
			return 100 * s.Saving
		})}}, marks: []mark{{"here", v[1], 100 * s.Saving}}}.picture("Each kelvin at night saves about the same, until the house no longer cools so far.")
	return r, err
}
