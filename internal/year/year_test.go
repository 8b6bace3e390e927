package year

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// here is an invented place in the middle of Europe.
var here = Place{Latitude: 50.6, Longitude: 14.1, Zone: 1}

func TestTheYearIsWhole(t *testing.T) {
	c := At(here)
	for _, col := range [][]float64{c.Outside, c.DewPoint, c.Wind, c.Sun, c.Cloud} {
		require.Len(t, col, Hours)
		for i, v := range col {
			require.False(t, math.IsNaN(v) || math.IsInf(v, 0), "hour %d", i)
		}
	}
	sum, cold, hot, energy := 0.0, math.Inf(1), math.Inf(-1), 0.0
	for i, v := range c.Outside {
		sum += v
		cold, hot = math.Min(cold, v), math.Max(hot, v)
		energy += c.Sun[i] * 3600
		require.Less(t, c.DewPoint[i], v)
		require.GreaterOrEqual(t, c.Cloud[i], 0.0)
		require.LessOrEqual(t, c.Cloud[i], 1.0)
		require.GreaterOrEqual(t, c.Wind[i], 0.3)
		if h := i % 24; h < 3 || h >= 21 {
			require.Zero(t, c.Sun[i], "hour %d", i)
		}
	}
	require.InDelta(t, 8.4, sum/Hours, 0.3)
	require.InDelta(t, -12, cold, 5)
	require.InDelta(t, 30, hot, 5)
	// A site at 50 degrees north gets 3.5 to 4.3 GJ/m² a year.
	require.Greater(t, energy, 3.3e9)
	require.Less(t, energy, 4.5e9)
}

func TestNoonIsHighestAndMonthsAddUp(t *testing.T) {
	june := 24 * 171
	for h := range 24 {
		require.LessOrEqual(t, here.clear(172, float64(june+h)+0.5), here.clear(172, float64(june+12)+0.5)*1.01)
	}
	counts := [12]int{}
	for i := range Hours {
		counts[Month(i)]++
	}
	require.Equal(t, 31*24, counts[0])
	require.Equal(t, 28*24, counts[1])
	require.Equal(t, 31*24, counts[11])
	require.Equal(t, 11, Month(9000))
}
