package psychro_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
)

// TestRealGasAgainstTheReferenceGrid holds the bars that doc.go states.
func TestRealGasAgainstTheReferenceGrid(t *testing.T) {
	n, col := psychro.ReadColumns(t, "realgas.csv")
	ts, rh, p := col("t_C"), col("rh"), col("p_Pa")
	w, h, v := col("humidity_ratio_kg_per_kg"), col("enthalpy_J_per_kg_dry_air"), col("volume_m3_per_kg_dry_air")
	td, tw, f := col("dew_point_C"), col("wet_bulb_C"), col("enhancement_factor")
	x, cp := col("water_mole_fraction"), col("cp_J_per_kg_dry_air_K")
	seen := 0
	for i := range n {
		if ts[i] > 80 {
			continue
		}
		at := fmt.Sprintf("%g °C, %g, %g Pa", ts[i], rh[i], p[i])
		s, err := psychro.FromRelativeHumidity(ts[i], rh[i], p[i])
		require.NoError(t, err, at)
		seen++
		hot := ts[i] > 60
		bar := func(cool, warm float64) float64 {
			if hot {
				return warm
			}
			return cool
		}
		require.InDelta(t, w[i], s.HumidityRatio(), bar(1e-4, 3e-4)*w[i], at)
		require.InDelta(t, x[i], s.MoleFraction(), bar(1e-4, 2e-4)*x[i], at)
		require.InDelta(t, h[i], s.Enthalpy(), max(20, 3e-4*math.Abs(h[i])), at)
		require.InEpsilon(t, v[i], s.SpecificVolume(), bar(4e-5, 2e-4), at)
		require.InEpsilon(t, f[i], psychro.EnhancementFactor(ts[i], p[i]), bar(7e-5, 1.5e-4), at)
		require.InEpsilon(t, cp[i], s.HeatCapacity(), bar(2e-3, 6e-3), at)
		if rh[i] > 0 {
			require.InDelta(t, td[i], s.DewPoint(), bar(0.001, 0.002), at)
		} else {
			require.True(t, math.IsNaN(s.DewPoint()), at)
		}
		if math.Abs(tw[i]) >= 1 {
			require.InDelta(t, tw[i], s.WetBulb(), bar(0.0021, 0.003), at)
		} else if rh[i] > 0 { // the branch may differ: put the reference's bulb back into the balance
			back, err := psychro.FromWetBulb(ts[i], min(tw[i], ts[i]), p[i])
			require.NoError(t, err, at)
			require.InDelta(t, w[i], back.HumidityRatio(), 1.5e-6, at)
		}
	}
	require.Equal(t, 512, seen)
}

// A dew point from the humidity ratio has the whole error of the enhancement
// factor, which cancels where the relative humidity is given.
func TestDewPointFromTheHumidityRatio(t *testing.T) {
	n, col := psychro.ReadColumns(t, "realgas.csv")
	ts, rh, p, w, td := col("t_C"), col("rh"), col("p_Pa"), col("humidity_ratio_kg_per_kg"), col("dew_point_C")
	worst, seen := 0.0, 0
	for i := range n {
		s, err := psychro.FromHumidityRatio(ts[i], w[i], p[i])
		if rh[i] == 0 || ts[i] > 80 || err != nil { // saturated by the reference, a little more by us
			continue
		}
		seen++
		room := 0.0015
		if ts[i] > 60 {
			room = 0.003
		} else {
			worst = max(worst, math.Abs(td[i]-s.DewPoint()))
		}
		require.InDelta(t, td[i], s.DewPoint(), room, "%g °C, %g, %g Pa", ts[i], rh[i], p[i])
	}
	require.Greater(t, seen, 350)
	require.Greater(t, worst, 0.001, "then doc.go can state less")
}

// At given humidity ratio the volume and the enthalpy are free of the error of
// the enhancement factor.
func TestRealGasAtGivenHumidityRatio(t *testing.T) {
	n, col := psychro.ReadColumns(t, "realgas.csv")
	ts, p, w := col("t_C"), col("p_Pa"), col("humidity_ratio_kg_per_kg")
	h, v := col("enthalpy_J_per_kg_dry_air"), col("volume_m3_per_kg_dry_air")
	for i := range n {
		if ts[i] > 60 {
			continue
		}
		s, err := psychro.FromHumidityRatio(ts[i], w[i]*(1-1e-4), p[i])
		require.NoError(t, err)
		dw := w[i] - s.HumidityRatio()
		require.InDelta(t, h[i], s.Enthalpy()+dw*2.6e6, 20)
		require.InEpsilon(t, v[i], s.SpecificVolume()*(1+1.6*dw), 5e-5)
	}
}

