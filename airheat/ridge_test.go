package airheat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func layers() TwoLayers {
	return TwoLayers{LowerLoss: 220, UpperLoss: 420, Lower: 16, Outside: -10, RisingShare: 0.7, Mixing: 0.15, HeaterFlow: 1, HeatCapacity: 1206}
}

// TestRidgeReturnWorked: a floor of 100 m². Worked by hand:
// 420 x = 0.7 (5720 + 420 x) + 181 (26 - x) with the return at the floor.
func TestRidgeReturnWorked(t *testing.T) {
	r, err := layers().RidgeReturn()
	require.NoError(t, err)
	x := (0.7*5720 + 1206*0.15*26) / (0.3*420 + 1206*0.15)
	require.InDelta(t, x-10, r.Floor.Upper, 1e-9)
	require.InDelta(t, 5720+420*x, r.Floor.Heat, 1e-6)
	require.InDelta(t, 0.162, r.CoilView, 0.001)
	require.InDelta(t, 0.045, r.Saving, 0.0005)
	require.InDelta(t, r.Floor.Heat-r.Ridge.Heat, r.SavingHeat, 1e-9*r.Floor.Heat)
	mixed := layers()
	mixed.Mixing, mixed.RisingShare = 2, 0.7
	m, err := mixed.RidgeReturn()
	require.NoError(t, err)
	require.Less(t, m.Saving, 0.01)
	require.Greater(t, m.CoilView, 2*m.Saving)
	// At a rise of 100 K a return 10 K warmer asks 10 % less of the coil
	// (common practice, no source).
	require.InDelta(t, 0.10, coilView(10, 100), 1e-15)
	require.True(t, math.IsNaN(coilView(10, 0)))
}

func TestNoSavingAboveTheMixedBound(t *testing.T) {
	for _, phi := range []float64{0, 0.2, 0.5, 0.9} {
		for _, m := range []float64{0.01, 0.2, 3} {
			for _, v := range []float64{0.05, 1, 40} {
				l := layers()
				l.RisingShare, l.Mixing, l.HeaterFlow = phi, m, v
				r, err := l.RidgeReturn()
				require.NoError(t, err)
				for _, s := range []Layered{r.Floor, r.Ridge} {
					loss := l.LowerLoss*(l.Lower-l.Outside) + l.UpperLoss*(s.Upper-l.Outside)
					require.InEpsilon(t, loss, s.Heat, 1e-12)
					require.InEpsilon(t, s.Heat, l.HeatCapacity*l.HeaterFlow*(s.Supply-s.Return), 1e-9)
				}
				if r.Floor.Upper > l.Lower {
					require.LessOrEqual(t, r.Saving, r.Bound*(1+1e-12))
					require.Greater(t, r.Saving, 0.0)
					require.False(t, r.Costs)
				} else {
					require.True(t, r.Costs)
					require.GreaterOrEqual(t, r.Saving, r.Bound*(1+1e-12))
				}
			}
		}
	}
}

func TestHeatSuppliedLowMakesTheRidgeReturnCost(t *testing.T) {
	l := layers()
	l.RisingShare = 0.1
	r, err := l.RidgeReturn()
	require.NoError(t, err)
	require.True(t, r.Costs)
	require.Less(t, r.Saving, -0.01)
	require.Greater(t, r.Saving, -0.5)
}

func TestFansAgainstRidgeReturn(t *testing.T) {
	l := layers()
	r, err := l.RidgeReturn()
	require.NoError(t, err)
	// Fans that move the heater's flow, for nothing, do what the ridge return does.
	f, err := l.Fans(MixingFans{Flow: 1, FilmFactor: 1}, 2.5)
	require.NoError(t, err)
	require.InDelta(t, r.SavingHeat, f.SavingHeat, 1e-6)
	// Their power heats the house, but is dearer; stirring raises the loss.
	f, err = l.Fans(MixingFans{Flow: 1, Power: 200, FilmFactor: 1.08}, 2.5)
	require.NoError(t, err)
	require.InDelta(t, f.HouseHeat-200, f.HeaterHeat, 1e-9)
	require.InDelta(t, f.SavingHeat-500, f.NetSaving, 1e-9)
	require.Less(t, f.NetSaving, r.SavingHeat)
	_, err = l.Fans(MixingFans{Flow: -1, FilmFactor: 0.5}, -1)
	for _, name := range []string{"Flow", "FilmFactor", "worth"} {
		require.ErrorContains(t, err, name)
	}
}

func TestTwoLayersRefuse(t *testing.T) {
	_, err := TwoLayers{RisingShare: 70}.RidgeReturn()
	for _, name := range []string{"UpperLoss", "RisingShare", "HeaterFlow", "HeatCapacity"} {
		require.ErrorContains(t, err, name)
	}
	l := layers()
	l.Outside = 20
	_, err = l.RidgeReturn()
	require.ErrorIs(t, err, ErrRange)
	l = layers()
	l.RisingShare, l.Mixing = 1, 0
	_, err = l.RidgeReturn()
	require.ErrorContains(t, err, "Mixing")
	require.InDelta(t, 1206, (idealAir(t, 20, 0.5, 101325).HeatCapacity() / idealAir(t, 20, 0.5, 101325).SpecificVolume()), 10)
}

// A lower layer that neither loses nor exchanges heat asks for none, and a house
// in which nearly all heat rises with next to no mixing has no upper layer that
// exists: both are said.
func TestTwoLayersWithoutAnswer(t *testing.T) {
	l := TwoLayers{UpperLoss: 400, Lower: 16, Outside: -10, HeaterFlow: 1, HeatCapacity: 1220, RisingShare: 0.5}
	_, err := l.RidgeReturn()
	require.ErrorIs(t, err, ErrRange)
	require.ErrorContains(t, err, "LowerLoss")
	l.LowerLoss, l.RisingShare, l.Mixing = 300, 0.999, 1e-4
	_, err = l.RidgeReturn()
	require.ErrorIs(t, err, ErrNoSolution)
	require.ErrorContains(t, err, "upper layer")
	_, err = l.Fans(MixingFans{Flow: 1, FilmFactor: 1}, 1)
	require.ErrorIs(t, err, ErrNoSolution)
}
