package airheat_test

import (
	"fmt"
	"log"

	"cloche.example/airheat"
	"cloche.example/psychro"
)

// Darcy's friction factor by Colebrook's equation and by three explicit forms,
// at a roughness of 0.001 of the diameter, and in between laminar and turbulent.
func Example_frictionFactors() {
	for _, re := range []float64{1500, 3000} {
		fmt.Printf("Re %6.0f  f = %.5f\n", re, airheat.Friction(re, 0.001))
	}
	fmt.Println("Re          Colebrook  Swamee-Jain  Haaland  Altshul-Tsal")
	for _, re := range []float64{1e4, 1e5, 1e6} {
		fmt.Printf("%-10.0f  %9.5f  %11.5f  %7.5f  %12.5f\n", re, airheat.Colebrook(re, 0.001), airheat.SwameeJain(re, 0.001), airheat.Haaland(re, 0.001), airheat.AltshulTsal(re, 0.001))
	}
	// Output:
	// Re   1500  f = 0.04267
	// Re   3000  f = 0.03321
	// Re          Colebrook  Swamee-Jain  Haaland  Altshul-Tsal
	// 10000         0.03238      0.03267  0.03217       0.03269
	// 100000        0.02217      0.02234  0.02197       0.02227
	// 1000000       0.01994      0.02003  0.01994       0.01989
}

// A duct of an invented house: its size by a friction rate, the same as a flat
// one, its fittings, and what each piece loses.
func Example_ductPieces() {
	air := airheat.DryAir(40, 101325)
	d, err := airheat.RoundFor(airheat.RoundSizing{Flow: 0.5, Pressure: 1, Length: 1, Roughness: 0.15e-3, Properties: air})
	if err != nil {
		log.Fatal(err)
	}
	flat := airheat.Rectangular(0.5, 0.2)
	fmt.Printf("round duct for 1 Pa/m      %.3f m; 0.5 by 0.2 m is as good as %.3f m\n", d, flat.EquivalentDiameter())
	k := airheat.MitredElbow(90) + airheat.DiscDamper(20) + airheat.SuddenExpansion(0.5)
	fmt.Printf("elbow, damper, expansion   K = %.2f\n", k)
	system, err := airheat.NewSystem(
		airheat.Segment{Section: flat, Length: 6, Roughness: 0.15e-3, Fittings: k},
		airheat.Segment{Section: airheat.Round(0.4), Length: 8, Roughness: 0.15e-3, Fittings: airheat.FreeOutlet})
	if err != nil {
		log.Fatal(err)
	}
	for i, l := range system.LossesTo(nil, 0.5, air) {
		fmt.Printf("piece %d                    %.2f m/s, wall %.1f Pa, fittings %.1f Pa\n", i+1, l.Velocity, l.Wall, l.Fittings)
	}
	fmt.Printf("regain from 5 to 4 m/s     %.2f Pa of %.2f at 0.8\n", airheat.StaticRegain(5, 4, 0.8, air), airheat.StaticRegain(5, 4, 1, air))
	q, err := system.FlowAt(40, air)
	if err != nil {
		log.Fatal(err)
	}
	fan, err := airheat.NewFanPolynomial(0, 1, 120, 0, -150)
	if err != nil {
		log.Fatal(err)
	}
	at, err := system.Intersections(fan, airheat.DefaultFanDrive(), air)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("40 Pa drive                %.3f m³/s; a fan of 120 - 150 Q² Pa gives %.3f m³/s\n", q, at[0].Flow)
	fmt.Printf("which warms the air by     %.2f K at an efficiency of 0.5\n", airheat.FanRise(at[0].Pressure, 0.5, air))
	// Output:
	// round duct for 1 Pa/m      0.340 m; 0.5 by 0.2 m is as good as 0.337 m
	// elbow, damper, expansion   K = 2.99
	// piece 1                    5.00 m/s, wall 6.2 Pa, fittings 42.1 Pa
	// piece 2                    3.98 m/s, wall 3.6 Pa, fittings 8.9 Pa
	// regain from 5 to 4 m/s     4.06 Pa of 5.07 at 0.8
	// 40 Pa drive                0.405 m³/s; a fan of 120 - 150 Q² Pa gives 0.542 m³/s
	// which warms the air by     0.13 K at an efficiency of 0.5
}

// A duct through a cold shed: the film inside by Petukhov, and the water that
// its wall takes from humid air.
func Example_sweatingDuct() {
	in, err := psychro.IdealGas.FromRelativeHumidity(22, 0.85, 101325)
	if err != nil {
		log.Fatal(err)
	}
	const diameter, speed = 0.3, 4.0 // m, m/s
	re := speed * diameter * in.Density() / in.Viscosity()
	film := airheat.DuctNusselt(re, 0.71) * in.Conductivity() / diameter
	duct := airheat.Duct{Section: airheat.Round(diameter), Length: 10, HeatTransfer: 6}
	r, err := duct.Dew(film, speed*duct.Section.Area()/in.SpecificVolume(), in, -5)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("film inside   %.1f W/(m² K) at Re %.0f\n", film, re)
	fmt.Printf("air           22.0 to %.1f °C, wall down to %.1f °C, dew point %.1f °C\n", r.Outlet, r.ColdestWall, r.DewPoint)
	fmt.Printf("water         %.2f kg/h, wet from %.1f m on, frost %t\n", 3600*r.Water, r.WetFrom, r.Frost)
	// Output:
	// film inside   12.0 W/(m² K) at Re 78955
	// air           22.0 to 19.5 °C, wall down to 12.3 °C, dew point 19.4 °C
	// water         1.73 kg/h, wet from 0.0 m on, frost false
}
