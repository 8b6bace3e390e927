package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestFindLeavesOutRangesZerosAndTests(t *testing.T) {
	dir := t.TempDir()
	src := `package x

var speedRange = domain.Range{Min: 0.1, Max: 45.5, Unit: "m/s"}

const factor = 0.62

func f(v float64) float64 { return 0.0 + 2.5*v + float64(3) }
`
	require.NoError(t, os.WriteFile(filepath.Join(dir, "x.go"), []byte(src), 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "x_test.go"), []byte("package x\n\nconst y = 1.5\n"), 0o600))
	got, err := find(dir, "", false)
	require.NoError(t, err)
	texts := []string{}
	for _, l := range got {
		texts = append(texts, l.text)
		require.Equal(t, l.text, src[l.start:l.end])
	}
	require.Equal(t, []string{"0.62", "2.5"}, texts)
	other, err := find(dir, "y.go", false)
	require.NoError(t, err)
	require.Empty(t, other)
	all, err := find(dir, "", true)
	require.NoError(t, err)
	require.Len(t, all, 3, "the 3, too")
}
