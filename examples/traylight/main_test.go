package main

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/golden"
	"cloche.example/internal/program"
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
	require.Contains(t, strings.Join(strings.Fields(out), " "), plan.Demo().Note)
	require.Contains(t, out, "not a safety assessment")
}

func TestPicture(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"map.svg", "map.png", "map.pdf"} {
		golden.Print(t, with(""), "-figure", filepath.Join(dir, name))
		info, err := os.Stat(filepath.Join(dir, name))
		require.NoError(t, err)
		require.Greater(t, info.Size(), int64(1000))
	}
	// The same picture in every run.
	again := t.TempDir()
	for _, name := range []string{"map.svg", "map.pdf"} {
		golden.Print(t, with(""), "-figure", filepath.Join(again, name))
		one, err := os.ReadFile(filepath.Join(dir, name))
		require.NoError(t, err)
		other, err := os.ReadFile(filepath.Join(again, name))
		require.NoError(t, err)
		require.True(t, bytes.Equal(one, other), name)
	}
	picture, err := os.ReadFile(filepath.Join(dir, "map.svg"))
	require.NoError(t, err)
	// The title, a contour's value, the axes, whose house it is; the map is one
	// image, without seams between its cells.
	for _, want := range []string{"mean 147, least over mean", ">160<", "across, m", "demo house", "<image"} {
		require.Contains(t, string(picture), want)
	}
	// A map so even that it has no contour to draw.
	golden.Print(t, with(""), "-ppf", "1", "-height", "2.2", "-figure", filepath.Join(dir, "even.svg"))
}

// The contours of a map that rises from its middle are circles: closed lines,
// each point of them on the level.
func TestContoursOfABowl(t *testing.T) {
	g := grid{bed: lighting.Bed{Length: 2, Width: 2}}
	var err error
	g.points, err = g.bed.Grid(41, 41)
	require.NoError(t, err)
	for i := range 41 * 41 {
		p := g.points.At(i)
		g.ppfd = append(g.ppfd, math.Hypot(p.X-1, p.Y-1))
	}
	k := contours{g, []float64{0.3, 0.7}}
	for _, v := range k.levels {
		lines := joined(k.segments(v))
		require.Len(t, lines, 1)
		require.Equal(t, lines[0][0], lines[0][len(lines[0])-1])
		for _, p := range lines[0] {
			require.InDelta(t, v, math.Hypot(p.X-1, p.Y-1), 0.003)
		}
	}
	require.Empty(t, k.segments(5))
	// Between the middles of cells the picture runs evenly.
	require.InDelta(t, (g.Z(3, 5)+g.Z(4, 5))/2, g.at(3.5, 5), 1e-12)
	require.InDelta(t, g.Z(0, 40), g.at(-0.4, 40.4), 1e-12)
}

// answered is the program's answer in JSON.
type answered struct {
	Map    found     `json:"map"`
	Bed    float64   `json:"photons_on_bed_fraction"`
	Aisle  float64   `json:"photons_on_aisles_fraction"`
	Walls  float64   `json:"photons_on_walls_and_roof_fraction"`
	Points []float64 `json:"map_umol_m2_s"`
	Others []found   `json:"other_rows"`
	Design *designed `json:"design"`
}

func answer(t *testing.T, stdin string, args ...string) answered {
	t.Helper()
	var d struct{ Answer answered }
	require.NoError(t, json.Unmarshal([]byte(golden.Print(t, with(stdin), append(args, "-json")...)), &d))
	return d.Answer
}

// The report of the whole house has the same map.
func TestTheReportAgrees(t *testing.T) {
	p := plan.Demo()
	all, err := answers.Of(&p.Plan, false)
	require.NoError(t, err)
	d := answer(t, "")
	require.InDelta(t, all.Light.Mean, d.Map.Mean, 1e-9)
	require.InDelta(t, all.Light.Even, d.Map.Even, 1e-9)
	require.InDelta(t, 1, d.Bed+d.Aisle+d.Walls, 1e-12)
	// Photons on the bed are the map's mean over the bed.
	flux := 24 * 380 * 0.9
	require.InDelta(t, d.Bed, d.Map.Mean*11.2*3.6/flux, 0.01)
	for _, v := range d.Others {
		require.InDelta(t, float64(v.Rows*v.PerRow)*145, v.Power, 1e-9)
	}
}

