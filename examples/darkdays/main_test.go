package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/demo"
	"cloche.example/internal/year"
)

func call(stdin string, args ...string) (status int, out, problems string) {
	var o, p bytes.Buffer
	status = run(args, strings.NewReader(stdin), &o, &p)
	return status, o.String(), p.String()
}

func TestDemoRunsAndSaysItIsInvented(t *testing.T) {
	status, out, problems := call("")
	require.Equal(t, 0, status, problems)
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
	status, out, problems := call("# W/m²\n"+hours, "-global", "-")
	require.Equal(t, 0, status, problems)
	require.NotContains(t, out, "invented")
	require.Regexp(t, `50 % of the days have less daylight than\s+10.80  mol`, out)
	require.Regexp(t, `Lamps burn\s+3143  h`, out)
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, args := range [][]string{
		{"-crop", "mandrake"}, {"-target", "NaN"}, {"-target", "90"}, {"-transmittance", "62"}, {"-ppfd", "-1", "-from", "30"}, {"-from", "20", "-until", "4"},
		{"-efficacy", "0"}, {"-on-bed", "85"}, {"-area", "0"}, {"-price", "NaN"}, {"-global", "nosuch"}, {"-global", "-"}, {"more"}, {"-x"}, {"-per-joule", "4.6"},
	} {
		status, out, problems := call("1\n2\n", args...)
		require.Equal(t, 2, status, args)
		require.Empty(t, out)
		require.Equal(t, 1, strings.Count(problems, "\n"), problems)
		t.Log(problems)
	}
	status, _, problems := call("1\nx\n", "-global", "-")
	require.Equal(t, 2, status)
	require.Contains(t, problems, `line 2: "x"`)
	status, out, _ := call("", "-h")
	require.Equal(t, 0, status)
	require.Contains(t, out, "-off-above")
}
