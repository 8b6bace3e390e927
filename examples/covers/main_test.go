package main

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/demo"
	"cloche.example/internal/golden"
)

func TestDemo(t *testing.T) {
	figure := filepath.Join(t.TempDir(), "covers.svg")
	out := golden.Print(t, run, "-figure", figure)
	require.Contains(t, out, demo.Note)
	info, err := os.Stat(figure)
	require.NoError(t, err)
	require.Greater(t, info.Size(), int64(1000))
	golden.Equal(t, "demo.txt", out)
}

func demoNight() night {
	return night{inside: demo.Inside, humidity: demo.InsideRH, outside: demo.OutsideDesign, outsideHumidity: demo.OutsideRH, wind: demo.Wind, cloud: demo.CloudCover}
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

func TestCombinationsLieWhereTheyShould(t *testing.T) {
	x, err := compare(demoNight())
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
	// A dry clear film sends a larger part to the sky than an opaque pane.
	require.Greater(t, skyShare(rowOf(t, x, "single film").dry), 2*skyShare(rowOf(t, x, "single glass").dry))
}

// Under an overcast sky close to the ground hardly anything goes to the sky.
func TestCloudsHoldTheHeat(t *testing.T) {
	n := demoNight()
	clear, err := compare(n)
	require.NoError(t, err)
	n.cloud = 1
	overcast, err := compare(n)
	require.NoError(t, err)
	for i := range clear.rows {
		require.Less(t, skyShare(overcast.rows[i].dry), 0.25*skyShare(clear.rows[i].dry), clear.rows[i].name)
	}
	n.outside, n.cloud = n.inside, 1
	still, err := compare(n)
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
