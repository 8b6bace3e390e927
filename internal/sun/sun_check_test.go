package sun

import (
	"math"
	"testing"
	"time"

	"cloche.example/internal/check"
	"github.com/stretchr/testify/require"
)

// The worked example of [Reda04], table A5.1: 17 October 2003, 12:30:30 local
// standard time (UTC-7), 39.742476 N, 105.1786 W, 1830.14 m, 820 mbar, 11 °C,
// a lead of 67 s. The values are those of the tests of the library pvlib; the
// hour angle as printed stands in a copy of the table.
func TestSunOfRedaAndAndreas(t *testing.T) {
	site, err := NewSite(39.742476, -105.1786, 1830.14)
	require.NoError(t, err)
	at := time.Date(2003, 10, 17, 19, 30, 30, 0, time.UTC)
	sun := site.SunDeltaT(at, 67*time.Second)
	e := earthAt((julian(at) + 67.0/86400) / 36525)
	row := func(where, printed string, got float64) check.Got {
		return check.Got{Row: check.Row{Where: "Reda04.TableA5.1/" + where, Printed: printed}, Value: got}
	}
	check.Verify(t, []check.Got{
		row("longitude L", "24.0182616917", circle(e.longitude/radian)),
		row("latitude B", "-0.0001011219", e.latitude/radian),
		row("distance R", "0.9965422974", sun.Distance),
		row("nutation", "-0.00399840", e.nutation/radian),
		row("obliquity", "23.440465", e.obliquity/radian),
		row("right ascension", "202.22741", sun.RightAscension),
		row("declination", "-9.31434", sun.Declination),
		{Row: check.Row{Where: "Reda04.TableA5.1/hour angle", Printed: "11.10629", Right: "11.10627",
			Suspect: "the table's own H = 11.10590 less its shift in right ascension, -0.000369"}, Value: sun.HourAngle},
		row("azimuth", "194.34024", sun.Azimuth),
		row("airless elevation", "39.872046", sun.Elevation),
		row("zenith", "50.11162", sun.Zenith()-Refraction(sun.Elevation, 82000, 11)),
	})
}

// Golden, Colorado: the figures of NREL's web calculator for 2 January 2015,
// seconds of the day in local standard time, as in the tests of pvlib.
func TestSunriseOfGolden(t *testing.T) {
	site, err := NewSite(39.742476, -105.1786, 0)
	require.NoError(t, err)
	mst := time.FixedZone("MST", -7*3600)
	midnight := time.Date(2015, 1, 2, 0, 0, 0, 0, mst)
	day, err := site.SunDay(midnight, RiseElevation)
	require.NoError(t, err)
	const why = "the calculator interpolates between three days"
	row := func(where, printed string, got time.Time) check.Got {
		return check.Got{Row: check.Row{Where: "Reda04.calculator/" + where, Printed: printed, Tol: 1.5, Why: why}, Value: got.Sub(midnight).Seconds()}
	}
	check.Verify(t, []check.Got{row("rise", "26515", day.Rise), row("set", "60463", day.Set), row("transit", "43485", day.Transit)})
}

// [Meeus98] example 25.b (13 October 1992, 0h TD), by the whole VSOP87 theory,
// and examples 22.a and 12.a (10 April 1987), from memory.
func TestSunOfMeeus(t *testing.T) {
	oct := time.Date(1992, 10, 13, 0, 0, 0, 0, time.UTC)
	sun := Site{}.SunDeltaT(oct, 0)
	apr := julian(time.Date(1987, 4, 10, 0, 0, 0, 0, time.UTC))
	psi, eps := nutation(apr / 36525)
	const why = "the shortened series"
	check.Verify(t, []check.Got{
		{Row: check.Row{Where: "Meeus98.25b/right ascension", Printed: "198.378121", Tol: 1e-4, Why: why}, Value: sun.RightAscension},
		{Row: check.Row{Where: "Meeus98.25b/declination", Printed: "-7.783817", Tol: 1e-4, Why: why}, Value: sun.Declination},
		{Row: check.Row{Where: "Meeus98.25b/distance", Printed: "0.99760775", Tol: 5e-8, Why: why}, Value: sun.Distance},
		{Row: check.Row{Where: "Meeus98.28a/equation of time, degree", Printed: "3.427351", Tol: 4e-5, Why: "the book shifts the longitude to the FK5"}, Value: sun.EquationOfTime / 240},
		{Row: check.Row{Where: "Meeus98.22a/nutation", Printed: "-3.788"}, Value: psi / arcsecond},
		{Row: check.Row{Where: "Meeus98.22a/obliquity", Printed: "9.443"}, Value: eps / arcsecond},
		{Row: check.Row{Where: "Meeus98.22a/mean obliquity", Printed: "84387.407"}, Value: meanObliquity(apr/365250) / arcsecond},
		{Row: check.Row{Where: "Meeus98.12a/sidereal time", Printed: "47446.3668"}, Value: siderealTime(apr) * 240},
	})
}

// Sun against ERFA, which shares neither the theory of the Earth's motion nor
// the nutation: 60 instants and places in testdata/sun_erfa.csv.
func TestSunAgainstERFA(t *testing.T) {
	rows := check.CSV(t, "sun_erfa.csv")
	require.Len(t, rows, 60)
	worst := 0.0
	for _, row := range rows {
		at, err := time.Parse(time.RFC3339, row[0])
		require.NoError(t, err)
		v := check.Floats(t, row[1:])
		site, err := NewSite(v[0], v[1], v[2])
		require.NoError(t, err)
		sun := site.Sun(at)
		across := math.Remainder(sun.Azimuth-v[4], 360) * math.Cos(v[3]*radian)
		worst = max(worst, math.Abs(sun.Elevation-v[3]), math.Abs(across))
	}
	require.Less(t, worst, 0.0003, "degree")
	t.Logf("largest difference %.5f degree", worst)
}

// The extremes of the equation of time in min, as almanacs print them, from
// memory.
func TestEquationOfTime(t *testing.T) {
	row := func(month time.Month, day int, printed string) check.Got {
		sun := Site{}.Sun(time.Date(2003, month, day, 12, 0, 0, 0, time.UTC))
		return check.Got{Row: check.Row{Where: "Meeus98.28/" + month.String(), Printed: printed}, Value: sun.EquationOfTime / 60}
	}
	check.Verify(t, []check.Got{row(time.February, 11, "-14.2"), row(time.May, 14, "3.7"), row(time.July, 26, "-6.5"), row(time.November, 3, "16.4")})
}
