package golden

import (
	"fmt"
	"io"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestDifference(t *testing.T) {
	for _, same := range [][2]string{
		{"loss  12.3  W", "loss  12.3  W"},
		{"loss  12.3  W", "loss  12.4  W"},       // one in the last place
		{"t   -0.0  °C", "t    0.0  °C"},         // sign of a zero, and the space it takes
		{"flow  99  kg", "flow 100  kg"},         // a digit more
		{"x 0.123456789012", "x 0.123456789013"}, // long numbers to 1e-9
		{"a 1\nb 2.50\n", "a 1\nb 2.51\n"},       // lines
	} {
		require.Empty(t, difference(same[0], same[1]))
	}
	for _, differ := range [][2]string{
		{"loss  12.3  W", "loss  12.5  W"},
		{"loss  12.3  W", "gain  12.3  W"},
		{"loss  12.3  W", "loss  12.3  kW"},
		{"x 0.1234567890", "x 0.1234568"},
		{"x 1.0e+10", "x 1.1e+10"},
		{"1 2", "1 2 3"},
		{"3 rows", "4 rows"},
		{"x NaN", "x 1"},
	} {
		require.NotEmpty(t, difference(differ[0], differ[1]))
	}
}

func TestPrintAndRefuse(t *testing.T) {
	run := func(args []string, out, problems io.Writer) int {
		if len(args) > 0 {
			fmt.Fprintln(problems, "wrong:", args[0])
			return 2
		}
		fmt.Fprint(out, "text")
		return 0
	}
	require.Equal(t, "text", Print(t, run))
	Refuse(t, run, []string{"word"}, "wrong", "word")
}
