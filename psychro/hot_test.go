package psychro_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
)

// Air from below to far above the boiling point of water, against IAPWS G8-10
// as python-iapws computes it (iapws.humidAir.HumidAir; header of the file), at
// the accuracy that doc.go states.
func TestHotAir(t *testing.T) {
	n, col := psychro.ReadColumns(t, "hotair.csv")
	ts, p, w := col("t_C"), col("p_Pa"), col("humidity_ratio_kg_per_kg")
	v, h, c := col("volume_m3_per_kg_dry_air"), col("enthalpy_J_per_kg_dry_air"), col("heat_capacity_J_per_kg_dry_air_K")
	require.Equal(t, 180, n)
	var worstV, worstH, worstC float64
	for i := range n {
		at := fmt.Sprintf("%g °C, %g kg/kg, %g Pa", ts[i], w[i], p[i])
		s, err := psychro.FromHumidityRatio(ts[i], w[i], p[i])
		require.NoError(t, err, at)
		worstV = max(worstV, math.Abs(s.SpecificVolume()/v[i]-1))
		worstH = max(worstH, math.Abs(s.Enthalpy()-h[i])/max(10, 1e-4*math.Abs(h[i])))
		worstC = max(worstC, math.Abs(s.HeatCapacity()/c[i]-1))
		// What the dew point and the wet bulb are by definition.
		if w[i] > 0 {
			require.InEpsilon(t, w[i], psychro.SaturationHumidityRatio(s.DewPoint(), p[i]), 1e-9, at)
			require.Less(t, s.DewPoint(), s.WetBulb(), at)
		}
		tw := s.WetBulb()
		ws := psychro.SaturationHumidityRatio(tw, p[i])
		wet, err := psychro.FromRelativeHumidity(tw, 1, p[i])
		require.NoError(t, err, at)
		require.InDelta(t, 0, wet.Enthalpy()-(ws-w[i])*psychro.LiquidEnthalpy(tw)-s.Enthalpy(), 1e-4, at)
		require.Less(t, tw, ts[i], at)
	}
	t.Logf("worst: volume %.5f %%, enthalpy %.3f of the room, heat capacity %.3f %%", 100*worstV, worstH, 100*worstC)
	require.Less(t, worstV, 2e-5)
	require.Less(t, worstH, 1.0)
	require.Less(t, worstC, 2e-4)
}
