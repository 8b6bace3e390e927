package envelope

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// agreement solves random covers both ways and compares: face temperatures to
// 1e-5 K, a hundredth of the stated accuracy, and the flux to 1e-4 W/m². Where
// the balance has two roots, about the downward jump at Ra = 1e4, ours must be
// a root of the plain problem, too.
func agreement(t *testing.T, seed uint64, count int, change func(*rand.Rand, []Layer, *CoverConditions)) (solved, open, two int) {
	r := rand.New(rand.NewPCG(seed, seed))
	for i := range count {
		layers, gaps, k := randomLayers(r)
		k.OutsideConvection = OutsideConvection(r.IntN(2))
		k.InsideConvection = InsideConvection(r.IntN(2))
		change(r, layers, &k)
		c, err := NewCover(layers, gaps)
		require.NoError(t, err)
		s, err := c.Solve(k)
		require.NoError(t, err)
		p := plainLayers{layers: layers, gaps: gaps, k: k, wet: s.WetShare, ice: s.IceShare}
		p.vapour = s.WetShare == 1
		want, ok := p.solve()
		if !ok {
			open++
			continue
		}
		p.balances(want) // sets the radiosities
		last := 2*len(layers) - 1
		tin := k.Inside + 273.15
		h := plainInside(&k, tin, want[last])
		flux := h*(tin-want[last]) + p.g[last] - p.j[last]
		if p.vapour {
			flux += p.latent(want[last], h)
		}
		mine := make([]float64, len(want))
		for a := range mine {
			switch {
			case a > last:
				mine[a] = s.Gaps[a-last-1].Air + 273.15
			case a%2 == 0:
				mine[a] = s.Outer[a/2].Temperature + 273.15
			default:
				mine[a] = s.Inner[a/2].Temperature + 273.15
			}
		}
		if len(want) > last+1 {
			_, _, cp, rho := plainAir(tin)
			flux += layers[len(layers)-1].Leakage * rho * cp * (tin - want[len(want)-1])
		}
		worst := 0.0
		for a := range want {
			worst = math.Max(worst, math.Abs(mine[a]-want[a]))
		}
		if worst > 1e-5 {
			two++
			for _, v := range p.balances(mine) {
				require.InDelta(t, 0, v, 1e-6, "case %d differs by %g K and is no root: %+v %+v %+v", i, worst, layers, gaps, k)
			}
			continue
		}
		solved++
		require.InDelta(t, flux, s.FluxIn, 1e-4, "case %d", i)
	}
	return solved, open, two
}

// The problem of long-wave layers as such: closed layers, dry.
func TestSolverAgreesWithAnIndependentOne(t *testing.T) {
	solved, open, two := agreement(t, 7, 1200, func(_ *rand.Rand, layers []Layer, k *CoverConditions) {
		for j := range layers {
			layers[j].Openness, layers[j].Leakage = 0, 0
		}
		k.InnerFace = InnerDry
	})
	t.Logf("agreed %d, left open by the independent solver %d, second root %d", solved, open, two)
	require.Greater(t, solved, 1150)
	require.Less(t, two, 8)
}

// With open area, leakage and a wet inner face.
func TestScreensAndWaterAgreeWithAnIndependentSolver(t *testing.T) {
	solved, open, two := agreement(t, 8, 500, func(r *rand.Rand, layers []Layer, k *CoverConditions) {
		for j := range layers {
			layers[j].Openness, layers[j].Leakage = 0, 0
			if r.IntN(3) == 0 {
				layers[j].Openness = r.Float64()
			}
			if j > 0 && r.IntN(3) == 0 {
				layers[j].Leakage = 0.01 * r.Float64()
			}
		}
	})
	t.Logf("agreed %d, left open by the independent solver %d, second root %d", solved, open, two)
	require.Greater(t, solved, 470)
	require.Less(t, two, 20)
}
