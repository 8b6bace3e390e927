package main

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/demo"
	"cloche.example/internal/golden"
)

func TestDemo(t *testing.T) {
	text := golden.Print(t, run)
	require.Contains(t, text, demo.Note)
	golden.Equal(t, "demo.txt", text)
}

// rows returns the numbers of the table under a heading.
func rows(t *testing.T, text, heading string) (table [][]float64) {
	t.Helper()
	_, after, found := strings.Cut(text, heading)
	require.True(t, found)
	for _, line := range strings.Split(after, "\n")[3:] {
		var row []float64
		for _, f := range strings.Fields(line) {
			v, err := strconv.ParseFloat(strings.TrimSuffix(f, "!"), 64)
			if err != nil {
				return table
			}
			row = append(row, v)
		}
		if len(row) == 0 {
			return table
		}
		table = append(table, row)
	}
	return table
}

func TestColderOutsideAndLowVentsAreWorse(t *testing.T) {
	text := golden.Print(t, run, "-outside", "-12,-6,0,6", "-opened", "10,30,60,100")
	high, low := rows(t, text, "ridge vents first, °C"), rows(t, text, "side vents first, °C")
	require.Len(t, high, 4)
	require.Len(t, low, 4)
	for i := range high {
		require.Len(t, high[i], 6)
		for k := 1; k <= 4; k++ {
			require.Greater(t, high[i][k], low[i][k]+0.5)
			if k > 1 { // wider is colder
				require.Less(t, high[i][k], high[i][k-1])
				require.Less(t, low[i][k], low[i][k-1])
			}
			if i > 0 { // milder outside is warmer
				require.Greater(t, high[i][k], high[i-1][k])
				require.Greater(t, low[i][k], low[i-1][k])
			}
		}
	}
}

func TestWindAndTightHouse(t *testing.T) {
	text := golden.Print(t, run, "-wind", "6", "-leak", "0.3", "-ridge", "0.2")
	require.Contains(t, text, " -  ") // the ridge lets no air in
	require.Contains(t, golden.Print(t, run, "-air", "90000"), "too small")
}

func TestFigures(t *testing.T) {
	for _, name := range []string{"a.svg", "a.png", "a.pdf"} {
		file := filepath.Join(t.TempDir(), name)
		golden.Print(t, run, "-figure", file, "-crop", "0.7", "-wind", "3")
		info, err := os.Stat(file)
		require.NoError(t, err)
		require.Greater(t, info.Size(), int64(2000))
	}
}

func TestHelp(t *testing.T) { require.Contains(t, golden.Print(t, run, "-h"), "-figure") }

func TestWrongInput(t *testing.T) {
	for flag, values := range map[string][]string{
		"-inside": {"x", "NaN", "300"}, "-limit": {"16", "-400"}, "-crop": {"4", "-2"}, "-wind": {"-1", "90"}, "-pressure": {"973"},
		"-side": {"0", "1e9"}, "-ridge": {"-1"}, "-length": {"0", "90"}, "-leak": {"0"}, "-volume": {"0"}, "-air": {"0", "1e12"},
		"-outside": {"20", "a,b", "", "-2,-400"}, "-opened": {"0", "101", "5;6"}, "-figure": {"x.doc"},
	} {
		for _, v := range values {
			golden.Refuse(t, run, []string{flag, v}, flag)
		}
	}
	golden.Refuse(t, run, []string{"-inside", "5"}, "-limit")
	golden.Refuse(t, run, []string{"-inside", "75"}, "-outside")
	golden.Refuse(t, run, []string{"-figure", "/no/such/place.svg"}, "/no/such/place.svg")
	golden.Refuse(t, run, []string{"more"}, "more")
	golden.Refuse(t, run, []string{"-no"}, "-no")
}
