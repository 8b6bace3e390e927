package envelope_test

import (
	"fmt"

	"cloche.example/envelope"
)

// One film roof on two nights that differ in the sky alone. A table value
// knows one of them at most.
func Example_filmAtNight() {
	const outside, dewPoint = -5.0, -8.0 // °C
	clear := envelope.SkyEmissivity(dewPoint, 0, 101325)
	overcast := envelope.CloudySky(clear, envelope.Clouds{Cover: 1, Emittance: 1, Base: 500})
	film := envelope.SingleFilm()
	k := envelope.DefaultCoverConditions()
	k.Outside, k.Wind = outside, 2
	fmt.Println("Clear film of 0.15 mm, roof of 30 degree, 15 °C inside, -5 °C outside, 2 m/s")
	for _, sky := range []struct {
		name       string
		emissivity float64
	}{{"clear", clear}, {"overcast", overcast}} {
		temperature := envelope.SkyTemperatureOf(outside, sky.emissivity)
		k.SkyDrop = outside - temperature
		s, err := film.Solve(k)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: sky emissivity %.3f, sky %.1f °C\n", sky.name, sky.emissivity, temperature)
		fmt.Printf("  film                %6.1f °C\n", s.InnerTemperature)
		fmt.Printf("  from the house      %6.1f W/m²   convection %.1f, long-wave %.1f\n", s.FluxIn, s.InConvective, s.InRadiative)
		fmt.Printf("  driven by the air   %6.1f W/m²\n", s.AirDriven)
		fmt.Printf("  driven by the sky   %6.1f W/m²\n", s.SkyDriven)
		fmt.Printf("  U, air to air       %6.2f W/(m² K)   without the sky's part %.2f\n", s.U, s.UOvercast)
	}
	// Output:
	// Clear film of 0.15 mm, roof of 30 degree, 15 °C inside, -5 °C outside, 2 m/s
	// clear: sky emissivity 0.685, sky -29.2 °C
	//   film                  -0.5 °C
	//   from the house       200.5 W/m²   convection 61.3, long-wave 139.2
	//   driven by the air    139.9 W/m²
	//   driven by the sky     60.6 W/m²
	//   U, air to air        10.03 W/(m² K)   without the sky's part 7.00
	// overcast: sky emissivity 0.981, sky -6.3 °C
	//   film                   0.6 °C
	//   from the house       142.5 W/m²   convection 55.5, long-wave 87.0
	//   driven by the air    138.9 W/m²
	//   driven by the sky      3.6 W/m²
	//   U, air to air         7.12 W/(m² K)   without the sky's part 6.95
}
