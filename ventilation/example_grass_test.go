package ventilation_test

import (
	"fmt"

	"cloche.example/ventilation"
)

// Reference evapotranspiration from the weather of a day, example 18 of FAO56:
// the paper prints 3.9 mm. Then what to do where a station lacks an instrument.
func Example_referenceEvapotranspiration() {
	wind := ventilation.FAO56WindAtTwoMetres(10.0/3.6, 10)
	g, err := ventilation.GrassDay{
		Lowest: 12.3, Highest: 21.5, LeastHumidity: 0.63, MostHumidity: 0.84,
		Solar: 22.07e6, ClearSky: 30.90e6, Wind: wind, Pressure: 100100,
	}.Grass()
	if err != nil {
		fmt.Println(err)
		return
	}
	e, err := g.Day()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("wind at 2 m        u 4.87/ln(67.8 z - 5.42)  %.3f m/s\n", g.Wind)
	fmt.Printf("saturation         mean of the two ends      %.0f Pa\n", g.Saturation)
	fmt.Printf("vapour pressure                              %.0f Pa\n", g.Vapour)
	fmt.Printf("net radiation      Rns - Rnl                 %.2f MJ/m²\n", g.Net/1e6)
	fmt.Printf("slope, psychrometric constant                %.0f Pa/K, %.1f Pa/K\n", e.Slope, e.Psychro)
	fmt.Printf("ETo                radiation + dryness       %.2f + %.2f = %.2f mm\n", e.Radiation, e.Dryness, e.ETo)
	h, err := ventilation.GrassHour{Temperature: 38, Humidity: 0.52, Solar: 2.450e6, Clearness: 0.922, Daylight: true, Wind: 3.3, Pressure: 101200}.Grass()
	if err != nil {
		fmt.Println(err)
		return
	}
	hour, err := h.Hour()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("an hour, example 19                          %.2f mm\n", hour.ETo)
	fmt.Printf("vapour pressure from two bulbs, example 4    %.0f Pa\n", ventilation.FAO56VapourFromBulbs(25.6, 19.5, 87900))
	fmt.Printf("sun from the temperatures, example 15        %.1f MJ/m²\n", ventilation.FAO56SolarFromTemperature(14.8, 26.6, 40.6e6, false)/1e6)
	fmt.Printf("heat into the ground of April, example 13    %.2f MJ/m²\n", ventilation.FAO56SoilHeatMonth(14.1, 18.8)/1e6)
	fmt.Printf("the same with April's own mean               %.2f MJ/m²\n", ventilation.FAO56SoilHeatMonthSoFar(14.1, 16.1)/1e6)
	// Output:
	// wind at 2 m        u 4.87/ln(67.8 z - 5.42)  2.078 m/s
	// saturation         mean of the two ends      1997 Pa
	// vapour pressure                              1409 Pa
	// net radiation      Rns - Rnl                 13.28 MJ/m²
	// slope, psychrometric constant                122 Pa/K, 66.6 Pa/K
	// ETo                radiation + dryness       2.81 + 1.07 = 3.88 mm
	// an hour, example 19                          0.63 mm
	// vapour pressure from two bulbs, example 4    1912 Pa
	// sun from the temperatures, example 15        22.3 MJ/m²
	// heat into the ground of April, example 13    0.33 MJ/m²
	// the same with April's own mean               0.28 MJ/m²
}
