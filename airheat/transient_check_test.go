package airheat

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/internal/check"
)

// TestCoolDownAgainstMatrixExponential compares with a solution in 40 digits.
func TestCoolDownAgainstMatrixExponential(t *testing.T) {
	rows := check.CSV(t, "cooldown.csv")
	require.Greater(t, len(rows), 6)
	for _, row := range rows[1:] {
		v := check.Floats(t, row)
		h := house(t, envelope.Nodes{AirCapacity: v[0], StructureCapacity: v[1], SoilCapacity: v[2], Cover: v[3], Leakage: v[4], AirStructure: v[5], AirSoil: v[6], StructureOutside: v[7], SoilDeep: v[8]})
		e, err := h.CoolDown(h, envelope.Drive{Outside: v[9], Ramp: v[10], Deep: v[11]}, HeatFailure{v[12], v[13], v[14], 40 * time.Hour})
		require.NoError(t, err)
		if math.IsNaN(v[15]) {
			require.False(t, e.Reached)
			continue
		}
		require.True(t, e.Reached)
		require.InDelta(t, v[15], e.Time.Seconds(), 1e-5)
		require.InDelta(t, v[14], e.State.Air, 1e-8)
	}
}

// TestTransientsAgainstEigenvectorsInManyDigits: random, extreme and degenerate
// houses, warmed and cooled.
func TestTransientsAgainstEigenvectorsInManyDigits(t *testing.T) {
	rows := check.CSV(t, "transient.csv")
	require.Len(t, rows, 97)
	for _, row := range rows[1:] {
		v := check.Floats(t, row[1:])
		var err error
		h := house(t, envelope.Nodes{AirCapacity: v[0], StructureCapacity: v[1], SoilCapacity: v[2], Cover: v[3], Leakage: v[4], AirStructure: v[5], AirSoil: v[6], StructureOutside: v[7], SoilDeep: v[8]})
		d := envelope.Drive{Outside: v[9], Ramp: v[10], Deep: v[11]}
		limit := time.Duration(v[16] * 1e9)
		var e Event
		start := h.Steady(d)
		if row[0] == "warm" {
			d.Heat = v[12]
			e, err = h.WarmUp(d, v[15], limit)
		} else {
			e, err = h.CoolDown(h, d, HeatFailure{v[13], v[14], v[15], limit})
			d.Heat, start = h.HoldingHeat(d, v[13])
			d.Heat *= v[14]
		}
		require.NoError(t, err)
		require.InDelta(t, v[18], h.After(start, d, limit).Air, 1e-8, "%v", row)
		require.Equal(t, !math.IsNaN(v[17]), e.Reached, "%v", row)
		if e.Reached {
			require.InDelta(t, v[17], e.Time.Seconds(), 1e-5, "%v", row)
		}
	}
}
