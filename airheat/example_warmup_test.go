package airheat_test

import (
	"fmt"
	"time"

	"cloche.example/airheat"
	"cloche.example/envelope"
)

// An invented small house on a frosty morning: time constants, warm-up, the
// heater for a wanted time, hours to frost after a failure.
func Example_warmUp() {
	house, err := airheat.NewTransient(envelope.Nodes{
		AirCapacity: 4.2e5, StructureCapacity: 2.6e6, SoilCapacity: 3.1e7, // J/K
		Cover: 640, Leakage: 95, AirStructure: 780, AirSoil: 520, StructureOutside: 35, SoilDeep: 60, // W/K
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	d := envelope.Drive{Heat: 34000, Outside: -8, Deep: 8}
	tau := house.TimeConstants()
	fmt.Printf("time constants     %.1f min, %.2f h, %.1f h\n", tau[0].Minutes(), tau[1].Hours(), tau[2].Hours())
	cold := d
	cold.Heat = 0
	s := house.Steady(cold)
	fmt.Printf("unheated           air %.2f, structure %.2f, soil %.2f °C\n", s.Air, s.Structure, s.Soil)
	e, err := house.WarmUp(d, 15, airheat.Forever)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("to 15 °C           %.1f min with %.0f W; the soil is then at %.2f °C\n", e.Time.Minutes(), d.Heat, e.State.Soil)
	w, _ := house.PowerForWarmUp(d, 15, 20*time.Minute)
	fmt.Printf("in 20 min          %.0f W\n", w)
	d.Heat = 15000
	e, _ = house.WarmUp(d, 15, airheat.Forever)
	fmt.Printf("with 15 kW         reached: %t; it would settle at %.2f °C\n", e.Reached, e.Limiting)
	q, _ := house.HoldingHeat(d, 15)
	fmt.Printf("to hold 15 °C      %.0f W\n", q)
	e, _ = house.CoolDown(house, d, airheat.HeatFailure{SetPoint: 15, Share: 0, Level: 0, Limit: airheat.Forever})
	fmt.Printf("heater fails       frost after %.2f h; the soil is then at %.2f °C\n", e.Time.Hours(), e.State.Soil)
	fmt.Println(airheat.FrostCaution)
	// Output:
	// time constants     3.4 min, 1.41 h, 23.6 h
	// unheated           air -6.95, structure -7.00, soil -5.41 °C
	// to 15 °C           67.8 min with 34000 W; the soil is then at -4.19 °C
	// in 20 min          41261 W
	// with 15 kW         reached: false; it would settle at 11.29 °C
	// to hold 15 °C      18052 W
	// heater fails       frost after 4.93 h; the soil is then at 10.97 °C
	// A computed time to frost assumes the stated house and weather; plants, pipes and power supplies fail earlier. Keep an alarm that works without mains power, and follow local codes and licensed practice.
}
