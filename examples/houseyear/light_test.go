package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
)

// Of equal lamps the same share leaves as light, however many a target asks for.
func TestShareOfLightByTarget(t *testing.T) {
	var share [2]float64
	for i, known := range []string{"count", "target"} {
		p, err := plan.Demo().With(plan.Figure{Path: "lights.known_from", Value: known}, plan.Figure{Path: "lights.target_umol_m2_s", Value: 400.0})
		require.NoError(t, err)
		r, err := answers.Of(&p.Plan, false)
		require.NoError(t, err)
		l, err := newLamps(&p.Plan, r.Light)
		require.NoError(t, err)
		share[i] = l.share
	}
	require.InDelta(t, share[0], share[1], 1e-12)
	require.InDelta(t, 380/4.7/145, share[0], 1e-12)
}
