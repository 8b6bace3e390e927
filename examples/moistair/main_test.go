package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
	"cloche.example/internal/golden"
	"cloche.example/psychro"
)

func TestDemo(t *testing.T) {
	out := golden.Print(t, run)
	golden.Equal(t, "demo.txt", out)
}

func TestChange(t *testing.T) {
	var out, problems bytes.Buffer
	require.Zero(t, run([]string{"-p", "95000,101325", "-to", "t=35,w=0.009", "t=21", "rh=0.6"}, &out, &problems), problems.String())
	want, err := os.ReadFile("testdata/change.txt")
	require.NoError(t, err)
	require.Equal(t, string(want), out.String())
}

func TestHelp(t *testing.T) {
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "tw and rh")
}

func TestChart(t *testing.T) {
	for ext, start := range map[string]string{".svg": "<?xml", ".png": "\x89PNG", ".pdf": "%PDF"} {
		file := filepath.Join(t.TempDir(), "air"+ext)
		var out, problems bytes.Buffer
		require.Zero(t, run([]string{"-to", "t=33,w=0.009", "-figure", file, "rh=0.9", "t=-12"}, &out, &problems), problems.String())
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		require.True(t, bytes.HasPrefix(data, []byte(start)))
		require.Contains(t, out.String(), "Over liquid water")
	}
}

// Every pair of the command line answers, in either order, with its own air.
func TestEveryPair(t *testing.T) {
	air, err := psychro.FromRelativeHumidity(21, 0.6, 95e3)
	require.NoError(t, err)
	q := air.Properties()
	value := map[string]float64{"t": q.Temperature, "rh": q.RelativeHumidity, "w": q.HumidityRatio, "td": q.DewPoint, "tw": q.WetBulb,
		"e": q.VapourPressure, "vpd": q.VapourPressureDeficit, "h": q.Enthalpy, "v": q.SpecificVolume, "mu": q.DegreeOfSaturation,
		"ah": q.AbsoluteHumidity, "x": q.MoleFraction, "q": q.SpecificHumidity}
	require.Len(t, value, len(inputs))
	for key := range pairs {
		first, second, _ := strings.Cut(key, " ")
		g, err := read([]string{fmt.Sprintf("%s=%.15g", second, value[second]), fmt.Sprintf("%s=%.15g", first, value[first])})
		require.NoError(t, err, key)
		s, err := g.state(psychro.RealGas, 95e3)
		require.NoError(t, err, key)
		require.InDelta(t, 0.6, s.RelativeHumidity(), 1e-8, key)
		require.InDelta(t, 21, s.Temperature(), 1e-8, key)
	}
	a, err := read([]string{"rh=0.4", "t=30"})
	require.NoError(t, err)
	b, err := read([]string{"t=30", "rh=0.4"})
	require.NoError(t, err)
	require.Equal(t, a, b)
	s, err := a.state(psychro.RealGas, 95e3)
	require.NoError(t, err)
	require.InDelta(t, 0.4, s.RelativeHumidity(), 1e-12)
}

// A plan gives the site's pressure, and the air held where no inputs are given.
func TestPlans(t *testing.T) {
	plans, err := filepath.Glob("../plans/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, plans)
	for _, file := range plans {
		p, err := plan.Open(file, nil)
		require.NoError(t, err)
		out := golden.Print(t, run, "-plan", file)
		require.Contains(t, out, p.Note[:40])
		require.Contains(t, golden.Print(t, run, "t=21", "rh=0.6", "-plan", file), fmt.Sprintf("%.0f", psychro.StandardPressure(p.Site.Altitude)))
	}
}

func TestJSON(t *testing.T) {
	var d struct {
		Answer struct {
			States []found `json:"states"`
			Ends   []found `json:"second_states"`
		} `json:"answer"`
	}
	require.NoError(t, json.Unmarshal([]byte(golden.Print(t, run, "t=21", "rh=0.6", "-json", "-to", "t=25,rh=0.4")), &d))
	require.Len(t, d.Answer.States, 1)
	require.InDelta(t, 0.6, *d.Answer.States[0].RelativeHumidity, 1e-12)
	require.InDelta(t, 25, *d.Answer.Ends[0].Temperature, 1e-12)
}

func TestDryAirHasNoDewPointInJSON(t *testing.T) {
	require.Contains(t, golden.Print(t, run, "t=21", "w=0", "-json"), `"dew_point_c": null`)
}

func TestNearFreezing(t *testing.T) {
	out := golden.Print(t, run, "-altitude", "0,1500", "-ideal", "t=3", "rh=0.57")
	require.Contains(t, out, "ideal gas")
	require.Contains(t, out, "84556")
}

func TestWrongInput(t *testing.T) {
	for _, args := range [][]string{
		{"t=21"}, {"t=21", "t=22"}, {"t=21", "rh=60"}, {"t=x", "rh=0.6"}, {"tw=3", "td=2"}, {"foo=1", "t=2"}, {"-p", "101.325", "t=21", "rh=0.5"},
		{"-p", "a", "t=21", "rh=0.5"}, {"-altitude", "99999"}, {"-p", "1e5", "-altitude", "0"}, {"-figure", "x.doc", "t=21", "rh=0.5"},
		{"-to", "t=1,rh=3", "t=21", "rh=0.5"}, {"-no"}, {"-figure", "/no/such/folder/x.svg", "t=21", "rh=0.5"}, {"t=NaN", "rh=Inf"},
	} {
		golden.Refuse(t, run, args)
	}
}
