package check

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestTableNoticesASlipInAnyCell(t *testing.T) {
	record := [][]string{
		{"name", "U, W/(m² K)", "thickness, m", "source"},
		{"sheet", "3.52=0.62*5.678263", "0.004=4*1e-3", "data sheet"},
		{"film", "", "0.00015", "from memory"},
	}
	table := func() []Line {
		return []Line{{"sheet", []float64{3.52, 0.004}}, {"film", []float64{math.NaN(), 0.15e-3}}}
	}
	require.Empty(t, compare(record, table()))
	for i, l := range table() {
		for j, v := range l.Cells {
			slip := table()
			slip[i].Cells[j] = v * 1.01
			if math.IsNaN(v) {
				slip[i].Cells[j] = 1
			}
			require.Len(t, compare(record, slip), 1)
		}
	}
	faults := errors.Join(compare(record, table()[:1])...)
	require.ErrorContains(t, faults, "film: recorded, and not in the table")
	require.ErrorContains(t, errors.Join(compare(record[:2], table())...), "film: 2 cells, which the record does not have")
	record[1][1] = "3.52=0.61*5.678263"
	require.ErrorContains(t, errors.Join(compare(record, table())...), "which gives 3.46")
	record[1][1], record[1][3] = "3.52", " "
	require.ErrorContains(t, errors.Join(compare(record, table())...), "no source")
	require.NotEmpty(t, compare(nil, table()))
}
