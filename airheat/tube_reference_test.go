package airheat

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// Four tubes, one of which draws house air in, against a plain march worked apart
// from the library.
func TestTubesWorkedApart(t *testing.T) {
	rows := map[int][][]float64{}
	for _, r := range check.Numbers(t, "tube.csv") {
		rows[int(r[0])] = append(rows[int(r[0])], r)
	}
	for k, c := range []struct {
		tube   PerforatedTube
		supply TubeSupply
	}{
		{PerforatedTube{Diameter: 0.4, Roughness: 1.5e-6, LeadIn: 2, Pitch: 0.5, Positions: 40, HolesPerRow: 2, HoleDiameter: 0.04, Discharge: 0.65, Regain: 1, HeatTransfer: 6},
			TubeSupply{0.8, 40, 12, AirProperties{1.12, 1.9e-5, 1006}}},
		{PerforatedTube{Diameter: 0.3, Roughness: 1e-4, Pitch: 0.3, Positions: 30, HolesPerRow: 4, HoleDiameter: 0.058, Discharge: 0.62, Regain: 1, HeatTransfer: 5},
			TubeSupply{0.5, 35, 15, AirProperties{1.15, 1.88e-5, 1006}}},
		{PerforatedTube{Diameter: 0.5, Roughness: 1.5e-6, LeadIn: 1, Pitch: 0.2, Positions: 24, HolesPerRow: 6, HoleDiameter: 0.075, Discharge: 0.7, Regain: 0.95, HeatTransfer: 4},
			TubeSupply{1.1, 10, 22, AirProperties{1.2, 1.8e-5, 1006}}},
		{PerforatedTube{Diameter: 0.25, Roughness: 3e-4, LeadIn: 3, Pitch: 1, Positions: 60, HolesPerRow: 2, HoleDiameter: 0.02, Discharge: 0.6, Regain: 0.7, HeatTransfer: 8},
			TubeSupply{0.12, 55, 5, AirProperties{1.05, 1.95e-5, 1006}}},
	} {
		t.Run(fmt.Sprint(k), func(t *testing.T) {
			f, err := c.tube.Solve(c.supply)
			require.NoError(t, err)
			require.Len(t, rows[k], c.tube.Positions)
			for i, r := range rows[k] {
				p := f.Positions[i]
				require.InDelta(t, r[2], p.Pressure, 1e-7*(1+f.FanTotal), "pressure, row %d", i)
				require.InDelta(t, r[3], p.Flow, 2e-9*c.supply.Flow, "flow, row %d", i)
				require.InEpsilon(t, r[4], p.Velocity, 1e-7, "velocity, row %d", i)
				require.InDelta(t, r[5], p.Temperature, 1e-6, "air, row %d", i)
			}
			first := rows[k][0]
			require.InDelta(t, first[6], f.FanPressure, 1e-7*(1+f.FanTotal))
			require.InDelta(t, first[7], f.Evenness, 1e-7)
			require.EqualValues(t, first[8], f.Reversed)
			require.InEpsilon(t, first[9], f.WallHeat, 1e-7)
			require.InEpsilon(t, first[10], f.HolesHeat, 1e-7)
		})
	}
}
