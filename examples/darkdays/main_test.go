package main

import (
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/demo"
	"cloche.example/internal/golden"
	"cloche.example/internal/year"
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
	require.Contains(t, strings.Join(strings.Fields(out), " "), demo.Note)
	require.Contains(t, out, "not a safety assessment")
}

func TestInventedYearLooksLikeOne(t *testing.T) {
	g := year.Demo().Sun
	require.Len(t, g, 8760)
	sum := 0.0
	for h, v := range g {
		require.True(t, v >= 0 && v < 1100)
		if h%24 < 2 {
			require.Zero(t, v)
		}
		sum += v / 1000
	}
	require.InDelta(t, 1100, sum, 150, "kWh/m² a year, usual in central Europe; common practice, no source")
}

// Hours of 100 W/m² all day and all year: 100 x 2.016 x 0.62 µmol/(m² s) make
// 10.8 mol/(m² d); 6.2 to 17 are missing, 8.62 h at 200 µmol/(m² s).
func TestYearFromAFile(t *testing.T) {
	hours := strings.Repeat("100\n", 8760)
	out := golden.Print(t, with("# W/m²\n"+hours), "-global", "-")
	require.NotContains(t, out, "invented")
	require.Regexp(t, `50 % of the days have less daylight than\s+10.80  mol`, out)
	require.Regexp(t, `Lamps burn\s+3143  h`, out)
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, c := range []struct {
		say  string
		args []string
	}{
		{`no crop "mandrake"; there are: "lettuce"`, []string{"-crop", "mandrake"}},
		{"Target is NaN", []string{"-target", "NaN"}},
		{"Target is 90, allowed 0 to 80", []string{"-target", "90"}},
		{"Transmittance is 62", []string{"-transmittance", "62"}},
		{"PPFD is -1", []string{"-ppfd", "-1", "-from", "30"}},
		{"from is 30", []string{"-ppfd", "-1", "-from", "30"}},
		{"until is -4", []string{"-from", "20", "-until", "-4"}},
		{"efficacy 0", []string{"-efficacy", "0"}},
		{"on-bed 85", []string{"-on-bed", "85"}},
		{"area is 0", []string{"-area", "0"}},
		{"price is NaN", []string{"-price", "NaN"}},
		{"nosuch", []string{"-global", "nosuch"}},
		{"Global has 2 hours, want a whole year of 8760", []string{"-global", "-"}},
		{`"more" is not understood`, []string{"more"}},
		{"-x", []string{"-x"}},
		{"PerJoule is 4.6", []string{"-per-joule", "4.6"}},
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

// The days of the report that take longer than the lamps may burn say so.
func TestDarkDaysBeyondTheHoursAllowed(t *testing.T) {
	require.Regexp(t, `lamps +21\.1 +h, longer than they may burn`, golden.Print(t, with("")))
	require.Regexp(t, `lamps +- +longer than a day`, golden.Print(t, with(""), "-ppfd", "100"))
}

// Hours of the night lie across midnight.
func TestDarkDaysAtNight(t *testing.T) {
	page := golden.Print(t, with(strings.Repeat("0\n", 8760)), "-global", "-", "-from", "20", "-until", "4", "-ppfd", "200")
	require.Regexp(t, `Lamps burn +2920 +h`, page)
	require.Regexp(t, `lamps +23\.6 +h, longer than they may burn`, page)
}

func TestPicture(t *testing.T) {
	file := filepath.Join(t.TempDir(), "year.svg")
	golden.Print(t, with(""), "-figure", file)
	picture, err := os.ReadFile(file)
	require.NoError(t, err)
	for _, want := range []string{"lamps", "daylight", "wanted, 17", "Dec", "invented"} {
		require.Contains(t, string(picture), want)
	}
	golden.Print(t, with(strings.Repeat("50\n", 8784)), "-global", "-", "-figure", file)
}
