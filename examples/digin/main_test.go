package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/internal/demo"
	"cloche.example/internal/golden"
)

func TestDemo(t *testing.T) {
	out := golden.Print(t, run)
	require.Contains(t, out, demo.Note)
	golden.Equal(t, "demo.txt", out)
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
	r, err := one(demoChoice(), envelope.DefaultHouseConditions(), envelope.ClaySoil(), 0, false)
	require.NoError(t, err)
	// B = 94.72/21.2 = 4.46792, d = 0.1 + 1.5 (0.17 + 0.04) = 0.415,
	// U = 3/(pi B + d) ln(pi B/d + 1) = 3/14.45138 ln(34.82263) = 0.736975,
	// 94.72 U (15 - 8.5) = 453.75 W.
	require.InDelta(t, 453.7, r.design.Ground.Steady, 0.1)
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, args := range [][]string{{"-soil", "moon"}, {"-mean", "99", "-swing", "-1"}, {"-inside", "NaN"}, {"-insulation", "0"}, {"-outside", "x"}, {"-outside", "-55"}, {"more"}, {"-no"}} {
		golden.Refuse(t, run, args)
	}
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "-insulation")
}
