package ventilation_test

import (
	"fmt"

	"cloche.example/ventilation"
)

// Roll-up sides alone: stack, wind, and what the published equations make of
// them. The house is invented.
func Example_ventsAtOneLevel() {
	side, err := ventilation.TallVent{Name: "side", Bottom: 0.5, Top: 1.5, Width: 30, Discharge: 0.6, PressureCoefficient: -0.2}.Opening()
	if err != nil {
		fmt.Println(err)
		return
	}
	n, err := ventilation.NewNetwork([]ventilation.Opening{side, side}, nil, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	rival := ventilation.DefaultWindExchange()
	rival.Method = ventilation.LargerOfTwo
	larger, err := n.WithExchange(rival)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, wind := range []float64{0, 1, 3} {
		c, err1 := ventilation.DrySides{Inside: 30, Outside: 25, Pressure: 101325, Wind: wind}.Conditions()
		b, err2 := n.Solve(c)
		l, err3 := larger.Solve(c)
		eq, err4 := ventilation.HouseVents{Side: 60, Discharge: 0.6, WindEffect: 0.09, Inside: 30, Outside: 25, Wind: wind}.Solve()
		roof, err5 := ventilation.RoofWindows{Lee: 30, Windward: 30, Chord: 1, Pitch: 25, LeeAngle: 30, WindwardAngle: 30, Discharge: 0.6, Inside: 30, Outside: 25, Wind: wind}.Solve()
		for _, err := range []error{err1, err2, err3, err4, err5} {
			if err != nil {
				fmt.Println(err)
				return
			}
		}
		fmt.Printf("%.0f m/s: %4.1f m³/s, %4.1f of it by gusts; larger %4.1f; wind by equation %4.1f; windows of a large house %.1f\n",
			wind, b.Volume, b.Exchange/c.OutsideDensity, l.Volume, eq.Flow, roof.Flow)
	}
	// Output:
	// 0 m/s:  4.8 m³/s,  0.0 of it by gusts; larger  4.8; wind by equation  0.0; windows of a large house 1.8
	// 1 m/s:  7.2 m³/s,  2.4 of it by gusts; larger  5.4; wind by equation  5.4; windows of a large house 2.5
	// 3 m/s: 16.9 m³/s, 12.1 of it by gusts; larger 16.2; wind by equation 16.2; windows of a large house 5.6
}
