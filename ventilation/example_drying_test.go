package ventilation_test

import (
	"fmt"
	"time"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Drying a winter morning, step by step: an invented house of 240 m³ is to be
// held at 15 °C and 85 % while 7.2 kg of vapour an hour come from crop and
// floor; outside -2 °C and 90 %. Its film cover is at 8 °C, its insulated walls
// at 11 °C.
func Example_dryingAWinterMorning() {
	const pressure = 97300.0 // Pa
	inside, err1 := psychro.FromRelativeHumidity(15, 0.85, pressure)
	outside, err2 := psychro.FromRelativeHumidity(-2, 0.90, pressure)
	night, err3 := psychro.FromRelativeHumidity(15, 0.97, pressure)
	house := ventilation.DryingCase{
		Wanted: inside, Outside: outside, Release: 7.2 / 3600, Recovery: 0.6,
		Surfaces: []ventilation.ColdSurface{
			{Name: "cover", Temperature: 8, Area: 105, Film: 2.5},
			{Name: "walls", Temperature: 11, Area: 55, Film: 2.5},
		},
	}
	r, err4 := house.Flow()
	course, err5 := house.Time(night, 1.5*r.DryAir, 240)
	rounds, err6 := ventilation.Purge{Start: night, Outside: outside, Volume: 240, Warm: 17, Exchange: 0.3}.RoundsFor(0.60)
	for _, err := range []error{err1, err2, err3, err4, err5, err6} {
		if err != nil {
			fmt.Println(err)
			return
		}
	}

	fmt.Println("1. What condenses first: h/(cp Le^(2/3)) A (W - Ws)")
	fmt.Printf("   W wanted %.3f g/kg, dew point %.2f °C\n", 1000*inside.HumidityRatio(), inside.DewPoint())
	for _, s := range house.Surfaces {
		v, err := inside.VapourFlux(s.Temperature, s.Film)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("   %s: %.2f g/(m² s), Ws %.3f g/kg: %.3f kg/h\n", s.Name, 1000*v.Coefficient, 1000*v.Saturation, 3600*s.Area*v.Flux)
	}
	fmt.Println("2. The air that carries the rest: m = (E - C)/(W - Wo)")
	fmt.Printf("   E - C = %.2f - %.3f = %.3f kg/h\n", 3600*r.Release, 3600*r.Condensed, 3600*r.Excess)
	fmt.Printf("   W - Wo = %.3f - %.3f = %.3f g/kg\n", 1000*inside.HumidityRatio(), 1000*outside.HumidityRatio(), 1000*r.Difference)
	fmt.Printf("   m = %.4f kg/s, %.0f m³/h of outside air; without step 1 it would be %.4f kg/s\n", r.DryAir, 3600*r.Supply, r.Uncounted)
	fmt.Println("3. Its heat: m (h - ho)")
	fmt.Printf("   h - ho = %.2f - %.2f kJ/kg\n", inside.Enthalpy()/1000, outside.Enthalpy()/1000)
	fmt.Printf("   sensible %.0f W, latent %.0f W, together %.0f W\n", r.Sensible, r.Latent, r.Total)
	fmt.Println("4. Heat recovery, 60 % of the supply side")
	fmt.Printf("   supply air %.1f °C, saved %.0f W, left to pay %.0f W\n", r.Heat.Supply, r.Heat.Saved, r.Cost)
	fmt.Printf("   exhaust air leaves at %.1f °C and drops %.2f kg/h, frost on the plates: %v\n", r.Heat.Exhaust, 3600*r.Heat.Condensate, r.Heat.Frost)
	e := r.Over(3 * time.Hour)
	fmt.Printf("5. Three hours: %.1f kg by the air, %.1f kg off the cover, %.1f kWh\n", e.Water, e.Dripped, e.Cost/3.6e6)
	fmt.Printf("6. From 97 %% with half as much air again: %.1f min, W would rest at %.3f g/kg\n", course.Time.Minutes(), 1000*course.Settled)
	fmt.Printf("7. Heat and vent instead: %d rounds of 17 °C and 0.3 air changes to 60 %%, %.1f kg, %.1f kWh\n", len(rounds.Rounds), rounds.Removed, rounds.Heat/3.6e6)
	dry, err := ventilation.DewLimit(15, 0.5, pressure, house.Surfaces)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("8. Dry surfaces all over need air below %.0f %%\n", 100*dry.RelativeHumidity())
	// Output:
	// 1. What condenses first: h/(cp Le^(2/3)) A (W - Ws)
	//    W wanted 9.446 g/kg, dew point 12.50 °C
	//    cover: 2.73 g/(m² s), Ws 6.963 g/kg: 2.561 kg/h
	//    walls: 2.72 g/(m² s), Ws 8.541 g/kg: 0.488 kg/h
	// 2. The air that carries the rest: m = (E - C)/(W - Wo)
	//    E - C = 7.20 - 3.049 = 4.151 kg/h
	//    W - Wo = 9.446 - 3.005 = 6.441 g/kg
	//    m = 0.1790 kg/s, 518 m³/h of outside air; without step 1 it would be 0.3105 kg/s
	// 3. Its heat: m (h - ho)
	//    h - ho = 38.97 - 5.50 kJ/kg
	//    sensible 3079 W, latent 2914 W, together 5993 W
	// 4. Heat recovery, 60 % of the supply side
	//    supply air 8.2 °C, saved 1847 W, left to pay 4146 W
	//    exhaust air leaves at 9.3 °C and drops 1.17 kg/h, frost on the plates: false
	// 5. Three hours: 12.5 kg by the air, 9.1 kg off the cover, 12.4 kWh
	// 6. From 97 % with half as much air again: 6.4 min, W would rest at 8.628 g/kg
	// 7. Heat and vent instead: 2 rounds of 17 °C and 0.3 air changes to 60 %, 1.0 kg, 0.9 kWh
	// 8. Dry surfaces all over need air below 61 %
}
