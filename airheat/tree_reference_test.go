package airheat

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// Trees with and without tees, outlets against pressure among them, and their
// dampers, against numbers worked apart from the library.
func TestTreesWorkedApart(t *testing.T) {
	cases := map[float64][][]float64{}
	for _, r := range check.Numbers(t, "tree.csv") {
		cases[r[0]] = append(cases[r[0]], r)
	}
	require.Len(t, cases, 14)
	for number, rows := range cases {
		t.Run(fmt.Sprint(number), func(t *testing.T) {
			var b []Branch
			var wanted []float64
			for _, r := range rows {
				b = append(b, Branch{Parent: int(r[1]), Static: r[6], Junction: Junction(r[7]), Angle: r[8],
					Segments: []Segment{{Section: Round(r[2]), Length: r[3], Roughness: r[4], Fittings: r[5]}}})
				wanted = append(wanted, r[14])
			}
			tree, err := NewTree(b...)
			require.NoError(t, err)
			first := rows[0]
			air := AirProperties{Density: first[9], Viscosity: first[10], HeatCapacity: 1006}
			f, err := tree.Solve(first[11], air)
			require.NoError(t, err)
			require.InEpsilon(t, first[13], f.Pressure, 1e-8)
			for i, r := range rows {
				require.InDelta(t, r[12], f.Branches[i].Flow, 1e-8*first[11])
			}
			factors, pressure, err := tree.Dampers(wanted, air)
			require.NoError(t, err)
			require.InEpsilon(t, first[16], pressure, 1e-11)
			for i, r := range rows {
				require.InDelta(t, r[15], factors[i], 1e-9*(1+r[15]))
			}
		})
	}
}
