package ventilation_test

import (
	"bufio"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

// cases reads a testdata file into rows grouped by their first column.
func cases(t *testing.T, name string) [][][]float64 {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	require.NoError(t, err)
	defer f.Close()
	var out [][][]float64
	for s := bufio.NewScanner(f); s.Scan(); {
		if strings.HasPrefix(s.Text(), "#") {
			continue
		}
		var row []float64
		for _, field := range strings.Split(s.Text(), ",") {
			v, err := strconv.ParseFloat(field, 64)
			require.NoError(t, err)
			row = append(row, v)
		}
		if row[5] == 0 {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], row)
	}
	require.NotEmpty(t, out)
	return out
}

// points compares one file of point openings: flows to 1e-8, and the inside
// pressure to 1e-9 Pa or what float64 leaves of a large wind pressure.
func points(t *testing.T, name string) {
	for _, rows := range cases(t, name) {
		var o []ventilation.Opening
		for _, r := range rows {
			o = append(o, ventilation.Opening{Height: r[6], Area: r[7], Discharge: r[8], Coefficient: r[9]})
		}
		b := solveNet(t, build(t, o...), dry(t, rows[0][1], rows[0][2], rows[0][3]))
		require.InDelta(t, rows[0][4], b.Pressure, 1e-11+4e-16*math.Abs(rows[0][4]), "case %v", rows[0][0])
		for i, r := range rows {
			// The flow goes as the root of the drive: near none it holds absolutely.
			require.InDelta(t, r[10], b.Paths[i].Net(), 1e-9*math.Abs(r[10])+1e-7*r[7]*r[8], "case %v opening %v", r[0], i)
			if math.Abs(b.Paths[i].Drive) > 1e-3 {
				require.InEpsilon(t, r[10], b.Paths[i].Net(), 1e-9, "case %v opening %v", r[0], i)
			}
		}
	}
}

func TestPointsAgainstExtendedPrecision(t *testing.T) {
	points(t, "network_small.csv")
	points(t, "network_extreme.csv")
}

func tall(t *testing.T, name string) {
	for _, rows := range cases(t, name) {
		var o []ventilation.Opening
		for _, r := range rows {
			o = append(o, ventilation.Opening{Height: 0.5 * (r[6] + r[7]), Vertical: r[7] - r[6], Area: r[8] * (r[7] - r[6]), Discharge: r[9], Coefficient: r[10]})
		}
		b := solveNet(t, build(t, o...), dry(t, rows[0][1], rows[0][2], rows[0][3]))
		require.InDelta(t, rows[0][4], b.Pressure, 1e-10+1e-15*math.Abs(rows[0][4]), "case %v", rows[0][0])
		for i, r := range rows {
			require.InDelta(t, r[11], b.Paths[i].In, 1e-9*(1+r[11]+r[12]), "case %v opening %v", r[0], i)
			require.InDelta(t, r[12], b.Paths[i].Out, 1e-9*(1+r[11]+r[12]), "case %v opening %v", r[0], i)
		}
	}
}

func TestTallAgainstQuadrature(t *testing.T) {
	tall(t, "network_tall.csv")
	tall(t, "network_tall_extreme.csv")
}
