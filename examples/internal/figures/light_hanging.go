package figures

import (
	"fmt"

	"cloche.example/lighting"
)

func waysToHang() Figure {
	return Figure{
		Name: "ways-to-hang", Title: "Four ways to hang the same lamps", Subject: "light on the bed", Package: "lighting", Example: "Example_waysToHangFixtures",
		Question: "Eighteen fixtures for one bed: in rows, shifted, spread wider, or around the edge. Which is brightest, and which most even?",
		Sketch:   "A bed of 8 by 3 m seen from above, four times.",
		Given: []Given{
			{"Φ", "photons of one fixture", "µmol/s", 220, 20, 2000},
			{"θ", "field angle, to a tenth of the intensity", "degree", 150, 60, 175},
			{"h", "height above the bed", "m", 1.2, 0.6, 3},
			{"s_x", "spacing along, of the wider spread", "m", 1.45, 0.8, 1.8},
			{"s_y", "spacing across, of the wider spread", "m", 1.15, 0.5, 2},
			{"E", "PPFD at harvest for the count by hand", "µmol/(m² s)", 150, 20, 500},
		},
		Assumes: []string{"An intensity that falls as a power of the cosine; direct light; 75 % of the photons on the bed and 90 % of the light left at harvest for the count by hand."},
		Change:  []string{"Hang them at 2.5 m: the ring along the edge is now by far the most even, and the darkest.", "A field angle of 100 degree: only the wider spread reaches the corners still."},
		Code:    "solveWaysToHang",
		Solve:   solveWaysToHang,
	}
}

func solveWaysToHang(v []float64) (r Result, err error) {
	light, err := lighting.FromFieldAngle(v[0], v[1])
	if err != nil {
		return r, err
	}
	f := lighting.Fixture{Light: light, Power: 84, Group: "middle"}
	edge := f
	edge.Group = "edge"
	bed, h := lighting.Bed{Z: 0.8, Length: 8, Width: 3}, v[2]
	var all []bedMap
	for _, c := range []struct {
		name string
		hang func() (lighting.Layout, error)
	}{
		{"rows of equal shares", func() (lighting.Layout, error) { return lighting.Rows(f, bed, h, 6, 3) }},
		{"every second row shifted", func() (lighting.Layout, error) { return lighting.Staggered(f, bed, h, 6, 3) }},
		{"spread a little wider", func() (lighting.Layout, error) {
			return lighting.Spaced(f, bed, lighting.Spacing{Height: h, X: v[3], Y: v[4], Columns: 6, Rows: 3})
		}},
		{"around the edge alone", func() (lighting.Layout, error) { return lighting.Perimeter(edge, bed, h, 0.2, 18) }},
	} {
		layout, err := c.hang()
		if err != nil {
			return r, err
		}
		m, err := bed.Map(layout)
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%-24s %2d fixtures, mean %3.0f µmol/(m² s), least/mean %.2f, CV %.2f", c.name, len(layout), m.Evenness.Mean, m.Evenness.U0, m.Evenness.CV))
		all = append(all, bedMap{fmt.Sprintf("%s: %.2f", c.name, m.Evenness.U0), m, layout})
	}
	tilted := lighting.Aim(lighting.AimAngles{Yaw: 90, Tilt: 30})
	bar := lighting.AimBar(lighting.BarAngles{Yaw: 90, Slope: 20})
	need := lighting.UtilisationMethod{PPFD: v[5], Area: bed.Area(), PPF: light.Flux(), Utilisation: 0.75, Maintenance: 0.9}
	r.Lines = append(r.Lines,
		fmt.Sprintf("tilted by 30 degree towards +y a fixture points along y %.2f, z %.2f", tilted.Axis().Y, tilted.Axis().Z),
		fmt.Sprintf("a bar along y that rises by 20 degree points along y %.2f, z %.2f", bar.Axis().Y, bar.Axis().Z),
		fmt.Sprintf("%g µmol/(m² s) at harvest take %.1f fixtures", v[5], need.Fixtures()))
	rows, wide := all[0].map_.Evenness, all[2].map_.Evenness
	r.Steps = []Step{
		{Says: "Exponent of the cosine that leaves a tenth of the intensity at half the field angle.", Formula: "m = ln(0.1)/ln(cos(θ/2))", Source: "Moreno06", Values: numbers{"θ": v[1]}, Value: light.Exponent(), Within: 1e-8, Why: "rounding of the angle"},
		{Says: "Rows of equal shares: the darkest point over the mean.", Formula: "U_1 = E_min/E_m", Values: numbers{"E_min": rows.Minimum, "E_m": rows.Mean}, Value: rows.U0},
		{Says: "The same lamps spread wider.", Formula: "U_3 = E_min/E_m", Values: numbers{"E_min": wide.Minimum, "E_m": wide.Mean}, Value: wide.U0},
		{Says: "What the spread costs: light that now falls beside the bed.", Formula: "c = 1 - E_3/E_1", Values: numbers{"E_3": wide.Mean, "E_1": rows.Mean}, Value: 1 - wide.Mean/rows.Mean},
		{Says: "Fixtures by hand for a PPFD at harvest, before any map.", Formula: "N = E A/(Φ u F)", Source: "the method of utilisation", Values: numbers{"E": v[5], "A": bed.Area(), "Φ": v[0], "u": 0.75, "F": 0.9}, Value: need.Fixtures()},
	}
	r.Picture = maps("Four ways to hang the lamps", "Four plans of the same bed with one scale of fills: rows, shifted rows, rows spread wider, and a ring along the edge.",
		"The number above each is its least over its mean. PPFD in µmol/(m² s), one scale for all; dots are fixtures.", bed, all...)
	return r, nil
}
