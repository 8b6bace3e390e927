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
	figure := filepath.Join(t.TempDir(), "a.svg")
	out := golden.Print(t, run, "-figure", figure)
	require.Contains(t, out, plan.Demo().Note)
	info, err := os.Stat(figure)
	require.NoError(t, err)
	require.Greater(t, info.Size(), int64(1000))
	golden.Equal(t, "demo.txt", out)
}

func TestNothingFreezesInMildAir(t *testing.T) {
	p, err := plan.Demo().With(plan.Figure{Path: "site.winter_night.temperature_c", Value: 1.0}, plan.Figure{Path: "site.months.temperature_c", Value: []float64{8, 8, 9, 10, 14, 17, 19, 18, 14, 11, 9, 8}})
	require.NoError(t, err)
	c, err := compare(&p.Plan, nil)
	require.NoError(t, err)
	require.Regexp(t, `stopped, at 0 °C after +never +never`, write(c).String())
	require.Contains(t, golden.Print(t, run, "-outside", "-2", "-load", "20000"), "for 20.0 kW")
}

// High up the same mass of air takes more room.
func TestTheSitesAir(t *testing.T) {
	flow := func(altitude float64) float64 {
		p, err := plan.Demo().With(plan.Figure{Path: "site.altitude_m", Value: altitude})
		require.NoError(t, err)
		load := 20000.0
		c, err := compare(&p.Plan, &load)
		require.NoError(t, err)
		return c.air.VolumeFlow
	}
	require.InDelta(t, 1.27461, flow(2000)/flow(0), 1e-4) // 101325/79495 Pa
}

func TestJSON(t *testing.T) {
	var d struct {
		Answer struct {
			Load  float64 `json:"load_w"`
			Air   found   `json:"air"`
			Water found   `json:"water"`
		} `json:"answer"`
		Warnings []string `json:"warnings"`
	}
	require.NoError(t, json.Unmarshal([]byte(golden.Print(t, run, "-json")), &d))
	require.Nil(t, d.Answer.Air.Freezing)
	require.Positive(t, *d.Answer.Water.Freezing)
	require.Greater(t, d.Answer.Air.Transport, d.Answer.Water.Transport)
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

func TestHelp(t *testing.T) {
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "-water-supply")
}

func TestWrongInput(t *testing.T) {
	for _, args := range [][]string{
		{"-load", "0"}, {"-load", "NaN"}, {"-air-supply", "10"}, {"-water-efficiency", "40"}, {"-outside", "300"},
		{"-water-volume", "-1"}, {"-x"}, {"extra"}, {"-air-supply", "25", "-air-return", "30"},
	} {
		golden.Refuse(t, run, args)
	}
}
