package lighting_test

import (
	"fmt"
	"time"

	"cloche.example/lighting"
)

// The sun over an invented site on a day of March: where it stands at noon, how
// long the day is, and what a clear sky gives.
func Example_sunOfADay() {
	site, err := lighting.NewSite(50.6, 14.1, 340)
	if err != nil {
		fmt.Println(err)
		return
	}
	zone := time.FixedZone("CET", 3600)
	day, err := site.SunDay(time.Date(2025, 3, 11, 0, 0, 0, 0, zone), lighting.RiseElevation)
	if err != nil {
		fmt.Println(err)
		return
	}
	sky, err := site.ClearSky(day.Transit, 3)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("sunrise %s, noon %s, sunset %s: %.2f h\n", day.Rise.Format("15:04"), day.Transit.Format("15:04"), day.Set.Format("15:04"), day.Length.Hours())
	fmt.Printf("noon: %.1f degree high, azimuth %.1f, %.0f W/m² outside the atmosphere\n", day.Noon.Elevation, day.Noon.Azimuth, day.Noon.Extraterrestrial())
	fmt.Printf("clear sky at noon: %.0f W/m², of which %.0f diffuse\n", sky.Global, sky.Diffuse)
	fmt.Printf("an hour later the sun has turned to %.1f degree\n", site.Sun(day.Transit.Add(time.Hour)).Azimuth)

	// Output:
	// sunrise 06:25, noon 12:13, sunset 18:02: 11.60 h
	// noon: 35.9 degree high, azimuth 180.0, 1379 W/m² outside the atmosphere
	// clear sky at noon: 580 W/m², of which 77 diffuse
	// an hour later the sun has turned to 198.2 degree
}

// What falls on a level square metre outside the atmosphere and below it, by
// the formulas of FAO-56: its examples 8 to 10 and 19, with the printed figures
// in brackets. The figures of example 19 are from memory.
func Example_radiationByFAO56() {
	ra := lighting.ExtraterrestrialDay(-22.9, 135)
	n := lighting.DayLength(-22.9, 135)
	fmt.Printf("eq. 21  Ra  = %.1f MJ/(m² d) (25.1)\n", ra/1e6)
	fmt.Printf("eq. 34  N   = %.1f h (10.9)\n", n)
	fmt.Printf("eq. 35  Rs  = %.1f MJ/(m² d) with 220 h of sun in May (14.5)\n", lighting.GlobalFromSunshine(ra, 220.0/31/n)/1e6)
	fmt.Printf("eq. 37  Rso = %.1f MJ/(m² d) (18.8)\n", lighting.ClearSkyDay(ra, 0)/1e6)
	hour := lighting.SunPeriod{Latitude: 16 + 13.0/60, Longitude: -16.25, Day: 274, Zone: -time.Hour, From: 14 * time.Hour, Until: 15 * time.Hour}
	part, err := hour.Extraterrestrial()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("eq. 28  Ra  = %.3f MJ/(m² h) from 14 to 15 h (3.543)\n", part/1e6)

	// Output:
	// eq. 21  Ra  = 25.1 MJ/(m² d) (25.1)
	// eq. 34  N   = 10.9 h (10.9)
	// eq. 35  Rs  = 14.5 MJ/(m² d) with 220 h of sun in May (14.5)
	// eq. 37  Rso = 18.8 MJ/(m² d) (18.8)
	// eq. 28  Ra  = 3.543 MJ/(m² h) from 14 to 15 h (3.543)
}
