package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/demo"
	"cloche.example/internal/golden"
)

// try runs the program and returns its status and both outputs.
func try(input string, args ...string) (status int, out, problems string) {
	var o, e bytes.Buffer
	status = run(args, strings.NewReader(input), &o, &e)
	return status, o.String(), e.String()
}

func TestGoldenReportAndJSON(t *testing.T) {
	status, out, problems := try("")
	require.Zero(t, status, problems)
	golden.Equal(t, "report.txt", out)
	status, out, problems = try("", "-json")
	require.Zero(t, status, problems)
	golden.Equal(t, "report.json", out)
}

// The excerpt in the README stands so in the report.
func TestReadmeExcerpt(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	_, excerpt, found := strings.Cut(string(readme), "    Design heat loss\n")
	require.True(t, found)
	excerpt, _, _ = strings.Cut(excerpt, "\n\n")
	_, out, _ := try("")
	for _, line := range strings.Split(excerpt, "\n") {
		if line = strings.TrimPrefix(line, "    "); line != "..." {
			require.Contains(t, out, line+"\n")
		}
	}
}

func TestPrintedPlanIsThePlan(t *testing.T) {
	_, printed, _ := try("", "-print-plan")
	_, want, _ := try("")
	status, got, problems := try(printed, "-plan", "-")
	require.Zero(t, status, problems)
	require.Equal(t, want, got)
}

func TestDemoPlanIsTheDemoHouse(t *testing.T) {
	p, err := load("", nil)
	require.NoError(t, err)
	require.Equal(t, demo.Note, p.Note)
	require.Equal(t, house{"gable", demo.Span, demo.Length, demo.EaveHeight, demo.RidgeHeight, demo.Depth, demo.Azimuth}, p.House)
	require.Equal(t, []float64{demo.Altitude, demo.OutsideDesign, demo.OutsideRH, demo.Wind, demo.CloudCover}, []float64{p.Site.Altitude, p.Site.Outside, p.Site.OutsideRH, p.Site.Wind, p.Site.Cloud})
	require.Equal(t, []float64{demo.Inside, demo.InsideRH, demo.HeaterPower, demo.HeaterFlow}, []float64{p.Inside.Temperature, p.Inside.RH, p.Heater.Power, p.Heater.Flow})
	l := p.Lighting
	require.Equal(t, []float64{demo.Fixtures, demo.FixturePPF, demo.FixtureW, demo.BeamAngle, demo.LampHeight, demo.BedLength, demo.BedWidth, demo.Photoperiod},
		[]float64{float64(l.Rows * l.PerRow), l.PPF, l.Power, l.Beam, l.Height, l.BedLength, l.BedWidth, l.Photoperiod})
}

func TestAllFaultsInOneMessage(t *testing.T) {
	bad := strings.NewReplacer(
		`"span_m": 6.4`, `"span_m": -6.4`,
		`"outside_design_rh": 0.85`, `"outside_design_rh": 85`,
		`"roof": "double film"`, `"roof": "straw"`,
		`"depth_m": 0.7`, `"depth_m": "deep"`,
		`"rows": 3,`, `"rows": 2.5, "colour": "red",`,
		`    "wind_m_s": 2,`+"\n", "",
	).Replace(string(demoPlan))
	status, out, problems := try(bad, "-plan", "-")
	require.Equal(t, 2, status)
	require.Empty(t, out)
	for _, want := range []string{
		"house.span_m is -6.4, allowed 2 to 30",
		"site.outside_design_rh is 85, allowed 0.05 to 1",
		`cover.roof is "straw", wanted one of: single film,`,
		`house.depth_m is "deep", wanted a number, allowed 0 to 3`,
		"lighting.rows is 2.5, wanted a whole number, allowed 1 to 50",
		`lighting.colour is not a key of a plan (its value is "red")`,
		"summer.wind_m_s is missing, allowed 0 to 20",
	} {
		require.Contains(t, problems, want)
	}
}

func TestWrongInputIsOneClearAnswer(t *testing.T) {
	dir := t.TempDir()
	huge := filepath.Join(dir, "huge.json")
	f, err := os.Create(huge)
	require.NoError(t, err)
	require.NoError(t, f.Truncate(1<<30))
	require.NoError(t, f.Close())
	replace := func(old, new string) string {
		require.Contains(t, string(demoPlan), old)
		return strings.Replace(string(demoPlan), old, new, 1)
	}
	for name, c := range map[string]struct {
		input string
		args  []string
		want  string
	}{
		"missing file":         {"", []string{"-plan", filepath.Join(dir, "none.json")}, "no such file"},
		"directory":            {"", []string{"-plan", dir}, "is no file"},
		"huge file":            {"", []string{"-plan", huge}, "larger than"},
		"empty":                {" \n", []string{"-plan", "-"}, "it is empty"},
		"truncated":            {string(demoPlan[:400]), []string{"-plan", "-"}, "the text ends before the plan does"},
		"NaN":                  {replace(`"span_m": 6.4`, `"span_m": NaN`), []string{"-plan", "-"}, "not JSON near line 18"},
		"number past the end":  {replace(`"span_m": 6.4`, `"span_m": 1e999`), []string{"-plan", "-"}, "not JSON near line 18"},
		"text after the plan":  {string(demoPlan) + "x", []string{"-plan", "-"}, "text follows"},
		"deep brackets":        {strings.Repeat("[", 1000), []string{"-plan", "-"}, "deep"},
		"key twice":            {replace(`"span_m": 6.4`, `"span_m": 6.4, "span_m": 7`), []string{"-plan", "-"}, "house.span_m stands twice"},
		"a list":               {"[1]", []string{"-plan", "-"}, "the plan is [1], wanted an object"},
		"ridge below the eave": {replace(`"ridge_height_m": 3.1`, `"ridge_height_m": 1.2`), []string{"-plan", "-"}, "not above house.eave_height_m"},
		"a stray word":         {"", []string{"extra"}, "not understood"},
		"nothing to heat":      {replace(`"temperature_c": 15`, `"temperature_c": -15`), []string{"-plan", "-"}, "inside.temperature_c is -15, allowed 1 to 35"},
		"unknown flag":         {"", []string{"-colour"}, "not defined"},
	} {
		t.Run(name, func(t *testing.T) {
			status, out, problems := try(c.input, c.args...)
			require.Equal(t, 2, status)
			require.Empty(t, out)
			require.Contains(t, problems, c.want)
			require.Equal(t, 1, strings.Count(problems, "\n"))
		})
	}
}

func TestHelpAndJSONIsJSON(t *testing.T) {
	status, out, _ := try("", "-h")
	require.Zero(t, status)
	require.Contains(t, out, "-print-plan")
	_, out, _ = try("", "-json")
	var d design
	require.NoError(t, json.Unmarshal([]byte(out), &d))
	require.NotZero(t, d.Loss.Total)
}

func BenchmarkWholeRun(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if status, _, problems := try(""); status != 0 {
			b.Fatal(problems)
		}
	}
}
