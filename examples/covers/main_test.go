package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/golden"
)

func TestDemo(t *testing.T) {
	figure := filepath.Join(t.TempDir(), "covers.svg")
	out := golden.Print(t, run, "-figure", figure)
	require.Contains(t, out, plan.Demo().Note)
	info, err := os.Stat(figure)
	require.NoError(t, err)
	require.Greater(t, info.Size(), int64(1000))
	golden.Equal(t, "demo.txt", out)
}

// with is the demo plan with figures changed.
func with(t *testing.T, figures ...plan.Figure) *plan.Plan {
	t.Helper()
	p, err := plan.Demo().With(figures...)
	require.NoError(t, err)
	return &p.Plan
}

func rowOf(t *testing.T, x table, name string) row {
	t.Helper()
	for _, r := range x.rows {
		if r.name == name {
			return r
		}
	}
	t.Fatalf("no row %q", name)
	return row{}
}

// The house as planned loses here what the report of the whole house says.
func TestAsPlannedIsTheReportsLoss(t *testing.T) {
	p := with(t)
	x, err := compare(p)
	require.NoError(t, err)
	h, err := answers.NewHouse(p)
	require.NoError(t, err)
	loss, err := h.Loss(h.Night, float64(p.Site.WinterNight.Month))
	require.NoError(t, err)
	require.InEpsilon(t, loss.Total, x.rows[0].loss.Total, 1e-9)
	require.InEpsilon(t, loss.Ground.Total, x.rows[0].loss.Ground.Total, 1e-12)
}

func TestCombinationsLieWhereTheyShould(t *testing.T) {
	x, err := compare(with(t))
	require.NoError(t, err)
	for _, r := range x.rows {
		sum := 0.0
		for _, term := range r.loss.Terms() {
			sum += term.Loss
		}
		require.InDelta(t, r.loss.Total, sum, 1e-6, r.name)
		require.InDelta(t, r.loss.Cover, r.loss.CoverAir+r.loss.CoverSky, 1e-6, r.name)
		require.Zero(t, r.dry.Condensate)
	}
	mixed, film, sheet := rowOf(t, x, "single glass, twin-wall 10 mm walls"), rowOf(t, x, "single glass"), rowOf(t, x, "twin-wall sheet 10 mm")
	require.Less(t, mixed.loss.Cover, film.loss.Cover)
	require.Greater(t, mixed.loss.Cover, sheet.loss.Cover)
	// Roof 2 sqrt(3.2² + 1.8²) 14.8 = 108.679 m²; walls 2 (14.8 1.3) + 2 (6.4 1.3 + 6.4 1.8/2) = 66.64.
	require.InDelta(t, (108.679*0.90+66.64*0.80)/(108.679+66.64), mixed.light, 1e-5)
	for name, bare := range map[string]string{"single film, screen drawn": "single film", "double film, screen drawn": "double film, infrared inside", "single glass, screen drawn": "single glass"} {
		a, b := rowOf(t, x, name), rowOf(t, x, bare)
		require.Less(t, a.loss.Total, b.loss.Total)
		require.Equal(t, a.loss.Ground, b.loss.Ground)
		require.True(t, math.IsNaN(a.light))
	}
	// A dry clear film sends nearly twice the part to the sky that an opaque pane sends.
	require.Greater(t, skyShare(rowOf(t, x, "single film").dry), 1.9*skyShare(rowOf(t, x, "single glass").dry))
}

// Under an overcast sky close to the ground hardly anything goes to the sky.
func TestCloudsHoldTheHeat(t *testing.T) {
	clear, err := compare(with(t))
	require.NoError(t, err)
	cloud := plan.Figure{Path: "site.winter_night.cloud_fraction", Value: 1.0}
	overcast, err := compare(with(t, cloud))
	require.NoError(t, err)
	for i := range clear.rows {
		require.Less(t, skyShare(overcast.rows[i].dry), 0.25*skyShare(clear.rows[i].dry), clear.rows[i].name)
	}
	mild := *with(t, cloud)
	mild.Site.WinterNight.Temperature = mild.SetPoints.WinterNight.Temperature
	still, err := compare(&mild)
	require.NoError(t, err)
	require.NotContains(t, write(still), "NaN")
}

func TestWrongInputIsOneLine(t *testing.T) {
	unknown := filepath.Join(t.TempDir(), "x.unknown")
	for _, args := range [][]string{{"-humidity", "60", "-wind", "-1"}, {"-cloud", "3"}, {"-outside", "x"}, {"more"}, {"-outside", "NaN"}, {"-outside", "80"}, {"-no"}, {"-figure", unknown}, {"-figure", "no/such/directory/x.png"}} {
		golden.Refuse(t, run, args)
	}
	require.NoFileExists(t, unknown)
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "-figure")
}

func TestJSON(t *testing.T) {
	var d struct {
		Answer struct {
			Covers []struct {
				Name string  `json:"name"`
				Loss float64 `json:"loss_w"`
			} `json:"covers"`
		} `json:"answer"`
	}
	require.NoError(t, json.Unmarshal([]byte(golden.Print(t, run, "-json")), &d))
	x, err := compare(with(t))
	require.NoError(t, err)
	require.Len(t, d.Answer.Covers, len(x.rows))
	for i, r := range x.rows {
		require.Equal(t, r.name, d.Answer.Covers[i].Name)
		require.InDelta(t, r.loss.Total, d.Answer.Covers[i].Loss, 1e-9)
	}
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
