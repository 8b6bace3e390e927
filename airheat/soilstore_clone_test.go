package airheat

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// A clone starts where its store stands, and neither moves the other.
func TestCloneGoesItsOwnWay(t *testing.T) {
	s, err := NewSoilStore(demoSoil(), 12)
	require.NoError(t, err)
	air := DryAir(25, 101325)
	_, err = s.Step(0.3, 25, air, time.Hour, false)
	require.NoError(t, err)
	c := s.Clone()
	require.Equal(t, s.Stored(), c.Stored())
	before := s.Stored()
	a, err := c.Step(0.3, 25, air, time.Hour, false)
	require.NoError(t, err)
	require.Equal(t, before, s.Stored())
	b, err := s.Step(0.3, 25, air, time.Hour, false)
	require.NoError(t, err)
	require.Equal(t, a, b)
}

// What rises through the floor follows the air above it: none to air as warm as the
// soil, and as much down as up for air as far above it as below.
func TestAboveTheStore(t *testing.T) {
	plan := DefaultSoilStore()
	plan.Tubes, plan.Diameter, plan.Length, plan.Spacing = 4, 0.1, 10, 0.4
	up := func(above float64) float64 {
		s, err := NewSoilStore(plan, 20)
		require.NoError(t, err)
		require.NoError(t, s.SetAbove(above))
		r, err := s.Step(0, 20, DryAir(20, 101325), time.Hour, false)
		require.NoError(t, err)
		require.InDelta(t, -r.Up*3600, s.Stored(), 1e-6)
		return r.Up
	}
	require.InDelta(t, 0, up(20), 1e-9)
	require.Positive(t, up(10))
	require.InDelta(t, up(10), -up(30), 1e-9)
	s, err := NewSoilStore(plan, 20)
	require.NoError(t, err)
	require.ErrorIs(t, s.SetAbove(500), ErrRange)
	require.ErrorIs(t, new(Store).SetAbove(5), ErrRange)
}
