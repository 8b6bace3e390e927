package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
	"cloche.example/internal/golden"
)

// part is the real year from that month and day on, for so many days.
func part(t testing.TB, from string, days int) *weather.Series {
	t.Helper()
	s, err := weather.Greensboro()
	require.NoError(t, err)
	at, err := time.Parse("01-02", from)
	require.NoError(t, err)
	a := (at.YearDay() - 1) * 24
	if at.YearDay() > 59 {
		a -= 24 // the zero year of Parse leaps
	}
	q := *s
	for _, c := range []*[]float64{&q.Temperature, &q.DewPoint, &q.RelativeHumidity, &q.Pressure, &q.Wind, &q.Global, &q.Direct, &q.Diffuse, &q.Sky, &q.Cloud} {
		*c = append([]float64(nil), (*c)[a:a+24*days]...)
	}
	q.Time, q.Sun = q.Time[a:a+24*days], q.Sun[a:a+24*days]
	require.Equal(t, from, q.Time[0].Format("01-02"))
	return &q
}

// weatherFile writes a weather where a flag can name it.
func weatherFile(t testing.TB, s *weather.Series) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, weather.Write(&b, s))
	name := filepath.Join(t.TempDir(), "weather.csv")
	require.NoError(t, os.WriteFile(name, b.Bytes(), 0o644))
	return name
}

func start(args []string, out, problems io.Writer) int {
	return run(args, strings.NewReader(""), out, problems)
}

func TestColdWeek(t *testing.T) {
	golden.Equal(t, "cold.txt", golden.Print(t, start, "-weather", weatherFile(t, part(t, "02-02", 4)), "-no-changes", "-day", "02-05"))
}

func TestHotDays(t *testing.T) {
	golden.Equal(t, "hot.txt", golden.Print(t, start, "-weather", weatherFile(t, part(t, "07-08", 3)), "-no-changes"))
}

func TestWrongInput(t *testing.T) {
	for _, args := range [][]string{
		{"extra"}, {"-plan", "none.json"}, {"-weather", "none.csv"}, {"-plan", "-", "-weather", "-"}, {"-day"},
	} {
		golden.Refuse(t, start, args)
	}
	name := weatherFile(t, part(t, "02-02", 1))
	golden.Refuse(t, start, []string{"-weather", name, "-no-changes", "-day", "01-15"}, "no such day")
	golden.Refuse(t, start, []string{"-weather", name, "-no-changes", "-day", "x"}, "month and a day")
}

// The plan that is printed has the site and the months of the weather, and is one.
func TestPrintedPlan(t *testing.T) {
	text := golden.Print(t, start, "-print-plan")
	p, err := plan.Parse([]byte(text))
	require.NoError(t, err)
	require.InDelta(t, 36.1, p.Site.Latitude, 1e-9)
	require.InDelta(t, 14.4, (p.Site.Months.Temperature[3]+p.Site.Months.Temperature[9])/2, 1)
	golden.Refuse(t, start, []string{"-print-plan", "-lines"}, "print nothing else")
}

// solved is the plan's house under the weather, with no changes tried.
func solved(t testing.TB, p plan.Filled, s *weather.Series) *answer {
	t.Helper()
	a, err := solve(context.Background(), p, s, options{bare: true}, io.Discard)
	require.NoError(t, err)
	return a
}

// changed is the demo house with a change.
func changed(t testing.TB, change string) plan.Filled {
	t.Helper()
	p, err := plan.Demo().Change([]byte(change))
	require.NoError(t, err)
	return p
}

// Every hour closes, and so does the whole with what soil and structure store;
// the tables of heat close as well.
func TestItCloses(t *testing.T) {
	for _, from := range []string{"01-03", "04-20", "07-08"} {
		a := solved(t, plan.Demo(), part(t, from, 4))
		c, w := a.Account.Closure, a.Account.Whole
		for _, v := range []float64{c.HourHeat, c.HourWater, c.Heat, c.Water} {
			require.Less(t, v, asked, from)
		}
		require.Zero(t, w.Failed)
		in := w.Sun + w.Lamps + w.Heater + w.Burner + w.Water + w.SunCover
		out := w.CoverAir + w.CoverSky + w.Ground + w.Tubes + w.TubeWater + w.Structure + w.Leakage + w.Venting + w.Drying + w.Latent
		require.InEpsilon(t, in, out, asked, from)
		require.InEpsilon(t, w.Drawn+w.Soil+w.Fog+w.Burnt, w.Condensed+w.InTubes+w.Fell+w.Vented, asked, from)
		sum := 0.0
		for _, m := range a.Account.Months {
			sum += m.Heater
		}
		require.InDelta(t, w.Heater, sum, 1e-9*w.Heater)
	}
}

// An interrupt ends the year at once and without an answer.
func TestAnInterruptEnds(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	_, err := solve(ctx, plan.Demo(), part(t, "01-03", 2), options{}, io.Discard)
	require.ErrorIs(t, err, context.Canceled)
}

func TestExplain(t *testing.T) {
	run := golden.Run(func(args []string, out, problems io.Writer) int {
		return run(args, strings.NewReader(""), out, problems)
	})
	require.Contains(t, golden.Print(t, run, "-explain"), "weather_file ")
	require.NotContains(t, golden.Print(t, run, "-explain", "vents"), "weather_file ")
	golden.Refuse(t, run, []string{"more"}, "not understood")
}
