package airheat

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// storesWorkedApart are a store of few wide tubes and one of many narrow ones.
func storesWorkedApart() (first, second SoilStore) {
	first = DefaultSoilStore()
	first.Tubes, first.Diameter, first.Length, first.Spacing = 8, 0.16, 12, 0.5
	first.SoilConductivity, first.SoilCapacity, first.Film, first.Depth, first.Above = 2, 2e6, 6, 0.5, 15
	second = first
	second.Tubes, second.Diameter, second.Length, second.Spacing = 20, 0.1, 20, 0.3
	second.SoilConductivity, second.SoilCapacity, second.Film, second.Depth, second.Above = 1.2, 2.6e6, 12, 0.6, 18
	return first, second
}

// Two soil stores, charged, at rest and emptied from the far end, against numbers
// worked apart from the library: on the same cells and steps, and on finer ones.
func TestSoilStoresWorkedApart(t *testing.T) {
	rows := check.Numbers(t, "soilstore.csv")
	require.Len(t, rows, 96)
	first, second := storesWorkedApart()
	for k, c := range []struct {
		store          SoilStore
		start, density float64
	}{{first, 14, 1.18}, {second, 12, 1.15}} {
		t.Run(fmt.Sprint(k), func(t *testing.T) {
			s, err := NewSoilStore(c.store, c.start)
			require.NoError(t, err)
			air := AirProperties{Density: c.density, Viscosity: 1.8e-5, HeatCapacity: 1006}
			most, fine, coarse := 0.0, 0.0, 0.0
			for _, r := range rows {
				most = math.Max(most, math.Abs(r[7]))
			}
			for _, r := range rows {
				if int(r[0]) != k {
					continue
				}
				got, err := s.Step(r[1], r[2], air, time.Hour, r[3] == 1)
				require.NoError(t, err)
				require.InDelta(t, r[4], got.Heat, 1e-7)
				require.InDelta(t, r[5], got.Up, 1e-7)
				require.InDelta(t, r[6], got.Outlet, 1e-9)
				require.InDelta(t, r[7], got.Heat, 0.025*most)
				fine += r[7]
				coarse += got.Heat
			}
			require.InEpsilon(t, fine, coarse, 0.01)
		})
	}
}
