package main

import (
	"encoding/json"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/schema"
	"cloche.example/internal/golden"
)

// TestSchemaFile holds the file to the types, and the output to the file.
func TestSchemaFile(t *testing.T) {
	s := schema.New(file{}, "houseyear, version 1",
		"What houseyear -json prints. Keys carry their units; null stands where a figure does not exist. A line of -lines holds the same answers with its number, the version, and an error in their place.")
	s.At("answers", "decisions", "verdict").Words("holds", "fails", "told")
	s = s.File(t)
	name := weatherFile(t, part(t, "07-08", 1))
	s.Holds(t, "file", golden.Print(t, start, "-json", "-weather", name, "-day", "07-08"))
	for _, p := range []string{"arch", "leanto", "mountain"} {
		s.Holds(t, "file", golden.Print(t, start, "-json", "-no-changes", "-weather", name, "-plan", "../plans/"+p+".json"))
	}
	lines := golden.Print(t, func(args []string, out, problems io.Writer) int {
		return run(args, strings.NewReader("{}"), out, problems)
	}, "-lines", "-weather", name)
	var one map[string]any
	require.NoError(t, json.Unmarshal([]byte(lines), &one))
	require.NoError(t, s.At("answers").Check("line", one["answers"]))
}
