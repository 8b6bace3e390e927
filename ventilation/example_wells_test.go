package ventilation_test

import (
	"fmt"

	"cloche.example/ventilation"
)

// A house dug 0.9 m into the ground, its low vents in wells: what the stack
// has of them, and what becomes of it in wind on the ridge.
func Example_dugInHouse() {
	ridge := ventilation.Opening{Name: "ridge", Height: 2.9, Area: 1.2, Discharge: 0.6, PressureCoefficient: 0.4}
	low := ventilation.Well{
		Vent:    ventilation.Opening{Name: "low", Height: -0.3, Vertical: 0.4, Area: 1, Discharge: 0.6},
		Section: 0.8, Discharge: 0.6,
	}
	vent, err := low.Opening()
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := ventilation.StackOf([]ventilation.Opening{ridge, vent}, -0.9, 95)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("vent and well in series   Cd %.3f on the vent\n", vent.Discharge)
	fmt.Printf("stack with the wells      %.2f m, without them %.2f m\n", s.Height, s.Usable)
	fmt.Printf("pool below the low vents  %.2f m deep, %.0f m³\n", s.Pool, s.Volume)
	for _, wind := range []float64{0, 2.5, 2.75, 5} {
		c, err := ventilation.DrySides{Inside: 25, Outside: 10, Pressure: 97300, Wind: wind}.Conditions()
		if err != nil {
			fmt.Println(err)
			return
		}
		states, err := ventilation.DugIn{Openings: []ventilation.Opening{ridge}, Wells: []ventilation.Well{low}}.States(c)
		if err != nil {
			fmt.Println(err)
			return
		}
		for _, state := range states {
			fmt.Printf("wind %.2f m/s: %.3f kg/s, wells full of house air %v\n", wind, state.Air.Flow, state.Filled[0])
		}
	}
	// Output:
	// vent and well in series   Cd 0.375 on the vent
	// stack with the wells      3.20 m, without them 2.90 m
	// pool below the low vents  0.40 m deep, 38 m³
	// wind 0.00 m/s: 0.703 kg/s, wells full of house air false
	// wind 2.50 m/s: 0.319 kg/s, wells full of house air false
	// wind 2.75 m/s: 0.132 kg/s, wells full of house air false
	// wind 2.75 m/s: 0.158 kg/s, wells full of house air true
	// wind 5.00 m/s: 1.042 kg/s, wells full of house air true
}
