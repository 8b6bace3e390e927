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

func TestDemo(t *testing.T) {
	out := golden.Print(t, run)
	require.Contains(t, out, plan.Demo().Note)
	golden.Equal(t, "demo.txt", out)
}

func TestColderAndThinnerFreezeSooner(t *testing.T) {
	p := plan.Demo()
	c, err := compute(&p.Plan, []float64{-5, -10, -15})
	require.NoError(t, err)
	require.Len(t, c.rows, 12)
	rows := c.rows[3:] // single, double, triple
	for i, r := range rows {
		require.Less(t, *r.frost.PowerFails, *r.frost.HeaterStops)
		require.Positive(t, r.heat)
		if i%3 > 0 {
			require.Less(t, *r.frost.HeaterStops, *rows[i-1].frost.HeaterStops)
			require.Less(t, *r.frost.PowerFails, *rows[i-1].frost.PowerFails)
		}
		if i >= 3 {
			require.Greater(t, *r.frost.HeaterStops, *rows[i-3].frost.HeaterStops)
		}
	}
	// Under an overcast sky frost comes later.
	cloudy, err := p.With(plan.Figure{Path: "site.winter_night.cloud_fraction", Value: 1.0})
	require.NoError(t, err)
	overcast, err := compute(&cloudy.Plan, c.outside)
	require.NoError(t, err)
	for i, r := range c.rows {
		require.Greater(t, *overcast.rows[i].frost.HeaterStops, *r.frost.HeaterStops)
	}
}

// The report of the whole house answers the same on the design night.
func TestTheReportAgrees(t *testing.T) {
	p := plan.Demo()
	c, err := compute(&p.Plan, nil)
	require.NoError(t, err)
	all, err := answers.Of(&p.Plan, false)
	require.NoError(t, err)
	r := c.coldest()[0]
	require.Equal(t, planned, r.cover)
	require.Equal(t, p.Site.WinterNight.Temperature, r.outside)
	require.InDelta(t, *all.Frost.HeaterStops, *r.frost.HeaterStops, 1e-6)
	require.InDelta(t, *all.Frost.PowerFails, *r.frost.PowerFails, 1e-6)
	require.InDelta(t, all.Frost.Unheated, r.frost.Unheated, 1e-6)
}

func TestFigures(t *testing.T) {
	for _, name := range []string{"a.svg", "a.png", "a.pdf"} {
		file := filepath.Join(t.TempDir(), name)
		golden.Print(t, run, "-figure", file)
		info, err := os.Stat(file)
		require.NoError(t, err)
		require.Greater(t, info.Size(), int64(2000))
	}
}

func TestJSON(t *testing.T) {
	var d struct {
		Answer struct {
			Rows []struct {
				Outside float64  `json:"outside_c"`
				Stops   *float64 `json:"frost_after_heater_stops_min"`
			} `json:"rows"`
		} `json:"answer"`
	}
	require.NoError(t, json.Unmarshal([]byte(golden.Print(t, run, "-json", "-outside", "-9")), &d))
	require.Len(t, d.Answer.Rows, 4)
	require.Equal(t, -9.0, d.Answer.Rows[0].Outside)
	require.Positive(t, *d.Answer.Rows[0].Stops)
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

func TestAMildSiteHasNoFrost(t *testing.T) {
	p, err := plan.Demo().With(plan.Figure{Path: "site.winter_night.temperature_c", Value: 1.0}, plan.Figure{Path: "site.months.temperature_c", Value: []float64{8, 8, 9, 10, 14, 17, 19, 18, 14, 11, 9, 8}})
	require.NoError(t, err)
	c, err := compute(&p.Plan, nil)
	require.NoError(t, err)
	require.Empty(t, c.rows)
	require.Contains(t, write(c), "none comes in")
	_, err = draw("svg", c)
	require.ErrorContains(t, err, "nothing to draw")
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, args := range [][]string{{"-inside", "NaN"}, {"-inside", "-1"}, {"-outside", "5"}, {"-outside", "a,b"}, {"-outside", "-2,-400"}, {"-still-air", "50"}, {"-cloud", "2"}, {"-wind", "-1"}, {"-frost", "900"}, {"-figure", "x.doc"}, {"-figure", "/no/such/place.svg"}, {"more"}, {"-no"}} {
		golden.Refuse(t, run, args)
	}
	golden.Refuse(t, run, []string{"-inside", "3", "-frost", "4"}, "-inside is 3")
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "-figure")
}
