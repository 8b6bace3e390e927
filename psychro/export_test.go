package psychro

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// ReadColumns reads a CSV of testdata, its comment lines left out, as columns
// by name; an empty field is NaN.
func ReadColumns(t testing.TB, name string) (n int, column func(string) []float64) {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	n = len(rows) - 1
	require.Positive(t, n)
	return n, func(name string) []float64 {
		c := slices.Index(rows[0], name)
		require.NotEqual(t, -1, c, name)
		out := make([]float64, n)
		for i := range out {
			out[i] = math.NaN()
			if s := rows[i+1][c]; s != "" {
				out[i], err = strconv.ParseFloat(s, 64)
				require.NoError(t, err)
			}
		}
		return out
	}
}
