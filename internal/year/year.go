// Package year makes the invented year of weather that the example programs
// and their tests share: 8,760 hourly means in local standard time at a place
// of the middle latitudes. Nothing in it was measured. It is a sum of plain waves, so that anyone
// can make it again, with the features that matter to a greenhouse: cold
// spells of some days, clear cold nights, overcast mild ones, a sun that
// follows the site's latitude.
//
// With d the day and h the hour counted from 0 at the middle of the first
// hour, and W1..W3 waves of 3.1, 5.7 and 11.3 days:
//
//	cloud    = 0.76 + 0.10 cos(2π(d-10)/365) + 0.30 W1 + 0.22 W2, cut to 0..1
//	outside  = 8.4 - 10.2 cos(2π(d-19)/365) + 2.6 W2' + 3.0 W3 + a cos(2π(h-15)/24)
//	           a = (1.6 + 3.2 (1 - cloud)) (0.75 + 0.25 sin of the season)
//	dew      = the least of outside - 0.3 and outside's daily mean - 1.5 - 3.5 (1 - cloud)
//	wind     = 2.6 + 0.8 W1' + 0.9 W3' + 0.7 cos(2π(h-14)/24), at least 0.3
//	sun      = clear (1 - 0.75 cloud^3.4), clear Haurwitz's for the height of FAO56's sun
//
// The sun is that of package sun; the cloud factor is Kasten and Czeplak's
// (Solar Energy 24, 1980), from memory.
package year

import (
	"math"

	"cloche.example/internal/sun"
)

// Hours is the length of the columns.
const Hours = 8760

// Note is to be printed by every program that shows results of this year.
const Note = "The year of weather is invented: a documented sum of waves, no measured data."

// Columns hold the year; value i is the mean of hour i.
type Columns struct {
	Outside  []float64 // °C, air
	DewPoint []float64 // °C
	Wind     []float64 // m/s
	Sun      []float64 // W/m², global on the horizontal
	Cloud    []float64 // fraction of the sky
}

// Place is where the sun is seen.
type Place struct {
	Latitude  float64 // degree north
	Longitude float64 // degree east
	Zone      float64 // h, local standard time ahead of UTC
}

// At returns the invented year under the sun of a place.
func At(p Place) Columns {
	c := Columns{make([]float64, Hours), make([]float64, Hours), make([]float64, Hours), make([]float64, Hours), make([]float64, Hours)}
	for i := range Hours {
		t := float64(i) + 0.5 // h
		d := t / 24           // days
		h := math.Mod(t, 24)
		season := turn((d - 19) / 365)
		cloud := 0.76 + 0.10*turn((d-10)/365) + 0.30*turn(d/3.1) + 0.22*turn(d/5.7+0.31)
		cloud = math.Max(0, math.Min(1, cloud))
		mean := 8.4 - 10.2*season + 2.6*turn(d/5.7+0.08) + 3.0*turn(d/11.3+0.55)
		swing := (1.6 + 3.2*(1-cloud)) * (0.75 - 0.25*season)
		c.Cloud[i] = cloud
		c.Outside[i] = mean + swing*turn((h-15)/24)
		c.DewPoint[i] = math.Min(c.Outside[i]-0.3, mean-1.5-3.5*(1-cloud))
		c.Wind[i] = math.Max(0.3, 2.6+0.8*turn(d/3.1+0.4)+0.9*turn(d/11.3+0.2)+0.7*turn((h-14)/24))
		c.Sun[i] = p.clear(int(d)+1, t) * (1 - 0.75*math.Pow(cloud, 3.4))
	}
	return c
}

// turn is the cosine of x turns.
func turn(x float64) float64 { return math.Cos(2 * math.Pi * x) }

// clear is the clear-sky irradiance, W/m², on day n of the year, averaged over
// the hour whose middle is t hours after the year's start by six instants.
func (p Place) clear(n int, t float64) float64 {
	const parts = 6
	sum := 0.0
	for k := range parts {
		clock := math.Mod(t-0.5+(float64(k)+0.5)/parts, 24)
		hour := sun.ClockHourAngle(clock, n, p.Longitude, p.Zone)
		sum += sun.Haurwitz(sun.DayZenith(p.Latitude, n, hour))
	}
	return sum / parts
}

// Month returns the month, 0 to 11, that hour i of a year of 365 days lies in.
func Month(i int) int {
	day := i / 24
	for m, n := range monthDays {
		if day < n {
			return m
		}
		day -= n
	}
	return 11
}

var monthDays = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
