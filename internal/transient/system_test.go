package transient_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/transient"
)

// A step, its half twice and the course end in the same state, and the course
// returns to a level when First says.
func TestStepAndCourseAgree(t *testing.T) {
	s := transient.New([3]float64{4e5, 2.6e6, 3e7}, [3][3]float64{{2035, -780, -520}, {-780, 815, 0}, {-520, 0, 580}})
	require.True(t, s.Made())
	x := [3]float64{12, 9, 7}
	whole, half := s.Step(3600), s.Step(1800)
	once := transient.Times(&whole.Decay, x)
	twice := transient.Times(&half.Decay, transient.Times(&half.Decay, x))
	c := s.Course(x, 0, [3]float64{}, [3]float64{})
	for i, v := range c.At(3600) {
		require.InDelta(t, v, once[i], 1e-10)
		require.InDelta(t, v, twice[i], 1e-10)
	}
	e, err := c.First(0, 12, 5, 1e6)
	require.NoError(t, err)
	require.True(t, e.Reached)
	require.InDelta(t, 5, c.At(e.Time)[0], 1e-8)
	there, rate := c.AtWithRate(0, e.Time)
	for i, v := range c.At(e.Time) {
		require.InDelta(t, v, there[i], 1e-12)
	}
	require.InEpsilon(t, (c.At(e.Time + 1)[0]-c.At(e.Time - 1)[0])/2, rate, 1e-5)
	never, err := c.First(0, 12, -1, 1e6)
	require.NoError(t, err)
	require.False(t, never.Reached)
}
