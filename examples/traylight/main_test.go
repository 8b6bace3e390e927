package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/demo"
	"cloche.example/lighting"
)

func TestDemoRunsAndSaysItIsInvented(t *testing.T) {
	var out, problems bytes.Buffer
	figure := filepath.Join(t.TempDir(), "map.svg")
	require.Equal(t, 0, run([]string{"-figure", figure}, &out, &problems), problems.String())
	require.Empty(t, problems.String())
	require.Contains(t, out.String(), demo.Note)
	require.Contains(t, out.String(), "not a safety assessment")
	info, err := os.Stat(figure)
	require.NoError(t, err)
	require.Greater(t, info.Size(), int64(1000))
}

func TestTheMapAndTheFluxAgree(t *testing.T) {
	in := input{length: 4, width: 1.5, height: 0.7, rows: 2, perRow: 5, ppf: 60, watts: 24, beam: 100, hours: 12, price: 0.3, maintenance: 0.9}
	r, err := in.solve()
	require.NoError(t, err)
	require.InDelta(t, r.onBed, r.stats.Mean*r.bed.Area()/r.layout.PPF(), 0.01)
	require.InDelta(t, 10*24*12/1000.0*0.3, r.energy.Cost, 1e-9)
	require.Len(t, r.sweep, 5)
	require.Greater(t, r.sweep[4].stats.U0, r.sweep[0].stats.U0)
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, args := range [][]string{
		{"-beam", "270", "-hours", "30"}, {"-height", "0"}, {"-height", "x"}, {"more"}, {"-ppf", "NaN"}, {"-rows", "0"}, {"-length", "-1"},
		{"-figure", "x.unknown"}, {"-maintenance", "90"}, {"-hours", "NaN"},
	} {
		var out, problems bytes.Buffer
		require.Equal(t, 2, run(args, &out, &problems), args)
		require.Empty(t, out.String())
		require.Equal(t, 1, bytes.Count(problems.Bytes(), []byte("\n")), problems.String())
		t.Log(problems.String())
	}
	var out, problems bytes.Buffer
	require.Equal(t, 0, run([]string{"-h"}, &out, &problems))
	require.Contains(t, out.String(), "-figure")
}

func TestEachCropShownIsInTheTable(t *testing.T) {
	for _, name := range crops {
		_, known := lighting.FindCrop(name)
		require.True(t, known, name)
	}
}
