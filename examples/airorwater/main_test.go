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

func TestNothingFreezesInMildAir(t *testing.T) {
	out := golden.Print(t, run, "-outside", "2")
	require.Regexp(t, `stopped, at 0 °C after +never +never`, out)
}

func TestHelp(t *testing.T) {
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "-water-supply")
}

func TestWrongInput(t *testing.T) {
	for _, args := range [][]string{
		{"-load", "0"}, {"-load", "NaN"}, {"-air-supply", "10"}, {"-water-efficiency", "40"}, {"-outside", "300"},
		{"-water-volume", "-1"}, {"-x"}, {"extra"},
	} {
		golden.Refuse(t, run, args)
	}
}
