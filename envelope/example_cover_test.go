package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// A cover of one's own: a hollow sheet of 8 mm made of ready-made walls, and an
// opaque wall of insulated board. The declared U-value stands beside the first.
func Example_ownCover() {
	skin, found := envelope.FindLayer("polycarbonate wall")
	table, known := envelope.FindMaterial("twin-wall polycarbonate, 8 mm")
	if !found || !known || !table.U.Known() {
		fmt.Println("no such layer or material")
		return
	}
	sheet, err := envelope.NewCover([]envelope.Layer{skin, skin}, []envelope.Gap{envelope.SheetGap(0.007)})
	if err != nil {
		fmt.Println(err)
		return
	}
	k := envelope.DefaultCoverConditions()
	k.Inside, k.Outside, k.Tilt, k.Height, k.Wind = 20, 0, 90, 1, 4
	s, err := sheet.Solve(k)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, l := range sheet.Layers() {
		fmt.Printf("%-18s %.1f mm  inner face %.1f °C\n", l.Name, 1000*l.Thickness, s.Inner[i].Temperature)
	}
	for i, g := range sheet.Gaps() {
		fmt.Printf("gap of %.1f mm, air %.2f and ribs %.2f W/(m² K)\n", 1000*g.Width, s.Gaps[i].Convection, g.Bridge)
	}
	fmt.Printf("U %.2f W/(m² K); declared %.2f, %s\n", s.UOvercast, table.U.Typical, table.U.Source)
	board, err := envelope.OpaqueWall("board", 1.5, 0.06)
	if err != nil {
		fmt.Println(err)
		return
	}
	if s, err = board.Solve(k); err == nil {
		fmt.Printf("board: U %.2f W/(m² K), inner face %.1f °C\n", s.UOvercast, s.InnerTemperature)
	}
	kinds := map[string]int{}
	for _, m := range envelope.Materials() {
		kinds[m.Kind]++
	}
	fmt.Println("materials of the table by kind:", kinds)
	// Output:
	// polycarbonate wall 0.5 mm  inner face 3.0 °C
	// polycarbonate wall 0.5 mm  inner face 11.1 °C
	// gap of 7.0 mm, air 3.52 and ribs 0.57 W/(m² K)
	// U 3.52 W/(m² K); declared 3.41, trade data, ASTM C976: 0.60 Btu/(h ft² °F)
	// board: U 0.59 W/(m² K), inner face 18.3 °C
	// materials of the table by kind: map[film:9 glass:2 hollow sheet:8 insulation:5 screen:6 wall:13]
}
