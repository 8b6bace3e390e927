package main

import (
	"encoding/json"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/golden"
	"cloche.example/lighting"
)

// with is the program with a standard input.
func with(stdin string) golden.Run {
	return func(args []string, out, problems io.Writer) int {
		return run(args, strings.NewReader(stdin), out, problems)
	}
}

func TestDemo(t *testing.T) {
	out := golden.Print(t, with(""))
	golden.Equal(t, "demo.txt", out)
	for _, want := range []string{"invented", "mirrored in both planes", "not a safety assessment"} {
		require.Contains(t, out, want)
	}
}

func TestPictures(t *testing.T) {
	dir := t.TempDir()
	for _, ext := range []string{".svg", ".png", ".pdf"} {
		figure := filepath.Join(dir, "polar"+ext)
		golden.Print(t, with(""), "-figure", figure)
		picture, err := os.ReadFile(figure)
		require.NoError(t, err)
		require.Greater(t, len(picture), 2000)
		if ext == ".svg" {
			require.Contains(t, string(picture), "plane 90-270")
		}
	}
}

// An even source all round: half of its 4π lm go down, in every system of angles
// and wherever the table breaks.
func TestFluxBelowTheHorizontal(t *testing.T) {
	for _, c := range []struct {
		w    lighting.CandelaWeb
		want float64
	}{
		{lighting.CandelaWeb{Coordinates: lighting.TypeC, Vertical: []float64{0, 180}, Horizontal: []float64{0}, Candela: [][]float64{{1, 1}}}, 2 * math.Pi},
		{lighting.CandelaWeb{Coordinates: lighting.TypeC, Vertical: []float64{90, 180}, Horizontal: []float64{0}, Candela: [][]float64{{1, 1}}}, 0},
		{lighting.CandelaWeb{Coordinates: lighting.TypeC, Vertical: []float64{0, 90}, Horizontal: []float64{0}, Candela: [][]float64{{1, 1}}}, 2 * math.Pi},
		{lighting.CandelaWeb{Coordinates: lighting.TypeA, Vertical: []float64{-90, 90}, Horizontal: []float64{-90, 90}, Candela: [][]float64{{1, 1}, {1, 1}}}, math.Pi},
		{lighting.CandelaWeb{Coordinates: lighting.TypeB, Vertical: []float64{-90, 90}, Horizontal: []float64{-90, 90}, Candela: [][]float64{{1, 1}, {1, 1}}}, 2 * math.Pi},
	} {
		require.InDelta(t, c.want, below(c.w), 1e-12)
		table, err := lighting.NewCandelaTable(c.w)
		require.NoError(t, err)
		require.LessOrEqual(t, below(c.w), table.Lumens()*(1+1e-12))
	}
	table, err := lighting.NewCandelaTable(lighting.CandelaWeb{Coordinates: lighting.TypeC, Vertical: []float64{0, 180}, Horizontal: []float64{0}, Candela: [][]float64{{1, 1}}})
	require.NoError(t, err)
	require.InDelta(t, 180, width(table, 0, 0.5), 1e-9)
}

// A plan names its lamps' file and what a lumen of it counts.
func TestPlansFile(t *testing.T) {
	of := `{"lights": {"photometric_file": "demo.ies", "power_w": 90, `
	out := golden.Print(t, with(of+`"photons_per_lumen_umol_s_lm": 0.02}}`), "-plan", "-")
	require.Contains(t, out, "What demo.ies says")
	require.Contains(t, out, "lights.power_w is 90.0 W")
	require.NotContains(t, out, "invented for this")
	var d struct {
		Answer struct {
			Lumens   float64  `json:"flux_lm"`
			PPF      *float64 `json:"ppf_umol_s"`
			Invented bool     `json:"invented"`
		}
		Warnings []string
	}
	require.NoError(t, json.Unmarshal([]byte(golden.Print(t, with(of+`"spectrum_file": "demo.csv"}}`), "-plan", "-", "-json")), &d))
	demo := d.Answer
	require.NoError(t, json.Unmarshal([]byte(golden.Print(t, with(""), "-json")), &d))
	require.True(t, d.Answer.Invented)
	require.InDelta(t, *demo.PPF, *d.Answer.PPF, 1e-9)
	require.InDelta(t, demo.Lumens, d.Answer.Lumens, 1e-9)
}

// Every plan that the repository holds has an answer.
func TestPlans(t *testing.T) {
	plans, err := filepath.Glob("../plans/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, plans)
	for _, file := range plans {
		require.NotContains(t, golden.Print(t, with(""), "-plan", file), "NaN")
	}
}

func TestStandardInputWithoutSpectrum(t *testing.T) {
	require.Contains(t, golden.Print(t, with(string(demoFile)), "-"), "candela and lumens only")
}

// A file of the edition of 1986 with lamp data, tilt and oddities.
func TestOddFile(t *testing.T) {
	odd := "an old fixture\nTILT=INCLUDE\n1 2 0 90 1 0.9\n1 1000 1 2 1 1 1 -1 0 0\n1 1 0\n0 90\n0\n300 0\n7"
	out := golden.Print(t, with(odd), "-")
	golden.Equal(t, "odd.txt", out)
}

func TestTiltFile(t *testing.T) {
	tilt := filepath.Join(t.TempDir(), "lamp.tlt")
	require.NoError(t, os.WriteFile(tilt, []byte("1 2 0 90 1 0.8"), 0o600))
	file := strings.Replace(string(demoFile), "TILT=NONE", "TILT=LAMP.TLT", 1)
	require.Contains(t, golden.Print(t, with(file), "-tilt", tilt, "-"), "2  angles from 0 to 90 degree, not applied below")
}

func TestWrongInputIsOneLine(t *testing.T) {
	dir := t.TempDir()
	bad := filepath.Join(dir, "bad.csv")
	require.NoError(t, os.WriteFile(bad, []byte("400,1\n500;2\n"), 0o600))
	for _, c := range []struct {
		stdin, say string
		args       []string
	}{
		{"", "nosuch.ies", []string{"nosuch.ies"}},
		{"", dir, []string{dir}},
		{"", "standard input is for", []string{"-spectrum", "-"}},
		{`{"lights": {"photometric_file": "nosuch.ies", "photons_per_lumen_umol_s_lm": 0.02}}`, "nosuch.ies", []string{"-plan", "-"}},
		{"", "standard input: LM-63 file: line 1: no line TILT=", []string{"-"}},
		{"TILT=NONE\n1 -1 1 0", `LM-63 file: line 2: "0": the number of vertical angles must be a whole number from 2`, []string{"-"}},
		{string(demoFile), "line 2: \"500;2\" is not a wavelength", []string{"-spectrum", bad, "-"}},
		{"TILT=../secret\n1", `line 1: "../secret": the tilt data are in another file: pass its text (-tilt)`, []string{"-"}},
		{"", `"b" is not understood`, []string{"a", "b"}},
		{"", "-x", []string{"-x"}},
		{"", "must end in .svg, .png or .pdf", []string{"-figure", "x.bmp"}},
		{"", "nosuch", []string{"-tilt", "nosuch"}},
		{"TILT=NONE\n1 -1 1 2 1 1 2 0 0 0 1 1 9 0 90 0 0 0", "the file holds no light", []string{"-figure", filepath.Join(dir, "dark.svg"), "-"}},
	} {
		golden.Refuse(t, with(c.stdin), c.args, "photometry: ", c.say)
	}
	require.NoFileExists(t, filepath.Join(dir, "dark.svg"))
	require.Contains(t, golden.Print(t, with(""), "-h"), "-spectrum")
}
