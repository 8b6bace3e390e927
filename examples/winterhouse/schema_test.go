package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/schema"
)

// TestSchemaFile holds the file to the types, and the output to the file.
func TestSchemaFile(t *testing.T) {
	s := schema.New(file{}, "winterhouse, version 1",
		"What winterhouse -json prints. Keys carry their units; null stands where a figure does not exist. A line of -lines holds the same answers with its number, the version, and an error in their place.")
	s.At("answers", "decisions", "code").Words(answers.Codes()...)
	s.At("answers", "decisions", "verdict").Words("holds", "fails", "told")
	s.At("answers", "warnings", "code").Words(answers.WarningCodes()...)
	s = s.File(t)
	for _, name := range []string{"", "../plans/arch.json", "../plans/leanto.json", "../plans/mountain.json"} {
		s.Holds(t, "file", printed(t, "", "-json", "-plan", name))
	}
	require.NoError(t, s.At("answers").Check("line", lines(t, printed(t, "{}", "-lines"))[0]["answers"]))
}
