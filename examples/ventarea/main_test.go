package main

import (
	"bytes"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestDemoTable(t *testing.T) {
	var out, problems bytes.Buffer
	require.Zero(t, run(nil, &out, &problems))
	require.Empty(t, problems.String())
	want, err := os.ReadFile("testdata/demo.txt")
	require.NoError(t, err)
	require.Equal(t, string(want), out.String())
}

func TestHelp(t *testing.T) {
	var out, problems bytes.Buffer
	require.Zero(t, run([]string{"-h"}, &out, &problems))
	require.Contains(t, out.String(), "-transpired")
}

func TestWrongInput(t *testing.T) {
	for _, args := range [][]string{
		{"-rise", "x"}, {"-rise", "0"}, {"-rise", "NaN"}, {"-discharge", "1.4"}, {"-outside", "300"},
		{"-pressure", "101.3"}, {"-transpired", "60"}, {"-floor", "-1"}, {"-side-share", "0"}, {"extra"},
	} {
		var out, problems bytes.Buffer
		require.Equal(t, 2, run(args, &out, &problems), "%v", args)
		require.Empty(t, out.String(), "%v", args)
		require.Equal(t, 1, bytes.Count(problems.Bytes(), []byte("\n")), "%v", args)
	}
}
