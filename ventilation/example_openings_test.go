package ventilation_test

import (
	"fmt"

	"cloche.example/ventilation"
)

// Openings by their geometry: the angle that a drive's stroke gives, a louvre,
// two holes one after the other, one tall vent alone, and what cannot work.
func Example_openings() {
	fmt.Printf("a flap 0.8 m deep pushed out 0.4 m stands at %.1f degree\n", ventilation.FlapAngle(0.4, 0.8))
	louvre := ventilation.Louvre{Width: 1.2, Height: 1, Slats: 10, Thickness: 0.008, Angle: 60}
	fmt.Printf("louvre of 1.2 m²     %.3f m² free at %g degree\n", louvre.FreeArea(), louvre.Angle)
	fmt.Printf("2 m² behind 1 m²     pass as much as %.3f m²\n", ventilation.SeriesArea(1, 2))
	c, err := ventilation.DrySides{Inside: 25, Outside: 15, Pressure: 101325}.Conditions()
	if err != nil {
		fmt.Println(err)
		return
	}
	two, err := ventilation.SingleOpening(ventilation.TallVent{Bottom: 0, Top: 2, Width: 0.9, Discharge: ventilation.ExchangeDischarge(25, 15)}, c)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("an open door alone   %.3f kg/s each way, neutral level %.2f m up\n", two.Flow, two.Neutral)
	band, err := ventilation.OneFace{Area: 1.8, Height: 2, Inside: 25, Outside: 15}.Band()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("published fits       %.2f to %.2f m³/s for the same\n", band.Low, band.High)
	h, err := ventilation.HandbookFlow{Area: 1.2, Discharge: 0.65, Height: 1.2, Inside: 25, Outside: 15, Wind: 2, Effectiveness: 0.3}.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("handbook             stack %.2f, wind %.2f, together %.2f m³/s\n", h.Stack, h.Wind, h.Quadrature)
	fmt.Println(ventilation.CheckOpenings([]ventilation.Opening{{Name: "a", Height: 1, Area: 1, Discharge: 0.6}, {Name: "b", Height: 1, Area: 1, Discharge: 0.6}}, 0, 3, 0))
	// Output:
	// a flap 0.8 m deep pushed out 0.4 m stands at 29.0 degree
	// louvre of 1.2 m²     0.943 m² free at 60 degree
	// 2 m² behind 1 m²     pass as much as 0.894 m²
	// an open door alone   0.263 kg/s each way, neutral level 0.99 m up
	// published fits       0.24 to 0.30 m³/s for the same
	// handbook             stack 0.69, wind 0.72, together 1.00 m³/s
	// openings: no solution: all at one height and no wind; air passes two ways only through a tall opening (Vertical above zero)
}
