package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// The same bare floor on clay by the standard, by two older rules and by exact
// conduction, which leaves the surfaces out; then its months by ISO 13370.
func Example_bareFloor() {
	floor := envelope.BareFloor{Length: 14.8, Width: 6.4, Wall: 0.3, Conductivity: 1.5}
	area, perimeter := floor.Length*floor.Width, 2*(floor.Length+floor.Width)
	g := envelope.DefaultGround(envelope.ClaySoil())
	g.Area, g.Perimeter, g.WallThickness = area, perimeter, floor.Wall
	r, err := g.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("U of a floor of 6.4 by 14.8 m, W/(m² K)")
	fmt.Printf("  ISO 13370           %.3f\n", r.UFloor)
	fmt.Printf("  Macey               %.3f\n", envelope.MaceyFloor(floor))
	fmt.Printf("  Anderson            %.3f\n", envelope.AndersonFloor(perimeter/area))
	fmt.Printf("  exact, rectangle    %.3f\n", envelope.BoxFlow(floor, 1)/area)
	fmt.Printf("  exact, endless      %.3f\n", envelope.StripFlow(floor, 1)/floor.Width)
	months := envelope.GroundMonths{
		Inside:  [12]float64{16, 16, 16, 17, 18, 20, 21, 21, 18, 17, 16, 16},
		Outside: [12]float64{-1, 0, 4, 9, 14, 17, 19, 18, 14, 9, 4, 0},
	}
	flow, err := r.MonthlyFlow(months)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("into the ground in January %.0f W, in July %.0f W\n", flow[0], flow[6])
	for _, s := range envelope.Soils() {
		fmt.Printf("  %-17s %.2f to %.2f W/(m K)\n", s.Name, s.ConductivityLow, s.ConductivityHigh)
	}
	g.Soil, _ = envelope.FindSoil("dry loam")
	if r, err = g.Solve(); err == nil {
		fmt.Printf("on dry loam: U %.3f W/(m² K)\n", r.UFloor)
	}
	// Output:
	// U of a floor of 6.4 by 14.8 m, W/(m² K)
	//   ISO 13370           0.649
	//   Macey               0.700
	//   Anderson            0.668
	//   exact, rectangle    0.792
	//   exact, endless      0.609
	// into the ground in January 780 W, in July 402 W
	//   clay or silt      0.80 to 2.10 W/(m K)
	//   sand or gravel    0.30 to 2.50 W/(m K)
	//   homogeneous rock  2.00 to 4.50 W/(m K)
	//   typical soil      0.40 to 1.50 W/(m K)
	//   dry sandy soil    0.20 to 0.40 W/(m K)
	//   dry loam          0.20 to 0.40 W/(m K)
	//   wet clay          1.20 to 2.10 W/(m K)
	// on dry loam: U 0.129 W/(m² K)
}
