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
// the formulas of FAO56: its examples 8 to 10 and 19, with the printed figures
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

// Three hours of an invented day: the global radiation of a pyranometer in beam
// and diffuse light, and both on a slope of 27 degree to the south.
func ExampleSunHour_Split() {
	site, err := lighting.NewSite(50.6, 14.1, 340)
	if err != nil {
		fmt.Println(err)
		return
	}
	zone := time.FixedZone("CET", 3600)
	// Below 3 degree all is taken as diffuse.
	for _, of := range []struct {
		hour   int
		global float64 // W/m² on level ground
	}{{6, 12}, {9, 310}, {12, 190}} {
		sun := site.SunHour(time.Date(2025, 3, 11, of.hour, 0, 0, 0, zone))
		clearness := of.global / (sun.Extraterrestrial * sun.Sine)
		light := sun.Split(of.global, 0.2)
		slope := light.OnPlane(27, 180)
		fmt.Printf("%2d h  sun %4.1f degree, clearness %.2f, diffuse %.2f: beam %3.0f, sky %3.0f W/m²; slope %3.0f + %2.0f + %3.0f + %.0f = %3.0f\n",
			of.hour, sun.Elevation, clearness, lighting.DiffuseFraction(clearness), light.Direct, light.Diffuse,
			slope.Beam, slope.Circumsolar, slope.Isotropic, slope.Reflected, slope.Total())
	}

	// Output:
	//  6 h  sun  2.3 degree, clearness 0.46, diffuse 0.74: beam   0, sky  12 W/m²; slope   0 +  0 +  11 + 0 =  11
	//  9 h  sun 25.4 degree, clearness 0.52, diffuse 0.61: beam 282, sky 189 W/m²; slope 187 + 60 + 142 + 3 = 393
	// 12 h  sun 35.6 degree, clearness 0.24, diffuse 0.98: beam   7, sky 186 W/m²; slope   7 +  2 + 175 + 2 = 185
}
