package envelope

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// A start from the last iterate gives the state that a start from afar gives,
// whatever came before: covers of all kinds through weathers that differ by
// little or much, with water, frost, drops and none.
func TestNearStartChangesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	span := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	fewer, all := 0, 0
	for i := range 1500 {
		c, k := realistic(r)
		if i%3 == 0 {
			layers, gaps, random := randomLayers(r)
			var err error
			c, err = NewCover(layers, gaps)
			require.NoError(t, err)
			k = random
		}
		near := nearCover{space: new(system)}
		for round := range 6 {
			step := 1.0
			if r.IntN(3) == 0 {
				step = 0.01
			}
			k.Outside = min(max(k.Outside+step*span(-2, 2), -25), 35)
			k.InsideHumidity = min(max(k.InsideHumidity+step*span(-0.2, 0.2), 0), 1)
			k.RadiantRise = min(max(k.RadiantRise+step*span(-2, 2), -5), 5)
			if r.IntN(4) == 0 {
				k.InnerFace = InnerFace(r.IntN(3))
			}
			room := newRoomAir(&k)
			var far, next Solution
			errFar := c.set.solve(&k, &standard, &room, nil, &far)
			errNext := c.set.solve(&k, &standard, &room, &near, &next)
			require.Equal(t, errFar == nil, errNext == nil)
			if errFar != nil {
				continue
			}
			size := 1e-9 * max(1, math.Abs(far.FluxIn), far.IrradianceIn)
			require.InDelta(t, far.FluxIn, next.FluxIn, size, "%+v %+v", c.Layers(), k)
			require.InDelta(t, far.DryFluxIn, next.DryFluxIn, size)
			require.InDelta(t, far.InLatent, next.InLatent, size)
			require.InDelta(t, far.LatentLoad, next.LatentLoad, size)
			require.InDelta(t, far.InnerTemperature, next.InnerTemperature, 1e-8)
			require.InDelta(t, far.WetShare, next.WetShare, 1e-7)
			require.Equal(t, far.TwoStates, next.TwoStates)
			require.Equal(t, far.Condenses, next.Condenses)
			if step < 1 && round > 0 {
				fewer += next.Iterations
				all += far.Iterations
			}
		}
	}
	t.Logf("%d steps from near, %d from afar", fewer, all)
	require.Less(t, float64(fewer), 0.9*float64(all))
}
