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
