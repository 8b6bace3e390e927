package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

func calm() ventilation.Outdoors { return ventilation.Outdoors{Temperature: 25, Pressure: 101325} }

func TestSteadyStateBalancesHeatAndAir(t *testing.T) {
	n := build(t, point(0.5, 4, 0.2), point(3, 5, -0.4))
	load := ventilation.Load{Solar: 45000, Transpired: 0.6, Loss: 900}
	for _, u := range []float64{0, 2, 6} {
		out := calm()
		out.Wind = u
		states, err := n.SteadyStates(load, out)
		require.NoError(t, err)
		require.Len(t, states, 1)
		s := states[0]
		require.True(t, s.Stable)
		require.InDelta(t, 0, s.Residual, 1e-9*s.Sensible)
		require.InDelta(t, 0, s.Air.Residual, 1e-9*s.Air.Flow)
		require.InEpsilon(t, 27000, s.Latent, 1e-12)
	}
}

// Wind on the ridge against the stack: cool with wind down from the ridge, hot
// with the stack up through it, and an unstable state between.
func TestOpposedWindHasThreeStates(t *testing.T) {
	n := build(t, point(0.5, 2, -0.3), point(3.5, 2, 0.3))
	states, err := n.SteadyStates(ventilation.Load{Solar: 6000}, ventilation.Outdoors{Temperature: 15, Pressure: 101325, Wind: 2})
	require.NoError(t, err)
	require.Len(t, states, 3)
	require.Equal(t, []bool{true, false, true}, []bool{states[0].Stable, states[1].Stable, states[2].Stable})
	require.Positive(t, states[0].Air.Paths[1].In)
	require.Positive(t, states[2].Air.Paths[1].Out)
	for _, s := range states {
		require.InDelta(t, 0, s.Residual, 1e-6*s.Sensible)
	}
}

func TestAreaForRiseGivesThatRise(t *testing.T) {
	openings := []ventilation.Opening{point(0.5, 1, 0.2), point(3, 1, -0.4)}
	load := ventilation.Load{Solar: 45000, Transpired: 0.6, Loss: 500}
	for _, fans := range [][]ventilation.FixedFan{nil, {{Height: 2, Flow: -0.5, Slope: 0.01}}} {
		n, err := ventilation.NewNetwork(openings, nil, fans)
		require.NoError(t, err)
		for _, u := range []float64{0, 3} {
			out := calm()
			out.Wind = u
			need, err := n.AreaForRise(load, out, 4)
			require.NoError(t, err)
			require.True(t, need.Stable)
			require.InEpsilon(t, need.Flow, need.Air.Flow, 1e-10)
			grown := []ventilation.Opening{openings[0], openings[1]}
			for i := range grown {
				grown[i].Area *= need.Factor
			}
			m, err := ventilation.NewNetwork(grown, nil, fans)
			require.NoError(t, err)
			states, err := m.SteadyStates(load, out)
			require.NoError(t, err)
			require.InDelta(t, 4, states[0].Rise, 1e-8)
		}
	}
}

func TestNoAreaServesWithoutDrive(t *testing.T) {
	_, err := build(t, point(2, 1, 0), point(2, 1, 0)).AreaForRise(ventilation.Load{Solar: 1000}, calm(), 3)
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
}

func TestCoverAloneMayDo(t *testing.T) {
	need, err := build(t, point(0, 1, 0), point(2, 1, 0)).AreaForRise(ventilation.Load{Solar: 1000, Loss: 500}, calm(), 3)
	require.NoError(t, err)
	require.Zero(t, need.Factor)
	require.Zero(t, need.Area)
}
