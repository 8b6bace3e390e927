package figures

import (
	"fmt"

	"cloche.example/envelope"
)

func ownFacets() Figure {
	return Figure{
		Name: "lean-to", Title: "A lean-to against a brick wall, for one night", Subject: "the whole house", Package: "envelope", Example: "Example_ownFacets",
		Question: "A lean-to of an unusual shape cools with the night. What does it take to hold it warm until morning?",
		Sketch:   "3 by 8 m, a roof of twin-wall sheet that falls to the south, a brick wall behind.",
		Given: []Given{
			{"t_0", "outside air in the first hour", "°C", -2, -15, 4},
			{"c", "fall of it in each hour", "K", 0.5, 0, 1.2},
			{"t_i", "inside air", "°C", 15, 5, 25},
			{"v", "wind", "m/s", 2, 0, 12},
			{"ΔT_s", "sky below the outside air", "K", 15, 0, 35},
		},
		Assumes: []string{"Sand below, leakage of an ordinary film house; each hour by itself, as if steady; ends taken as upright walls of their area."},
		Change:  []string{"No fall in the night: the last hour is like the first."},
		Code:    "solveOwnFacets",
		Solve:   solveOwnFacets,
	}
}

func solveOwnFacets(v []float64) (r Result, err error) {
	const slope, tilt = 3.354, 26.565 // of a roof that falls 1.5 m over 3 m
	shape, err := envelope.NewFacetShape([]envelope.Facet{
		{Kind: envelope.Roof, Name: "roof", Area: 8 * slope, Tilt: tilt, Azimuth: 180, Height: slope},
		{Kind: envelope.SideWall, Name: "front", Area: 8 * 1.5, Tilt: 90, Azimuth: 180, Height: 1.5},
		{Kind: envelope.BackWall, Name: "north wall", Area: 8 * 3, Tilt: 90, Azimuth: 0, Height: 3},
		{Kind: envelope.EndWall, Name: "east end", Area: 3 * 2.25, Tilt: 90, Azimuth: 90, Height: 2.25},
		{Kind: envelope.EndWall, Name: "west end", Area: 3 * 2.25, Tilt: 90, Azimuth: 270, Height: 2.25},
		{Kind: envelope.Floor, Name: "floor", Area: 24, Tilt: 180, Height: 3},
	}, envelope.Surroundings{Volume: 54, Perimeter: 22, RidgeHeight: 3, EaveHeight: 1.5})
	if err != nil {
		return r, err
	}
	brick, err := envelope.OpaqueWall("brick", 0.5, 0.24)
	if err != nil {
		return r, err
	}
	sheet := envelope.TwinWall10()
	house, err := envelope.NewHouse(envelope.HousePlan{
		Shape:   shape,
		Covers:  map[envelope.FacetKind]envelope.Cover{envelope.Roof: sheet, envelope.SideWall: sheet, envelope.EndWall: sheet, envelope.BackWall: brick},
		Ground:  envelope.DefaultGround(envelope.SandSoil()),
		Climate: envelope.DefaultGroundClimate(),
		Leakage: envelope.DefaultLeakage(),
	})
	if err != nil {
		return r, err
	}
	for _, f := range shape.Facets {
		if !f.Kind.InGround() {
			r.Lines = append(r.Lines, fmt.Sprintf("%-10s %5.1f m²", f.Name, f.Area))
		}
	}
	k := envelope.DefaultHouseConditions()
	k.Inside, k.SkyDrop, k.Wind = v[2], v[4], v[3]
	var loss envelope.HouseLoss // used again in each hour
	energy := 0.0
	var hours, power []float64
	for hour := range 12 {
		k.Outside = v[0] - v[1]*float64(hour) // sky and ground follow
		if err := house.LossTo(&loss, &k); err != nil {
			return r, err
		}
		energy += loss.Total * 3600
		hours, power = append(hours, float64(hour)+0.5), append(power, loss.Total/1000)
	}
	r.Lines = append(r.Lines, fmt.Sprintf("last hour, %.1f °C: %.0f W; the night %.1f kWh", k.Outside, loss.Total, energy/3.6e6))
	back := loss.Facets[2]
	r.Steps = []Step{
		{Says: "Outside air in the twelfth hour.", Formula: "t_o = t_0 - 11 c", Values: numbers{"t_0": v[0], "c": v[1]}, Value: k.Outside, Unit: "°C"},
		{Says: "The brick wall in that hour.", Formula: "Q_b = A U (t_i - t_o)", Values: numbers{"A": back.Area, "U": back.U, "t_i": v[2], "t_o": k.Outside}, Value: back.Loss, Unit: "W"},
		{Says: "The house in that hour: covers, leaks and ground.", Formula: "Q = Q_c + Q_l + Q_g", Values: numbers{"Q_c": loss.Cover, "Q_l": loss.Leakage.Total, "Q_g": loss.Total - loss.Cover - loss.Leakage.Total}, Value: loss.Total, Unit: "W"},
		{Says: "Twelve hours, summed.", Symbol: "E", Value: energy / 3.6e6, Unit: "kWh"},
	}
	r.Picture, err = charts("The night of the lean-to", "The loss rises hour by hour as the air outside cools.", "Each hour colder, each hour more heat.",
		chart{title: "loss", x: "hour of the night", y: "loss, kW", zero: true, curves: []curve{{"", points(hours, power)}}})
	return r, err
}
