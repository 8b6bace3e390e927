package ventilation_test

import (
	"fmt"

	"cloche.example/ventilation"
)

// Wind with the stack (suction at the ridge) and against it (pressure at the
// ridge): the same openings, 30 °C inside, 22 °C outside.
func Example_windAndStack() {
	for _, side := range []struct {
		name      string
		low, high float64
	}{{"together", 0.4, -0.6}, {"opposed", -0.2, 0.3}} {
		n, err := ventilation.NewNetwork([]ventilation.Opening{
			{Name: "side", Height: 0.5, Area: 1.2, Discharge: 0.6, PressureCoefficient: side.low},
			{Name: "ridge", Height: 2.9, Area: 0.8, Discharge: 0.6, PressureCoefficient: side.high},
		}, nil, nil)
		if err != nil {
			fmt.Println(err)
			return
		}
		if n, err = n.WithExchange(ventilation.WindExchange{}); err != nil { // pressures alone
			fmt.Println(err)
			return
		}
		fmt.Println(side.name)
		for _, wind := range []float64{0, 1, 1.5, 3} {
			c, err := ventilation.DrySides{Inside: 30, Outside: 22, Pressure: 101325, Wind: wind}.Conditions()
			if err != nil {
				fmt.Println(err)
				return
			}
			b, err := n.Solve(c)
			if err != nil {
				fmt.Println(err)
				return
			}
			way := "up"
			if b.Paths[1].In > 0 {
				way = "down"
			}
			fmt.Printf("  %.1f m/s  inside %+.3f Pa  flow %.3f kg/s %s\n", wind, b.Pressure, b.Flow, way)
		}
	}
	// Output:
	// together
	//   0.0 m/s  inside -0.379 Pa  flow 0.527 kg/s up
	//   1.0 m/s  inside -0.321 Pa  flow 0.709 kg/s up
	//   1.5 m/s  inside -0.247 Pa  flow 0.884 kg/s up
	//   3.0 m/s  inside +0.148 Pa  flow 1.515 kg/s up
	// opposed
	//   0.0 m/s  inside -0.379 Pa  flow 0.527 kg/s up
	//   1.0 m/s  inside -0.408 Pa  flow 0.408 kg/s up
	//   1.5 m/s  inside -0.445 Pa  flow 0.162 kg/s up
	//   3.0 m/s  inside -0.621 Pa  flow 0.859 kg/s down
}
