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
	figure := filepath.Join(t.TempDir(), "ridge.svg")
	out := golden.Print(t, run, "-figure", figure)
	require.Contains(t, out, plan.Demo().Note)
	info, err := os.Stat(figure)
	require.NoError(t, err)
	require.Greater(t, info.Size(), int64(1000))
	golden.Equal(t, "demo.txt", out)
}

func TestTheHouseSavesLessThanTheCoil(t *testing.T) {
	p := plan.Demo()
	c, err := compare(&p.Plan, true)
	require.NoError(t, err)
	require.Positive(t, c.layers.UpperLoss)
	require.InDelta(t, p.Heater.Flow, c.layers.HeaterFlow, 1e-6, "stated at the fan inlet")
	for i, r := range c.rows {
		heat := c.layers.LowerLoss*29 + c.layers.UpperLoss*(r.ridge.Floor.Upper+14)
		require.InEpsilon(t, heat, r.ridge.Floor.Heat, 1e-9)
		if r.ridge.CoilView > 0 {
			require.Less(t, r.ridge.Saving, r.ridge.CoilView)
			require.LessOrEqual(t, r.ridge.Saving, r.ridge.Bound)
		} else {
			require.True(t, r.ridge.Costs)
		}
		if i > 0 {
			require.Greater(t, r.ridge.Floor.Upper, c.rows[i-1].ridge.Floor.Upper)
		}
	}
}

// A measured difference is what the plan's row shows.
func TestAMeasuredDifference(t *testing.T) {
	p, err := plan.Demo().With(plan.Figure{Path: "heater.ridge_return.known_from", Value: "measured"}, plan.Figure{Path: "heater.ridge_return.measured_k", Value: 2.5})
	require.NoError(t, err)
	c, err := compare(&p.Plan, false)
	require.NoError(t, err)
	require.InDelta(t, 2.5, c.warmer(c.planned), 1e-9)
	require.Equal(t, "fan and ducts", c.from)
}

func TestJSON(t *testing.T) {
	var d struct {
		Answer struct {
			Plan found   `json:"as_planned"`
			Rows []found `json:"rows"`
		} `json:"answer"`
		Warnings []string `json:"warnings"`
	}
	require.NoError(t, json.Unmarshal([]byte(golden.Print(t, run, "-json", "-rising", "0.3")), &d))
	require.Len(t, d.Answer.Rows, 7)
	require.Equal(t, 0.3, d.Answer.Plan.Share)
	require.True(t, d.Answer.Plan.Costs)
	require.NotEmpty(t, d.Warnings)
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
	for _, args := range [][]string{{"-inside", "NaN"}, {"-inside", "-20"}, {"-flow", "0"}, {"-mixing", "-1"}, {"-electricity-worth", "x"}, {"-loss-factor", "0.2"}, {"-outside", "900"}, {"more"}, {"-no"}} {
		golden.Refuse(t, run, args)
	}
	golden.Refuse(t, run, []string{"-outside", "19", "-inside", "18"})
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "-mixing")
}
