package report_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/report"
)

func TestNumber(t *testing.T) {
	require.Equal(t, "0.0", report.Number(-0.04, 1))
	require.Equal(t, "-0.1", report.Number(-0.06, 1))
	require.Equal(t, "1234", report.Number(1234.4, 0))
	require.Equal(t, "-", report.Number(math.NaN(), 2))
	require.Equal(t, "never", report.Number(math.Inf(1), 2))
}

func TestReport(t *testing.T) {
	var r report.Report
	r.Title("A house")
	r.Section("Air")
	r.Value("temperature", -12.34, 1, "°C")
	r.Text("drips", "no", "")
	r.Table([]string{"facet", "m²"}, [][]string{{"roof", "93.1"}, {"wall", "8.0"}})
	require.Equal(t, "A house\n=======\n\nAir\n---\n"+
		"temperature                                            -12.3  °C\n"+
		"drips                                                     no\n"+
		"facet    m²\nroof   93.1\nwall    8.0\n", r.String())
}

func TestNoteWraps(t *testing.T) {
	var r report.Report
	r.Note("one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen")
	require.Equal(t, "  one two three four five six seven eight nine ten eleven twelve thirteen\n  fourteen fifteen sixteen\n", r.String())
}
