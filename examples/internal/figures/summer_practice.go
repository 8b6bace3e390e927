package figures

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func rulesOfPractice() Figure {
	return Figure{
		Name: "fan-rules", Title: "Fans by rules of practice", Subject: "summer", Package: "ventilation", Example: "Example_rulesOfPractice",
		Question: "How much air should the fans of a house move in summer, in winter, and just to keep it mixed, by the rules of practice?",
		Sketch:   "Fans at one end, inlets or pads at the other, and along the house small fans that keep the air going round.",
		Given: []Given{
			{"A", "floor", "m²", 288, 20, 5000},
			{"z", "altitude", "m", 900, 0, 3000},
			{"E", "most light inside", "lx", 45000, 10000, 100000},
			{"ΔT", "rise from inlet to fan", "K", 7 / 1.8, 1, 12},
			{"l", "from inlet to fan", "m", 24, 5, 60},
		},
		Assumes: []string{"Rules for a first size, the rate of summer read, the other factors from memory. The drying of the last line: 18 °C and 85 % inside, 5 °C and 90 % outside, 90,900 Pa."},
		Change:  []string{"A short house, 12 m: the air's speed over the crop asks for half as much again.", "Light of 70,000 lx: now the heat asks for more than the speed does."},
		Code:    "solveRulesOfPractice",
		Solve:   solveRulesOfPractice,
	}
}

func solveRulesOfPractice(v []float64) (r Result, err error) {
	rates := ventilation.DefaultFanRates(v[0])
	rates.Altitude, rates.Light, rates.Rise, rates.Distance = v[1], v[2], v[3], v[4]
	f, err1 := rates.Solve()
	mixing, err2 := ventilation.CirculatingFans{Floor: v[0], Flow: 0.75, Diameter: 0.5}.Solve()
	inside, err3 := psychro.FromRelativeHumidity(18, 0.85, 90900)
	outside, err4 := psychro.FromRelativeHumidity(5, 0.90, 90900)
	dry, err5 := ventilation.HeatToDry(inside, outside)
	if err := errors.Join(err1, err2, err3, err4, err5); err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("factors: altitude %.3f, light %.3f, rise %.3f, house %.3f; velocity %.3f", f.ByAltitude, f.ByLight, f.ByRise, f.House, f.Velocity),
		fmt.Sprintf("fans in summer %.2f m³/s, least in winter %.2f m³/s", f.Summer, f.Winter),
		fmt.Sprintf("circulating    %.2f m³/s by %d fans, at most %.0f m apart", mixing.Total, mixing.Count, mixing.Throw),
		fmt.Sprintf("an insect screen of porosity 0.5 leaves %.2f of the flow", ventilation.ScreenFactor(0.5)),
		fmt.Sprintf("a kilogram of water out: %.0f kg of air, %.2f MJ, of it %.2f to warm the air", dry.Air, dry.Total/1e6, dry.Sensible/1e6),
	}
	r.Steps = []Step{
		{Says: "Thin air carries less: the standard atmosphere's pressure at sea level over that up here.", Formula: "F_z = 1/(1 - 2.25577 z/100000)^5.2559", Source: "HoF17 ch. 1 eq. 3", Values: numbers{"z": v[1]}, Value: f.ByAltitude},
		{Says: "By light, over 5,000 foot-candles.", Formula: "F_E = E/53819.55", Source: "Kessler", Values: numbers{"E": v[2]}, Value: f.ByLight},
		{Says: "By the rise allowed, over 7 °F.", Formula: "F_T = 3.8888889/ΔT", Source: "from memory", Values: numbers{"ΔT": v[3]}, Value: f.ByRise, Within: 1e-7, Why: "7/1.8 in eight digits"},
		{Says: "By the way from inlet to fan, over 100 ft, for enough speed in a short house.", Formula: "F_l = max(1, sqrt(30.48/l))", Source: "from memory", Values: numbers{"l": v[4]}, Value: f.Velocity},
		{Says: "Summer: 8 cfm for each square foot, by the larger of heat and speed.", Formula: "V = 8 · 0.3048/60 A max(F_z F_E F_T, F_l)", Source: "Kessler", Values: numbers{"A": v[0], "F_z": f.ByAltitude, "F_E": f.ByLight, "F_T": f.ByRise, "F_l": f.Velocity}, Value: f.Summer, Unit: "m³/s"},
		{Says: "Keep the air moving: 2 cfm for each square foot.", Formula: "V_c = 2 · 0.3048/60 A", Source: "HafPage", Values: numbers{"A": v[0]}, Value: mixing.Total, Unit: "m³/s"},
		{Says: "Screen of porosity 0.5.", Formula: "F_s = 0.5 (2 - 0.5)", Source: "PerezParra04", Value: ventilation.ScreenFactor(0.5)},
		{Says: "Air for each kilogram of water.", Formula: "m = 1/(W_i - W_o)", Values: numbers{"W_i": inside.HumidityRatio(), "W_o": outside.HumidityRatio()}, Value: dry.Air, Unit: "kg"},
		{Says: "Heat that goes with it.", Formula: "q = m (h_i - h_o)", Values: numbers{"m": dry.Air, "h_i": inside.Enthalpy() / 1e6, "h_o": outside.Enthalpy() / 1e6}, Value: dry.Total / 1e6, Unit: "MJ"},
	}
	rate := func(distance float64) float64 {
		at := rates
		at.Distance = distance
		f, err := at.Solve()
		if err != nil {
			return math.NaN()
		}
		return f.Summer
	}
	r.Picture, err = chart{title: "Summer rate against the length of the house", says: "A curve that falls with the distance from inlet to fan, and is level from some 30 m on.", x: "inlet to fan, m", y: "fans, m³/s", zero: true,
		curves: []curve{{"", along(5, 60, 110, rate)}}, marks: []mark{{"this house", v[4], f.Summer}}}.picture("Short houses need more air for its speed over the crop; in long ones the plain rate holds, or more where light and height ask for it.")
	return r, err
}
