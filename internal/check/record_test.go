package check

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestAFileOfChecksIsHeldCurrent(t *testing.T) {
	path := filepath.Join(t.TempDir(), "checks", "x.csv")
	lines := [][]string{
		Row{Where: "X/2", In: []float64{1, 2.5}, Printed: "3.14", Tol: 0.1, Why: "from memory"}.line("TestX", 3.2),
		Row{Where: "X/1", Printed: "41.8", Suspect: "left out", Right: "43.7"}.line("TestX", 43.73),
	}
	require.Error(t, current(path, lines, false), "no file")
	require.NoError(t, current(path, append(lines, lines[0]), true))
	require.NoError(t, current(path, lines, false), "twice the same is once")
	near := Row{Where: "X/1", Printed: "41.8", Suspect: "left out", Right: "43.7"}.line("TestX", 43.7300001)
	require.NoError(t, current(path, [][]string{lines[0], near}, false))
	far := Row{Where: "X/1", Printed: "41.8", Suspect: "left out", Right: "43.7"}.line("TestX", 43.74)
	require.ErrorContains(t, current(path, [][]string{lines[0], far}, false), "X/1, ours")
	require.ErrorContains(t, current(path, lines[:1], false), "1 checks, and the file has 2")
	require.Equal(t, "from memory", lines[0][9])
	require.Equal(t, "X/1 TestX  41.8 43.73 0.05 suspect left out 43.7  ", strings.Join(lines[1], " "))
}

func TestAPassedRowIsRecordedOnce(t *testing.T) {
	before := len(recorded.lines)
	require.NoError(t, Row{Where: "X/3", Printed: "1.0"}.Verify(1.01))
	require.Error(t, Row{Where: "X/4", Printed: "1.0"}.Verify(1.2))
	Run(t, []Row{{Where: "X/5", In: []float64{2}, Printed: "4"}}, func(in ...float64) float64 { return in[0] * in[0] })
	Table(t, "cells.csv", []Line{{"sheet", []float64{3.52}}})
	got := recorded.lines[before:]
	require.Len(t, got, 3)
	for i, where := range []string{"X/3", "X/5", "cells.csv/sheet/U, W/(m² K)"} {
		require.Equal(t, where, got[i][0])
		require.Equal(t, "TestAPassedRowIsRecordedOnce", got[i][1])
	}
	require.Equal(t, []string{"from memory", "from memory"}, got[2][9:])
}
