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
	inf := math.Inf(1)
	for _, c := range []struct {
		r    domain.Range
		v    float64
		want string
	}{
		{domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "definition"}, 60, "x is 60, allowed 0 to 1 (fraction); definition"},
		{domain.Range{Min: 0.5, Max: 60, Unit: "m"}, 75, "x is 75, allowed 0.5 to 60 m"},
		{domain.Range{Min: 0, Max: 1, Unit: "fraction"}, 1.0000001, "x is 1.0000001, allowed 0 to 1 (fraction)"},
		{domain.Range{Min: 0, Max: 1}, math.Nextafter(1, 2), "x is 1.0000000000000002, allowed 0 to 1"},
		{domain.Range{Min: 0, Max: inf, Unit: "m"}, -1, "x is -1, allowed at least 0 m"},
		{domain.Range{Min: domain.MoreThan(0), Max: inf, Unit: "m"}, 0, "x is 0, allowed more than 0 m"},
		{domain.Range{Min: domain.MoreThan(1.2), Max: 5, Unit: "m"}, 1.2, "x is 1.2, allowed more than 1.2, at most 5 m"},
		{domain.Range{Min: 2, Max: domain.LessThan(90), Unit: "degree"}, 90, "x is 90, allowed from 2 to less than 90 degree"},
		{domain.Range{Min: domain.MoreThan(0), Max: domain.LessThan(1), Unit: "fraction"}, 1, "x is 1, allowed more than 0 and less than 1 (fraction)"},
		{domain.Range{Min: -inf, Max: 3, Unit: "K"}, 4, "x is 4, allowed at most 3 K"},
		{domain.Range{Min: -inf, Max: domain.LessThan(3), Unit: "K"}, 4, "x is 4, allowed less than 3 K"},
		{domain.Range{Min: -inf, Max: inf, Unit: "K"}, inf, "x is +Inf, allowed any finite number K"},
		{domain.Range{Min: 1, Max: 1, Unit: "bays"}, 2, "x is 2, allowed only 1 bays"},
		{domain.Range{Min: 0.1 + 0.2, Max: 1, Unit: "m"}, 0, "x is 0, allowed 0.3 to 1 m"},
	} {
		require.EqualError(t, c.r.Check("x", c.v), c.want)
	}
}

func TestWithinNamesEveryJoinedError(t *testing.T) {
	require.NoError(t, domain.Within("facet 3", nil))
	a := domain.Range{Min: 0, Max: 1}.Check("Area", 2)
	err := domain.Within("Facets[3]", errors.Join(a, domain.ErrNoSolution, errors.Join(a)))
	require.EqualError(t, err, "Facets[3].Area is 2, allowed 0 to 1\nFacets[3]: no solution\nFacets[3].Area is 2, allowed 0 to 1")
	require.ErrorIs(t, err, domain.ErrNoSolution)
	require.ErrorIs(t, err, domain.ErrRange)
	require.EqualError(t, a, "Area is 2, allowed 0 to 1", "the error given stays as it was")
}

func TestErrorsSurviveJoiningAndWrapping(t *testing.T) {
	a := domain.Range{Min: 0, Max: 1}.Check("a", 2)
	err := fmt.Errorf("plan: %w", errors.Join(a, domain.ErrNoSolution))
	require.ErrorIs(t, err, domain.ErrRange)
	require.ErrorIs(t, err, domain.ErrNoSolution)
	require.NotErrorIs(t, err, domain.ErrNotConverged)
}
