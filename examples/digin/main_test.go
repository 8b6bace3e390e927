package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
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

func demoChoice() choice {
	return choice{inside: demo.Inside, outside: demo.OutsideDesign, mean: 8.5, swing: 10, insulation: 1.5, soil: "clay"}
}

func TestDeeperAndInsulatedSave(t *testing.T) {
	rows, _, err := compare(demoChoice())
	require.NoError(t, err)
	half := len(rows) / 2
	for i, r := range rows {
		if i%half > 0 {
			require.Less(t, r.design.Total, rows[i-1].design.Total)
			require.Less(t, r.year, rows[i-1].year)
			require.InDelta(t, 2*(demo.Span+demo.Length)*(r.depth-rows[i-1].depth), rows[i-1].cover-r.cover, 1e-9)
		}
		if i >= half {
			require.Less(t, r.design.Ground.Total, rows[i-half].design.Ground.Total)
		}
		require.Greater(t, r.design.Ground.Total, r.design.Ground.Steady, "January draws more than the year's mean")
		require.GreaterOrEqual(t, r.ground.Total, r.design.Ground.Total)
	}
}

// The floor at grade by hand: B = A/(P/2), d, eq. 4, the annual mean.
func TestGroundAtGradeByHand(t *testing.T) {
	r, err := one(demoChoice(), -40, envelope.ClaySoil, 0, false)
	require.NoError(t, err)
	// B = 94.72/21.2 = 4.46792, d = 0.1 + 1.5 (0.17 + 0.04) = 0.415,
	// U = 3/(pi B + d) ln(pi B/d + 1) = 3/14.45138 ln(34.82263) = 0.736975,
	// 94.72 U (15 - 8.5) = 453.75 W.
	require.InDelta(t, 453.7, r.design.Ground.Steady, 0.1)
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, args := range [][]string{{"-soil", "moon"}, {"-mean", "99", "-swing", "-1"}, {"-inside", "NaN"}, {"-insulation", "0"}, {"-outside", "x"}, {"-outside", "-55"}, {"more"}, {"-no"}} {
		var out, problems bytes.Buffer
		require.Equal(t, 2, run(args, &out, &problems), args)
		require.Empty(t, out.String())
		require.Equal(t, 1, strings.Count(problems.String(), "\n"), problems.String())
	}
	var out, problems bytes.Buffer
	require.Equal(t, 0, run([]string{"-h"}, &out, &problems))
	require.Contains(t, out.String(), "-insulation")
}
