package main

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/demo"
	"cloche.example/internal/golden"
	"cloche.example/lighting"
)

func TestDemo(t *testing.T) {
	out := golden.Print(t, run)
	golden.Equal(t, "demo.txt", out)
	require.Contains(t, out, demo.Note)
	require.Contains(t, out, "not a safety assessment")
}

func TestPicture(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"map.svg", "map.png", "map.pdf"} {
		golden.Print(t, run, "-figure", filepath.Join(dir, name))
		info, err := os.Stat(filepath.Join(dir, name))
		require.NoError(t, err)
		require.Greater(t, info.Size(), int64(1000))
	}
	picture, err := os.ReadFile(filepath.Join(dir, "map.svg"))
	require.NoError(t, err)
	// The title, a contour's value, the axes, and whose figures they are.
	for _, want := range []string{"mean 164, U0", ">180<", "across, m", "invented"} {
		require.Contains(t, string(picture), want)
	}
	// The same picture in every run; a PDF carries its date.
	golden.Print(t, run, "-figure", filepath.Join(dir, "again.svg"))
	again, err := os.ReadFile(filepath.Join(dir, "again.svg"))
	require.NoError(t, err)
	require.Equal(t, string(picture), string(again))
	// A map so even that it has no contour to draw.
	golden.Print(t, run, "-ppf", "0.0001", "-watts", "1", "-figure", filepath.Join(dir, "even.svg"))
}

// The contours of a map that rises from its middle are circles: closed lines,
// each point of them on the level.
func TestContoursOfABowl(t *testing.T) {
	bed := lighting.Bed{Length: 2, Width: 2}
	points, err := bed.Grid(41, 41)
	require.NoError(t, err)
	r := result{bed: bed, points: points}
	for i := range 41 * 41 {
		p := points.At(i)
		r.ppfd = append(r.ppfd, math.Hypot(p.X-1, p.Y-1))
	}
	k := contours{grid{r}, []float64{0.3, 0.7}}
	for _, v := range k.levels {
		lines := joined(k.segments(v))
		require.Len(t, lines, 1)
		require.Equal(t, lines[0][0], lines[0][len(lines[0])-1])
		for _, p := range lines[0] {
			require.InDelta(t, v, math.Hypot(p.X-1, p.Y-1), 0.003)
		}
	}
	require.Empty(t, k.segments(5))
}

func TestTheMapAndTheFluxAgree(t *testing.T) {
	in := input{length: 4, width: 1.5, height: 0.7, rows: 2, perRow: 5, ppf: 60, watts: 24, beam: 100, hours: 12, price: 0.3, maintenance: 0.9,
		roomLength: 6, roomWidth: 3, roomHeight: 2, reflectance: 0.3}
	r, err := in.solve()
	require.NoError(t, err)
	require.InDelta(t, r.shares.Bed, r.stats.Mean*r.bed.Area()/r.layout.PPF(), 0.01)
	require.InDelta(t, 1, r.shares.Bed+r.shares.Aisle+r.shares.Walls, 1e-12)
	require.InDelta(t, 10*24*12/1000.0*0.3, r.energy.Cost, 1e-9)
	require.Len(t, r.sweep, 5)
	require.Greater(t, r.sweep[4].stats.U0, r.sweep[0].stats.U0)
	require.InDelta(t, r.shares.Bed, r.sweep[2].onBed, 1e-12)
	require.Greater(t, r.bounces, r.oneAlone)
	require.Greater(t, r.oneAlone, 0.0)
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, c := range []struct {
		say  string
		args []string
	}{
		{"beam is 270", []string{"-beam", "270", "-hours", "30"}},
		{"hours is 30", []string{"-beam", "270", "-hours", "30"}},
		{"height is 0", []string{"-height", "0"}},
		{"height is 3, allowed", []string{"-height", "3"}},
		{`"x"`, []string{"-height", "x"}},
		{`"more" is not understood`, []string{"more"}},
		{"ppf is NaN", []string{"-ppf", "NaN"}},
		{"rows is 0", []string{"-rows", "0"}},
		{"per-row is -8", []string{"-rows", "-3", "-per-row", "-8"}},
		{"rows is 100000", []string{"-rows", "100000"}},
		{"length is -1", []string{"-length", "-1"}},
		{"width is 7, allowed 0.001 to 6.4 m; within the house", []string{"-width", "7"}},
		{"reflectance is 15", []string{"-reflectance", "15"}},
		{"must end in .png", []string{"-figure", "x.unknown"}},
		{"no/such", []string{"-figure", "no/such/map.svg"}},
		{"maintenance is 90", []string{"-maintenance", "90"}},
		{"hours is NaN", []string{"-hours", "NaN"}},
		{"Price is -1", []string{"-price", "-1"}},
	} {
		golden.Refuse(t, run, c.args, "traylight: ", c.say)
	}
	require.Contains(t, golden.Print(t, run, "-h"), "-figure")
}

func TestEachCropShownIsInTheTable(t *testing.T) {
	for _, name := range crops {
		_, known := lighting.FindCropLight(name)
		require.True(t, known, name)
	}
}
