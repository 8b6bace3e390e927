package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/golden"
)

func TestDemoTable(t *testing.T) {
	figure := filepath.Join(t.TempDir(), "drip.svg")
	out := golden.Print(t, run, "-figure", figure)
	require.Contains(t, out, plan.Demo().Note)
	info, err := os.Stat(figure)
	require.NoError(t, err)
	require.Greater(t, info.Size(), int64(1000))
	golden.Equal(t, "demo.txt", out)
}

func TestHelp(t *testing.T) {
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "triple-wall sheet 16 mm")
}

// The humidity at which dripping begins: air of it has its dew point at the
// face; a better cover, and a warmer night, allow more.
func TestTheLimitIsTheDewPoint(t *testing.T) {
	p := plan.Demo()
	last := 0.0
	for _, cover := range []string{"single film", "double film", "triple-wall sheet 16 mm"} {
		r, err := newRoof(&p.Plan, choice{cover: cover, humidity: []float64{0.5, 0.99}})
		require.NoError(t, err)
		n, err := r.solve(2)
		require.NoError(t, err)
		s, err := fromplan.Air(&p.Plan, r.inside, n.limit)
		require.NoError(t, err)
		require.InDelta(t, n.face, s.DewPoint(), 1e-6)
		require.Greater(t, n.limit, last)
		require.Positive(t, n.water[1])
		warm, err := r.solve(6)
		require.NoError(t, err)
		require.Greater(t, warm.limit, n.limit)
		last = n.limit
	}
}

// The roof's tilt and slope are those of the plan's house: 1.8 m of rise over
// 3.2 m.
func TestTheRoofIsThePlans(t *testing.T) {
	p := plan.Demo()
	r, err := newRoof(&p.Plan, choice{})
	require.NoError(t, err)
	require.InDelta(t, 29.358, r.tilt, 1e-3) // atan(1.8/3.2)
	require.InDelta(t, 3.6715, r.slope, 1e-4)
	require.Equal(t, -14.0, r.outside[len(r.outside)-1])
}

func TestJSON(t *testing.T) {
	var d struct {
		Answer struct {
			Nights []found `json:"nights"`
		} `json:"answer"`
		Warnings []string `json:"warnings"`
	}
	require.NoError(t, json.Unmarshal([]byte(golden.Print(t, run, "-json", "-cover", "single film", "-outside", "0,15", "-humidity", "0.9")), &d))
	require.Len(t, d.Answer.Nights, 2)
	require.Less(t, *d.Answer.Nights[0].Limit, *d.Answer.Nights[1].Limit)
	require.Positive(t, d.Answer.Nights[0].Water[0].Rate)
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

func TestWrongInput(t *testing.T) {
	for _, args := range [][]string{
		{"-cover", "x"}, {"-inside", "x"}, {"-inside", "NaN"}, {"-inside", "290"}, {"-outside", "1,b"}, {"-outside", "300"}, {"-humidity", "60"},
		{"-outside-humidity", "85"}, {"-cloud", "2"}, {"-outside", "-55"}, {"-wind", "400"}, {"-tilt", "900"}, {"-altitude", "1e6"}, {"extra"}, {"-slope", "-1"},
	} {
		golden.Refuse(t, run, args)
	}
	// All faults are told at once, each by the name of its flag.
	golden.Refuse(t, run, []string{"-inside", "70", "-wind", "90"}, "-inside is 70", "-wind is 90")
	golden.Refuse(t, run, []string{"-tilt", "200", "-slope", "0"}, "-tilt is 200", "-slope is 0")
}
