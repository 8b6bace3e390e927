package envelope

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

var wholeSweep = flag.Bool("sweep", false, "TestSweep takes 200 random covers and every step of 0.0005, not a few")

// sweepOf walks the inside humidity from low to high in steps and returns the
// largest change of condensate and of loss between two; of the loss, apart from
// where a film that passes heat radiation goes from its dry state, or one wet in
// small part, to its wet one within a step, and
// from where a gap passes the jump of its own correlation.
func sweepOf(t *testing.T, c Cover, k CoverConditions, low, high, step float64) (water, heat, at float64) {
	branches := func(s *Solution) (b [MaxLayers]int) {
		for i, g := range s.Gaps[:s.Layers-1] {
			b[i] = branchOf(g.Rayleigh)
			if g.AtJump {
				b[i] = -1
			}
		}
		return b
	}
	var last Solution
	n := int(math.Round((high - low) / step))
	for i := range n + 1 {
		k.InsideHumidity = min(1, low+float64(i)*step)
		s := solved(t, c, k)
		wets := wetter(&last, &s) > 0.3 && c.set.layers[s.Layers-1].Transmittance > 0
		if i > 0 && s.TwoStates == last.TwoStates && !wets && branches(&s) == branches(&last) {
			if d := math.Abs(s.FluxIn - last.FluxIn); d > heat {
				heat, at = d, k.InsideHumidity
			}
		}
		if i > 0 {
			// The condensate has no step even there.
			water = max(water, math.Abs(s.Condensate-last.Condensate))
		}
		last = s
	}
	return water, heat, at
}

// wetter returns by how much more of either part of the cover is wet in s than in
// last.
func wetter(last, s *Solution) float64 {
	apart := func(x *Solution) float64 {
		if x.Patch.Share == 1 {
			return 0
		}
		return (x.WetShare - x.Patch.Share*x.Patch.WetShare) / (1 - x.Patch.Share)
	}
	return max(apart(s)-apart(last), s.Patch.WetShare-last.Patch.WetShare)
}

// Condensate and loss are continuous in the humidity: ten times finer steps make
// the largest change at least five times smaller. The loss may step only where a
// cover that passes heat radiation leaves one of its two states.
func TestSweep(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	type one struct {
		name  string
		cover Cover
		k     CoverConditions
	}
	var all []one
	for _, c := range Covers() {
		k := night()
		k.Outside, k.SkyDrop = -2, 18
		all = append(all, one{c.Name, c.Cover, k})
	}
	const step = 0.0005
	count := 3
	if *wholeSweep {
		count = 200
	}
	for range count {
		c, k := realistic(r)
		k.Inside, k.Outside = 5+20*r.Float64(), -20+20*r.Float64()
		all = append(all, one{"random", c, k})
	}
	narrow := 0
	for i, x := range all {
		x.k.InnerFace = InnerAuto
		water, heat, _ := sweepOf(t, x.cover, x.k, 0.2, 1, step)
		fineWater, fineHeat, at := sweepOf(t, x.cover, x.k, 0.2, 1, step/10)
		require.LessOrEqual(t, fineWater, water/5+1e-12, "%d %s", i, x.name)
		// A face may become wet within less than a step; the change across such
		// a band is steep, but no step: still finer ones show it.
		fine := step / 10
		for deep := 0; fineHeat > heat/5+1e-6 && deep < 3; deep++ {
			narrow++
			heat = fineHeat
			_, fineHeat, at = sweepOf(t, x.cover, x.k, max(0, at-3*fine), min(1, at+2*fine), fine/10)
			fine /= 10
		}
		require.LessOrEqual(t, fineHeat, heat/5+1e-6, "%d %s at %g", i, x.name, at)
	}
	t.Logf("%d covers; %d times a finer step was needed", len(all), narrow)
}
