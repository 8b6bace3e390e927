package main

import (
	"bytes"
	"flag"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "rewrite testdata/demo.txt")

func TestDemo(t *testing.T) {
	var out, problems bytes.Buffer
	require.Zero(t, run(nil, &out, &problems))
	require.Empty(t, problems.String())
	if *update {
		require.NoError(t, os.WriteFile("testdata/demo.txt", out.Bytes(), 0o644))
	}
	want, err := os.ReadFile("testdata/demo.txt")
	require.NoError(t, err)
	require.Equal(t, string(want), out.String())
}

func TestGivenHolesAndReversal(t *testing.T) {
	var out, problems bytes.Buffer
	require.Zero(t, run([]string{"-hole", "0.1", "-holes", "6", "-rows", "15"}, &out, &problems), problems.String())
	require.Contains(t, out.String(), "draw house air in")
}

func TestHelp(t *testing.T) {
	var out, problems bytes.Buffer
	require.Zero(t, run([]string{"-h"}, &out, &problems))
	require.Contains(t, out.String(), "-evenness")
}

func TestWrongInput(t *testing.T) {
	for _, args := range [][]string{
		{"-rows", "0"}, {"-rows", "1000000000"}, {"-holes", "0"}, {"-diameter", "-1"}, {"-evenness", "2"}, {"-flow", "0"}, {"-flow", "NaN"},
		{"-supply", "500"}, {"-hole", "3"}, {"-crop", "NaN"}, {"-crop", "-1"}, {"-x"}, {"extra"}, {"-pitch", "1e9"},
	} {
		var out, problems bytes.Buffer
		require.Equal(t, 2, run(args, &out, &problems), "%v", args)
		require.Empty(t, out.String(), "%v", args)
		require.Equal(t, 1, bytes.Count(problems.Bytes(), []byte("\n")), "%v", args)
	}
}
