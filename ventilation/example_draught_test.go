package ventilation_test

import (
	"fmt"

	"cloche.example/ventilation"
)

// Cold air that falls on plants, step by step: 0.2 kg/s of air at -5 °C enters
// an invented house of 15 °C, once by a run of ridge vents, 6 m long, and once
// by side vents just above the crop.
func Example_coldAirOnTheCrop() {
	slot := ventilation.DefaultInletJet(ventilation.SlotInlet)
	slot.Length, slot.Reach = 6, 6.4
	down := slot
	down.Angle, down.Reach = -45, 3.2
	network, err := ventilation.NewNetwork([]ventilation.Opening{
		{Name: "side", Height: 0.8, Vertical: 0.4, Area: 2.4, Discharge: 0.6},
		{Name: "ridge", Height: 2.9, Vertical: 0.4, Area: 2.4, Discharge: 0.6},
	}, []ventilation.Leak{{Height: 0.5, Flow: 0.02, Exponent: 0.65}, {Height: 2.5, Flow: 0.02, Exponent: 0.65}}, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	house := ventilation.ColdVents{
		Network: network, Jets: []ventilation.InletJet{slot, down},
		Inside: 15, Outside: -5, Pressure: 97300, Crop: 0.3, Limit: 10,
	}
	for _, way := range []struct {
		name  string
		order [][]int
	}{{"ridge first", [][]int{{1}, {0}}}, {"side first", [][]int{{0}, {1}}}} {
		air, err := house.ForFlow(way.order, 0.2)
		if err != nil {
			fmt.Println(err)
			return
		}
		in := air.Inlets[air.By]
		j := in.Jet
		fmt.Printf("%s: open %.0f %%, %.3f kg/s of the air by it\n", way.name, 100*air.Fractions[air.By], in.Flow)
		fmt.Printf("  slot h = Cd A/l = %.4f m, V0 = m/(rho Cd A) = %.3f m/s\n", j.Size, j.Speed)
		fmt.Printf("  Ar = g dT0 h/(T V0²) = %.3f\n", j.Archimedes())
		for _, l := range []struct {
			psi string
			at  ventilation.Landing
		}{{"0.40", in.Fall.Steep}, {"4/15", in.Fall.Shallow}} {
			fmt.Printf("  psi %-5s falls %.2f m within %.2f m, path %.2f m, %.2f m/s, KT sqrt(h/s) %.3f: %.2f °C, or %.2f °C\n",
				l.psi, in.Drop, l.at.Distance, l.at.Path, l.at.Speed, (l.at.Temperature-j.House)/j.Excess, l.at.Temperature, l.at.Mild)
		}
		most, err := house.Widest(way.order)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("  limit 10 °C: chill %v; it may open %.0f %%, which lets in %.3f kg/s\n", air.Chill, 100*most.Fractions[air.By], most.Air.Flow)
	}
	// Output:
	// ridge first: open 56 %, 0.148 kg/s of the air by it
	//   slot h = Cd A/l = 0.0594 m, V0 = m/(rho Cd A) = 0.328 m/s
	//   Ar = g dT0 h/(T V0²) = -0.377
	//   psi 0.40  falls 2.49 m within 0.56 m, path 2.58 m, 0.49 m/s, KT sqrt(h/s) 0.303: 8.93 °C, or 13.50 °C
	//   psi 4/15  falls 2.49 m within 0.64 m, path 2.60 m, 0.49 m/s, KT sqrt(h/s) 0.302: 8.96 °C, or 13.52 °C
	//   limit 10 °C: chill true; it may open 39 %, which lets in 0.149 kg/s
	// side first: open 58 %, 0.189 kg/s of the air by it
	//   slot h = Cd A/l = 0.0709 m, V0 = m/(rho Cd A) = 0.352 m/s
	//   Ar = g dT0 h/(T V0²) = -0.390
	//   psi 0.40  falls 0.40 m within 0.46 m, path 0.65 m, 0.56 m/s, KT sqrt(h/s) 0.659: 1.82 °C, or 8.31 °C
	//   psi 4/15  falls 0.40 m within 0.54 m, path 0.72 m, 0.55 m/s, KT sqrt(h/s) 0.629: 2.42 °C, or 8.87 °C
	//   limit 10 °C: chill true; it may open 6 %, which lets in 0.040 kg/s
}
