package sun

import (
	"math"
	"testing"
	"time"

	"cloche.example/internal/check"
	"github.com/stretchr/testify/require"
)

// The sun over eight millennia against the library ephem, in degree: 0.0003
// from the year 0 to 3000, 0.003 at the ends, where the two obliquities are
// known to part (the cubic of 1980 is off by 10" in the year -2000).
func TestSunOverEightMillennia(t *testing.T) {
	rows := check.Numbers(t, "sun_epochs.csv")
	require.Len(t, rows, 80)
	near, far := 0.0, 0.0
	for _, r := range rows {
		site, err := NewSite(r[2], r[3], r[4])
		require.NoError(t, err)
		at := time.Unix(int64(r[0]), 0)
		require.InDelta(t, r[1], at.UTC().Year(), 1)
		sun := site.SunDeltaT(at, time.Duration(r[5]*float64(time.Second)))
		across := math.Remainder(sun.Azimuth-r[7], 360) * math.Cos(r[6]*radian)
		off := math.Hypot(sun.Elevation-r[6], across)
		far = max(far, off)
		if r[1] >= 0 && r[1] < 3000 {
			near = max(near, off)
		}
		require.InDelta(t, r[8], sun.Declination, 0.003)
		require.InDelta(t, 0, math.Remainder(sun.RightAscension-r[9], 360), 0.001)
	}
	require.Less(t, near, 0.0003)
	require.Less(t, far, 0.003)
	t.Logf("largest difference %.5f degree, %.5f from 0 to 3000", far, near)
	for _, year := range []int{-2001, 6001} {
		require.True(t, math.IsNaN(Site{}.SunDeltaT(time.Date(year, 1, 1, 12, 0, 0, 0, time.UTC), 0).Elevation), year)
	}
	for _, year := range []int{-2000, 6000} {
		require.False(t, math.IsNaN(Site{}.SunDeltaT(time.Date(year, 1, 1, 12, 0, 0, 0, time.UTC), 0).Elevation), year)
	}
}

// Rise, transit and set at 60 days and places up to 72 degree north and south
// against the library ephem.
func TestSunriseAgainstEphem(t *testing.T) {
	rows := check.Numbers(t, "sun_rise.csv")
	require.Len(t, rows, 60)
	worst := [3]float64{}
	for _, r := range rows {
		site, err := NewSite(r[4], r[5], 0)
		require.NoError(t, err)
		midnight := time.Date(int(r[0]), time.Month(r[1]), int(r[2]), 0, 0, 0, 0, time.FixedZone("", int(r[3])*3600))
		day, err := site.SunDay(midnight, RiseElevation)
		require.NoError(t, err)
		for i, at := range []time.Time{day.Rise, day.Transit, day.Set} {
			worst[i] = max(worst[i], math.Abs(at.Sub(midnight).Seconds()-r[6+i]))
		}
	}
	require.Less(t, max(worst[0], worst[1], worst[2]), 0.2)
	t.Logf("largest differences %.2f s", worst)
}

// The nutation against the whole theory that its table is cut from, over eight
// millennia: the 43 terms left out come to less than 0.002".
func TestNutationAgainstTheWholeTheory(t *testing.T) {
	rows := check.Numbers(t, "nutation_1980.csv")
	require.Len(t, rows, 60)
	longitude, obliquity := 0.0, 0.0
	for _, r := range rows {
		psi, eps := nutation(r[0])
		longitude = max(longitude, math.Abs(psi/arcsecond-r[1]))
		obliquity = max(obliquity, math.Abs(eps/arcsecond-r[2]))
	}
	t.Logf(`largest differences %.4f" and %.4f"`, longitude, obliquity)
	require.Less(t, longitude, 0.002)
	require.Less(t, obliquity, 0.0015)
}
