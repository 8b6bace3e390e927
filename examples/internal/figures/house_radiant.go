package figures

import (
	"fmt"

	"cloche.example/envelope"
)

func radiantRoom() Figure {
	return Figure{
		Name: "radiant-room", Title: "What the covers see inside", Subject: "the whole house", Package: "envelope", Example: "Example_radiantRoom",
		Question: "Do the inner faces of a house see a warm room, or mostly one another?",
		Sketch:   "Three glass houses on a clear night: a small one, a long tunnel, and six bays. The smaller the house, the more its cold covers see of each other.",
		Given: []Given{
			{"t_i", "inside air", "°C", 15, 5, 25},
			{"t_o", "outside air", "°C", 0, -20, 4},
			{"ΔT_s", "sky below the outside air", "K", 18, 0, 35},
			{"v", "wind", "m/s", 2, 0, 12},
			{"ΔT_r", "room colder than the air, for the middle choice", "K", 2, 0, 8},
		},
		Assumes: []string{"Single glass; in the enclosure floor and crop are as warm as the air. Tunnel 8 by 40 m, six bays of 8 by 60 m."},
		Change:  []string{"A room no colder than the air (0 K): the middle choice is then the first."},
		Code:    "solveRadiantRoom",
		Solve:   solveRadiantRoom,
	}
}

func solveRadiantRoom(v []float64) (res Result, err error) {
	small, tunnel, large := envelope.DefaultForm(), envelope.DefaultForm(), envelope.DefaultForm()
	tunnel.Section, tunnel.Span, tunnel.Length, tunnel.Eave, tunnel.Ridge = envelope.RoundArch, 8, 40, 0.4, 3.6
	large.Span, large.Length, large.Eave, large.Ridge, large.Bays, large.GutterWidth = 8, 60, 4, 5.8, 6, 0.2
	glass := envelope.SingleGlass()
	var rows []bar
	for _, h := range []struct {
		name string
		form envelope.Form
	}{{"small house", small}, {"tunnel", tunnel}, {"six bays", large}} {
		shape, err := envelope.NewShape(h.form)
		if err != nil {
			return res, err
		}
		plan := envelope.HousePlan{
			Shape: shape,
			Covers: map[envelope.FacetKind]envelope.Cover{
				envelope.Roof: glass, envelope.SideWall: glass, envelope.EndWall: glass, envelope.Gutter: glass,
			},
			Ground: envelope.DefaultGround(envelope.ClaySoil()), Climate: envelope.DefaultGroundClimate(), Leakage: envelope.DefaultLeakage(),
		}
		k := envelope.DefaultHouseConditions()
		k.Inside, k.Outside, k.SkyDrop, k.Wind, k.RadiantRise = v[0], v[1], v[2], v[3], -v[4]
		line := fmt.Sprintf("%-11s cover over floor %.2f;", h.name, shape.CoverRatio)
		var alone, together float64
		for _, room := range []envelope.RadiantRoom{envelope.RadiantAir, envelope.RadiantGiven, envelope.RadiantEnclosure} {
			plan.Radiant = room
			if room == envelope.RadiantEnclosure {
				k.RadiantRise = 0 // floor and crop as warm as the air
			}
			house, err := envelope.NewHouse(plan)
			if err != nil {
				return res, err
			}
			r, err := house.Loss(k)
			if err != nil {
				return res, err
			}
			u := r.Cover / shape.CoverArea / (k.Inside - k.Outside)
			line += fmt.Sprintf(" %s %.2f W/(m² K);", room, u)
			if r.RadiantResidual > 1e-8 {
				line += " held at a jump"
			}
			switch room {
			case envelope.RadiantAir:
				alone = u
				if h.name == "small house" {
					res.Steps = append(res.Steps, Step{Says: "The small house, each facet alone before a black room of the air's temperature: all facets together.", Formula: "U = Q/(A (t_i - t_o))", Source: "IsoWin03 8.3 for each facet",
						Values: numbers{"Q": r.Cover, "A": shape.CoverArea, "t_i": v[0], "t_o": v[1]}, Value: u, Unit: "W/(m² K)"})
				}
			case envelope.RadiantEnclosure:
				together = u
				rows = append(rows, bar{h.name + ", alone", alone}, bar{h.name + ", together", u})
				if h.name == "small house" {
					res.Steps = append(res.Steps, Step{Says: "The same with facets that see one another and the floor.", Formula: "U_e = Q_e/(A (t_i - t_o))", Source: "net radiation between all faces",
						Values: numbers{"Q_e": r.Cover, "A": shape.CoverArea, "t_i": v[0], "t_o": v[1]}, Value: u, Unit: "W/(m² K)"})
				}
			}
		}
		res.Lines = append(res.Lines, line)
		res.Steps = append(res.Steps, Step{Says: "Less by that in the " + h.name + ".", Formula: "s = 1 - U_e/U", Values: numbers{"U_e": together, "U": alone}, Value: 1 - together/alone, Figures: 3})
	}
	res.Picture = bars("Covers alone and together", "Pairs of bars for three houses: alone, and seeing one another.", "%.2f", "W/(m² K) of cover. In the small house the cold covers shelter one another most.", rows...)
	return res, nil
}
