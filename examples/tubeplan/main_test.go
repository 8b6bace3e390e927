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
	figure := filepath.Join(t.TempDir(), "a.svg")
	golden.Equal(t, "demo.txt", golden.Print(t, run, "-figure", figure))
	info, err := os.Stat(figure)
	require.NoError(t, err)
	require.Greater(t, info.Size(), int64(1000))
}

// The report of the whole house finds the same operating point.
func TestTheReportAgrees(t *testing.T) {
	p := plan.Demo()
	x, err := solve(p)
	require.NoError(t, err)
	all, err := answers.Of(&p.Plan, false)
	require.NoError(t, err)
	require.True(t, x.agreed)
	require.InDelta(t, all.Ducts.Flow, x.blown.Inlet, 1e-9)
	require.InDelta(t, all.Ducts.Pressure, x.blown.Pressure, 1e-9)
}

func TestGivenHolesAndReversal(t *testing.T) {
	out := golden.Print(t, run, "-hole", "0.1", "-holes", "6", "-rows", "15")
	require.Contains(t, out, "draw house air in")
	require.NotContains(t, out, "as even as wanted")
}

// A weaker fan moves less air.
func TestFanTable(t *testing.T) {
	file := filepath.Join(t.TempDir(), "fan.txt")
	require.NoError(t, os.WriteFile(file, []byte("# m³/s, Pa\n0 150\n0.4, 140\n0.8;90\n1.2\t0\n"), 0o600))
	flow := func(args ...string) float64 {
		var d struct {
			Answer struct {
				Point *point `json:"operating_point"`
			} `json:"answer"`
		}
		require.NoError(t, json.Unmarshal([]byte(golden.Print(t, run, append(args, "-json")...)), &d))
		require.NotNil(t, d.Answer.Point)
		return d.Answer.Point.Inlet
	}
	require.Less(t, flow("-fan-table", file), flow())
	for _, bad := range []string{"0 150\n0.4\n", "0 x\n1 0\n", "0.4 1\n0.2 0\n", ""} {
		require.NoError(t, os.WriteFile(file, []byte(bad), 0o600))
		golden.Refuse(t, run, []string{"-fan-table", file})
	}
	golden.Refuse(t, run, []string{"-fan-table", "no-such-file"})
}

func TestHelp(t *testing.T) {
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "-evenness")
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
		{"-rows", "0"}, {"-rows", "1000000000"}, {"-holes", "0"}, {"-diameter", "-1"}, {"-evenness", "2"}, {"-flow", "0"}, {"-flow", "NaN"},
		{"-hole", "3"}, {"-crop", "NaN"}, {"-crop", "-1"}, {"-x"}, {"extra"}, {"-pitch", "1e9"},
	} {
		golden.Refuse(t, run, args)
	}
}
