package airheat

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/internal/check"
)

// Three houses opened to the frost against numbers worked apart from the
// library: the same layers to the stated error of the steps, a column of 200
// even layers to that of the layers.
func TestFreezeOutsWorkedApart(t *testing.T) {
	cases := []FreezeOut{
		{Nodes: envelope.Nodes{AirCapacity: 4.2e5, StructureCapacity: 2.6e6, Cover: 640, Leakage: 2500, AirStructure: 780, StructureOutside: 35},
			Soil:   SoilColumn{Area: 90, Depth: 1, Layers: 24, Dry: 1.2e6, Water: 200, Thawed: 1.1, Frozen: 1.7, Surface: 6, FreezingSpan: 0.5},
			WetAir: 250, Deep: 7, Start: 6, AirLimit: -4, SoilLimit: -1},
		{Nodes: envelope.Nodes{AirCapacity: 9e5, StructureCapacity: 8e6, Cover: 1100, Leakage: 60, CoverSky: 150, AirStructure: 1500, StructureOutside: 10},
			Soil:   SoilColumn{Area: 200, Depth: 0.6, Layers: 12, Dry: 1.5e6, Water: 350, Thawed: 0.8, Frozen: 1.6, Surface: 4, FreezingSpan: 1.2},
			WetAir: 600, Deep: 4, Start: 9, SkyDrop: 12, Heat: 800},
		{Nodes: envelope.Nodes{AirCapacity: 2e5, StructureCapacity: 1e6, Cover: 300, Leakage: 400, CoverSky: 20, AirStructure: 300},
			Soil: SoilColumn{Area: 40, Depth: 2, Layers: 40, Dry: 2e6, Water: 80, Thawed: 2, Frozen: 2.5, Surface: 9, FreezingSpan: 0.1},
			Deep: 10, Start: 2, SkyDrop: 20, AirLimit: -6, SoilLimit: -2},
	}
	rows := make([][][]float64, len(cases))
	for _, r := range check.Numbers(t, "freeze.csv") {
		k := int(r[0])
		cases[k].Outside = append(cases[k].Outside, r[1])
		rows[k] = append(rows[k], r)
	}
	for k, f := range cases {
		t.Run(fmt.Sprint(k), func(t *testing.T) {
			require.GreaterOrEqual(t, len(f.Outside), 48)
			c, err := f.Solve()
			require.NoError(t, err)
			for h, r := range rows[k] {
				require.InDelta(t, r[2], c.Air[h], 0.01, "air, hour %d", h)
				require.InDelta(t, r[3], c.Surface[h], 0.01, "surface, hour %d", h)
				require.InDelta(t, r[7], c.Air[h], 0.1, "air of 200 layers, hour %d", h)
				require.InDelta(t, r[8], c.Surface[h], 0.2, "surface of 200 layers, hour %d", h)
			}
			first := rows[k][0]
			require.InDelta(t, first[4], c.FrostDepth, 2e-4)
			require.False(t, math.IsNaN(first[5]))
			require.InDelta(t, first[5], c.AirFirst.Seconds(), 5)
			require.False(t, math.IsNaN(first[6]))
			require.InDelta(t, first[6], c.SurfaceFirst.Seconds(), 5+2e-3*first[6])
		})
	}
}