func TestIdealGasAgainstTheHandbookGrid(t *testing.T) {
	n, col := psychro.ReadColumns(t, "handbook.csv")
	ts, rh, p := col("t_C"), col("rh"), col("p_Pa")
	w, h, v := col("humidity_ratio_kg_per_kg"), col("enthalpy_J_per_kg_dry_air"), col("volume_m3_per_kg_dry_air")
	td, tw := col("dew_point_C"), col("wet_bulb_C")
	e, ps, mu := col("vapour_pressure_Pa"), col("psat_Pa"), col("degree_of_saturation")
	seen := 0
	for i := range n {
		if ps[i] >= p[i] || rh[i] == 0 { // refused by us; dry air clamped by the grid
			continue
		}
		seen++
		at := fmt.Sprintf("%g °C, %g, %g Pa", ts[i], rh[i], p[i])
		s, err := psychro.IdealGas.FromRelativeHumidity(ts[i], rh[i], p[i])
		require.NoError(t, err, at)
		require.InEpsilon(t, ps[i], psychro.HylandWexler(psychro.SurfaceAt(ts[i]), ts[i]), 1e-9, at)
		require.InEpsilon(t, e[i], s.VapourPressure(), 1e-9, at)
		require.InEpsilon(t, w[i], s.HumidityRatio(), 1e-9, at)
		require.InEpsilon(t, mu[i], s.DegreeOfSaturation(), 1e-9, at)
		require.InDelta(t, h[i], s.Enthalpy(), 1e-6*max(1000, math.Abs(h[i])), at)
		require.InEpsilon(t, v[i], s.SpecificVolume(), 1e-9, at)
		require.InDelta(t, td[i], s.DewPoint(), 0.001, at)
		if math.Abs(tw[i]) >= 1 {
			require.InDelta(t, tw[i], s.WetBulb(), 0.001, at)
		}
	}
	require.Equal(t, 448, seen)
}

func TestSaturationAgainstIapws(t *testing.T) {
	n, col := psychro.ReadColumns(t, "saturation.csv")
	ts, if97, full := col("t_C"), col("psat_liquid_IF97eq30_Pa"), col("psat_liquid_IAPWS95_maxwell_Pa")
	cold, ice := col("psat_supercooled_G12IAPWS95_Pa"), col("psat_ice_R14_08_Pa")
	liquid := 0
	for i := range n {
		at := fmt.Sprintf("%g °C", ts[i])
		if ts[i] >= -40 && ts[i] <= 110 {
			got := psychro.SaturationPressureOver(psychro.Liquid, ts[i])
			require.InEpsilon(t, if97[i], got, 1e-9, at)
			if ts[i] >= 0.01 && !math.IsNaN(full[i]) {
				liquid++
				require.InEpsilon(t, full[i], got, 1e-4, at)
			}
			switch {
			case math.IsNaN(cold[i]):
			case ts[i] >= -20 && ts[i] <= 0:
				require.InEpsilon(t, cold[i], got, 1e-4, at)
			case ts[i] >= -30 && ts[i] <= 0:
				require.InEpsilon(t, cold[i], got, 6e-4, at)
			}
		}
		if !math.IsNaN(ice[i]) && ts[i] <= 0.01 {
			require.InEpsilon(t, ice[i], psychro.SaturationPressureOver(psychro.Ice, ts[i]), 2e-8, at)
		}
	}
	require.Greater(t, liquid, 20)
}

// A second reference, which shares no equation with the first: IAPWS SeaAir.
func TestRealGasAgainstSeaAir(t *testing.T) {
	n, col := psychro.ReadColumns(t, "seaair.csv")
	ts, p, w := col("t_C"), col("p_Pa"), col("W")
	v, f, h := col("v_iapws_seaair_m3_per_kg_da"), col("f_iapws_seaair"), col("h_iapws_shifted_J_per_kg_da")
	factors := 0
	for i := range n {
		at := fmt.Sprintf("%g °C, W %g, %g Pa", ts[i], w[i], p[i])
		limit := psychro.SaturationHumidityRatio(ts[i], p[i])
		s, err := psychro.FromHumidityRatio(ts[i], min(w[i], limit), p[i])
		require.NoError(t, err, at)
		over := w[i] - s.HumidityRatio()
		require.Less(t, over, 3e-4*limit, at)
		bar := 6e-5
		if ts[i] > 60 {
			bar = 2e-4
		}
		require.InEpsilon(t, v[i], s.SpecificVolume()*(1+1.6*over/(1+1.6*w[i])), bar, at)
		require.InDelta(t, h[i], s.Enthalpy()+over*2.6e6, max(20, 3e-4*math.Abs(h[i])), at)
		if !math.IsNaN(f[i]) {
			factors++
			require.InEpsilon(t, f[i], psychro.EnhancementFactor(ts[i], p[i]), 2.2e-4, at)
		}
	}
	require.Greater(t, factors, 10)
}

// Random states by a formulation that shares no equation with ours but ice's
// and the air-water coefficient: the 0.014 % of the humidity ratio are its
// distance from the first reference too.
func TestRealGasAgainstIapwsAtRandomStates(t *testing.T) {
	n, col := psychro.ReadColumns(t, "iapws_random.csv")
	ts, rh, p, w := col("t_C"), col("rh"), col("p_Pa"), col("humidity_ratio_kg_per_kg")
	v, h, td, tw := col("volume_m3_per_kg_dry_air"), col("enthalpy_J_per_kg_dry_air"), col("dew_point_C"), col("wet_bulb_C")
	require.GreaterOrEqual(t, n, 150)
	for i := range n {
		at := fmt.Sprintf("%g °C, %g, %g Pa", ts[i], rh[i], p[i])
		s, err := psychro.FromRelativeHumidity(ts[i], rh[i], p[i])
		require.NoError(t, err, at)
		require.InEpsilon(t, w[i], s.HumidityRatio(), 2e-4, at)
		require.InDelta(t, td[i], s.DewPoint(), 0.002, at)
		if math.Abs(tw[i]) > 1 {
			require.InDelta(t, tw[i], s.WetBulb(), 0.002, at)
		}
		s, err = psychro.FromHumidityRatio(ts[i], w[i], p[i])
		require.NoError(t, err, at)
		limit := 2.5e-5
		if ts[i] > 60 {
			limit = 1e-4
		}
		require.InEpsilon(t, v[i], s.SpecificVolume(), limit, at)
		require.InDelta(t, h[i], s.Enthalpy(), max(12, 1e-4*math.Abs(h[i])), at)
	}
}
