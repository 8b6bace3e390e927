package psychro

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// ReadColumns reads a CSV of testdata, its comment lines left out, as columns
// by name; an empty field is NaN.
func ReadColumns(t testing.TB, name string) (n int, column func(string) []float64) {
	t.Helper()
	rows := check.CSV(t, name)
	n = len(rows) - 1
	require.Positive(t, n)
	return n, func(name string) []float64 {
		c := slices.Index(rows[0], name)
		require.NotEqual(t, -1, c, name)
		cells := make([]string, n)
		for i := range cells {
			cells[i] = rows[i+1][c]
		}
		return check.Floats(t, cells)
	}
}

// What the laws ask of streams and states, and what users read from Properties.

func (s Stream) EnthalpyFlow() float64      { return s.enthalpyFlow() }
func (s Stream) VapourFlow() float64        { return s.vapourFlow() }
func (s State) MoleFraction() float64       { return s.x }
func (s State) DegreeOfSaturation() float64 { return s.degreeOfSaturation() }
func (s State) Entropy() float64            { return s.entropy() }
func (s State) LewisNumber() float64        { return s.lewisNumber() }
