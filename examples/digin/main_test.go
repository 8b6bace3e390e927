package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
	"cloche.example/internal/golden"
)

func TestDemo(t *testing.T) {
	figure := filepath.Join(t.TempDir(), "digin.svg")
	out := golden.Print(t, run, "-figure", figure)
	require.Contains(t, out, plan.Demo().Note)
	info, err := os.Stat(figure)
	require.NoError(t, err)
	require.Greater(t, info.Size(), int64(1000))
	golden.Equal(t, "demo.txt", out)
}

func TestDeeperAndInsulatedSave(t *testing.T) {
	p := plan.Demo()
	c, err := compare(&p.Plan, 1.5)
	require.NoError(t, err)
	half := len(c.rows) / 2
	for i, r := range c.rows {
		if i%half > 0 {
			before := c.rows[i-1]
			require.Less(t, r.design.Total, before.design.Total)
			require.Less(t, r.year, before.year)
			require.InDelta(t, 2*(p.House.Span+p.House.Length)*(r.depth-before.depth), before.cover-r.cover, 1e-9)
		}
		if i >= half {
			require.Less(t, r.design.Ground.Total, c.rows[i-half].design.Ground.Total)
		}
		require.Greater(t, r.design.Ground.Total, r.design.Ground.Steady, "January draws more than the year's mean")
		require.GreaterOrEqual(t, r.ground.Total, r.design.Ground.Total)
	}
	require.Equal(t, 0.7, c.planned().depth)
}

// The floor at ground level by hand: B = A/(P/2), d, eq. 4, the annual mean.
func TestGroundAtGradeByHand(t *testing.T) {
	p := plan.Demo()
	c := comparison{plan: &p.Plan, insulation: 1.5}
	r, err := c.one(0, false)
	require.NoError(t, err)
	// B = 94.72/21.2 = 4.46792, d = 0.2 + 1.5 (0.17 + 0.04) = 0.515,
	// U = 3/(pi B + d) ln(pi B/d + 1) = 3/14.55140 ln(28.25514) = 0.688857;
	// inside 13 °C and outside 104.2/12 = 8.6833 °C, the means, 94.72 U 4.31667 = 281.66 W.
	require.InDelta(t, 281.66, r.design.Ground.Steady, 0.01)
}

func TestJSON(t *testing.T) {
	var d struct {
		Answer struct {
			Plan found   `json:"as_planned"`
			Rows []found `json:"rows"`
		} `json:"answer"`
	}
	require.NoError(t, json.Unmarshal([]byte(golden.Print(t, run, "-json", "-soil", "rock")), &d))
	require.Equal(t, 0.7, d.Answer.Plan.Depth)
	require.Positive(t, d.Answer.Rows[0].Year)
}

// Every plan that the repository holds has an answer.
func TestPlans(t *testing.T) {
	plans, err := filepath.Glob("../plans/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, plans)
	for _, file := range plans {
		require.NotContains(t, golden.Print(t, run, "-plan", file), "NaN")
	}
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, args := range [][]string{{"-soil", "moon"}, {"-conductivity", "-1"}, {"-inside", "NaN"}, {"-insulation", "0"}, {"-outside", "x"}, {"-outside", "-55"}, {"more"}, {"-no"}, {"-outside", "19"}} {
		golden.Refuse(t, run, args)
	}
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "-insulation")
}
