package envelope

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// By hand: a wall sees half sky, half ground; of the sky cos 45 degree of its
// depression, 0.7071, with the weight, so that it takes 29 % less from it.
func TestSkyPattern(t *testing.T) {
	k := DefaultCoverConditions()
	k.SkyDrop = 20
	base := standard.emission(0)
	for _, c := range []struct{ tilt, share float64 }{{0, 1}, {30, math.Cos(15 * math.Pi / 180)}, {60, math.Sqrt(0.75)}, {90, math.Sqrt(0.5)}, {120, 0.5}} {
		k.Tilt = c.tilt
		k.Sky = SkyEven
		even := base - k.fromOutside(&standard)
		k.Sky = SkyWeighted
		require.InDelta(t, c.share*even, base-k.fromOutside(&standard), 1e-10)
		require.InDelta(t, (1+math.Cos(c.tilt*math.Pi/180))/2*(base-standard.emission(-20)), even, 1e-10)
	}
	k.Sky = 2
	require.ErrorContains(t, k.check(1), "Sky is 2")
	require.Equal(t, "weighted to the horizon", SkyWeighted.String())
}