// Rows that are dimmed give and take less; those that are off nothing.
func TestGroups(t *testing.T) {
	groups := func(level string) string {
		return `{"lights": {"rows_count": 3, "per_row_count": 8, "groups": [{"name": "edges", "rows": [1, 3], "level_fraction": ` + level + `}]}}`
	}
	full, half, off := answer(t, groups("1"), "-plan", "-"), answer(t, groups("0.5"), "-plan", "-"), answer(t, groups("0"), "-plan", "-")
	require.InDelta(t, (full.Map.Mean+off.Map.Mean)/2, half.Map.Mean, 1e-9)
	require.InDelta(t, full.Map.Power/3, off.Map.Power, 1e-9)
	require.Empty(t, half.Others)
	// The middle row lands more of its photons on the bed than the edges do.
	require.Greater(t, off.Bed, half.Bed)
	require.Greater(t, half.Bed, full.Bed)
}

// A photometric file in lumens gives photons by the stated conversion.
func TestPhotometricFile(t *testing.T) {
	const file = "../photometry/demo.ies"
	d, twice := answer(t, "", "-photometry", file, "-per-lumen", "0.018"), answer(t, "", "-photometry", file, "-per-lumen", "0.036")
	require.InDelta(t, 2*d.Map.Mean, twice.Map.Mean, 1e-9)
	require.Contains(t, golden.Print(t, with(""), "-photometry", file, "-spectrum", "../photometry/demo.csv"), "photometric file")
	golden.Refuse(t, with(""), []string{"-photometry", file}, "photons_per_lumen")
	golden.Refuse(t, with(""), []string{"-photometry", "no-such.ies", "-per-lumen", "0.018"}, "no-such.ies")
}

func TestTargetAndDesign(t *testing.T) {
	d := answer(t, "", "-target", "150", "-evenness", "0.6", "-design")
	require.GreaterOrEqual(t, d.Map.Mean, 149.9)
	require.NotNil(t, d.Design)
	require.True(t, d.Design.Found)
	require.GreaterOrEqual(t, d.Design.Mean, 149.9)
	require.GreaterOrEqual(t, d.Design.Least, 0.59*d.Design.Mean)
	require.Contains(t, golden.Print(t, with(""), "-target", "1500", "-ppf", "5", "-design"), "lamps and more")
}

// An interrupt ends the search at once.
func TestInterrupt(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	p := plan.Demo()
	meter := program.NewMeter(io.Discard, "")
	_, err := solve(ctx, &p.Plan, meter)
	require.ErrorIs(t, err, context.Canceled)
	r, err := solve(t.Context(), &p.Plan, meter)
	require.NoError(t, err)
	_, err = search(ctx, r, meter)
	require.ErrorIs(t, err, context.Canceled)
	_, err = drawMap(ctx, "svg", r)
	require.ErrorIs(t, err, context.Canceled)
}

// Every plan that the repository holds has an answer.
func TestPlans(t *testing.T) {
	plans, err := filepath.Glob("../plans/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, plans)
	for _, file := range plans {
		require.NotContains(t, golden.Print(t, with(""), "-plan", file, "-figure", filepath.Join(t.TempDir(), "a.svg")), "NaN")
	}
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, c := range []struct {
		say  string
		args []string
	}{
		{"-beam is 270", []string{"-beam", "270", "-photoperiod", "30"}},
		{"-photoperiod is 30", []string{"-beam", "270", "-photoperiod", "30"}},
		{"-height is 0", []string{"-height", "0"}},
		{"-height", []string{"-height", "3.5"}},
		{`"x"`, []string{"-height", "x"}},
		{`"more" is not understood`, []string{"more"}},
		{"-ppf is NaN", []string{"-ppf", "NaN"}},
		{"-rows is 0", []string{"-rows", "0"}},
		{"-per-row is -8", []string{"-rows", "-3", "-per-row", "-8"}},
		{"-rows is 100000", []string{"-rows", "100000"}},
		{"-length is -1", []string{"-length", "-1"}},
		{"-width", []string{"-width", "7"}},
		{"-reflectance is 15", []string{"-reflectance", "15"}},
		{"must end in .svg", []string{"-figure", "x.unknown"}},
		{"no/such", []string{"-figure", "no/such/map.svg"}},
		{"-maintenance is 90", []string{"-maintenance", "90"}},
		{"-price is -1", []string{"-price", "-1"}},
	} {
		golden.Refuse(t, with(""), c.args, "traylight: ", c.say)
	}
	require.Contains(t, golden.Print(t, with(""), "-h"), "-figure")
}
