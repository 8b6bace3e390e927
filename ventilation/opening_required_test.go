package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

func TestOpeningForTemperature(t *testing.T) {
	c := climate(t, summerHouse(t))
	w := ventilation.Weather{Air: air(t, 18, 0.5), Sun: 600, Wind: 2, Sky: 6, Ground: 15}
	shut, err := c.Solve(w, ventilation.Setting{})
	require.NoError(t, err)
	last := 1.0
	for _, limit := range []float64{22, 24, 28, 33} {
		p, err := c.OpeningForTemperature(w, ventilation.Setting{}, limit)
		require.NoError(t, err)
		require.True(t, p.Met)
		require.Less(t, p.Opening, last, "a warmer limit needs less")
		last = p.Opening
		require.InDelta(t, limit, p.State.Temperature, 1e-6)
		require.LessOrEqual(t, p.State.Temperature, limit)
		x, err := c.Solve(w, ventilation.Setting{Opening: p.Opening})
		require.NoError(t, err)
		require.InDelta(t, p.State.Temperature, x.Temperature, 1e-8)
		x, err = c.Solve(w, ventilation.Setting{Opening: 0.99 * p.Opening})
		require.NoError(t, err)
		require.Greater(t, x.Temperature, limit, "the position is the least")
	}
	p, err := c.OpeningForTemperature(w, ventilation.Setting{}, shut.Temperature+0.1)
	require.NoError(t, err)
	require.True(t, p.Met)
	require.Zero(t, p.Opening, "cool enough when shut")
}

// A house that is too warm whatever opens has the best that can be had: wide
// open when what enters is cooler, shut when mist has made the inside cooler
// than the desert around it.
func TestTooWarmWhateverOpens(t *testing.T) {
	c := climate(t, summerHouse(t))
	w := ventilation.Weather{Air: air(t, 33, 0.4), Sun: 900, Wind: 1, Sky: 20, Ground: 18}
	p, err := c.OpeningForTemperature(w, ventilation.Setting{}, 30)
	require.NoError(t, err)
	require.False(t, p.Met)
	require.Equal(t, 1.0, p.Opening)
	require.Greater(t, p.State.Temperature, 33.0)

	w = ventilation.Weather{Air: air(t, 45, 0.1), Sun: 200, Wind: 1, Sky: 30, Ground: 18}
	s := ventilation.Setting{Mist: 0.03}
	p, err = c.OpeningForTemperature(w, s, 15)
	require.NoError(t, err)
	require.False(t, p.Met)
	require.Less(t, p.Opening, 1.0)
	for _, u := range []float64{0, 0.003, 0.02, 0.1, 0.3, 1} {
		s.Opening = u
		if x, err := c.Solve(w, s); err == nil {
			require.GreaterOrEqual(t, x.Temperature, p.State.Temperature-1e-6, "at %v", u)
		}
	}
}

func TestOpeningForDeficit(t *testing.T) {
	c := climate(t, summerHouse(t))
	w := ventilation.Weather{Air: air(t, 20, 0.5), Sun: 500, Wind: 2, Sky: 8, Ground: 15}
	deficit := func(u float64) float64 {
		x, err := c.Solve(w, ventilation.Setting{Opening: u})
		require.NoError(t, err)
		return x.Deficit
	}
	open, slit := deficit(1), deficit(0.005)
	require.Greater(t, open, slit, "opening dries this house")
	mid := 0.5 * (open + slit)
	p, err := c.OpeningForDeficit(w, ventilation.Setting{}, mid, mid+200)
	require.NoError(t, err)
	require.True(t, p.Met)
	require.GreaterOrEqual(t, p.State.Deficit, mid)
	require.InDelta(t, mid, p.State.Deficit, 1e-3)
	require.InDelta(t, p.State.Deficit, deficit(p.Opening), 1e-6)

	p, err = c.OpeningForDeficit(w, ventilation.Setting{}, 5000, 6000)
	require.NoError(t, err)
	require.False(t, p.Met)
	for _, u := range []float64{0.01, 0.1, 0.2, 0.5, 1} {
		require.LessOrEqual(t, deficit(u), p.State.Deficit+1e-6)
	}

	_, err = c.OpeningForDeficit(w, ventilation.Setting{}, 900, 500)
	require.ErrorIs(t, err, ventilation.ErrRange)
	require.ErrorContains(t, err, "low")
	_, err = c.OpeningForDeficit(w, ventilation.Setting{}, -1, 1e6)
	require.ErrorContains(t, err, "high")
	_, err = c.OpeningForTemperature(w, ventilation.Setting{Shade: 3}, 300)
	require.ErrorContains(t, err, "Shade")
	require.ErrorContains(t, err, "limit")
}
