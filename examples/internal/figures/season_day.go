package figures

import (
	"fmt"
	"math"

	"cloche.example/ventilation"
)

// dayChart is a chart of columns of hourly means over the hours of a day.
func dayChart(y string, zero bool, curves ...curve) chart {
	return chart{title: y, x: "hour", y: y, zero: zero, high: 210, curves: curves}
}

// hourly is a column of hourly means at the middle of each hour.
func hourly(name string, column []float64, scale float64) curve {
	c := curve{name: name}
	for h, x := range column {
		c.at = append(c.at, straight(float64(h)+0.5, scale*x, 0, 0)[0])
	}
	return c
}

// heatOf is the sum of hourly means of power, kWh.
func heatOf(power []float64) float64 {
	sum := 0.0
	for _, w := range power {
		sum += w * 3600
	}
	return sum / 3.6e6
}

func hoursUnderARule() Figure {
	return Figure{
		Name: "spring-day", Title: "A spring day, hour by hour", Subject: "season", Package: "ventilation", Example: "Example_hoursUnderARule",
		Question: "Heater and vents keep a house between two temperatures through a cool spring day. What heat does it take, and what does the soil store?",
		Sketch:   "Cold night, sun by day. The heater holds the lower target, the vents the upper; the soil takes heat at noon and gives it back at night.",
		Given: []Given{
			{"t_m", "outside, mean of the day", "°C", 9, -8, 20},
			{"I", "sun at its height", "W/m²", 700, 100, 950},
			{"t_h", "heated to", "°C", 14, 5, 20},
			{"t_v", "vented at", "°C", 24, 20, 35},
			{"Q_h", "heater", "kW", 25, 0, 60},
		},
		Assumes: []string{"95 m² and 275 m³ under a single film, vents at sides and ridge, a crop of LAI 2.5; outside 6 K warmer in the afternoon and 6 K colder at night than the mean, 50 % to 90 %, 1.5 m/s, 97,300 Pa; soil of 0.3 MJ/(m² K) at 12 °C. The same call runs the 8,760 hours of a year."},
		Change:  []string{"A heater of 5 kW: the cold hours fall short of the target and are counted.", "Vent at 20 °C: three times the opening, a soil half a kelvin cooler, and hardly more heat for the night."},
		Code:    "solveHoursUnderARule",
		Solve:   solveHoursUnderARule,
	}
}

func solveHoursUnderARule(v []float64) (r Result, err error) {
	house, err := smallHouse()
	if err != nil {
		return r, err
	}
	hours := ventilation.Hours{
		Pressure: 97300, Settings: []ventilation.Setting{{}},
		Rule: ventilation.Targets{Warm: v[2], Vent: v[3], Heater: 1000 * v[4], Humidity: 1, Most: 1},
		Soil: ventilation.FloorStore{Capacity: 3e5, Deep: 1, Ground: 10, Start: 12},
	}
	for h := range 24 {
		wave := -math.Cos(2 * math.Pi * (float64(h) - 1.5) / 24)
		hours.Temperature = append(hours.Temperature, v[0]+6*wave)
		hours.RelativeHumidity = append(hours.RelativeHumidity, 0.70-0.2*wave)
		hours.Sun = append(hours.Sun, max(0, v[1]*wave-50))
		hours.Wind = append(hours.Wind, 1.5)
		hours.Sky = append(hours.Sky, v[0]-13+6*wave)
	}
	day, err := house.YearTo(nil, hours)
	if err != nil {
		return r, err
	}
	heat := heatOf(day.Heat)
	r.Lines = []string{"hour  inside °C  heat kW  vents %  soil °C"}
	for h := 1; h < 24; h += 6 {
		r.Lines = append(r.Lines, fmt.Sprintf("%4d  %9.1f  %7.1f  %7.0f  %7.1f", h, day.Temperature[h], day.Heat[h]/1000, 100*day.Opening[h], day.SoilTemperature[h]))
	}
	r.Lines = append(r.Lines, fmt.Sprintf("heat of the day %.0f kWh, hours short of the rule %d", heat, day.Short))
	r.Steps = []Step{
		{Says: "Outside in the hour from 13.", Formula: "t_o = t_m - 6 cos(360 (13 - 1.5)/24)", Values: numbers{"t_m": v[0]}, Value: hours.Temperature[13], Unit: "°C"},
		{Says: "Inside then, with heater and vents as the rule has them.", Symbol: "t", Value: day.Temperature[13], Unit: "°C"},
		{Says: "Warmth that the vents carry out, all but the vapour's share.", Formula: "Q_a = 1.006 m (t - t_o)", Values: numbers{"m": day.DryAir[13], "t": day.Temperature[13], "t_o": hours.Temperature[13]}, Value: 1.006 * day.DryAir[13] * (day.Temperature[13] - hours.Temperature[13]), Unit: "kW"},
		{Says: "Soil of the last hour over that of the first: what the day has left in it.", Formula: "E_s = 0.3 · 95 (t_23 - t_0)/3.6", Values: numbers{"t_23": day.SoilTemperature[23], "t_0": day.SoilTemperature[0]}, Value: 0.3 * 95 * (day.SoilTemperature[23] - day.SoilTemperature[0]) / 3.6, Unit: "kWh"},
		{Says: "Heater, mean of the day.", Symbol: "Q_m", Value: heat / 24, Unit: "kW"},
		{Says: "In all.", Formula: "E = 24 Q_m", Values: numbers{"Q_m": heat / 24}, Value: heat, Unit: "kWh"},
	}
	r.Picture, err = charts("A day under a rule", "Two charts over the hours: inside between the two targets, outside and soil; and below them the heater.", "The soil lags behind: warmest when the sun is gone.",
		dayChart("°C", false, hourly("inside", day.Temperature, 1), hourly("outside", hours.Temperature, 1), hourly("soil", day.SoilTemperature, 1)),
		dayChart("heater, kW", true, hourly("", day.Heat, 1e-3)))
	return r, err
}
