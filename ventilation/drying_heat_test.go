package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Computed apart with another saturation line (Tetens).
func TestHeatToDry(t *testing.T) {
	heat := func(in []float64) ventilation.DryingHeat {
		inside, err := psychro.IdealGas.FromRelativeHumidity(in[0], in[1], 101325)
		require.NoError(t, err)
		outside, err := psychro.IdealGas.FromRelativeHumidity(in[2], in[3], 101325)
		require.NoError(t, err)
		h, err := ventilation.HeatToDry(inside, outside)
		require.NoError(t, err)
		require.InEpsilon(t, 1, h.Air*(inside.HumidityRatio()-outside.HumidityRatio()), 1e-12)
		return h
	}
	const why = "another saturation line: 0.05 % of the vapour pressure"
	check.Run(t, []check.Row{
		{Where: "(hi - ho)/(Wi - Wo) computed apart/5 °C", In: []float64{18, 0.85, 5, 0.9}, Printed: "4.697", Tol: 0.004, Why: why},
		{Where: "(hi - ho)/(Wi - Wo) computed apart/10 °C", In: []float64{18, 0.85, 10, 0.9}, Printed: "4.522", Tol: 0.004, Why: why},
	}, func(in ...float64) float64 { return heat(in).Total / 1e6 })
	check.Run(t, []check.Row{
		{Where: "sensible part computed apart/5 °C", In: []float64{18, 0.85, 5, 0.9}, Printed: "2.163", Tol: 0.004, Why: why},
		{Where: "sensible part computed apart/10 °C", In: []float64{18, 0.85, 10, 0.9}, Printed: "1.988", Tol: 0.004, Why: why},
	}, func(in ...float64) float64 { return heat(in).Sensible / 1e6 })

	wet, damp := moist(t, 20, 0.9), moist(t, 10, 0.5)
	_, err := ventilation.HeatToDry(damp, wet)
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	_, err = ventilation.HeatToDry(psychro.State{}, wet)
	requireFields(t, err, "inside.Pressure")
}
