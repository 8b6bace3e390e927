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
