package sun

import (
	"math"
	"testing"
	"time"

	"cloche.example/internal/domain"
	"github.com/stretchr/testify/require"
)

// Each figure of the transcribed series moves a fingerprint of the tables as
// read.
func TestSunTablesAreTranscribed(t *testing.T) {
	print := func(powers [][]periodic) (s float64) {
		i := 1.0
		for _, p := range powers {
			for _, v := range p {
				s += i * (math.Log(v.a) + v.b + v.c/1000)
				i++
			}
		}
		return s
	}
	require.InDelta(t, 111045.97216530649, print(earthLongitude[:]), 1e-6)
	require.InDelta(t, 380.1450649320448, print(earthLatitude[:]), 1e-6)
	require.InDelta(t, 36335.3080898162, print(earthDistance[:]), 1e-6)
	s, y := 0.0, 0.0
	for i, n := range nutationTerms {
		s += float64(i+1) * (n.a + 3*n.b + 5*n.c + 7*n.d)
		for j, v := range n.y {
			y += float64((i+1)*(j+1)) * v
		}
	}
	require.InDelta(t, 341315.60000000003, s, 1e-6)
	require.Equal(t, 19882.0, y)
}

func TestDynamicalLead(t *testing.T) {
	for at, want := range map[string]float64{ // s; TAI - UTC + 32.184, and [Espenak06] before
		"1950-01-01T12:00:00Z": 29.07, "1960-01-01T00:00:00Z": 33.2, "1965-01-01T00:00:00Z": 35.8, "1971-12-31T00:00:00Z": 42.2,
		"1972-01-01T00:00:00Z": 42.184, "1999-01-01T00:00:00Z": 64.184, "2003-10-17T00:00:00Z": 64.184, "2016-12-31T23:59:59Z": 68.184,
		"2017-01-01T00:00:00Z": 69.184, "2090-01-01T00:00:00Z": 69.184,
	} {
		v, err := time.Parse(time.RFC3339, at)
		require.NoError(t, err)
		require.InDelta(t, want, DynamicalLead(v).Seconds(), 0.15, at)
	}
	// 1960.0 and 1964.0 by hand: 29.07 + 4.07 - 100/233 + 1000/2547 and
	// 45.45 - 11.737 - 121/260 + 1331/718.
	require.InDelta(t, 33.103434, DynamicalLead(time.Date(1960, 1, 1, 12, 0, 0, 0, time.UTC)).Seconds(), 1e-5)
	require.InDelta(t, 35.101375, DynamicalLead(time.Date(1964, 1, 1, 12, 0, 0, 0, time.UTC)).Seconds(), 1e-5)
	// The polynomials meet the table and each other.
	// The first entry of the table, ten seconds, and the last, 37, beside 32.184 s.
	require.InDelta(t, 42.184, DynamicalLead(time.Date(1972, 2, 1, 0, 0, 0, 0, time.UTC)).Seconds(), 1e-9)
	require.InDelta(t, 69.184, DynamicalLead(time.Date(2020, 1, 1, 0, 0, 0, 0, time.UTC)).Seconds(), 1e-9)
	last := DynamicalLead(time.Date(1971, 12, 31, 23, 0, 0, 0, time.UTC)).Seconds()
	require.InDelta(t, 42.184, last, 0.2)
	a := DynamicalLead(time.Date(1960, 12, 31, 0, 0, 0, 0, time.UTC)).Seconds()
	b := DynamicalLead(time.Date(1961, 1, 2, 0, 0, 0, 0, time.UTC)).Seconds()
	require.InDelta(t, a, b, 0.2)
}

