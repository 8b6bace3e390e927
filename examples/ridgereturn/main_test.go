package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/demo"
)

var update = flag.Bool("update", false, "write the golden file anew")

func TestDemo(t *testing.T) {
	var out, problems bytes.Buffer
	require.Equal(t, 0, run(nil, &out, &problems))
	require.Empty(t, problems.String())
	require.Contains(t, out.String(), demo.Note)
	golden := filepath.Join("testdata", "demo.txt")
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(golden, out.Bytes(), 0o644))
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err)
	require.Equal(t, string(want), out.String())
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
		var out, problems bytes.Buffer
		require.Equal(t, 2, run(args, &out, &problems), args)
		require.Empty(t, out.String())
		require.Equal(t, 1, strings.Count(problems.String(), "\n"), problems.String())
	}
	var out, problems bytes.Buffer
	require.Equal(t, 0, run([]string{"-h"}, &out, &problems))
	require.Contains(t, out.String(), "-mixing")
}
