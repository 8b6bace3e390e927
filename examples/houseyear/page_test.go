package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/page"
	"cloche.example/internal/golden"
)

// The page stands alone, and has its pictures.
func TestPage(t *testing.T) {
	name := filepath.Join(t.TempDir(), "year.html")
	golden.Print(t, start, "-weather", weatherFile(t, part(t, "03-30", 4)), "-no-changes", "-html", name)
	text, err := os.ReadFile(name)
	require.NoError(t, err)
	require.NoError(t, page.Check(text))
	require.Equal(t, 9, bytes.Count(text, []byte("<svg")))
}

// The table and the JSON are written and read back.
func TestFiles(t *testing.T) {
	name := filepath.Join(t.TempDir(), "hours.csv")
	text := golden.Print(t, start, "-weather", weatherFile(t, part(t, "07-09", 1)), "-no-changes", "-json", "-hours", name)
	require.Contains(t, text, `"format": "houseyear"`)
	for _, key := range []string{"worst_hour_heat_ratio", "peak", "at", "time", "heater_kwh", "decisions", "question"} {
		require.Contains(t, text, `"`+key+`": `)
	}
	table, err := os.ReadFile(name)
	require.NoError(t, err)
	require.Equal(t, 25, bytes.Count(table, []byte("\n")))
	golden.Refuse(t, start, []string{"-weather", weatherFile(t, part(t, "07-09", 1)), "-no-changes", "-hours", t.TempDir()}, "-hours")
}

// Pictures name what the house has, and no more.
func TestPicturesNameWhatThereIs(t *testing.T) {
	drawn := func(plan string) string {
		var b bytes.Buffer
		_, err := solved(t, changed(t, plan), part(t, "04-20", 3)).newPage().WriteTo(&b)
		require.NoError(t, err)
		return b.String()
	}
	without, with := drawn("{}"), drawn(withTubes)
	require.NotContains(t, without, "in tubes")
	require.Contains(t, with, ">in tubes<")
	require.Contains(t, without, ">condensed<")
	require.Contains(t, without, "What closes")
}

// The peak tells of a set-point that has just risen.
func TestThePeakTellsOfTheSetPoint(t *testing.T) {
	s := part(t, "02-04", 2)
	a := solved(t, changed(t, "{}"), s)
	require.InDelta(t, 4, a.Account.Peak.Rise, 1e-9)
	require.Contains(t, a.Decisions[0].Answer, "rises by 4 K")
	even := solved(t, changed(t, `{"set_points": {"day": {"temperature_c": 11}}}`), s)
	require.Zero(t, even.Account.Peak.Rise)
	require.NotContains(t, even.Decisions[0].Answer, "rises")
	require.Greater(t, a.Account.Peak.Kept, even.Account.Peak.Kept+2000)
}