func TestSunLaws(t *testing.T) {
	at := time.Date(2024, 3, 20, 9, 30, 0, 0, time.UTC)
	site, err := NewSite(50, 14, 0)
	require.NoError(t, err)
	sun := site.Sun(at)
	require.InDelta(t, 90, sun.Elevation+sun.Zenith(), 1e-12)
	require.Equal(t, sun, site.Sun(at.In(time.FixedZone("UTC+9", 9*3600))), "the zone makes no difference")
	require.Equal(t, 0.0, testing.AllocsPerRun(20, func() { site.Sun(at) }))
	// From the Earth's centre the spherical triangle closes; parallax is at
	// most 8.8 seconds of arc.
	s := math.Sin(sun.Declination*radian)*math.Sin(50*radian) + math.Cos(sun.Declination*radian)*math.Cos(50*radian)*math.Cos(sun.HourAngle*radian)
	require.InDelta(t, math.Asin(s)/radian, sun.Elevation, 8.9/3600)
	// A kilometre higher, the sun stands lower by its share of the parallax.
	high, err := NewSite(50, 14, 9000)
	require.NoError(t, err)
	drop := 8.794 / 3600 * math.Cos(sun.Elevation*radian) * 9000 / 6378140 / sun.Distance
	require.InDelta(t, drop, sun.Elevation-high.Sun(at).Elevation, 1e-3*drop)
	// The pole sees the declination.
	pole, err := NewSite(90, 0, 0)
	require.NoError(t, err)
	require.InDelta(t, sun.Declination, pole.Sun(at).Elevation, 8.9/3600)
	require.True(t, math.IsNaN(site.Sun(time.Date(1949, 12, 31, 0, 0, 0, 0, time.UTC)).Azimuth))
	require.True(t, math.IsNaN(site.Sun(time.Date(2101, 1, 1, 0, 0, 0, 0, time.UTC)).Distance))
	require.Equal(t, []float64{50, 14, 9000}, []float64{high.Latitude(), high.Longitude(), high.Altitude()})

	_, err = NewSite(91, 361, 1e5)
	for _, want := range []string{"latitude is 91", "longitude is 361", "altitude is 100000"} {
		require.ErrorContains(t, err, want)
	}
	for _, v := range []float64{Refraction(-2, 1e5, 10), Refraction(10, 1000, 10), Refraction(10, 1e5, 300)} {
		require.True(t, math.IsNaN(v))
	}
}

func TestSunDay(t *testing.T) {
	site, err := NewSite(50.6, 14.1, 0)
	require.NoError(t, err)
	zone := time.FixedZone("CET", 3600)
	for month := time.January; month <= time.December; month++ {
		date := time.Date(2025, month, 11, 0, 0, 0, 0, zone)
		day, err := site.SunDay(date, RiseElevation)
		require.NoError(t, err)
		require.InDelta(t, RiseElevation, site.Sun(day.Rise).Elevation, 1e-5)
		require.InDelta(t, RiseElevation, site.Sun(day.Set).Elevation, 1e-5)
		require.InDelta(t, 0, day.Noon.HourAngle, 1e-4)
		require.Equal(t, date.Day(), day.Transit.Day())
		require.InDelta(t, day.Set.Sub(day.Rise).Hours(), day.Length.Hours(), 1e-6)
		require.Same(t, zone, day.Rise.Location())
		twilight, err := site.SunDay(date, -6) // civil twilight
		require.NoError(t, err)
		require.Greater(t, twilight.Length, day.Length+50*time.Minute)
		require.Less(t, twilight.Length, day.Length+110*time.Minute)
	}
	arctic, err := NewSite(78, 15, 0)
	require.NoError(t, err)
	day, err := arctic.SunDay(time.Date(2025, 12, 21, 0, 0, 0, 0, zone), RiseElevation)
	require.NoError(t, err)
	require.Zero(t, day.Length)
	require.True(t, day.Rise.IsZero() && day.Set.IsZero())
	day, err = arctic.SunDay(time.Date(2025, 6, 21, 0, 0, 0, 0, zone), RiseElevation)
	require.NoError(t, err)
	require.Equal(t, 24*time.Hour, day.Length)

	_, err = site.SunDay(time.Date(1900, 1, 1, 0, 0, 0, 0, zone), RiseElevation)
	require.ErrorIs(t, err, domain.ErrRange)
	_, err = site.SunDay(time.Date(2000, 1, 1, 0, 0, 0, 0, zone), 30)
	require.ErrorContains(t, err, "elevation of rise and set")
}

