package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/golden"
)

func TestDemoTable(t *testing.T) { golden.Equal(t, "demo.txt", golden.Print(t, run)) }

func TestHelp(t *testing.T) { require.Contains(t, golden.Print(t, run, "-h"), "-transpired") }

func TestWrongInput(t *testing.T) {
	for _, args := range [][]string{
		{"-rise", "x"}, {"-rise", "0"}, {"-rise", "NaN"}, {"-discharge", "1.4"}, {"-outside", "300"},
		{"-pressure", "101.3"}, {"-transpired", "60"}, {"-floor", "-1"}, {"-side-share", "0"}, {"extra"},
	} {
		golden.Refuse(t, run, args)
	}
}
