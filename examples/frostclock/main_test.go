package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/demo"
	"cloche.example/internal/golden"
)

func TestDemo(t *testing.T) {
	out := golden.Print(t, run)
	require.Contains(t, out, demo.Note)
	golden.Equal(t, "demo.txt", out)
}

func TestColderAndThinnerFreezeSooner(t *testing.T) {
	c := choice{inside: 15, wind: 3, still: 0.5, outside: []float64{-5, -10, -15}}
	rows, err := compute(c)
	require.NoError(t, err)
	require.Len(t, rows, 9)
	for i, r := range rows {
		require.InDelta(t, 0, r.fault.State.Air, 1e-6)
		require.Less(t, r.cut.Time, r.fault.Time)
		require.Greater(t, r.heat, 0.0)
		if i%3 > 0 {
			require.Less(t, r.fault.Time, rows[i-1].fault.Time)
			require.Less(t, r.cut.Time, rows[i-1].cut.Time)
		}
		if i >= 3 {
			require.Greater(t, r.fault.Time, rows[i-3].fault.Time)
		}
	}
	// Under an overcast sky frost comes later.
	c.cloud = 1
	overcast, err := compute(c)
	require.NoError(t, err)
	for i := range rows {
		require.Greater(t, overcast[i].fault.Time, rows[i].fault.Time)
	}
}

func TestFigures(t *testing.T) {
	for _, name := range []string{"a.svg", "a.png", "a.pdf"} {
		file := filepath.Join(t.TempDir(), name)
		var out, problems bytes.Buffer
		require.Equal(t, 0, run([]string{"-figure", file}, &out, &problems), problems.String())
		info, err := os.Stat(file)
		require.NoError(t, err)
		require.Greater(t, info.Size(), int64(2000))
	}
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, args := range [][]string{{"-inside", "NaN"}, {"-inside", "-1"}, {"-outside", "5"}, {"-outside", "a,b"}, {"-outside", "-2,-400"}, {"-still", "50"}, {"-cloud", "2"}, {"-wind", "-1"}, {"-level", "900"}, {"-figure", "x.doc"}, {"-figure", "/no/such/place.svg"}, {"more"}, {"-no"}} {
		golden.Refuse(t, run, args)
	}
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "-figure")
}
