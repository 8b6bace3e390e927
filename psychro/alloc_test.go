package psychro_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
)

// Scalar paths allocate nothing, the inverses included.
func TestNoAllocations(t *testing.T) {
	for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
		base := must(t)(m.FromRelativeHumidity(21, 0.63, 97e3))
		for _, p := range pairs {
			require.Zero(t, testing.AllocsPerRun(20, func() {
				s, err := p.make(m, base)
				if err != nil {
					t.Fatal(err)
				}
				base = s
			}), p.name)
		}
		sum := 0.0
		require.Zero(t, testing.AllocsPerRun(20, func() { sum += base.Properties().WetBulb }))
		a, b := psychro.Stream{State: base, DryAir: 1}, psychro.Stream{State: must(t)(m.FromRelativeHumidity(-9, 0.9, 97e3)), DryAir: 2}
		a.State = must(t)(m.FromRelativeHumidity(21, 0.99, 97e3))
		require.Zero(t, testing.AllocsPerRun(20, func() {
			x, _ := psychro.Mix(a, b)
			y, _ := a.Coil(4)
			z, _ := a.Changed(100, 1e-4, 2.5e6)
			v, _ := a.State.VapourFlux(3, 4)
			sum += x.FogLiquid + y.Condensate + z.FogLiquid + v.Flux
		}))
	}
}

func TestBatches(t *testing.T) {
	const p = 95e3
	ts := []float64{-12, 3, 21, 21, 30}
	rh := []float64{0.9, 0.5, 0.6, 60, 1}
	w := psychro.HumidityRatioFromRelativeHumidityTo(nil, ts, rh, p)
	states, err := psychro.StatesFromRelativeHumidityTo(nil, ts, rh, p)
	require.ErrorIs(t, err, psychro.ErrRange)
	require.ErrorContains(t, err, "1 of 5 refused, the first at index 3: relative humidity is 60")
	tw, td, d, back := psychro.WetBulbFromHumidityRatioTo(nil, ts, w, p), psychro.DewPointFromHumidityRatioTo(nil, ts, w, p), psychro.VapourPressureDeficitFromRelativeHumidityTo(nil, ts, rh, p), psychro.RelativeHumidityFromHumidityRatioTo(nil, ts, w, p)
	for i, s := range states {
		if i == 3 {
			for _, v := range []float64{w[i], tw[i], td[i], d[i], back[i]} {
				require.NotEqual(t, v, v)
			}
			continue
		}
		require.Equal(t, s.HumidityRatio(), w[i])
		require.InDelta(t, s.WetBulb(), tw[i], 1e-9)
		require.InDelta(t, s.DewPoint(), td[i], 1e-9)
		require.Equal(t, s.VapourPressureDeficit(), d[i])
		require.InDelta(t, rh[i], back[i], 1e-12)
	}
	// In place.
	in := append([]float64(nil), ts...)
	require.Equal(t, tw[:3], psychro.WetBulbFromHumidityRatioTo(in, in, w, p)[:3])
	require.Panics(t, func() { psychro.WetBulbFromHumidityRatioTo(nil, ts, w[:2], p) })
	require.Panics(t, func() { psychro.WetBulbFromHumidityRatioTo(in[:2], ts, w, p) })
	require.Panics(t, func() { _, _ = psychro.StatesFromRelativeHumidityTo(nil, ts, rh[:1], p) })
	require.Zero(t, testing.AllocsPerRun(5, func() { psychro.WetBulbFromHumidityRatioTo(tw[:3], ts[:3], w[:3], p) }))
}
