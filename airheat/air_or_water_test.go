package airheat

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

func bothWays() AirOrWater {
	a := AirOrWater{Load: 30000, House: 15, Outside: -14, ByAir: DefaultAirCarrier(), ByWater: DefaultWaterCarrier()}
	a.ByWater.Volume, a.ByWater.Metal, a.ByWater.Frost = 0.25, 90000, 30
	a.ByAir.Volume, a.ByAir.Metal = 6, 20000
	return a
}

// G. F. Hundy et al., Refrigeration and Air-Conditioning, Ex. 21.1: the same
// load by 68 kg/s of air and by 27 kg/s of water.
func TestCarriersPublished(t *testing.T) {
	a := bothWays()
	a.Load = 1248000
	a.ByAir.HeatCapacity, a.ByAir.Return, a.ByAir.Supply = 1020, 16, 34
	a.ByWater.Return, a.ByWater.Supply = 74, 85
	air, water, err := a.Solve()
	require.NoError(t, err)
	check.Run(t, []check.Row{{Where: "Hundy.Ex21.1/air", Printed: "68"}}, func(...float64) float64 { return air.MassFlow })
	check.Run(t, []check.Row{{Where: "Hundy.Ex21.1/water", Printed: "27"}}, func(...float64) float64 { return water.MassFlow })
	// Common practice, no source: air carries about a quarter of water's heat
	// per kilogram; a duct at 300 Pa, 30 K and 0.4 takes 2.1 % of the heat, a
	// pipe at 30 kPa, 20 K and 0.4 takes 0.09 %.
	b := bothWays()
	air, water, err = b.Solve()
	require.NoError(t, err)
	check.Run(t, []check.Row{{Where: "common practice, no source/quarter", Printed: "0.25", Tol: 0.02, Why: "said as about a quarter"}},
		func(...float64) float64 { return b.ByAir.HeatCapacity / b.ByWater.HeatCapacity })
	check.Run(t, []check.Row{{Where: "common practice, no source/fan", Printed: "2.1"}}, func(...float64) float64 { return 100 * air.TransportShare })
	check.Run(t, []check.Row{{Where: "common practice, no source/pump", Printed: "0.09"}}, func(...float64) float64 { return 100 * water.TransportShare })
}

func TestCarriersCloseTheirBalances(t *testing.T) {
	a := bothWays()
	a.ByWater.WallLoss = 12
	air, water, err := a.Solve()
	require.NoError(t, err)
	require.InEpsilon(t, 12*(50+14), water.Loss, 1e-14)
	require.InEpsilon(t, a.Load+water.Loss, water.MassFlow*a.ByWater.HeatCapacity*20, 1e-14)
	require.InEpsilon(t, water.VolumeFlow*30000/0.4, water.Transport, 1e-14)
	require.InEpsilon(t, 0.25*988*4187+90000, water.Inertia, 1e-14)
	require.InEpsilon(t, water.Inertia*35/water.Heat, water.Response.Seconds(), 1e-9)
	require.Equal(t, Forever, air.CoolToFreezing)
	// The cooling followed in small steps.
	temp, seconds := 15.0, 0.0
	for temp > 0 {
		temp -= 30 * (temp + 14) / water.Inertia
		seconds++
	}
	require.InDelta(t, seconds, water.CoolToFreezing.Seconds(), 30)
	require.InEpsilon(t, 0.25*988*333600/(30*14), water.FreezeThrough.Seconds(), 1e-12)
	require.InEpsilon(t, 6*1.2/air.MassFlow, air.Transit.Seconds(), 1e-9)
}

func TestCarrierFaultsAreListed(t *testing.T) {
	_, _, err := AirOrWater{Load: -1, ByAir: Carrier{Return: 50, Supply: 40}}.Solve()
	for _, s := range []string{"Load", "ByAir.Supply", "ByAir.Efficiency", "ByWater.Density", "ByWater.Efficiency"} {
		require.ErrorContains(t, err, s)
	}
}

// A circuit that is no warmer than the house, or than what is around it, brings
// nothing.
func TestACarrierMustBeWarm(t *testing.T) {
	a := bothWays()
	a.House = 31
	_, _, err := a.Solve()
	require.ErrorIs(t, err, ErrRange)
	require.ErrorContains(t, err, "ByAir.mean of Supply and Return")
	for _, r := range []struct {
		house, back float64
		ok          bool
	}{{29.99, 15, true}, {30.01, 15, false}, {15, 44.8995, true}, {15, 44.9005, false}} {
		b := bothWays()
		b.House, b.ByAir.Return = r.house, r.back
		_, _, err := b.Solve()
		require.Equal(t, r.ok, err == nil, "%v", r)
	}
	a = bothWays()
	a.Outside = 80
	_, _, err = a.Solve()
	require.ErrorContains(t, err, "ByWater.mean of Supply and Return")
}
