package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/lighting"
)

func call(t *testing.T, stdin string, args ...string) (status int, out, problems string) {
	t.Helper()
	var o, p bytes.Buffer
	status = run(args, strings.NewReader(stdin), &o, &p)
	return status, o.String(), p.String()
}

func TestDemo(t *testing.T) {
	figure := filepath.Join(t.TempDir(), "polar.svg")
	status, out, problems := call(t, "", "-figure", figure)
	require.Equal(t, 0, status, problems)
	for _, want := range []string{"invented", "mirrored in both planes", "4.919  µmol/J", "not a safety assessment"} {
		require.Contains(t, out, want)
	}
	picture, err := os.ReadFile(figure)
	require.NoError(t, err)
	require.Contains(t, string(picture), "plane 90-270")
}

func TestFluxBelowTheHorizontal(t *testing.T) {
	// An even source all round: half of its 4π lm go down.
	w := lighting.Web{Coordinates: lighting.TypeC, Vertical: []float64{0, 180}, Horizontal: []float64{0}, Intensity: [][]float64{{1, 1}}}
	table, err := lighting.NewTable(w)
	require.NoError(t, err)
	require.InEpsilon(t, table.Flux()/2, flux(w, table, 90), 1e-6)
	require.InDelta(t, 180, width(table, 0, 0.5), 1e-9)
}

func TestStandardInputWithoutSpectrum(t *testing.T) {
	status, out, problems := call(t, string(demoFile), "-")
	require.Equal(t, 0, status, problems)
	require.Contains(t, out, "candela and lumens only")
}

func TestWrongInputIsOneLine(t *testing.T) {
	dir := t.TempDir()
	bad := filepath.Join(dir, "bad.csv")
	require.NoError(t, os.WriteFile(bad, []byte("400,1\n500;2\n"), 0o600))
	for _, c := range [][]string{
		{"", "nosuch.ies"}, {"", dir}, {"", "-"}, {"TILT=NONE\n1 -1 1 0", "-"}, {string(demoFile), "-spectrum", bad, "-"},
		{"TILT=../secret\n1", "-"}, {"", "a", "b"}, {"", "-x"}, {"", "-figure", "x.bmp"}, {"", "-tilt", "nosuch"},
	} {
		status, out, problems := call(t, c[0], c[1:]...)
		require.Equal(t, 2, status, c)
		require.Empty(t, out)
		require.Equal(t, 1, strings.Count(problems, "\n"), problems)
		t.Log(problems)
	}
	status, out, _ := call(t, "", "-h")
	require.Equal(t, 0, status)
	require.Contains(t, out, "-spectrum")
}
