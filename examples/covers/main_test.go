package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/demo"
)

func TestDemoRunsAndSaysItIsInvented(t *testing.T) {
	var out, problems bytes.Buffer
	figure := filepath.Join(t.TempDir(), "covers.svg")
	require.Equal(t, 0, run([]string{"-figure", figure}, &out, &problems))
	require.Empty(t, problems.String())
	require.Contains(t, out.String(), demo.Note)
	require.Contains(t, out.String(), "double film, infrared inside")
	info, err := os.Stat(figure)
	require.NoError(t, err)
	require.Greater(t, info.Size(), int64(1000))
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, args := range [][]string{{"-humidity", "60", "-wind", "-1"}, {"-cloud", "3"}, {"-outside", "x"}, {"more"}, {"-outside", "NaN"}, {"-figure", filepath.Join(t.TempDir(), "x.unknown")}} {
		var out, problems bytes.Buffer
		require.Equal(t, 2, run(args, &out, &problems), args)
		require.Empty(t, out.String())
		require.Equal(t, 1, bytes.Count(problems.Bytes(), []byte("\n")), problems.String())
	}
}
