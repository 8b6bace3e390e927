package figures

import (
	"fmt"

	"cloche.example/envelope"
	"cloche.example/examples/internal/page"
)

func wallLayers() Figure {
	return Figure{
		Name: "timber-wall", Title: "A timber wall, layer by layer", Subject: "ground and walls", Package: "envelope", Example: "Example_wall",
		Question: "What U-value has a wall of timber with mineral wool, and what do the studs in the wool cost?",
		Source:   "a worked example at lambdacalculator.eu, by ISO 6946",
		Sketch:   "From outside: render, wool, timber, plaster. Then the same with studs through the wool.",
		Given:    wallGiven(),
		Assumes:  []string{"Surface resistances of 0.04 outside and 0.13 m² K/W inside, as the standard sets them; the studs are our own addition."},
		Change:   []string{"Twice the wool does not halve the U-value once studs pass through it."},
		Code:     "solveWall",
		Solve:    solveWall,
	}
}

func wallGiven() []Given {
	return []Given{
		{"d", "thickness of the wool", "m", 0.200, 0.02, 0.5},
		{"λ", "its conductivity", "W/(m K)", 0.035, 0.02, 0.06},
		{"f", "share of studs in the wool layer", "fraction", 0.12, 0.01, 0.5},
	}
}

func solveWall(v []float64) (res Result, err error) {
	wool := v[0] / v[1]
	wall := envelope.Wall{ROut: 0.04, RIn: 0.13, Layers: []envelope.WallLayer{
		{Name: "render 15 mm", Resistance: 0.015 / 0.87},
		{Name: fmt.Sprintf("mineral wool %.0f mm", 1000*v[0]), Resistance: wool},
		{Name: "timber 140 mm", Resistance: 0.140 / 0.13},
		{Name: "plaster 15 mm", Resistance: 0.015 / 0.70},
	}}
	r, err := wall.Solve()
	if err != nil {
		return res, err
	}
	prints := func(words string) string { return said(wallGiven(), v, words) }
	add := func(format string, a ...any) { res.Lines = append(res.Lines, fmt.Sprintf(format, a...)) }
	add("outside surface       %6.3f m² K/W", wall.ROut)
	var rows []bar
	for _, l := range wall.Layers {
		add("%-20s  %6.3f m² K/W   d/lambda", l.Name, l.Resistance)
		rows = append(rows, bar{l.Name, l.Resistance})
	}
	add("inside surface        %6.3f m² K/W", wall.RIn)
	add("total                 %6.3f m² K/W%s", r.R, prints("   source prints 7.00"))
	add("U                     %6.3f W/(m² K)%s", r.U, prints("   source prints 0.14"))
	plain := r
	// The same wall with studs through the wool.
	wall.Layers[1] = envelope.WallLayer{Name: "wool and studs", Parts: []envelope.WallPart{
		{Share: 1 - v[2], Resistance: wool}, {Share: v[2], Resistance: v[0] / 0.13},
	}}
	r, err = wall.Solve()
	if err != nil {
		return res, err
	}
	add("with studs: upper limit %.3f, lower limit %.3f, R %.3f m² K/W, error at most %.1f %%", r.Upper, r.Lower, r.R, 100*r.Error)
	add("U with studs          %6.3f W/(m² K)", r.U)
	add("surface resistances for an emittance of 0.9: %.3f inside at 20 °C, %.3f outside at 0 °C and 4 m/s",
		envelope.InsideResistance(envelope.FlowHorizontal, 0.9, 20), envelope.OutsideResistance(4, 0.9, 0))
	cavity := envelope.AirSpace{Flow: envelope.FlowHorizontal, Width: 0.025, Emittance: [2]float64{0.9, 0.9}, Mean: 10, Difference: 5}
	bright := cavity
	bright.Emittance[0] = 0.1
	add("air space of 25 mm %.2f m² K/W, with one bright face %.2f", envelope.AirSpaceResistance(cavity), envelope.AirSpaceResistance(bright))
	res.Steps = []Step{
		{Says: "The wool alone.", Formula: "R_w = d/λ", Source: "IsoWall17 6.7.1", Values: numbers{"d": v[0], "λ": v[1]}, Value: wool, Unit: "m² K/W"},
		{Says: "All layers and both surfaces.", Formula: "R = 0.04 + 0.015/0.87 + R_w + 0.140/0.13 + 0.015/0.70 + 0.13", Source: "IsoWall17 eq. 4", Values: numbers{"R_w": wool}, Value: plain.R, Unit: "m² K/W"},
		{Says: "The U-value.", Formula: "U = 1/R", Values: numbers{"R": plain.R}, Value: plain.U, Unit: "W/(m² K)"},
		{Says: "With studs, paths that do not mix.", Formula: "R_u = 1/((1 - f)/R_1 + f/R_2)", Source: "IsoWall17 eq. 6", Values: numbers{"f": v[2], "R_1": plain.R, "R_2": plain.R - wool + v[0]/0.13}, Value: r.Upper, Unit: "m² K/W"},
		{Says: "With studs, layers of one temperature.", Formula: "R_l = R - R_w + 1/((1 - f)/R_w + f/R_s)", Source: "IsoWall17 eq. 8, 9", Values: numbers{"R": plain.R, "R_w": wool, "f": v[2], "R_s": v[0] / 0.13}, Value: r.Lower, Unit: "m² K/W"},
		{Says: "The standard takes the middle of the two.", Formula: "R_m = (R_u + R_l)/2", Source: "IsoWall17 eq. 5", Values: numbers{"R_u": r.Upper, "R_l": r.Lower}, Value: r.R, Unit: "m² K/W"},
	}
	res.Printed = "R 7.00 m² K/W and U 0.14 W/(m² K), for the wall without studs."
	// The wall to scale, with the temperature through it for 20 °C inside and -10 °C outside.
	d := page.NewDrawing(-0.12, -0.03, v[0]+0.30, 0.20, 420)
	t, x := -10+30*0.04/plain.R, 0.0
	at := func(t float64) float64 { return 0.02 + 0.14*(t+10)/30 }
	way := []float64{-0.12, at(-10), -0.02, at(-10), 0, at(t)}
	for i, thick := range []float64{0.015, v[0], 0.140, 0.015} {
		d.Polygon(page.Stroke{Width: 0.7, Fill: "var(--soft)"}, x, 0, x+thick, 0, x+thick, 0.17, x, 0.17)
		x += thick
		t += 30 * rows[i].value / plain.R
		way = append(way, x, at(t))
	}
	way = append(way, x+0.02, at(20), x+0.12, at(20))
	d.Line(page.Stroke{Width: 2, Color: css(page.PenOf(0).Color)}, way...)
	d.Text(page.Start, -0.115, at(-10)+0.008, "-10 °C")
	d.Text(page.End, v[0]+0.295, at(20)+0.008, "20 °C")
	d.Text(page.Middle, 0.015+v[0]/2, 0.18, "wool")
	d.Text(page.Middle, 0.015+v[0]+0.07, 0.18, "timber")
	res.Picture = drawn(d, "Temperature through the wall", "A section of the wall, cold outside at the left, the temperature as a line through its layers.", "The wall to scale between -10 and 20 °C: the steeper the line, the more a layer holds back.")
	return res, nil
}
