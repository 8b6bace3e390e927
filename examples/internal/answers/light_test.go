package answers_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestLampsForATarget(t *testing.T) {
	for _, target := range []string{"40", "150", "600"} {
		r := of(t, `{"lights":{"known_from":"target","target_umol_m2_s":`+target+`}}`)
		wanted := map[string]float64{"40": 40, "150": 150, "600": 600}[target]
		require.GreaterOrEqual(t, r.Light.Mean, wanted*0.97, target)
		require.Less(t, r.Light.Mean, wanted*1.6, target) // some lamps more make whole rows
		require.InDelta(t, float64(r.Light.Lamps)*145, r.Light.Power, 1e-6)
	}
}

// TestTheLargestLayoutIsBounded maps as many lamps as a plan may have.
func TestTheLargestLayoutIsBounded(t *testing.T) {
	r := of(t, `{"house":{"length_m":400,"span_m":60,"eave_height_m":5,"ridge_height_m":18,"depth_m":0},"lights":{"rows_count":50,"per_row_count":500,"bed_length_m":380,"bed_width_m":50,"beam_deg":120,"height_above_trays_m":3}}`)
	require.Equal(t, 25000, r.Light.Lamps)
	require.LessOrEqual(t, r.Light.GridAlong*r.Light.GridAcross*r.Light.Lamps, 2_000_000)
	require.Positive(t, r.Light.Minimum)
}
