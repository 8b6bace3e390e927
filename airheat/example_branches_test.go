package airheat_test

import (
	"fmt"

	"cloche.example/airheat"
)

// A heater's duct divides at a tee into a straight run and a side branch at 45
// degrees: which flow each gets by itself, what the tee takes, the damper that
// makes the two equal, and what the fan must then give.
func Example_branchesBalanced() {
	duct := func(diameter, length, fittings float64) []airheat.Segment {
		return []airheat.Segment{{Section: airheat.Round(diameter), Length: length, Roughness: 0.15e-3, Fittings: fittings}}
	}
	branches := []airheat.Branch{
		{Name: "main", Parent: -1, Segments: duct(0.40, 4, airheat.SharpEntry)},
		{Name: "far bench", Parent: 0, Segments: duct(0.30, 14, airheat.SmoothElbow(1.5, 90)+airheat.FreeOutlet), Junction: airheat.StraightRun},
		{Name: "near bench", Parent: 0, Segments: duct(0.30, 3, airheat.FreeOutlet), Junction: airheat.SideBranch, Angle: 45},
	}
	tree, err := airheat.NewTree(branches...)
	if err != nil {
		fmt.Println(err)
		return
	}
	air := airheat.DryAir(40, 101325)
	const flow = 0.80 // m³/s
	f, err := tree.Solve(flow, air)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, b := range f.Branches {
		fmt.Printf("%-10s %6.4f m³/s  loss %6.2f Pa, of it at the tee %6.2f Pa\n", branches[i].Name, b.Flow, b.Loss, b.Tee)
	}
	share := f.Branches[2].Flow / flow
	ratio := branches[2].Segments[0].Section.Area() / branches[0].Segments[0].Section.Area()
	fmt.Printf("tee        run K = %.4f, branch K = %.4f   [Crane09] at a share of %.3f\n", airheat.DividingRun(share, ratio), airheat.DividingBranch(share, ratio, 45), share)
	fmt.Printf("fan        %6.2f Pa either way\n", f.Pressure)
	k, pressure, err := tree.Dampers([]float64{0, 0.40, 0.40}, air)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("damper     K = %.3f in the near branch for 0.40 m³/s each; fan then %.2f Pa\n", k[2], pressure)
	// Output:
	// main       0.8000 m³/s  loss  15.70 Pa, of it at the tee   0.00 Pa
	// far bench  0.3736 m³/s  loss  33.31 Pa, of it at the tee   0.13 Pa
	// near bench 0.4264 m³/s  loss  33.31 Pa, of it at the tee   8.67 Pa
	// tee        run K = 0.0056, branch K = 0.3794   [Crane09] at a share of 0.533
	// fan         49.01 Pa either way
	// damper     K = 0.423 in the near branch for 0.40 m³/s each; fan then 53.57 Pa
}
