package lighting_test

import (
	"fmt"

	"cloche.example/lighting"
)

// A germination room with white walls: what its surfaces add to the light on a
// bench, by four ways of counting.
func Example_lightThatTheRoomGivesBack() {
	room := lighting.Room{Length: 5, Width: 3, Height: 2.6, Floor: 0.2, Ceiling: 0.75, WallX0: 0.65, WallX1: 0.65, WallY0: 0.65, WallY1: 0.65}
	bench := lighting.Bed{X: 0.5, Y: 0.6, Z: 0.8, Length: 4, Width: 1.8}
	light, err := lighting.FromBeamAngle(220, 115)
	if err != nil {
		fmt.Println(err)
		return
	}
	layout, err := lighting.Rows(lighting.Fixture{Light: light, Power: 84}, bench, 1.2, 4, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	direct, err := bench.Map(layout)
	if err != nil {
		fmt.Println(err)
		return
	}
	mean := func(ppfd []float64, err error) float64 {
		if err != nil {
			fmt.Println(err)
		}
		s, err := lighting.Evenness(ppfd)
		if err != nil {
			fmt.Println(err)
		}
		return s.Mean
	}
	shares, err := room.Share(layout, bench)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("1  first landing: bench %.1f %%, beside it %.1f %%, walls %.1f %%\n", 100*shares.Bed, 100*shares.Aisle, 100*shares.Walls)
	fmt.Printf("2  direct, Σ I cos φ/r²: mean %.1f µmol/(m² s)\n", direct.Evenness.Mean)
	faces, err := room.Reflect(layout, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	mesh, err := room.Reflect(layout, 8)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("3  reflected once, a lower bound: %.2f\n", mean(mesh.MapOneBounce(direct.Points)))
	fmt.Printf("4  reflected, six whole faces: %.2f\n", mean(faces.Map(direct.Points)))
	fmt.Printf("5  reflected, 8 x 8 patches a face: %.2f\n", mean(mesh.Map(direct.Points)))
	within, err := room.ReflectWithin(layout, direct.Points, 0.003)
	fmt.Printf("6  reflected, each point to 0.3 %%: %.2f with %d patches a side\n", mean(within.PPFD, err), within.Patches)
	both, err := room.Map(layout, bench, 0.01)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("7  both, in one call: mean %.1f, least/mean %.2f\n", both.Evenness.Mean, both.Evenness.U0)
	fmt.Printf("8  the %s has %.1f µmol/(m² s) and keeps %.0f of %.0f µmol/s\n", lighting.FaceFloor, mesh.FaceMean(lighting.FaceFloor), mesh.Absorbed(lighting.FaceFloor), layout.PPF())
	// Output:
	// 1  first landing: bench 45.9 %, beside it 23.2 %, walls 30.9 %
	// 2  direct, Σ I cos φ/r²: mean 112.5 µmol/(m² s)
	// 3  reflected once, a lower bound: 6.40
	// 4  reflected, six whole faces: 24.71
	// 5  reflected, 8 x 8 patches a face: 23.05
	// 6  reflected, each point to 0.3 %: 23.16 with 12 patches a side
	// 7  both, in one call: mean 135.7, least/mean 0.65
	// 8  the floor has 84.1 µmol/(m² s) and keeps 1010 of 1760 µmol/s
}