// The two polynomials a century and a millennium away, where every coefficient
// counts; the sums were done in decimals.
func TestSunPolynomials(t *testing.T) {
	require.InDelta(t, 281.231060019, siderealTime(36525), 1e-7)
	// Fifty centuries off, where its cube counts, by decimal arithmetic apart.
	require.InDelta(t, 319.9299088427428, siderealTime(50*36525), 1e-6)
	require.InDelta(t, 242.9309928972571, siderealTime(-50*36525), 1e-6)
	require.InDelta(t, 360288.1950090482, meanLongitude(1), 1e-9)
}

// The other coefficients of the series: the obliquity 10,000 years away, where
// the sum of its terms stands, and a fingerprint of the five arguments as read.
func TestSunCoefficientsAreTranscribed(t *testing.T) {
	require.InDelta(t, 81401.348, meanObliquity(10)/arcsecond, 1e-6)
	sum := 0.0
	for i, a := range arguments {
		for j, v := range a {
			sum += float64(4*i+j+1) * math.Log(math.Abs(v))
		}
	}
	require.InDelta(t, 1170.104011732171, sum, 1e-6)
}

// 1.02 cot(h + 10.3/(h + 5.11)) minutes at 101 kPa and 10 °C, by hand, and the
// ends of its ranges.
func TestRefraction(t *testing.T) {
	require.InDelta(t, 0.483032123, Refraction(0, 101000, 10), 1e-8)
	require.InDelta(t, 0.090128013, Refraction(10, 101000, 10), 1e-8)
	require.InEpsilon(t, 2, Refraction(10, 1e5, 10)/Refraction(10, 5e4, 10), 1e-14)
	for _, p := range []float64{3e4, 1.1e5} {
		require.False(t, math.IsNaN(Refraction(10, p, 10)))
	}
	for _, p := range []float64{29999, 110001} {
		require.True(t, math.IsNaN(Refraction(10, p, 10)))
	}
	for _, v := range [][2]float64{{-1, 0}, {90, 0}, {10, -60}, {10, 60}} {
		require.False(t, math.IsNaN(Refraction(v[0], 1e5, v[1])))
	}
	for _, v := range [][2]float64{{-1.005, 0}, {90.5, 0}, {10, -60.3}, {10, 60.3}} {
		require.True(t, math.IsNaN(Refraction(v[0], 1e5, v[1])))
	}
	for elevation, fine := range map[float64]bool{-18: true, 18: true, -18.1: false, 18.1: false} {
		_, err := Site{}.SunDay(time.Date(2020, 1, 1, 0, 0, 0, 0, time.UTC), elevation)
		require.Equal(t, fine, err == nil, elevation)
	}
	require.InDelta(t, -(34.0+16.0)/60, RiseElevation, 5e-5, "34' of refraction and 16' of radius")
}

// At high latitudes every day of a year, against the sun sampled each 6 minutes
// within 12 hours of its transit.
func TestSunDayAtHighLatitudes(t *testing.T) {
	for _, latitude := range []float64{-69, 66.3, 71} {
		site, err := NewSite(latitude, 20, 0)
		require.NoError(t, err)
		kinds := map[string]int{}
		for d := 1; d <= 365; d += 11 {
			day, err := site.SunDay(time.Date(2025, 1, d, 0, 0, 0, 0, time.UTC), RiseElevation)
			require.NoError(t, err)
			up := 0
			for m := -717; m < 720; m += 6 {
				if site.Sun(day.Transit.Add(time.Duration(m)*time.Minute)).Elevation > RiseElevation {
					up += 6
				}
			}
			require.InDelta(t, up, day.Length.Minutes(), 8, "%g N day %d", latitude, d)
			for _, at := range []time.Time{day.Rise, day.Set} {
				if !at.IsZero() {
					require.InDelta(t, RiseElevation, site.Sun(at).Elevation, 1e-4)
				}
			}
			switch {
			case day.Length == 0:
				kinds["night"]++
				require.True(t, day.Rise.IsZero() && day.Set.IsZero())
			case day.Length == 24*time.Hour:
				kinds["day"]++
				require.True(t, day.Rise.IsZero() && day.Set.IsZero())
			default:
				kinds["both"]++
			}
		}
		require.NotZero(t, kinds["day"])
		require.NotZero(t, kinds["both"])
		if math.Abs(latitude) > 68 {
			require.NotZero(t, kinds["night"])
		}
	}
}
