package lighting_test

import (
	"fmt"

	"cloche.example/lighting"
)

// Four ways to hang fixtures over one bed, and how even each is.
func Example_waysToHangFixtures() {
	light, err := lighting.FromFieldAngle(220, 150) // full angle at a tenth of the axial intensity
	if err != nil {
		fmt.Println(err)
		return
	}
	f := lighting.Fixture{Light: light, Power: 84, Group: "middle"}
	edge := f
	edge.Group = "edge"
	bed := lighting.Bed{Z: 0.8, Length: 8, Width: 3}
	for _, c := range []struct {
		name string
		hang func() (lighting.Layout, error)
	}{
		{"rows of equal shares", func() (lighting.Layout, error) { return lighting.Rows(f, bed, 1.2, 6, 3) }},
		{"every second row shifted", func() (lighting.Layout, error) { return lighting.Staggered(f, bed, 1.2, 6, 3) }},
		{"spread a little wider", func() (lighting.Layout, error) {
			return lighting.Spaced(f, bed, lighting.Spacing{Height: 1.2, X: 1.45, Y: 1.15, Columns: 6, Rows: 3})
		}},
		{"around the edge alone", func() (lighting.Layout, error) { return lighting.Perimeter(edge, bed, 1.2, 0.2, 18) }},
	} {
		layout, err := c.hang()
		if err != nil {
			fmt.Println(err)
			return
		}
		m, err := bed.Map(layout)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-24s %2d fixtures, mean %3.0f µmol/(m² s), least/mean %.2f, CV %.2f\n", c.name, len(layout), m.Evenness.Mean, m.Evenness.U0, m.Evenness.CV)
	}
	tilted := lighting.Aim(lighting.AimAngles{Yaw: 90, Tilt: 30})
	bar := lighting.AimBar(lighting.BarAngles{Yaw: 90, Slope: 20})
	fmt.Printf("tilted by 30 degree towards +y a fixture points along y %.2f, z %.2f\n", tilted.Axis().Y, tilted.Axis().Z)
	fmt.Printf("a bar along y that rises by 20 degree points along y %.2f, z %.2f\n", bar.Axis().Y, bar.Axis().Z)
	need := lighting.UtilisationMethod{PPFD: 150, Area: bed.Area(), PPF: light.Flux(), Utilisation: 0.75, Maintenance: 0.9}
	fmt.Printf("150 µmol/(m² s) at harvest take %.1f fixtures\n", need.Fixtures())

	// Output:
	// rows of equal shares     18 fixtures, mean 115 µmol/(m² s), least/mean 0.44, CV 0.19
	// every second row shifted 17 fixtures, mean 109 µmol/(m² s), least/mean 0.42, CV 0.24
	// spread a little wider    18 fixtures, mean 104 µmol/(m² s), least/mean 0.70, CV 0.11
	// around the edge alone    18 fixtures, mean  86 µmol/(m² s), least/mean 0.54, CV 0.25
	// tilted by 30 degree towards +y a fixture points along y 0.50, z -0.87
	// a bar along y that rises by 20 degree points along y 0.34, z -0.94
	// 150 µmol/(m² s) at harvest take 24.2 fixtures
}

// Two shelves of lights that are switched in two groups: the levels that bring
// the first shelf nearest to 120 µmol/(m² s).
func Example_dimmingInGroups() {
	light, err := lighting.NewCosinePower(90, 1.2)
	if err != nil {
		fmt.Println(err)
		return
	}
	bed := lighting.Bed{Z: 0.3, Length: 2.4, Width: 1.2}
	middle, err := lighting.Rows(lighting.Fixture{Light: light, Power: 32, Group: "middle"}, bed, 0.5, 4, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	edge, err := lighting.Perimeter(lighting.Fixture{Light: light, Power: 32, Group: "edge"}, bed, 0.5, 0.1, 8)
	if err != nil {
		fmt.Println(err)
		return
	}
	shelves, err := lighting.Tiers(append(middle, edge...), 2, 0.9)
	if err != nil {
		fmt.Println(err)
		return
	}
	points, err := bed.Grid(12, 6)
	if err != nil {
		fmt.Println(err)
		return
	}
	maps, err := lighting.GroupMaps(shelves[0], points)
	if err != nil {
		fmt.Println(err)
		return
	}
	target := make([]float64, points.Len())
	for i := range target {
		target[i] = 120
	}
	d, err := lighting.Dim(maps, target, []float64{0.1, 0.1}, []float64{1, 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	half, err := lighting.DimmedTo(nil, maps, []float64{0.5, 0.5})
	if err != nil {
		fmt.Println(err)
		return
	}
	even, err := lighting.Evenness(half)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("both at half: mean %.0f µmol/(m² s), least/mean %.2f\n", even.Mean, even.U0)
	for i, m := range maps {
		fmt.Printf("%-6s at %.2f of %.0f W\n", m.Group, d.Levels[i], m.Power)
	}
	fmt.Printf("%.0f W in all, %.1f µmol/(m² s) off the target in the root mean square\n", d.Power, d.Residual)

	// Output:
	// both at half: mean 141 µmol/(m² s), least/mean 0.67
	// middle at 0.38 of 256 W
	// edge   at 0.47 of 256 W
	// 218 W in all, 12.4 µmol/(m² s) off the target in the root mean square
}
