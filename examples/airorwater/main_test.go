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

func TestNothingFreezesInMildAir(t *testing.T) {
	var out, problems bytes.Buffer
	require.Zero(t, run([]string{"-outside", "2"}, &out, &problems), problems.String())
	require.Regexp(t, `stopped, at 0 °C after +never +never`, out.String())
}

func TestHelp(t *testing.T) {
	var out, problems bytes.Buffer
	require.Zero(t, run([]string{"-h"}, &out, &problems))
	require.Contains(t, out.String(), "-water-supply")
}

func TestWrongInput(t *testing.T) {
	for _, args := range [][]string{
		{"-load", "0"}, {"-load", "NaN"}, {"-air-supply", "10"}, {"-water-efficiency", "40"}, {"-outside", "300"},
		{"-water-volume", "-1"}, {"-x"}, {"extra"},
	} {
		var out, problems bytes.Buffer
		require.Equal(t, 2, run(args, &out, &problems), "%v", args)
		require.Empty(t, out.String(), "%v", args)
		require.Equal(t, 1, bytes.Count(problems.Bytes(), []byte("\n")), "%v", args)
	}
}
