package airheat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// Two public worksheets that apply [VerBan74]: one of a refinery's air preheater
// prints 383.52498618 K for 38.1104 mm of mercury of vapour, 0.00097421 of
// trioxide; one on incinerators prints 402 K for 93.44 and 0.0024917.
func TestAcidDewPointPublished(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "VerBan74.worksheet/preheater", In: []float64{38.1103549, 0.00097421}, Printed: "383.52498618", Tol: 5e-4, Why: "the trioxide is printed to five places"},
		{Where: "VerBan74.worksheet/incinerator", In: []float64{93.44, 0.0024917}, Printed: "402"},
	}, func(in ...float64) float64 { return acidDewPoint(in[0]*133.322, in[1]*133.322) + 273.15 })
}

func TestAcidDewPointFollowsSulphurAndWater(t *testing.T) {
	gas := func(sulphur float64) FlueGas {
		f, err := NewFuel("oil", Composition{Carbon: 0.862, Hydrogen: 0.138 - sulphur, Sulphur: sulphur}, 42.5e6)
		require.NoError(t, err)
		g, err := f.Burn(DefaultCombustionAir(), 1.2)
		require.NoError(t, err)
		return g
	}
	last := 60.0 // above the water's
	for _, s := range []float64{0.0005, 0.001, 0.01, 0.03} {
		v := gas(s).AcidDewPoint(101325, 0.02)
		require.Greater(t, v, last)
		require.Less(t, v, 160.0)
		last = v
	}
	g := gas(0.001)
	require.Greater(t, g.AcidDewPoint(101325, 0.05), g.AcidDewPoint(101325, 0.01))
	require.Greater(t, g.AcidDewPoint(101325, 0.02), g.AcidDewPoint(80000, 0.02))
	require.InDelta(t, acidDewPoint(g.H2O/g.Wet*101325, 0.02*g.SO2/g.Wet*101325), g.AcidDewPoint(101325, 0.02), 1e-12)
	for _, v := range []float64{gas(0).AcidDewPoint(101325, 0.02), g.AcidDewPoint(1013.25, 0.02), g.AcidDewPoint(101325, 2), g.AcidDewPoint(101325, math.NaN())} {
		require.True(t, math.IsNaN(v))
	}
	for _, e := range [][2]float64{{499, 1}, {50001, 1}, {8000, 0.999e-3}, {8000, 100.1}} {
		require.True(t, math.IsNaN(acidDewPoint(e[0], e[1])), e)
	}
	for _, e := range [][2]float64{{500, 1}, {50000, 1}, {8000, 1e-3}, {8000, 100}} {
		require.False(t, math.IsNaN(acidDewPoint(e[0], e[1])), e)
	}
}
