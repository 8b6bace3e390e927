package jet_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/jet"
)

func of(s jet.Shape, excess float64) jet.Jet {
	l := jet.LawOf(s)
	return jet.Jet{Shape: s, Size: 0.2, Speed: 1.5, Excess: excess, House: 16, Velocity: l.Velocity, Thermal: l.Thermal}
}

var shapes = []jet.Shape{jet.Round, jet.Plane}

// Warm and cold jets mirror one another: they decay alike, and bend by as much
// up as down.
func TestWarmAndColdMirror(t *testing.T) {
	for _, s := range shapes {
		warm, cold := of(s, 18), of(s, -18)
		require.Positive(t, warm.Archimedes())
		require.Equal(t, -warm.Archimedes(), cold.Archimedes())
		require.Equal(t, -warm.Bend(0.3), cold.Bend(0.3))
		require.Positive(t, warm.Bend(0.3))
		for _, path := range []float64{0, 0.5, 3, 20} {
			require.Equal(t, warm.AxisSpeed(path), cold.AxisSpeed(path))
			require.Equal(t, -warm.AxisExcess(path), cold.AxisExcess(path))
			require.Equal(t, warm.Buoyant(path), cold.Buoyant(path))
		}
	}
}

// The coefficients where they act: 3 m from an opening of 0.2 m.
func TestLaws(t *testing.T) {
	ar := 9.80665 * 18 * 0.2 / (289.15 * 1.5 * 1.5)
	r, p := of(jet.Round, 18), of(jet.Plane, 18)
	require.InEpsilon(t, ar, r.Archimedes(), 1e-14)
	require.InEpsilon(t, 1.5*6*0.2/3, r.AxisSpeed(3), 1e-14)
	require.InEpsilon(t, 1.5*2.43*math.Sqrt(0.2/3), p.AxisSpeed(3), 1e-14)
	require.InEpsilon(t, 18*5*0.2/3, r.AxisExcess(3), 1e-14)
	require.InEpsilon(t, 18*2*math.Sqrt(0.2/3), p.AxisExcess(3), 1e-14)
	require.InEpsilon(t, math.Cbrt(1+2.5*5/36*ar*225), r.Buoyant(3), 1e-14)
	require.InEpsilon(t, math.Cbrt(1+1.8*2/(2.43*2.43)*ar*math.Pow(15, 1.5)), p.Buoyant(3), 1e-14)
	require.InEpsilon(t, 0.3*5/36*ar/(0.2*0.2), r.Bend(0.3), 1e-14)
	require.InEpsilon(t, 0.3*2/(2.43*2.43)*ar/math.Pow(0.2, 1.5), p.Bend(0.3), 1e-14)
	require.InEpsilon(t, 18*5/r.Buoyant(3)*0.2/3, r.MildExcess(3), 1e-14)
	for _, s := range shapes {
		j := of(s, 18)
		require.InEpsilon(t, 0.25, j.AxisSpeed(j.Throw(0.25)), 1e-12)
		require.True(t, math.IsNaN(j.AxisSpeed(-1)))
		require.True(t, math.IsNaN(j.Buoyant(-1)))
		n := jet.LawOf(s).Power
		require.InEpsilon(t, math.Pow(7, n-1), s.Power(7), 1e-14)
	}
	require.Equal(t, jet.Law{Velocity: 6, Thermal: 5, Least: 1.0 / 6, Most: 0.47, Buoyant: 2.5, Power: 3}, jet.LawOf(jet.Round))
	require.Equal(t, jet.Law{Velocity: 2.43, Thermal: 2, Least: 4.0 / 15, Most: 0.4, Buoyant: 1.8, Power: 2.5}, jet.LawOf(jet.Plane))
}
