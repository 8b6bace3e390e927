package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func TestFoggingKeepsMassAndEnthalpy(t *testing.T) {
	air := psychro.Stream{State: humid(t, 34, 0.3), DryAir: 4}
	last := 0.0
	for _, spray := range []float64{0, 0.002, 0.01, 0.02, 0.03, 0.2} {
		f := ventilation.Fogging{Spray: spray, Evaporates: 0.7, Water: 18}
		c, err := f.Into(air)
		require.NoError(t, err)
		require.InDelta(t, spray, c.Evaporated+c.Dripped, 1e-15)
		require.InDelta(t, c.Evaporated, 4*(c.Air.HumidityRatio()-air.State.HumidityRatio()), 1e-10)
		require.InDelta(t, c.Evaporated*psychro.LiquidEnthalpy(18), 4*(c.Air.Enthalpy()-air.State.Enthalpy()), 1e-6)
		require.LessOrEqual(t, c.Evaporated, c.Limit)
		require.GreaterOrEqual(t, c.Fall, last)
		require.Equal(t, spray == 0.2, c.Saturated)
		require.InDelta(t, 4*air.State.HeatCapacity()*c.Fall, c.Latent, 1e-9)
		last = c.Fall
		if c.Saturated {
			require.InDelta(t, 1, c.Air.RelativeHumidity(), 1e-9)
			require.InDelta(t, 1, c.Efficiency, 1e-9)
		}
	}
}

// Water at the wet bulb saturates the air at the wet bulb.
func TestFoggingEndsAtTheWetBulb(t *testing.T) {
	for _, rh := range []float64{0.05, 0.4, 0.9} {
		s := humid(t, 32, rh)
		tw := s.WetBulb()
		c, err := ventilation.Fogging{Spray: 50, Evaporates: 1, Water: tw}.Into(psychro.Stream{State: s, DryAir: 2})
		require.NoError(t, err)
		require.InDelta(t, tw, c.Air.Temperature(), 1e-6)
		require.InDelta(t, 2*(psychro.SaturationHumidityRatio(tw, 101325)-s.HumidityRatio()), c.Limit, 1e-9)
	}
	saturated := humid(t, 20, 1)
	c, err := ventilation.Fogging{Spray: 1, Evaporates: 1, Water: 20}.Into(psychro.Stream{State: saturated, DryAir: 2})
	require.NoError(t, err)
	require.InDelta(t, 0, c.Evaporated, 1e-9)
	require.InDelta(t, 20, c.Air.Temperature(), 1e-6)
}

func TestFoggingFaultsComeTogether(t *testing.T) {
	_, err := ventilation.Fogging{Spray: -1, Evaporates: 70, Water: 99}.Into(psychro.Stream{})
	require.ErrorIs(t, err, ventilation.ErrRange)
	for _, field := range []string{"Spray", "Evaporates", "Water", "air.State.Pressure", "air.DryAir"} {
		require.ErrorContains(t, err, field)
	}
}
