package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// A timber wall with 200 mm of mineral wool by ISO 6946. The source of the
// figures, a worked example at lambdacalculator.eu, prints R 7.00 and U 0.14.
func Example_wall() {
	wall := envelope.Wall{ROut: 0.04, RIn: 0.13, Layers: []envelope.WallLayer{
		{Name: "render 15 mm", Resistance: 0.015 / 0.87},
		{Name: "mineral wool 200 mm", Resistance: 0.200 / 0.035},
		{Name: "timber 140 mm", Resistance: 0.140 / 0.13},
		{Name: "plaster 15 mm", Resistance: 0.015 / 0.70},
	}}
	r, err := wall.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("outside surface       %6.3f m² K/W\n", wall.ROut)
	for _, l := range wall.Layers {
		fmt.Printf("%-20s  %6.3f m² K/W   d/lambda\n", l.Name, l.Resistance)
	}
	fmt.Printf("inside surface        %6.3f m² K/W\n", wall.RIn)
	fmt.Printf("total                 %6.3f m² K/W   source prints 7.00\n", r.R)
	fmt.Printf("U                     %6.3f W/(m² K)   source prints 0.14\n", r.U)

	// The same wall with studs through the wool: 12 % of the area.
	wall.Layers[1] = envelope.WallLayer{Name: "wool and studs", Parts: []envelope.WallPart{
		{Share: 0.88, Resistance: 0.200 / 0.035}, {Share: 0.12, Resistance: 0.200 / 0.13},
	}}
	r, err = wall.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("with studs: upper limit %.3f, lower limit %.3f, R %.3f m² K/W, error at most %.1f %%\n", r.Upper, r.Lower, r.R, 100*r.Error)
	fmt.Printf("U with studs          %6.3f W/(m² K)\n", r.U)
	fmt.Printf("surface resistances for an emittance of 0.9: %.3f inside at 20 °C, %.3f outside at 0 °C and 4 m/s\n",
		envelope.InsideResistance(envelope.FlowHorizontal, 0.9, 20), envelope.OutsideResistance(4, 0.9, 0))
	cavity := envelope.AirSpace{Flow: envelope.FlowHorizontal, Width: 0.025, Emittance: [2]float64{0.9, 0.9}, Mean: 10, Difference: 5}
	bright := cavity
	bright.Emittance[0] = 0.1
	fmt.Printf("air space of 25 mm %.2f m² K/W, with one bright face %.2f\n", envelope.AirSpaceResistance(cavity), envelope.AirSpaceResistance(bright))
	// Output:
	// outside surface        0.040 m² K/W
	// render 15 mm           0.017 m² K/W   d/lambda
	// mineral wool 200 mm    5.714 m² K/W   d/lambda
	// timber 140 mm          1.077 m² K/W   d/lambda
	// plaster 15 mm          0.021 m² K/W   d/lambda
	// inside surface         0.130 m² K/W
	// total                  7.000 m² K/W   source prints 7.00
	// U                      0.143 W/(m² K)   source prints 0.14
	// with studs: upper limit 5.945, lower limit 5.596, R 5.770 m² K/W, error at most 3.0 %
	// U with studs           0.173 W/(m² K)
	// surface resistances for an emittance of 0.9: 0.131 inside at 20 °C, 0.041 outside at 0 °C and 4 m/s
	// air space of 25 mm 0.18 m² K/W, with one bright face 0.57
}
