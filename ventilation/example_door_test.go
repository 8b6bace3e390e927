package ventilation_test

import (
	"fmt"
	"time"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// A door opened forty times a day for 20 s each, without and with a lobby of
// 5 m³: an invented house of 240 m³ at 15 °C and 80 %, outside -5 °C and 90 %,
// calm.
func Example_doorAndLobby() {
	inside, err1 := psychro.FromRelativeHumidity(15, 0.80, 97300)
	outside, err2 := psychro.FromRelativeHumidity(-5, 0.90, 97300)
	door := ventilation.Doorway{Width: 0.9, Height: 2, Discharge: ventilation.ExchangeDischarge(15, -5)}
	house := ventilation.DoorCase{
		Door: door, Inside: inside, Outside: outside, Volume: 240,
		Leaks: []ventilation.Leak{{Height: 0.2, Flow: 0.02, Exponent: 0.65}, {Height: 2.8, Flow: 0.02, Exponent: 0.65}},
		Times: 40, Duration: 20 * time.Second,
	}
	r, err3 := house.WithLobby(ventilation.Lobby{Volume: 5, Outer: door})
	for _, err := range []error{err1, err2, err3} {
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	b := r.Bare
	fmt.Printf("densities                     %.4f inside, %.4f kg/m³ outside\n", inside.Density(), outside.Density())
	fmt.Printf("through the open door         %.3f kg/s in, %.3f kg/s out\n", b.In, b.Out)
	fmt.Printf("by leaks while it is shut     %.3f kg/s, the door adds %.3f kg/s\n", b.Shut, b.Extra)
	fmt.Printf("its heat                      %.0f W sensible, %.0f W latent\n", b.Sensible, b.Latent)
	fmt.Printf("one opening                   %.0f kJ; %.1f %% of the air; allowed to cool %.0f kJ\n", b.Each/1e3, 100*b.Exchanged, b.Let/1e3)
	fmt.Printf("a day                         %.1f kWh, %.1f kg of vapour\n", b.Energy/3.6e6, b.Water)
	fmt.Printf("the lobby's air               %.2f of the difference before, %.2f once the outer door has been open\n", r.Before, r.Filled)
	fmt.Printf("one passage with it           %.0f kJ of at most %.0f kJ: it saves %.0f %%\n", r.Passage/1e3, r.Most/1e3, 100*r.Saved)
	fmt.Printf("both doors left open          %.0f W: it saves %.0f %%\n", r.Both, 100*r.Kept)
	// Output:
	// densities                     1.1706 inside, 1.2631 kg/m³ outside
	// through the open door         0.443 kg/s in, 0.431 kg/s out
	// by leaks while it is shut     0.027 kg/s, the door adds 0.436 kg/s
	// its heat                      8789 W sensible, 7206 W latent
	// one opening                   320 kJ; 3.1 % of the air; allowed to cool 313 kJ
	// a day                         3.6 kWh, 2.3 kg of vapour
	// the lobby's air               0.73 of the difference before, 0.27 once the outer door has been open
	// one passage with it           98 kJ of at most 215 kJ: it saves 69 %
	// both doors left open          5643 W: it saves 65 %
}
