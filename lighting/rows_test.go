package lighting

import (
	"strconv"
	"testing"

	"cloche.example/internal/check"
	"github.com/stretchr/testify/require"
)

type gotRow struct {
	check.Row
	got float64
}

func verify(t *testing.T, rows []gotRow) {
	t.Helper()
	for _, r := range rows {
		t.Run(r.Where, func(t *testing.T) { require.NoError(t, r.Verify(r.got)) })
	}
}

func readTable(t testing.TB, name string) [][]float64 {
	t.Helper()
	text := check.CSV(t, name)
	rows := make([][]float64, len(text))
	for i, line := range text {
		rows[i] = make([]float64, len(line))
		for j, s := range line {
			v, err := strconv.ParseFloat(s, 64)
			require.NoError(t, err, "%s row %d", name, i+1)
			rows[i][j] = v
		}
	}
	return rows
}

// band returns the band of that name.
func band(name string) Band {
	ends := map[string][2]float64{"ultraviolet": {100, 400}, "extended 400-750 nm": {400, 750}, "blue": {400, 500}, "green": {500, 600}, "red": {600, 700}}
	return Band{name, ends[name][0], ends[name][1]}
}
