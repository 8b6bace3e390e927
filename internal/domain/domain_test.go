package domain_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/domain"
)

func TestCheckRefusesWhatIsOutside(t *testing.T) {
	r := domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "definition"}
	for _, v := range []float64{0, 0.5, 1} {
		require.NoError(t, r.Check("relative humidity", v))
	}
	for _, v := range []float64{-1e-9, 1.01, 60, math.NaN(), math.Inf(1), math.Inf(-1)} {
		err := r.Check("relative humidity", v)
		require.ErrorIs(t, err, domain.ErrRange, "%v", v)
		var re *domain.RangeError
		require.ErrorAs(t, err, &re)
		require.Equal(t, "relative humidity", re.Field)
	}
}

func TestAnOpenEndStillRefusesInfinity(t *testing.T) {
	r := domain.Range{Min: 0, Max: math.Inf(1), Unit: "m"}
	require.NoError(t, r.Check("length", 1e300))
	require.ErrorIs(t, r.Check("length", math.Inf(1)), domain.ErrRange)
}

func TestMessageNamesFieldValueRangeAndUnit(t *testing.T) {
	err := domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "definition"}.Check("relative humidity", 60)
	require.EqualError(t, err, "relative humidity is 60 fraction, allowed 0 to 1 fraction (definition)")
}

func TestErrorsSurviveJoiningAndWrapping(t *testing.T) {
	a := domain.Range{Min: 0, Max: 1}.Check("a", 2)
	err := fmt.Errorf("plan: %w", errors.Join(a, domain.ErrNoSolution))
	require.ErrorIs(t, err, domain.ErrRange)
	require.ErrorIs(t, err, domain.ErrNoSolution)
	require.NotErrorIs(t, err, domain.ErrNotConverged)
}
