package lighting

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// Values of the tests of the library pvlib-python, release 0.11: its function of
// the diffuse fraction, and the parts on a plane of 40 degree to the south in
// Tucson, from PV_LIB for Matlab.
func TestSunAndSkyTables(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "Erbs82/pvlib/85degree", In: []float64{4.05723511e-01}, Printed: "0.831407"},
		{Where: "Erbs82/pvlib/10degree", In: []float64{7.18132729e-01}, Printed: "0.217860"},
	}, func(in ...float64) float64 { return DiffuseFraction(in[0]) })
	evening := SunAndSky{Direct: 646.22886049, Diffuse: 62.03376265, Extraterrestrial: 1321.1655834833093, Elevation: 90 - 72.41687122, Azimuth: 287.04104128}
	on := evening.OnPlane(40, 180)
	check.Verify(t, []check.Got{
		{Row: check.Row{Where: "Hay80/pvlib/isotropic", Printed: "27.9837"}, Value: on.Isotropic},
		{Row: check.Row{Where: "Hay80/pvlib/circumsolar", Printed: "5.2071"}, Value: on.Circumsolar},
	})
	require.InDelta(t, on.Beam+on.Circumsolar+on.Isotropic+on.Reflected, on.Total(), 1e-12)
	require.True(t, math.IsNaN(evening.OnPlane(181, 0).Beam))
}

// Beam and sky of an hour make up its global radiation, and fall on a level
// plane as they were.
func TestSplitHours(t *testing.T) {
	site, err := NewSite(50.6, 14.1, 340)
	require.NoError(t, err)
	for hour := range 24 {
		h := site.SunHour(time.Date(2025, 3, 11, hour, 0, 0, 0, time.UTC))
		for _, global := range []float64{0, 20, 200, 600} {
			s := h.Split(global, 0.2)
			if h.Lit == 0 {
				require.Equal(t, global, s.Diffuse)
				continue
			}
			require.InDelta(t, global, s.Direct*h.Sine/h.Lit+s.Diffuse, 1e-9)
			require.LessOrEqual(t, s.Direct, h.Extraterrestrial)
			if h.Lit == 1 {
				require.InDelta(t, global, s.OnPlane(0, 0).Total(), 1e-9)
			}
			if k := global / (h.Extraterrestrial * h.Sine); h.Elevation >= 3 && k < 1 {
				require.InDelta(t, DiffuseFraction(k)*global, s.Diffuse, 1e-9)
			} else if h.Elevation < 3 {
				require.Zero(t, s.Direct)
			}
		}
		exact := site.Sun(time.Date(2025, 3, 11, hour, 30, 0, 0, time.UTC))
		if h.Lit == 1 {
			require.InDelta(t, exact.Elevation, h.Elevation, 0.4)
			require.InDelta(t, exact.Azimuth, h.Azimuth, 0.01)
		}
		require.InDelta(t, exact.Extraterrestrial(), h.Extraterrestrial, 0.1)
	}
	require.True(t, math.IsNaN(site.SunHour(time.Date(2025, 3, 11, 12, 0, 0, 0, time.UTC)).Split(-1, 0).Direct))
	require.True(t, math.IsNaN(site.SunHour(time.Date(1900, 3, 11, 12, 0, 0, 0, time.UTC)).Sine))
	at := time.Date(2025, 3, 11, 12, 0, 0, 0, time.UTC)
	require.Zero(t, testing.AllocsPerRun(20, func() { _ = site.SunHour(at).Split(300, 0.2).OnPlane(30, 180).Total() }))
}
