package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
)

// moved is the real year, colder or warmer and elsewhere.
func moved(t *testing.T, warmer, latitude float64) *weather.Series {
	s := part(t, "01-01", 365)
	for i := range s.Temperature {
		s.Temperature[i] += warmer
		s.DewPoint[i] += warmer
	}
	s.Site.Latitude = latitude
	return s
}

// The plan at a site that is far colder or warmer than its own has that site's design
// days: the coldest month's night, and a noon that no month outdoes.
func TestDesignDaysOfTheWeather(t *testing.T) {
	for _, warmer := range []float64{-25, 0, 16} {
		p, err := atSite(plan.Demo(), moved(t, warmer, 36))
		require.NoError(t, err)
		require.InDelta(t, min(-9.7+warmer, 14), p.Site.WinterNight.Temperature, 1.5)
		require.InDelta(t, 33.5+warmer, p.Site.SummerNoon.Temperature, 1.5)
		require.Equal(t, 1, p.Site.WinterNight.Month)
		require.Greater(t, p.Site.SummerNoon.RelativeHumidity, 0.3)
		require.Less(t, p.Site.SummerNoon.RelativeHumidity, 0.7)
		_, err = newHouse(&p.Plan, part(t, "01-01", 365))
		require.NoError(t, err)
	}
}

// South of the equator the design night falls in July.
func TestTheSouth(t *testing.T) {
	s := moved(t, 0, -36)
	half := len(s.Temperature) / 2
	for _, c := range []*[]float64{&s.Temperature, &s.DewPoint, &s.RelativeHumidity, &s.Global} {
		*c = append(append([]float64{}, (*c)[half:]...), (*c)[:half]...)
	}
	p, err := atSite(plan.Demo(), s)
	require.NoError(t, err)
	require.Equal(t, 7, p.Site.WinterNight.Month)
}

// Vents by hand are opened on mild or sunny days, and not in the cold.
func TestHandsOpenWhenItIsWarm(t *testing.T) {
	p := changed(t, `{"vent_control": {"by": "hand", "hand_from_h": 9, "hand_until_h": 17, "hand_fraction": 0.5}}`)
	require.Zero(t, solved(t, p, part(t, "02-04", 2)).Account.Whole.VentHours)
	w := solved(t, p, part(t, "07-08", 2)).Account.Whole
	require.Equal(t, 16, w.VentHours)
}

// Hours that are refused leave the tubes' record as long as the year.
func TestTubesThroughRefusedHours(t *testing.T) {
	s := part(t, "04-20", 2)
	for _, i := range []int{0, 7, 8, 30, 47} {
		s.RelativeHumidity[i] = 9
	}
	a := solved(t, changed(t, withTubes), s)
	require.Len(t, a.year.tubes.up, 48)
	require.Equal(t, 5, a.Account.Whole.Failed)
	require.Less(t, a.Account.Closure.Heat, asked)
	require.Contains(t, a.year.table().String(), "2001-04-20T07:00")
}
