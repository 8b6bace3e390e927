package main

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/internal/golden"
	"cloche.example/psychro"
)

func TestDemoTable(t *testing.T) {
	out := golden.Print(t, run)
	golden.Equal(t, "demo.txt", out)
}

func TestHelp(t *testing.T) {
	out := golden.Print(t, run, "-h")
	require.Contains(t, out, "triple-wall-16")
}

// The humidity at which dripping begins: air of it has its dew point at the
// face; a better cover, and a warmer night, allow more.
func TestTheLimitIsTheDewPoint(t *testing.T) {
	h := house{inside: 16, humidity: []float64{0.5, 0.99}, outsideHumidity: 0.8, wind: 3, tilt: 30, height: 4, altitude: 0}
	last := 0.0
	for _, make := range []func() envelope.Cover{envelope.SingleFilm, envelope.DoubleFilm, envelope.TripleWall16} {
		n, err := h.solve(make(), 2, 101325)
		require.NoError(t, err)
		s, err := psychro.FromRelativeHumidity(16, n.limit, 101325)
		require.NoError(t, err)
		require.InDelta(t, n.face, s.DewPoint(), 1e-6)
		require.Greater(t, n.limit, last)
		require.Positive(t, n.water[1])
		warm, err := h.solve(make(), 6, 101325)
		require.NoError(t, err)
		require.Greater(t, warm.limit, n.limit)
		last = n.limit
	}
}

func TestWrongInput(t *testing.T) {
	for _, args := range [][]string{
		{"-cover", "x"}, {"-inside", "x"}, {"-inside", "NaN"}, {"-inside", "290"}, {"-outside", "1,b"}, {"-outside", "300"}, {"-rh", "60"},
		{"-outside-rh", "85"}, {"-cloud", "2"}, {"-outside", "-50"}, {"-wind", "400"}, {"-tilt", "900"}, {"-altitude", "1e6"}, {"extra"}, {"-slope", "-1"},
	} {
		golden.Refuse(t, run, args)
	}
}

// A fault of the cover's balance has the name of its option, and is told once.
func TestFaultsNameTheirOptions(t *testing.T) {
	var out, problems bytes.Buffer
	require.Equal(t, 2, run([]string{"-inside", "70", "-wind", "90", "-slope", "0"}, &out, &problems))
	for _, name := range []string{"-inside is 70", "-wind is 90", "-slope is 0"} {
		require.Equal(t, 1, bytes.Count(problems.Bytes(), []byte(name)), name)
	}
	require.NotContains(t, problems.String(), "Inside")
}
