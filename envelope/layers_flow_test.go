package envelope

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
)

// What a cover sends and takes changes with what it sees and with the humidity
// as its slopes say: they are those of the balances, but for vapour's own
// coefficient, whose change is taken within a few per cent of itself.
func TestFlowSlopes(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 32))
	states, drops := map[bool]int{}, 0
	for range 600 {
		c, k := realistic(r)
		if r.IntN(2) == 0 {
			k.InnerFace = InnerAuto
			if s, err := c.Solve(k); err == nil && r.IntN(2) == 0 {
				k.InsideHumidity = min(0.99, s.DripHumidity*(1+0.01*r.Float64())) // about its dew point
			}
		}
		at := func(rise, more float64) flow {
			one := k
			one.RadiantRise += rise
			s, err := psychro.FromRelativeHumidity(k.Inside, k.InsideHumidity, k.Pressure)
			require.NoError(t, err)
			s, err = psychro.FromHumidityRatio(k.Inside, s.HumidityRatio()+more, k.Pressure)
			require.NoError(t, err)
			room := roomOf(s)
			near := nearCover{space: new(system)}
			var out Solution
			require.NoError(t, c.set.solve(&one, &standard, &room, &near, &out))
			return out.flow
		}
		k.InsideHumidity = min(k.InsideHumidity, 0.99)
		if s, err := c.Solve(k); err != nil || math.Abs(s.InnerTemperature-k.Inside) < 0.5 {
			continue // free convection bends too sharply for a difference
		}
		const step, more = 0.02, 1e-6 // K, kg/kg
		mid, a, b := at(0, 0), at(-step, 0), at(step, 0)
		seen := standard.emission(k.radiant()+step) - standard.emission(k.radiant()-step)
		low, high := at(0, -more), at(0, more)
		inPart := func(f flow) bool { return f.wet > 0.05 && f.wet < 0.95 }
		if inPart(mid) && inPart(a) && inPart(b) && c.set.patchGap < 0 {
			// Drops hold the face at the dew point, and their share what it sends.
			drops++
			require.InDelta(t, (b.sent-a.sent)/seen, mid.sentBySeen, 2e-2+2e-2*math.Abs(mid.sentBySeen), "%+v %+v", c.Layers(), k)
			continue
		}
		same := func(x, y flow) bool { return x.wet == mid.wet && y.wet == mid.wet }
		if !same(a, b) || !same(low, high) || mid.wet > 0 && mid.wet < 1 {
			continue
		}
		states[mid.wet > 0]++
		require.InDelta(t, (b.sent-a.sent)/seen, mid.sentBySeen, 5e-3, "%+v %+v", c.Layers(), k)
		require.InDelta(t, (b.water-a.water)/seen, mid.waterBySeen, 1e-10+2e-2*math.Abs(mid.waterBySeen))
		require.InDelta(t, (high.water-low.water)/(2*more), mid.waterByRatio, 1e-6+2e-2*math.Abs(mid.waterByRatio))
		require.InDelta(t, (high.sent-low.sent)/(2*more), mid.sentByRatio, 2+2e-2*math.Abs(mid.sentByRatio))
	}
	require.Greater(t, states[false], 100)
	require.Positive(t, drops)
	require.Greater(t, states[true], 100)
}
