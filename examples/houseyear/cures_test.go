package main

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
)

// What a change is said to save is the difference to the changed house solved
// alone over the same hours.
func TestChanges(t *testing.T) {
	s := part(t, "02-03", 2)
	var progress bytes.Buffer
	a, err := solve(context.Background(), plan.Demo(), s, options{}, &progress)
	require.NoError(t, err)
	h := a.year.house
	trials := h.trials()
	require.Len(t, a.Cures, len(trials)+2, "vents and the ridge besides")
	require.Equal(t, len(trials)+2, strings.Count(progress.String(), "done: "), "the house itself, and each change")
	solved := 0
	for i, trial := range trials {
		c := a.Cures[i]
		require.Equal(t, trial.Code, c.Code)
		if c.WhyNot != "" {
			require.Zero(t, c.Heat)
			continue
		}
		other, err := newHouse(&trial.Plan, s)
		require.NoError(t, err)
		y, err := other.solve(context.Background())
		require.NoError(t, err)
		require.InDelta(t, a.Account.Whole.Heater-y.account().Whole.Heater, c.Heat, 1e-9, c.Code)
		require.Nil(t, c.Years, "two days pay nothing back")
		solved++
	}
	require.GreaterOrEqual(t, solved, 4)
	saved := map[string]float64{}
	for _, c := range a.Cures {
		saved[c.Code] = c.Heat
	}
	require.Greater(t, saved["screen"], saved["edge_insulation"])
	require.Greater(t, saved["cooler_night"], 0.0)
	require.Greater(t, saved["ridge_return"], 0.0)
}

// A change that has no answer is told, and the rest stand.
func TestAChangeWithoutAnAnswer(t *testing.T) {
	a := solved(t, plan.Demo(), part(t, "02-03", 1))
	bad := answers.Change{Code: "bad", Name: "a house without a span", Plan: a.filled.Plan}
	bad.Plan.House.Span = 0
	r, err := a.year.house.years(context.Background(), a.filled, []answers.Change{bad}, new(bytes.Buffer))
	require.NoError(t, err)
	require.NotNil(t, r.own)
	cures := a.year.house.cures(a, r)
	require.Contains(t, cures[0].WhyNot, "it cannot be computed")
	require.NotEmpty(t, cures[1].Code)
}
