package sun

import (
	"math"
	"testing"

	"cloche.example/internal/check"
	"github.com/stretchr/testify/require"
)

// TestErbs holds values of two kinds: pvlib-python's own test of its function
// (clearness and diffuse over global as printed there, release 0.11), and the
// printed polynomial worked out in exact fractions with Python, which pins the
// coefficients but is no second source for them.
func TestErbs(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "pvlib.test_erbs/85degree", In: []float64{4.05723511e-01}, Printed: "0.831407"},
		{Where: "pvlib.test_erbs/10degree.winter", In: []float64{7.18132729e-01}, Printed: "0.217860"},
		{Where: "pvlib.test_erbs/10degree.summer", In: []float64{7.68214312e-01}, Printed: "0.170790"},
		{Where: "by hand/dull", In: []float64{0.1}, Printed: "0.9910000"},
		{Where: "by hand/below.0.22", In: []float64{0.219}, Printed: "0.9802900"},
		{Where: "by hand/above.0.22", In: []float64{0.221}, Printed: "0.9798045"},
		{Where: "by hand/0.3", In: []float64{0.3}, Printed: "0.9485956"},
		{Where: "by hand/0.5", In: []float64{0.5}, Printed: "0.6591500"},
		{Where: "by hand/0.7", In: []float64{0.7}, Printed: "0.2439796"},
		{Where: "by hand/below.0.80", In: []float64{0.799}, Printed: "0.1651018"},
		{Where: "by hand/above.0.80", In: []float64{0.801}, Printed: "0.1650000"},
	}, func(in ...float64) float64 { return Erbs(in[0]) })
}

func TestErbsFallsWithoutAStep(t *testing.T) {
	last := Erbs(0)
	require.Equal(t, 1.0, last)
	for k := 0.0; k <= 2; k += 1e-4 {
		f := Erbs(k)
		require.InDelta(t, last, f, 4e-4, "clearness %g", k)
		require.Greater(t, f, 0.1)
		last = f
	}
	for _, k := range []float64{-1e-9, 2.1, none} {
		require.True(t, Erbs(k) != Erbs(k), "clearness %g", k)
	}
}

// TestSplit holds the lowest sun whose beam is told from the sky, and that beam
// and sky make up the hour.
func TestSplit(t *testing.T) {
	at := func(elevation float64) HourSun {
		return HourSun{Lit: 1, Sine: math.Sin(elevation * radian), Elevation: elevation, Extraterrestrial: 1361}
	}
	low, high := at(2.98), at(3.02)
	direct, diffuse := low.Split(40)
	require.Zero(t, direct)
	require.Equal(t, 40.0, diffuse)
	direct, diffuse = high.Split(40)
	require.Positive(t, direct)
	require.InDelta(t, 40, direct*high.Sine+diffuse, 1e-12)
	noon := at(60)
	direct, diffuse = noon.Split(0.5 * 1361 * noon.Sine)
	require.InEpsilon(t, 0.65915*0.5*1361*noon.Sine, diffuse, 1e-9) // the fraction of clearness 0.5
	require.InEpsilon(t, 0.34085*0.5*1361, direct, 1e-9)
	direct, diffuse = high.Split(1000)
	require.Equal(t, 1361.0, direct, "no brighter than above the atmosphere")
	require.InDelta(t, 1000-1361*high.Sine, diffuse, 1e-9)
	direct, diffuse = HourSun{Extraterrestrial: 1361}.Split(5)
	require.Equal(t, []float64{0, 5}, []float64{direct, diffuse})
	direct, _ = noon.Split(none)
	require.True(t, math.IsNaN(direct))
}
