package figures

import (
	"errors"
	"fmt"

	"cloche.example/envelope"
)

func archLoss() Figure {
	return Figure{
		Name: "arch-house", Title: "A round arch on a clear night", Subject: "the whole house", Package: "envelope", Example: "Example_archLoss",
		Question: "What does a round arch of 6 by 20 m under a double film lose on a clear night, and which of its faces drip?",
		Sketch:   "A round arch on low side walls, gables at its ends, clay below.",
		Given: []Given{
			{"b", "span", "m", 6, 4, 9},
			{"l", "length", "m", 20, 5, 60},
			{"t_i", "inside air", "°C", 15, 5, 25},
			{"t_o", "outside air", "°C", -10, -20, 4},
			{"v", "wind", "m/s", 3, 0, 12},
		},
		Assumes: []string{"Walls of 1.2 m, a ridge of 3.4 m or a half circle where that is lower. 46 % of relative humidity inside and 85 % outside, a clear sky at midnight, leakage of an ordinary film house, the ground's year of the demo site."},
		Change:  []string{"Twice the length: the loss grows, the loss from each square metre of floor falls, since the ends stay."},
		Code:    "solveArchLoss",
		Solve:   solveArchLoss,
	}
}

func solveArchLoss(v []float64) (r Result, err error) {
	form := envelope.DefaultForm()
	form.Section, form.Span, form.Length, form.Eave, form.Ridge, form.ArchStrips = envelope.RoundArch, v[0], v[1], 1.2, min(3.4, 1.2+v[0]/2), 2
	plan, e1 := covered(form, envelope.DoubleFilm())
	house, e2 := envelope.NewHouse(plan)
	night, e3 := clearNight(101325, v[4], dampAir{v[2], 0.46}, dampAir{v[3], 0.85})
	if err := errors.Join(e1, e2, e3); err != nil {
		return r, err
	}
	loss, err := house.Loss(night)
	if err != nil {
		return r, err
	}
	r.Lines = []string{fmt.Sprintf("%.1f kW, of which the covers %.1f and the leaks %.1f; sky %.1f °C", loss.Total/1000, loss.Cover/1000, loss.Leakage.Total/1000, night.Outside-night.SkyDrop)}
	for _, f := range loss.Facets {
		r.Lines = append(r.Lines, fmt.Sprintf("  %-21s %5.1f m²  face %4.1f °C  drips %v", f.Name, f.Area, f.InnerTemperature, f.Drips))
	}
	f := loss.Facets[0]
	roof, walls := 0.0, 0.0
	for _, f := range loss.Facets {
		if f.Kind == envelope.Roof {
			roof += f.Loss
		} else {
			walls += f.Loss
		}
	}
	dt := v[2] - v[3]
	r.Steps = []Step{
		{Says: "One strip of the roof, by its own U-value under this sky.", Formula: "Q_1 = A U (t_i - t_o)", Values: numbers{"A": f.Area, "U": f.U, "t_i": v[2], "t_o": v[3]}, Value: f.Loss, Unit: "W"},
		{Says: "All faces against the air.", Formula: "Q_c = Q_r + Q_w", Values: numbers{"Q_r": roof, "Q_w": walls}, Value: loss.Cover, Unit: "W"},
		{Says: "Leaks, heat and vapour.", Symbol: "Q_l", Source: "air changes of an ordinary film house", Value: loss.Leakage.Total, Unit: "W"},
		{Says: "Ground, in the month of the year.", Symbol: "Q_g", Source: "IsoGround17 eq. C.3", Value: loss.Ground.Total, Unit: "W"},
		{Says: "The house.", Formula: "Q = Q_c + Q_l + Q_g + Q_x", Values: numbers{"Q_c": loss.Cover, "Q_l": loss.Leakage.Total, "Q_g": loss.Ground.Total, "Q_x": loss.Total - loss.Cover - loss.Leakage.Total - loss.Ground.Total}, Value: loss.Total, Unit: "W"},
		{Says: "For each kelvin.", Formula: "H = Q/(t_i - t_o)", Values: numbers{"Q": loss.Total, "t_i": v[2], "t_o": v[3]}, Value: loss.Total / dt, Unit: "W/K"},
	}
	r.Picture = section("Loss of the arch", "A section of the house with its losses: roof, walls, leaks and ground.", "Where the heat goes.", form, kilowatts(roof), kilowatts(walls), kilowatts(loss.Leakage.Total), kilowatts(loss.Ground.Total))
	return r, nil
}

func kilowatts(w float64) string { return fmt.Sprintf("%.1f kW", w/1000) }
