package main

import (
	"context"
	"flag"
	"io"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
)

// What the sources print comes to these, in kWh/m².
func TestPublishedFigures(t *testing.T) {
	want := [][2]float64{{50, 148}, {48, 131}, {317, 352}, {363, 363}, {318, 359}, {455, 512}, {650, 850}}
	require.Len(t, published, len(want))
	for i, b := range published {
		require.InDelta(t, want[i][0], b.Low, 0.51, b.Where)
		require.InDelta(t, want[i][1], b.High, 0.51, b.Where)
		require.LessOrEqual(t, b.Low, b.High)
		require.NotEmpty(t, b.Source+b.Seen)
	}
}

var every = flag.Bool("every", false, "solve the whole year of every plan and of each of its changes, some minutes")

// Every plan and every change of it has a state in every hour of the real year.
func TestEveryHourHasAState(t *testing.T) {
	if !*every {
		t.Skip("with -every")
	}
	names, err := filepath.Glob("../plans/*.json")
	require.NoError(t, err)
	s, err := weather.Greensboro()
	require.NoError(t, err)
	for _, name := range append(names, "") {
		p := plan.Demo()
		if name != "" {
			p, err = plan.Open(name, nil)
			require.NoError(t, err)
		}
		a, err := solve(context.Background(), p, s, options{}, io.Discard)
		require.NoError(t, err)
		require.Zero(t, a.Account.Whole.Failed, "%s: %v", name, a.year.Why)
		for _, c := range a.Cures {
			require.Zero(t, c.Failed, "%s: %s", name, c.Name)
		}
	}
}

// The demo house over the whole real year: every hour has a state, all closes, the
// house takes what houses of its kind take, and the short methods come near as far
// as what they leave out allows.
func TestTheWholeYear(t *testing.T) {
	if testing.Short() {
		t.Skip("some seconds")
	}
	s, err := weather.Greensboro()
	require.NoError(t, err)
	a, err := solve(context.Background(), plan.Demo(), s, options{bare: true}, io.Discard)
	require.NoError(t, err)
	w, c := &a.Account.Whole, a.Account.Closure
	require.Zero(t, w.Failed, "%v", a.year.Why)
	for _, v := range []float64{c.HourHeat, c.HourWater, c.Heat, c.Water} {
		require.Less(t, v, asked)
	}
	require.InEpsilon(t, w.Sun+w.Lamps+w.Heater+w.Burner+w.Water+w.SunCover, w.CoverAir+w.CoverSky+w.Ground+w.Tubes+w.TubeWater+w.Structure+w.Leakage+w.Venting+w.Drying+w.Latent, asked)

	// Milder winters than in Holland and nights of 11 °C: between the Turkish coast's
	// house at 5 °C and California's.
	require.Greater(t, a.Use.Heat, published[0].Low)
	require.Less(t, a.Use.Fuel, published[3].High)
	// A film house loses no less than a glasshouse with screens, and no more than 1.4
	// times one without; wall over floor is larger.
	require.Greater(t, a.Use.Per, 0.7*leastPer)
	require.Less(t, a.Use.Per, 1.4*mostPer)
	require.Len(t, a.Bands, len(published))

	// The season's methods among each other as package airheat tells: hour by hour
	// the highest, bins and degree-hours lower.
	byHour, degrees, bins := a.Methods[0], a.Methods[1], a.Methods[2]
	require.Less(t, degrees.Heat, byHour.Heat)
	require.Less(t, bins.Heat, byHour.Heat)
	for _, m := range a.Methods {
		require.InDelta(t, 1, m.Over, 0.6, "%s against the whole house", m.Name)
	}
	require.Contains(t, strings.Join(a.bandLines(), "\n"), "doi 10.4121")
}
