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

// Where evenness is asked that the most equal spacings do not give, other rows are
// tried, and the target is kept; evenness beyond reach leaves those rows.
func TestLampsForEvenness(t *testing.T) {
	base := `{"lights":{"known_from":"target","target_umol_m2_s":150,"height_above_trays_m":0.7,"evenness_fraction":`
	plain, even, never := of(t, base+`0.1}}`).Light, of(t, base+`0.3}}`).Light, of(t, base+`0.9}}`).Light
	require.Less(t, plain.Even, 0.3)
	require.GreaterOrEqual(t, even.Even, 0.3)
	require.GreaterOrEqual(t, even.Mean, 150.0)
	require.LessOrEqual(t, even.Lamps, plain.Lamps+plain.Lamps/2)
	require.Equal(t, 0.3, even.EvenWanted)
	require.Equal(t, plain.Lamps, never.Lamps)
	require.True(t, never.Targeted)
}
