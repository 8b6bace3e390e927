package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/golden"
)

func TestDemoTable(t *testing.T) {
	figure := filepath.Join(t.TempDir(), "a.svg")
	golden.Equal(t, "demo.txt", golden.Print(t, run, "-figure", figure))
	info, err := os.Stat(figure)
	require.NoError(t, err)
	require.Greater(t, info.Size(), int64(1000))
}

func TestHelp(t *testing.T) { require.Contains(t, golden.Print(t, run, "-h"), "-transpired") }

// More sun takes more area, wind across the house less, and the report of the
// whole house says the same of its noon.
func TestNeeds(t *testing.T) {
	p := plan.Demo()
	n, err := needs(&p.Plan)
	require.NoError(t, err)
	for i := 1; i < len(n.suns); i++ {
		require.Greater(t, n.rows[i][0].area, n.rows[i-1][0].area)
		require.Less(t, n.rows[i][len(n.winds)-1].area, n.rows[i][0].area)
	}
	all, err := answers.Of(&p.Plan, false)
	require.NoError(t, err)
	require.InDelta(t, *all.Summer.Needed, n.calm.area, 1e-9)
	require.InDelta(t, *all.Summer.NeededWind, n.windy.area, 1e-9)
}

// Vents at one level take more area in calm air than vents low and high; where
// no area does, the answer says so, and a plan without vents gets a pair.
func TestOneLevelInCalm(t *testing.T) {
	p := plan.Demo()
	both, err := needs(&p.Plan)
	require.NoError(t, err)
	p.Vents = p.Vents[:2] // the sides
	n, err := needs(&p.Plan)
	require.NoError(t, err)
	require.True(t, !n.calm.possible || n.calm.area > both.calm.area)
	require.NotEmpty(t, n.warnings())
	require.Contains(t, n.answer(need{sun: 800}), "no area of such vents")
	p.Vents = nil
	n, err = needs(&p.Plan)
	require.NoError(t, err)
	require.True(t, n.assumed)
	require.Positive(t, n.calm.area)
}

func TestJSON(t *testing.T) {
	var d struct {
		Answer struct {
			Have float64 `json:"vents_of_plan_m2"`
			Calm found   `json:"noon_in_calm"`
			Rows []found `json:"rows"`
		} `json:"answer"`
	}
	require.NoError(t, json.Unmarshal([]byte(golden.Print(t, run, "-json", "-sun", "600")), &d))
	require.InDelta(t, 19.2, d.Answer.Have, 1e-9)
	require.Equal(t, 600.0, d.Answer.Calm.Sun)
	require.Len(t, d.Answer.Rows, 25)
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

func TestWrongInput(t *testing.T) {
	for _, args := range [][]string{
		{"-rise", "x"}, {"-rise", "0"}, {"-rise", "NaN"}, {"-outside", "300"}, {"-altitude", "1e6"}, {"-transpired", "60"}, {"-sun", "-1"}, {"extra"},
	} {
		golden.Refuse(t, run, args)
	}
}
