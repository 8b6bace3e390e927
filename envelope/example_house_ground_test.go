package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// The floor of a house of 6.4 by 14.8 m by ISO 13370: as a slab at grade, the
// same with its edge insulated, and dug in by 0.7 m.
func Example_slabAndDugInWall() {
	g := envelope.DefaultGround(envelope.ClaySoil())
	g.Area, g.Perimeter = 6.4*14.8, 2*(6.4+14.8)
	climate := envelope.DefaultGroundClimate()
	show := func(title string) {
		r, err := g.Solve()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(title)
		fmt.Printf("  B = A/(P/2)                       eq. 2   %7.3f m\n", r.CharacteristicWidth)
		fmt.Printf("  d = w + lambda (Rsi+R+Rse)        eq. 3   %7.3f m\n", r.FloorThickness)
		fmt.Printf("  U of the floor                    eq. 4   %7.3f W/(m² K)\n", r.UFloor)
		if g.Edge != envelope.EdgeBare {
			fmt.Printf("  psi of the edge insulation        D.6     %7.3f W/(m K)\n", r.EdgePsi)
		}
		if g.Depth > 0 {
			fmt.Printf("  d of the wall                     eq. 15  %7.3f m\n", r.WallThickness)
			fmt.Printf("  U of the buried wall              eq. 16  %7.3f W/(m² K)\n", r.UWall)
		}
		fmt.Printf("  steady coefficient                        %7.1f W/K\n", r.Total)
		fmt.Printf("  penetration depth                 H.1     %7.3f m\n", r.PenetrationDepth)
		fmt.Printf("  coefficient of the outside's year         %7.1f W/K\n", r.Outside)
		january, worst := r.Flow(climate, 1), r.Worst(climate)
		fmt.Printf("  annual mean                       C.8     %7.0f W\n", january.Steady)
		fmt.Printf("  January                           C.3     %7.0f W\n", january.Total)
		fmt.Printf("  most, in month %.0f                  C.9     %7.0f W\n", worst.Month, worst.Total)
	}
	fmt.Println("ISO 13370: clay, inside 16 °C, outside 9 °C with a swing of 10 K")
	show("Slab at grade, bare")
	g.Edge, g.EdgeWidth, g.EdgeThickness = envelope.EdgeVertical, 0.6, 0.06
	show("Slab at grade, 60 mm of insulation 0.6 m down the edge")
	g.Edge, g.Depth = envelope.EdgeBare, 0.7
	show("Dug in by 0.7 m, bare walls")
	g.WallResistance = 0.06 / 0.036
	show("Dug in by 0.7 m, walls with 60 mm of insulation")
	// Output:
	// ISO 13370: clay, inside 16 °C, outside 9 °C with a swing of 10 K
	// Slab at grade, bare
	//   B = A/(P/2)                       eq. 2     4.468 m
	//   d = w + lambda (Rsi+R+Rse)        eq. 3     0.415 m
	//   U of the floor                    eq. 4     0.737 W/(m² K)
	//   steady coefficient                           69.8 W/K
	//   penetration depth                 H.1       2.239 m
	//   coefficient of the outside's year            43.7 W/K
	//   annual mean                       C.8         489 W
	//   January                           C.3         867 W
	//   most, in month 2                  C.9         925 W
	// Slab at grade, 60 mm of insulation 0.6 m down the edge
	//   B = A/(P/2)                       eq. 2     4.468 m
	//   d = w + lambda (Rsi+R+Rse)        eq. 3     0.415 m
	//   U of the floor                    eq. 4     0.737 W/(m² K)
	//   psi of the edge insulation        D.6      -0.481 W/(m K)
	//   steady coefficient                           49.4 W/K
	//   penetration depth                 H.1       2.239 m
	//   coefficient of the outside's year            31.2 W/K
	//   annual mean                       C.8         346 W
	//   January                           C.3         616 W
	//   most, in month 2                  C.9         658 W
	// Dug in by 0.7 m, bare walls
	//   B = A/(P/2)                       eq. 2     4.468 m
	//   d = w + lambda (Rsi+R+Rse)        eq. 3     0.415 m
	//   U of the floor                    eq. 4     0.600 W/(m² K)
	//   d of the wall                     eq. 15    0.255 m
	//   U of the buried wall              eq. 16    2.042 W/(m² K)
	//   steady coefficient                          117.5 W/K
	//   penetration depth                 H.1       2.239 m
	//   coefficient of the outside's year            60.8 W/K
	//   annual mean                       C.8         822 W
	//   January                           C.3        1349 W
	//   most, in month 2                  C.9        1430 W
	// Dug in by 0.7 m, walls with 60 mm of insulation
	//   B = A/(P/2)                       eq. 2     4.468 m
	//   d = w + lambda (Rsi+R+Rse)        eq. 3     0.415 m
	//   U of the floor                    eq. 4     0.600 W/(m² K)
	//   d of the wall                     eq. 15    2.755 m
	//   U of the buried wall              eq. 16    0.366 W/(m² K)
	//   steady coefficient                           67.7 W/K
	//   penetration depth                 H.1       2.239 m
	//   coefficient of the outside's year            39.5 W/K
	//   annual mean                       C.8         474 W
	//   January                           C.3         816 W
	//   most, in month 2                  C.9         869 W
}
