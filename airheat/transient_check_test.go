package airheat

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// TestCoolDownAgainstMatrixExponential compares with a solution in 40 digits.
func TestCoolDownAgainstMatrixExponential(t *testing.T) {
	file, err := os.Open("testdata/cooldown.csv")
	require.NoError(t, err)
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 6)
	for _, row := range rows[1:] {
		var v [15]float64
		for i := range v {
			v[i], err = strconv.ParseFloat(row[i], 64)
			require.NoError(t, err)
		}
		h := house(t, Nodes{AirCapacity: v[0], StructureCapacity: v[1], SoilCapacity: v[2], Cover: v[3], Leakage: v[4], AirStructure: v[5], AirSoil: v[6], StructureOutside: v[7], SoilDeep: v[8]})
		e, err := h.CoolDown(Drive{Outside: v[9], Ramp: v[10], Deep: v[11]}, v[12], v[13], v[14], 40*time.Hour)
		require.NoError(t, err)
		if row[15] == "never" {
			require.False(t, e.Reached)
			continue
		}
		want, err := strconv.ParseFloat(row[15], 64)
		require.NoError(t, err)
		require.True(t, e.Reached)
		require.InDelta(t, want, e.Time.Seconds(), 1e-5)
		require.InDelta(t, v[14], e.State.Air, 1e-8)
	}
}
