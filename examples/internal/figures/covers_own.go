package figures

import (
	"fmt"

	"cloche.example/envelope"
)

func ownCover() Figure {
	return Figure{
		Name: "own-cover", Title: "A cover of one's own", Subject: "covers", Package: "envelope", Example: "Example_ownCover",
		Question: "A hollow sheet is two thin walls, air between them and ribs across. What U-value follows, and what does the trade declare?",
		Source:   "trade data of twin-wall polycarbonate, 8 mm, ASTM C976",
		Sketch:   "A hollow sheet of 8 mm made of ready-made walls, and an opaque wall of insulated board beside it.",
		Given:    ownCoverGiven(),
		Assumes:  []string{"An upright sheet of 1 m, the sky at the temperature of the air; the ribs conduct beside the air."},
		Change:   []string{"A gap of 14 mm: the U-value falls. Beyond about 20 mm the air begins to turn and more width gains nothing."},
		Code:     "solveOwnCover",
		Solve:    solveOwnCover,
	}
}

func ownCoverGiven() []Given {
	return []Given{
		{"t_i", "inside air", "°C", 20, 5, 35},
		{"t_o", "outside air", "°C", 0, -25, 4},
		{"v", "wind", "m/s", 4, 0, 15},
		{"d", "width of the gap", "m", 0.007, 0.003, 0.03},
	}
}

func solveOwnCover(v []float64) (r Result, err error) {
	skin, found := envelope.FindLayer("polycarbonate wall")
	table, known := envelope.FindMaterial("twin-wall polycarbonate, 8 mm")
	if !found || !known || !table.U.Known() {
		return r, fmt.Errorf("no such layer or material")
	}
	sheet, err := envelope.NewCover([]envelope.Layer{skin, skin}, []envelope.Gap{envelope.SheetGap(v[3])})
	if err != nil {
		return r, err
	}
	k := envelope.DefaultCoverConditions()
	k.Inside, k.Outside, k.Tilt, k.Height, k.Wind = v[0], v[1], 90, 1, v[2]
	s, err := sheet.Solve(k)
	if err != nil {
		return r, err
	}
	for i, l := range sheet.Layers() {
		r.Lines = append(r.Lines, fmt.Sprintf("%-18s %.1f mm  inner face %.1f °C", l.Name, 1000*l.Thickness, s.Inner[i].Temperature))
	}
	for i, g := range sheet.Gaps() {
		r.Lines = append(r.Lines, fmt.Sprintf("gap of %.1f mm, air %.2f and ribs %.2f W/(m² K)", 1000*g.Width, s.Gaps[i].Convection, g.Bridge))
	}
	declared := fmt.Sprintf("; declared %.2f, %s", table.U.Typical, table.U.Source)
	r.Lines = append(r.Lines, fmt.Sprintf("U %.2f W/(m² K)%s", s.UOvercast, said(ownCoverGiven(), v, declared)))
	board, err := envelope.OpaqueWall("board", 1.5, 0.06)
	if err != nil {
		return r, err
	}
	b, err := board.Solve(k)
	if err != nil {
		return r, err
	}
	r.Lines = append(r.Lines, fmt.Sprintf("board: U %.2f W/(m² K), inner face %.1f °C", b.UOvercast, b.InnerTemperature))
	kinds := map[string]int{}
	for _, m := range envelope.Materials() {
		kinds[m.Kind]++
	}
	r.Lines = append(r.Lines, fmt.Sprint("materials of the table by kind: ", kinds))
	r.Printed = fmt.Sprintf("%.2f W/(m² K), %s.", table.U.Typical, table.U.Source)
	g := s.Gaps[0]
	r.Steps = []Step{
		{Says: "Air in the gap: conduction and convection.", Symbol: "h_g", Source: "IsoWin03 eq. 42-53", Value: g.Convection, Unit: "W/(m² K)"},
		{Says: "Heat by air and ribs together.", Formula: "q_g = (h_g + h_b) (t_2 - t_1)", Values: numbers{"h_g": g.Convection, "h_b": g.Bridge, "t_2": s.Outer[1].Temperature, "t_1": s.Inner[0].Temperature}, Value: g.Flux, Unit: "W/m²", Within: 1e-6, Why: "rounding"},
		{Says: "All that leaves the house, radiation through both walls in it.", Symbol: "q", Source: "IsoWin03 8.3, solved", Value: s.FluxIn, Unit: "W/m²"},
		{Says: "The U-value.", Formula: "U = q/(t_i - t_o)", Values: numbers{"q": s.FluxIn, "t_i": v[0], "t_o": v[1]}, Value: s.UOvercast, Unit: "W/(m² K)", Within: 1e-3, Why: "the U-value of the tables leaves out what sky and ground add; here they have the air's temperature"},
	}
	r.Picture = throughCover("Temperatures through the hollow sheet", "Two walls, one step of temperature in the gap between.", s, k)
	return r, nil
}
