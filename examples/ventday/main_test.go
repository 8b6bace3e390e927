package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
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

// figures returns a row of the summary: by hand, automatic, wide open.
func figures(t *testing.T, label string, args ...string) []string {
	t.Helper()
	var out, problems bytes.Buffer
	require.Equal(t, 0, run(args, &out, &problems), problems.String())
	for _, line := range strings.Split(out.String(), "\n") {
		if strings.HasPrefix(line, label) {
			return strings.Fields(strings.TrimPrefix(line, label))
		}
	}
	t.Fatalf("no line %q in\n%s", label, out.String())
	return nil
}

func TestShadeAndFogCool(t *testing.T) {
	bare := figures(t, "hottest, °C")
	require.Len(t, bare, 3)
	for _, args := range [][]string{{"-shade", "0.5"}, {"-fog", "300"}} {
		with := figures(t, "hottest, °C", args...)
		for i := range with {
			require.Less(t, with[i], bare[i], args) // numbers of one length
		}
	}
	require.Equal(t, "0", figures(t, "fog sprayed, kg")[1])
	require.NotEqual(t, "0", figures(t, "fog sprayed, kg", "-fog", "100")[1])
}

func TestSquallLowersTheVents(t *testing.T) {
	var out, problems bytes.Buffer
	require.Equal(t, 0, run([]string{"-squall", "15"}, &out, &problems), problems.String())
	for _, line := range strings.Split(out.String(), "\n") {
		if strings.HasPrefix(line, "15:00 ") {
			require.Contains(t, line, "0.05")
			require.True(t, strings.HasSuffix(line, "wind"), line)
			return
		}
	}
	t.Fatal("no row at 15:00")
}

func TestFinerSteps(t *testing.T) {
	coarse, fine := figures(t, "hottest, °C"), figures(t, "hottest, °C", "-step", "10m")
	require.Equal(t, coarse[1][:2], fine[1][:2])
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
	for _, args := range [][]string{
		{"-mean", "NaN"}, {"-mean", "300"}, {"-swing", "-1"}, {"-dew", "99"}, {"-wind", "-1"}, {"-squall", "25"}, {"-shade", "40"}, {"-fog", "-1"},
		{"-open", "20"}, {"-hand", "50"}, {"-band", "0"}, {"-least", "2"}, {"-wind-low", "20"}, {"-step", "7m"}, {"-step", "0"}, {"-step", "48h"}, {"-lai", "-1"}, {"-limit", "300"},
		{"-figure", "x.doc"}, {"-figure", "/no/such/place.svg"}, {"more"}, {"-no"}} {
		golden.Refuse(t, run, args)
	}
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "-figure")
}
