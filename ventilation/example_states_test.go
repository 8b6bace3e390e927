package ventilation_test

import (
	"fmt"

	"cloche.example/ventilation"
)

// Wind that blows on the ridge against the stack leaves three states: which
// of the two stable ones the house takes depends on what went before.
func Example_openedAgainstTheWind() {
	n, err := ventilation.NewNetwork([]ventilation.Opening{
		{Name: "side", Height: 0.5, Area: 2, Discharge: 0.6, PressureCoefficient: -0.3},
		{Name: "ridge", Height: 3.5, Area: 2, Discharge: 0.6, PressureCoefficient: 0.3},
	}, nil, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	if n, err = n.WithExchange(ventilation.WindExchange{}); err != nil { // pressures alone
		fmt.Println(err)
		return
	}
	states, err := n.SteadyStates(
		ventilation.Load{Solar: 15000, Transpired: 0.6},
		ventilation.Outdoors{Temperature: 15, Pressure: 101325, Wind: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range states {
		way := "in at the side"
		if s.Air.Paths[1].In > 0 {
			way = "in at the ridge"
		}
		fmt.Printf("%+.2f K  %.3f kg/s %s  stable %v\n", s.Rise, s.Air.Flow, way, s.Stable)
	}
	// Output:
	// +4.81 K  1.239 kg/s in at the ridge  stable true
	// +10.70 K  0.557 kg/s in at the ridge  stable false
	// +13.27 K  0.449 kg/s in at the side  stable true
}
