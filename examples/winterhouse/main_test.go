package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/page"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/golden"
)

// try runs the program and returns its status and both outputs.
func try(input string, args ...string) (status int, out, problems string) {
	var o, e bytes.Buffer
	status = run(args, strings.NewReader(input), &o, &e)
	return status, o.String(), e.String()
}

func printed(t testing.TB, input string, args ...string) string {
	t.Helper()
	status, out, problems := try(input, args...)
	require.Zero(t, status, problems)
	require.Empty(t, problems)
	return out
}

func TestGoldenReports(t *testing.T) {
	golden.Equal(t, "demo.txt", printed(t, ""))
	golden.Equal(t, "demo.json", printed(t, "", "-json"))
	for _, name := range []string{"arch", "leanto", "mountain"} {
		golden.Equal(t, name+".txt", printed(t, "", "-plan", filepath.Join("../plans", name+".json")))
	}
}

// The excerpt in the README stands so in the report.
func TestReadmeExcerpt(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	_, excerpt, found := strings.Cut(string(readme), "    Decisions\n")
	require.True(t, found)
	excerpt, _, _ = strings.Cut(excerpt, "\n\n")
	out := printed(t, "")
	for _, line := range strings.Split(excerpt, "\n") {
		if line = strings.TrimPrefix(line, "    "); line != "..." {
			require.Contains(t, out, line+"\n")
		}
	}
}

func TestPrintedPlanIsThePlan(t *testing.T) {
	want := printed(t, "", "-json")
	got := printed(t, printed(t, "", "-print-plan"), "-plan", "-", "-json")
	var a, b map[string]any
	require.NoError(t, json.Unmarshal([]byte(want), &a))
	require.NoError(t, json.Unmarshal([]byte(got), &b))
	require.Equal(t, a["answers"], b["answers"])
	require.Equal(t, a["plan"], b["plan"])
	for _, d := range b["defaults_taken"].([]any) {
		require.Nil(t, d.(map[string]any)["value"], "only sections that the house lacks")
	}
	require.Greater(t, len(a["defaults_taken"].([]any)), len(b["defaults_taken"].([]any)))
}

func TestNothingReadsOddly(t *testing.T) {
	for _, args := range [][]string{{}, {"-plan", "../plans/arch.json"}, {"-plan", "../plans/leanto.json"}, {"-plan", "../plans/mountain.json"}} {
		out := printed(t, "", args...)
		for _, odd := range []string{"NaN", "Inf", " -0 ", "-0.0 ", "never h", "none does", "e+0", "%!"} {
			require.NotContains(t, out, odd)
		}
	}
}

func TestWrongInputIsOneClearAnswer(t *testing.T) {
	for name, c := range map[string]struct {
		input string
		args  []string
		want  string
	}{
		"missing file":    {"", []string{"-plan", filepath.Join(t.TempDir(), "none.json")}, "no such file"},
		"directory":       {"", []string{"-plan", t.TempDir()}, "folder"},
		"empty":           {" \n", []string{"-plan", "-"}, "it is empty"},
		"out of range":    {`{"house":{"span_m":-6.4}}`, []string{"-plan", "-"}, "house.span_m is -6.4, allowed 1 to 60 m"},
		"a misspelt key":  {`{"house":{"spam_m":6.4}}`, []string{"-plan", "-"}, "span_m"},
		"a stray word":    {"", []string{"extra"}, "not understood"},
		"unknown flag":    {"", []string{"-colour"}, "not defined"},
		"no such folder":  {"", []string{"-html", filepath.Join(t.TempDir(), "none", "a.html")}, "-html: open"},
		"two inputs":      {"", []string{"-lines", "-plan", "-"}, "names a file"},
		"no air for heat": {`{"heater":{"power_w":500000,"flow_m3_s":1}}`, []string{"-plan", "-"}, "heater.flow_m3_s"},
	} {
		t.Run(name, func(t *testing.T) {
			status, out, problems := try(c.input, c.args...)
			require.Equal(t, 2, status)
			require.Empty(t, out)
			require.Contains(t, problems, c.want)
		})
	}
}

func TestHelpAndExplanation(t *testing.T) {
	require.Contains(t, printed(t, "", "-h"), "-print-plan")
	require.Contains(t, printed(t, "", "-explain", "heater"), "power_w")
	require.NotContains(t, printed(t, "", "-explain", "heater"), "ridge_azimuth_deg")
}

func TestPage(t *testing.T) {
	for _, name := range []string{"", "../plans/arch.json", "../plans/leanto.json", "../plans/mountain.json"} {
		file := filepath.Join(t.TempDir(), "house.html")
		printed(t, "", "-plan", name, "-html", file)
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		require.NoError(t, page.Check(text), name)
		require.NotContains(t, string(text), "NaN")
	}
}

func BenchmarkWholeRun(b *testing.B) {
	for name, args := range map[string][]string{"text": {}, "html": {"-html", filepath.Join(b.TempDir(), "a.html")}} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				printed(b, "", args...)
			}
		})
	}
}

// demo is the demo plan with a change.
func demo(t testing.TB, change string) plan.Filled {
	t.Helper()
	f, err := plan.Demo().Change([]byte(change))
	require.NoError(t, err)
	return f
}
