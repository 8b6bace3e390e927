package airheat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/psychro"
)

// G. F. Hundy et al., Refrigeration and Air-Conditioning, takes 1.02 kJ/(kg K)
// for the air of its examples. That is moist air of the humidity ratio 1/60; at
// a low pressure it is not saturated.
func hundyAir(t *testing.T, c float64) psychro.State {
	s, err := psychro.IdealGas.FromHumidityRatio(c, 1.0/60, 60000)
	require.NoError(t, err)
	require.InDelta(t, 1020, s.HeatCapacity()/(1+1.0/60), 1e-9)
	return s
}

// Not run: 88 kW for 600 m² that held 7 to 11 K in Almería (Sensors 12:13852), which is
// 13 to 20 W/(m² K) of floor of a leaky house of which no more is told.
func TestDutyPublished(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "Hundy08.Ex21.1/duty-kW", In: []float64{68, 16, 34}, Printed: "1248"},
	}, func(v ...float64) float64 {
		d, err := PowerFor(hundyAir(t, v[1]), Flow{v[0], MoistMass}, v[2])
		require.NoError(t, err)
		return d.Power / 1000
	})
	check.Run(t, []check.Row{
		{Where: "Hundy08.Ex21.2/supply", In: []float64{68, 19, 500e3}, Printed: "26.2"},
	}, func(v ...float64) float64 {
		d, err := RiseFor(hundyAir(t, v[1]), Flow{v[0], MoistMass}, v[2])
		require.NoError(t, err)
		return d.Outlet
	})
	check.Run(t, []check.Row{
		{Where: "Hundy08.Ex25.1/flow", In: []float64{14e3, 9}, Printed: "1.525"},
	}, func(v ...float64) float64 {
		d, err := FlowFor(hundyAir(t, 16), v[0], 16+v[1])
		require.NoError(t, err)
		return d.MoistAir
	})
	// 1.5 kW of moisture at 2440 kJ/kg taken off by 1.525 kg/s: what the supply
	// must be drier by than the room's 0.007857 is a release over an exchange.
	check.Run(t, []check.Row{
		{Where: "Hundy08.Ex25.1/humidity-ratio", In: []float64{0.007857, 1.5 / 2440, 1.525}, Printed: "0.00745"},
	}, func(v ...float64) float64 { return v[0] - steadyShare(v[1], v[2]) })
}

func TestOxygenByMass(t *testing.T) {
	m := 0.2095 * molarO2 / (0.2095*molarO2 + 0.7905*molarN2)
	require.InDelta(t, 0.2095, oxygenByMass(m), 1e-15)
	require.True(t, math.IsNaN(oxygenByMass(1.1)))
	require.True(t, math.IsNaN(oxygenByMass(-0.1)))
}

// oxygenByMass returns the volume fraction of oxygen in dry air that holds the
// given mass fraction of it, the rest being nitrogen: sources that state 23 %
// by mass are followed so. NaN for a fraction outside 0 to 1.
func oxygenByMass(fraction float64) float64 {
	if !(fraction >= 0 && fraction <= 1) {
		return math.NaN()
	}
	o, n := fraction/molarO2, (1-fraction)/molarN2
	return o / (o + n)
}
