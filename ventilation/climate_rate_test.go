package ventilation

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// The rate of the flow with the inside density is that between two densities.
func TestFlowByDensity(t *testing.T) {
	rnd := rand.New(rand.NewPCG(31, 4))
	anyCoefficient := func() float64 { return 1.4*rnd.Float64() - 0.8 }
	both := 0
	for range 3000 {
		var openings []Opening
		for range 1 + rnd.IntN(4) {
			o := Opening{Height: 1 + 3*rnd.Float64(), Area: 2 * rnd.Float64(), Discharge: 0.6, PressureCoefficient: anyCoefficient()}
			switch rnd.IntN(3) {
			case 0:
				o.Vertical = 2 * rnd.Float64()
			case 1:
				o.Viscous = 10 * rnd.Float64()
			}
			openings = append(openings, o)
		}
		leaks := []Leak{{Height: 4 * rnd.Float64(), Flow: 0.1 * rnd.Float64(), Exponent: 0.65, PressureCoefficient: anyCoefficient()}}
		fans := []FixedFan{{Height: 2, Flow: rnd.Float64() - 0.5, Slope: 0.01 * rnd.Float64(), PressureCoefficient: anyCoefficient()}}
		n, err := NewNetwork(openings, leaks, fans[:rnd.IntN(2)])
		require.NoError(t, err)
		wind := 5 * rnd.Float64()
		f := dryFlow{paths: n.paths, opening: 0.2 + 0.8*rnd.Float64(), outside: newAir(1.2), dryOut: 0.99, dryIn: 0.98, dynamic: 0.6 * wind * wind}
		density := 1.2 - 0.08*(rnd.Float64()-0.3)
		f.at(density)
		_, p := f.driven(math.NaN())
		rate, share := f.byDensity(p)
		const step = 1e-7
		g := f
		g.at(density + step)
		up, _ := g.driven(p)
		g.at(density - step)
		down, _ := g.driven(p)
		want := (up - down) / (2 * step)
		l := f.look(p)
		require.InDelta(t, want, rate, 2e-5*math.Abs(want)+1e-6*(l.in+l.out), "%+v", n.paths)
		// With drier air leaving, too.
		g = f
		g.dryIn *= 1 + 1e-6
		up, _ = g.driven(p)
		g.dryIn = f.dryIn * (1 - 1e-6)
		down, _ = g.driven(p)
		require.InDelta(t, (up-down)/(2e-6*max(l.in, 1e-9)), share, 1e-4)
		for i := range n.paths {
			if e := n.paths[i]; e.kind == tallPath && f.stands(&e) {
				if in, out, _ := e.flows(e.drive(e.bottom, f.dynamic, f.buoyancy, p), e.drive(e.top, f.dynamic, f.buoyancy, p), f.outside, f.inside); in > 0 && out > 0 {
					both++
				}
			}
		}
	}
	require.Greater(t, both, 50, "tall openings that air passes both ways")
}
