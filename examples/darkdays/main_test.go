package main

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
	"cloche.example/internal/golden"
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

func TestInventedYearLooksLikeOne(t *testing.T) {
	p := plan.Demo()
	g := invented(&p.Plan)
	require.Len(t, g, 8760)
	sum, january := 0.0, 0.0
	for h, v := range g {
		require.True(t, v >= 0 && v < 1100)
		if h%24 < 2 {
			require.Zero(t, v)
		}
		sum += v / 1000
		if h < 31*24 {
			january += v * 3600 / 31e6
		}
	}
	require.InDelta(t, p.Site.Months.Sun[0], january, 1e-9)
	require.InDelta(t, 1100, sum, 150, "kWh/m² a year, usual in central Europe; common practice, no source")
}

// Hours of 100 W/m² all day and all year: 100 µmol/J times the share that comes
// in, and what is missing of 17 at 200 µmol/(m² s).
func TestYearFromAFile(t *testing.T) {
	hours := strings.Repeat("100\n", 8760)
	args := []string{"-global", "-", "-ppfd", "200", "-wanted", "17", "-per-joule", "2"}
	out := golden.Print(t, with("# W/m²\n"+hours), args...)
	require.NotContains(t, out, "invented year")
	var d struct {
		Answer struct {
			Transmittance float64 `json:"daylight_on_bed_over_outside_fraction"`
			Burn          float64 `json:"lamps_h"`
			Months        []found `json:"months"`
		} `json:"answer"`
	}
	require.NoError(t, json.Unmarshal([]byte(golden.Print(t, with(hours), append(args, "-json")...)), &d))
	require.Len(t, d.Answer.Months, 12)
	daylight := 100 * 2 * d.Answer.Transmittance * 86400 / 1e6
	require.InDelta(t, 31*daylight, d.Answer.Months[0].Daylight, 1e-6)
	require.InDelta(t, 365*(17-daylight)*1e6/200/3600, d.Answer.Burn, 1)
}

// The plan's weather counts, and only a whole year of it.
func TestWeatherFile(t *testing.T) {
	real, err := weather.Greensboro()
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "year.csv")
	var b, bare strings.Builder
	at := real.Site
	fmt.Fprintf(&b, "# Cloche weather 1\n# latitude_deg: %g\n# longitude_deg: %g\n# zone_h: %g\n# altitude_m: %g\n", at.Latitude, at.Longitude, at.Zone, at.Altitude)
	b.WriteString("temperature_c,relative_humidity,global_w_m2\n")
	for i, v := range real.Global {
		fmt.Fprintf(&b, "%g,%g,%g\n", real.Temperature[i], min(1, real.RelativeHumidity[i]), v)
		fmt.Fprintln(&bare, v)
		if i == 47 {
			require.NoError(t, os.WriteFile(file, []byte(b.String()), 0o600))
			golden.Refuse(t, with(""), []string{"-weather", file})
		}
	}
	require.NoError(t, os.WriteFile(file, []byte(b.String()), 0o600))
	out := golden.Print(t, with(`{"site": {"weather_file": "`+file+`"}}`), "-plan", "-")
	require.NotContains(t, out, "is invented:")
	empty := filepath.Join(t.TempDir(), "plan.json")
	require.NoError(t, os.WriteFile(empty, []byte("{}"), 0o600))
	require.Equal(t, out, golden.Print(t, with(bare.String()), "-global", "-", "-plan", empty))
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, c := range []struct {
		say  string
		args []string
	}{
		{`no crop "mandrake"; there are: "lettuce"`, []string{"-crop", "mandrake"}},
		{"-wanted is NaN", []string{"-wanted", "NaN"}},
		{"-wanted is 90", []string{"-wanted", "90"}},
		{"-ppfd -1", []string{"-ppfd", "-1"}},
		{"-from is 30", []string{"-from", "30"}},
		{"-photoperiod is -4", []string{"-photoperiod", "-4"}},
		{"-price is NaN", []string{"-price", "NaN"}},
		{"nosuch", []string{"-global", "nosuch"}},
		{"Global has 2 hours, want a whole year of 8760", []string{"-global", "-"}},
		{`"more" is not understood`, []string{"more"}},
		{"-x", []string{"-x"}},
		{"-per-joule is 4.6", []string{"-per-joule", "4.6"}},
		{`"x.bmp": the name must end in .svg`, []string{"-figure", "x.bmp"}},
		{"no/such", []string{"-figure", "no/such/year.svg"}},
	} {
		golden.Refuse(t, with("1\n2\n"), c.args, "darkdays: ", c.say)
	}
	golden.Refuse(t, with("1\nx\n"), []string{"-global", "-"}, `line 2: "x"`)
	golden.Refuse(t, with(strings.Repeat("1\n", 8785)), []string{"-global", "-"}, "line 8785: more than the 8784 hours")
	golden.Refuse(t, with(strings.Repeat("1\n", 8759)+"-1\n"), []string{"-global", "-"}, "Global[8759] is -1")
	require.Contains(t, golden.Print(t, with(""), "-h"), "-off-above")
}

// Hours of the night lie across midnight: eight a day, too few for the light
// wanted.
func TestDarkDaysAtNight(t *testing.T) {
	page := golden.Print(t, with(strings.Repeat("0\n", 8760)), "-global", "-", "-from", "20", "-photoperiod", "8", "-ppfd", "200", "-wanted", "17")
	require.Regexp(t, `Lamps burn +2920 +h`, page)
	require.Regexp(t, `lamps +23\.6 +h, longer than they may burn`, page)
	require.Contains(t, golden.Print(t, with(""), "-ppfd", "100", "-wanted", "17"), "longer than a day")
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

func TestPicture(t *testing.T) {
	file := filepath.Join(t.TempDir(), "year.svg")
	golden.Print(t, with(""), "-figure", file)
	picture, err := os.ReadFile(file)
	require.NoError(t, err)
	for _, want := range []string{"lamps", "daylight", "wanted, ", "Dec", "invented"} {
		require.Contains(t, string(picture), want)
	}
	golden.Print(t, with(strings.Repeat("50\n", 8784)), "-global", "-", "-figure", file)
}
