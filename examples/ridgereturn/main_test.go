package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/demo"
	"cloche.example/internal/golden"
)

func TestDemo(t *testing.T) {
	out := golden.Print(t, run)
	require.Contains(t, out, demo.Note)
	golden.Equal(t, "demo.txt", out)
}

func TestTheHouseSavesLessThanTheCoil(t *testing.T) {
	c := choice{inside: 15, outside: -10, flow: 0.75, mixing: 0.1, fanFlow: 0.75, fanPower: 100, film: 1.03, worth: 2.5}
	l, rows, err := compare(c)
	require.NoError(t, err)
	require.Greater(t, l.upper, 0.0)
	for i, r := range rows {
		heat := l.lower*25 + l.upper*(r.ridge.Floor.Upper+10)
		require.InEpsilon(t, heat, r.ridge.Floor.Heat, 1e-9)
		if r.ridge.CoilView > 0 {
			require.Less(t, r.ridge.Saving, r.ridge.CoilView)
			require.LessOrEqual(t, r.ridge.Saving, r.ridge.Bound)
		} else {
			require.True(t, r.ridge.Costs)
		}
		if i > 0 {
			require.Greater(t, r.ridge.Floor.Upper, rows[i-1].ridge.Floor.Upper)
		}
	}
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, args := range [][]string{{"-inside", "NaN"}, {"-inside", "-20"}, {"-flow", "0"}, {"-mixing", "-1"}, {"-worth", "x"}, {"-film", "0.2"}, {"-outside", "900"}, {"more"}, {"-no"}} {
		golden.Refuse(t, run, args)
	}
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "-mixing")
}
