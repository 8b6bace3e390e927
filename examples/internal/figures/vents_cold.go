package figures

import (
	"fmt"

	"cloche.example/examples/internal/page"
	"cloche.example/ventilation"
)

func coldAirOnTheCrop() Figure {
	return Figure{
		Name: "cold-air", Title: "Cold air that falls on the crop", Subject: "vents and wind", Package: "ventilation", Example: "Example_coldAirOnTheCrop",
		Question: "A frosty day, and the house must breathe. Which vent should open first, and how far before the crop is chilled?",
		Sketch:   "Cold air enters as a thin jet, bends down by its weight and takes in warm air on its way. From the ridge the way is long; from a side vent just above the plants it is not.",
		Given: []Given{
			{"m", "air that is to enter", "kg/s", 0.2, 0.05, 0.4},
			{"t_i", "inside", "°C", 15, 8, 30},
			{"t_o", "outside", "°C", -5, -30, 5},
			{"h_c", "top of the crop", "m", 0.3, 0, 0.75},
			{"t_c", "the crop stands no colder than", "°C", 10, 0, 15},
		},
		Assumes: []string{"Side vents at 0.8 m that blow level and ridge vents at 2.9 m that blow 45 degree down, 6 m long and 2.4 m² each; small leaks; calm; 97,300 Pa. Two published factors of the bend, psi, bracket the path. Temperatures on the axis of the jet: by the decay of a jet, or, milder, by that of one that falls."},
		Change:  []string{"Warm the outside air to 5 °C: the ridge vents then do no harm, the side vents still do.", "Ask for twice the air: the jets are thicker, and colder at the crop."},
		Code:    "solveColdAirOnTheCrop",
		Solve:   solveColdAirOnTheCrop,
	}
}

func solveColdAirOnTheCrop(v []float64) (r Result, err error) {
	if v[4] > v[1] {
		return r, fmt.Errorf("the crop stands no colder than: %g °C is warmer than the house", v[4])
	}
	slot := ventilation.DefaultInletJet(ventilation.SlotInlet)
	slot.Length, slot.Reach = 6, 6.4
	down := slot
	down.Angle, down.Reach = -45, 3.2
	network, err := ventilation.NewNetwork([]ventilation.Opening{
		{Name: "side", Height: 0.8, Vertical: 0.4, Area: 2.4, Discharge: 0.6},
		{Name: "ridge", Height: 2.9, Vertical: 0.4, Area: 2.4, Discharge: 0.6},
	}, []ventilation.Leak{{Height: 0.5, Flow: 0.02, Exponent: 0.65}, {Height: 2.5, Flow: 0.02, Exponent: 0.65}}, nil)
	if err != nil {
		return r, err
	}
	house := ventilation.ColdVents{
		Network: network, Jets: []ventilation.InletJet{slot, down},
		Inside: v[1], Outside: v[2], Pressure: 97300, Crop: v[3], Limit: v[4],
	}
	d := gable(6.4, 1.4, 3.1, 0, 1.6)
	d.Line(page.Stroke{Color: css(page.PenOf(2).Color), Width: 1.5, Dash: "3 3"}, 0.1, v[3], 6.3, v[3])
	for k, way := range []struct {
		name  string
		order [][]int
		right float64 // m, of the opening in the picture
	}{{"ridge first", [][]int{{1}, {0}}, 3.2}, {"side first", [][]int{{0}, {1}}, 0}} {
		air, err := house.ForFlow(way.order, v[0])
		if err != nil {
			return r, err
		}
		if air.By < 0 {
			return r, fmt.Errorf("the leaks alone let in that much")
		}
		in := air.Inlets[air.By]
		j := in.Jet
		r.Lines = append(r.Lines, fmt.Sprintf("%s: open %.0f %%, %.3f kg/s of the air by it", way.name, 100*air.Fractions[air.By], in.Flow),
			fmt.Sprintf("  slot h = Cd A/l = %.4f m, V0 = m/(rho Cd A) = %.3f m/s", j.Size, j.Speed),
			fmt.Sprintf("  Ar = g dT0 h/(T V0²) = %.3f", j.Archimedes()))
		for _, l := range []struct {
			psi string
			at  ventilation.Landing
		}{{"0.40", in.Fall.Steep}, {"4/15", in.Fall.Shallow}} {
			r.Lines = append(r.Lines,
				fmt.Sprintf("  psi %-5s falls %.2f m within %.2f m, path %.2f m, %.2f m/s, KT sqrt(h/s) %.3f: %.2f °C, or %.2f °C",
					l.psi, in.Drop, l.at.Distance, l.at.Path, l.at.Speed, (l.at.Temperature-j.House)/j.Excess, l.at.Temperature, l.at.Mild))
		}
		most, err := house.Widest(way.order)
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("  limit %g °C: chill %v; it may open %.0f %%, which lets in %.3f kg/s", v[4], air.Chill, 100*most.Fractions[air.By], most.Air.Flow))
		fall := in.Fall.Steep
		r.Steps = append(r.Steps,
			Step{Says: way.name + ": strength of weight against push.", Formula: "Ar = 9.80665 (t_o - t_i) h/((t_i + 273.15) V_0^2)", Values: numbers{"t_o": v[2], "t_i": v[1], "h": j.Size, "V_0": j.Speed}, Value: j.Archimedes()},
			Step{Says: "Way down to the crop along the bent jet, by the steeper of two published bends.", Symbol: "s", Source: "Hagstrom99", Value: fall.Path, Unit: "m"},
			Step{Says: "On its axis there.", Formula: "t = t_i + (t_o - t_i) min(1, K sqrt(h/s))", Source: "HoF17 ch. 20, from memory", Values: numbers{"t_i": v[1], "t_o": v[2], "K": j.Thermal, "h": j.Size, "s": fall.Path}, Value: fall.Temperature, Unit: "°C"})
		var path []float64
		for i := 0; i <= 30; i++ {
			x := fall.Distance * float64(i) / 30
			path = append(path, way.right+x, v[3]+in.Drop-j.Drop(x, true))
		}
		if fall.Struck { // down the far wall
			path = append(path, way.right+fall.Distance, v[3])
		}
		d.Line(page.Stroke{Color: css(page.PenOf(k).Color), Width: 2.2, Arrow: true}, path...)
		d.Text(page.Start, way.right+min(fall.Distance+0.15, 2.3), v[3]+0.15, fmt.Sprintf("%.1f °C", fall.Temperature))
	}
	d.Text(page.End, 6.2, v[3]+0.1, "crop")
	r.Picture = drawn(d, "Two cold jets in section", "A house in section: one jet falls from the ridge, another from the side vent, down to the dashed top of the crop.", "Both bring the same air; the shorter way is the colder one.")
	return r, nil
}
