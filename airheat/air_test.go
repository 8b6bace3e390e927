package airheat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/psychro"
)

func TestAirAgainstTheStandardAtmosphere(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "UsStd76.Table3/sea-level", In: []float64{15}, Printed: "1.7894"},
		{Where: "UsStd76.Table3/minus-50", In: []float64{-50}, Printed: "1.457", Tol: 0.002, Why: "from memory"},
	}, func(in ...float64) float64 { return 1e5 * psychro.Viscosity(in[0]) })
	check.Run(t, []check.Row{
		{Where: "UsStd76.Table1/density", In: []float64{15, 101325}, Printed: "1.225"},
	}, func(in ...float64) float64 { return DryAir(in[0], in[1]).Density })
	// G. F. Hundy et al., Ex. 24.1: 575 mbar and −10 °C, from 1.2 at 20 °C.
	check.Run(t, []check.Row{
		{Where: "Hundy.Ex24.1/density", In: []float64{-10, 57500}, Printed: "0.76"},
	}, func(in ...float64) float64 { return DryAir(in[0], in[1]).Density })
}

func TestAirOutsideItsRange(t *testing.T) {
	require.True(t, math.IsNaN(DryAir(298, 101325).Density))
	require.True(t, math.IsNaN(DryAir(20, 101.325).Viscosity))
	require.True(t, math.IsNaN(psychro.Viscosity(300)))
	require.Equal(t, 1006.0, DryAir(20, 101325).HeatCapacity)
	// Ideal gas: density falls as the absolute temperature rises.
	require.InEpsilon(t, 101325/(287.042*300), DryAir(26.85, 101325).Density, 1e-14)
}
