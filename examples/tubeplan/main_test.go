package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/golden"
)

func TestDemo(t *testing.T) {
	out := golden.Print(t, run)
	golden.Equal(t, "demo.txt", out)
}

func TestGivenHolesAndReversal(t *testing.T) {
	out := golden.Print(t, run, "-hole", "0.1", "-holes", "6", "-rows", "15")
	require.Contains(t, out, "draw house air in")
}

func TestHelp(t *testing.T) {
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "-evenness")
}

func TestWrongInput(t *testing.T) {
	for _, args := range [][]string{
		{"-rows", "0"}, {"-rows", "1000000000"}, {"-holes", "0"}, {"-diameter", "-1"}, {"-evenness", "2"}, {"-flow", "0"}, {"-flow", "NaN"},
		{"-supply", "500"}, {"-hole", "3"}, {"-crop", "NaN"}, {"-crop", "-1"}, {"-x"}, {"extra"}, {"-pitch", "1e9"},
	} {
		golden.Refuse(t, run, args)
	}
}
