package lighting

import (
	"io"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// What NewTable did not make is no light: refused by place, never a panic.
func TestTablesWithoutValuesAreRefused(t *testing.T) {
	var missing *Table
	for _, empty := range []*Table{missing, {}} {
		f := Fixture{Light: empty, At: Point{1, 1, 2}}
		require.Zero(t, f.ppf())
		_, err := NewLights(f)
		require.ErrorContains(t, err, "fixtures[0]: Light is missing")
		_, err = Room{4, 3, 3, 0.2, 0.7, 0.5, 0.5, 0.5, 0.5}.Reflect(Layout{f}, 2)
		require.ErrorContains(t, err, "layout[0]: Light is missing")
	}
	for _, empty := range []*CandelaTable{nil, {}} {
		_, err := PhotonTable(empty, IlluminantA(), PAR())
		require.ErrorIs(t, err, ErrRange)
		_, err = ChannelTables(empty, []Channel{{"white", IlluminantA(), 1}}, PAR())
		require.ErrorIs(t, err, ErrRange)
	}
}

func TestMapsToDimAreChecked(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), -1, 1.001e5} {
		_, err := Dim([]GroupMap{{Group: "red", PPFD: []float64{1, v}}}, []float64{1, 2}, []float64{0}, []float64{1})
		require.ErrorContains(t, err, "maps[0].PPFD[1] is")
	}
	same := GroupMap{PPFD: []float64{1, 2}}
	d, err := Dim([]GroupMap{same, same}, []float64{1.5, 3}, []float64{0, 0}, []float64{1, 1})
	require.NoError(t, err)
	require.InDeltaSlice(t, []float64{1, 0.5}, d.Levels, 1e-12)
}

func TestBedsLargerThanTheRoomSaySo(t *testing.T) {
	l := Layout{{Light: cosine(t, 100, 1), At: Point{1, 1, 2}}}
	_, err := Room{Length: 4, Width: 3, Height: 3}.Share(l, Bed{Length: 20, Width: 1})
	require.ErrorContains(t, err, "bed.Length is 20, allowed 0.001 to 4 m; bed within the room")
}

// Zero values and missing readers are refused, never a panic.
func TestZeroValuesAreRefused(t *testing.T) {
	p, err := Bed{Length: 1, Width: 1}.Grid(2, 2)
	require.NoError(t, err)
	l, err := NewLights(Fixture{Light: cosine(t, 100, 1), At: Point{0, 0, 1}})
	require.NoError(t, err)
	var none *Lights
	for _, f := range []func() error{
		func() error { _, err := l.MapTo(nil, nil); return err },
		func() error { _, err := l.MapTo(nil, &Points{}); return err },
		func() error { _, err := none.MapTo(nil, p); return err },
		func() error { _, err := (&Lights{}).MapTo(nil, p); return err },
		func() error { _, err := (&Reflections{}).Map(p); return err },
		func() error { _, err := ReadLM63(nil, nil); return err },
	} {
		require.ErrorIs(t, f(), ErrRange)
	}
	require.True(t, math.IsNaN(p.At(9).X))
	require.Zero(t, (&Table{}).Intensity(10, 0))
	require.True(t, math.IsNaN((&CandelaTable{}).Lumens()))
	require.True(t, math.IsNaN((&Reflections{}).FaceMean(FaceFloor)))
	bad := LM63{Edition: LM63of2002, Lamps: 1, Multiplier: math.Inf(1), BallastFactor: math.NaN(), Web: CandelaWeb{TypeC, []float64{0, 90}, []float64{0}, [][]float64{{1, 1}}}}
	err = bad.Write(io.Discard)
	require.ErrorContains(t, err, "Multiplier is +Inf")
	require.ErrorContains(t, err, "BallastFactor is NaN")
}

// The faces keep what the fixtures give.
func TestFacesAbsorbAllPhotons(t *testing.T) {
	s, err := Room{5, 3, 2.6, 0.2, 0.75, 0.65, 0.6, 0.5, 0.4}.Reflect(Layout{{Light: cosine(t, 300, 1.4), At: Point{1, 1, 2}}}, 8)
	require.NoError(t, err)
	sum := 0.0
	for f := FaceX0; f <= FaceCeiling; f++ {
		require.NotContains(t, f.String(), "RoomFace")
		sum += s.Absorbed(f)
	}
	require.InEpsilon(t, 300, sum, 1e-8)
	require.True(t, math.IsNaN(s.Absorbed(9)))
}

// A light that falls to nothing at a sharp edge keeps its flux, down to the
// spacing of numbers.
func TestFluxAtASharpEdge(t *testing.T) {
	for _, width := range []float64{1e-4, 1e-7, 1e-10, 1e-13} {
		for _, edge := range []float64{30, 59.7, 88} {
			d, err := NewTable(Web{TypeC, []float64{edge, edge + width}, []float64{0}, [][]float64{{1, 0}}})
			require.NoError(t, err)
			// Each angle is rounded by itself, as the table holds it: a fused
			// product would make another width of it.
			from, to := float64(edge*radian), float64((edge+width)*radian)
			want := math.Pi * math.Sin(edge*radian) * (to - from)
			require.InEpsilon(t, want, d.Flux(), 0.02*width+1e-9, "%g at %g", width, edge)
		}
	}
	_, err := NewTable(Web{TypeB, []float64{-90, 90}, []float64{0, 1e-18, 90}, [][]float64{{1, 1}, {1, 1}, {1, 1}}})
	require.ErrorIs(t, err, ErrRange)
}

// A megabyte of [MORE] lines is read in proportion to its length.
func TestManyContinuedLines(t *testing.T) {
	const lines = 150_000
	file := "IESNA:LM-63-2002\n[TEST] a\n" + strings.Repeat("[MORE] b\n", lines) +
		"[TESTLAB] x\n[ISSUEDATE] x\n[MANUFAC] x\n[MORE] y\nTILT=NONE\n1 -1 1 2 1 1 2 0 0 0\n1 1 50\n0 90\n0\n1 1\n"
	start := time.Now()
	f, err := ReadLM63(strings.NewReader(file), nil)
	require.NoError(t, err)
	require.Less(t, time.Since(start), 3*time.Second)
	v, _ := f.Label("TEST")
	require.Len(t, v, 1+2*lines)
	last, _ := f.Label("MANUFAC")
	require.Equal(t, "x\ny", last)
}
