package sun

import (
	"errors"
	"math"
	"testing"
	"time"

	"cloche.example/internal/domain"
)

// FuzzSun asks for the sun at any place and time: an error, or angles in their
// ranges, and a day whose rise and set, where there are any, lie about its
// transit.
func FuzzSun(f *testing.F) {
	f.Add(50.6, 14.1, 340.0, int64(1735689600))
	f.Add(90.0, 180.0, 9000.0, int64(-631152000))
	f.Add(-66.6, -180.0, -500.0, int64(4102444799))
	f.Add(-23.0, 179.5, 9000.0, int64(-631151876))
	f.Add(-23.0, 179.5, 4000.0, int64(-631151876))
	f.Fuzz(func(t *testing.T, latitude, longitude, altitude float64, seconds int64) {
		site, err := NewSite(latitude, longitude, altitude)
		if err != nil {
			if !errors.Is(err, domain.ErrRange) {
				t.Fatal(err)
			}
			return
		}
		at := time.Unix(seconds%(1<<33), 0).UTC()
		sun := site.Sun(at)
		if !yearRange.Contains(float64(at.Year())) {
			if !math.IsNaN(sun.Elevation) {
				t.Fatalf("%v outside the years", at)
			}
			return
		}
		if !(math.Abs(sun.Elevation) <= 90 && sun.Azimuth >= 0 && sun.Azimuth < 360 && math.Abs(sun.Declination) < 23.5 && math.Abs(sun.HourAngle) <= 180 && sun.Distance > 0.98 && sun.Distance < 1.02) {
			t.Fatalf("%v: %+v", at, sun)
		}
		day, err := site.SunDay(at, RiseElevation)
		if err != nil {
			if !errors.Is(err, domain.ErrRange) {
				t.Fatal(err)
			}
			return
		}
		if day.Length < 0 || day.Length > 24*time.Hour || !day.Rise.IsZero() && day.Rise.After(day.Transit) || !day.Set.IsZero() && day.Set.Before(day.Transit) {
			t.Fatalf("%v: %+v", at, day)
		}
		sky, err := site.ClearSky(at, 1)
		if high := !clearAltitudeRange.Contains(altitude); high || err != nil {
			if !high || !errors.Is(err, domain.ErrRange) {
				t.Fatalf("%v at %v m: %v", at, altitude, err)
			}
			return
		}
		if !(sky.Global >= 0 && sky.Direct >= 0 && sky.Diffuse >= -1e-9 && sky.Global <= sun.Extraterrestrial()) {
			t.Fatalf("%v: %+v, %v", at, sky, err)
		}
	})
}
