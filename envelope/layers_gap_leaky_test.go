package envelope

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// nightScreen is a screen below a film as it hangs in a house little warmer than
// its roof: the air that leaks in from outside and from the house is warmer than
// both.
func nightScreen(t *testing.T, seen float64) (Cover, CoverConditions) {
	c, err := WithScreen(SingleInfraredFilm(), AluminisedScreen())
	require.NoError(t, err)
	k := DefaultCoverConditions()
	k.Tilt, k.Height, k.Inside, k.InsideHumidity, k.Outside = 25, 3.5, 30, 0.7, 29.6
	k.SkyDrop, k.Wind = 4.8, 5.7
	k.RadiantRise = fourthRoot(seen/standard.sigma) - 273.15 - k.Inside
	return c, k
}

// However Newton's method sets out, a cover with a leaking screen ends in one
// state; its flux rises with what the inner face sees, without a step.
func TestLeakingScreenHasOneState(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 9))
	last, above, below := math.Inf(-1), 0, 0
	for seen := 464.0; seen < 470; seen += 0.1 {
		c, k := nightScreen(t, seen)
		want, err := c.Solve(k)
		require.NoError(t, err)
		require.Greater(t, want.FluxIn, last)
		if last > -100 {
			require.Less(t, want.FluxIn-last, 0.1, "W/m² for each 0.1 W/m² seen")
		}
		last = want.FluxIn
		g := want.Gaps[0]
		require.Greater(t, g.Air, max(want.Inner[0].Temperature, want.Outer[1].Temperature))
		if want.Inner[0].Temperature > want.Outer[1].Temperature {
			above++
		} else {
			below++
		}
		for range 20 {
			room := newRoomAir(&k)
			s := solver{dry: &c.set.dry, wet: &c.set.wet, c: &standard, k: &k, room: &room, system: new(system), aim: closure}
			s.prepare(c.set, &k, &standard, false)
			for i := range s.vars {
				s.x[i] = k.Outside + 6*(r.Float64()-0.5)
				if i < 2*s.n && i%2 == 1 {
					s.x[i] = 30 * (r.Float64() - 0.5)
				}
			}
			require.True(t, s.newton(60))
			require.InDelta(t, want.FluxIn, s.fluxIn(), 1e-8, "%g W/m² seen", seen)
		}
	}
	require.Positive(t, above, "the film is warmer than the screen")
	require.Positive(t, below, "and colder")
}

// Where the air in a gap becomes as warm as a side of it, what each side takes
// goes on without a step; the slopes are those of the balances.
func TestLeakyGapGoesOn(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for range 300 {
		c, k := nightScreen(t, 467)
		k.Tilt = []float64{0, 25, 65, 90, 130}[r.IntN(5)]
		room := newRoomAir(&k)
		j := new(system)
		s := solver{dry: &c.set.dry, wet: &c.set.wet, c: &standard, k: &k, room: &room, system: j, aim: closure}
		s.prepare(c.set, &k, &standard, false)
		s.x[0], s.x[1], s.x[2], s.x[3] = 20+10*r.Float64(), 10*r.Float64(), 20+10*r.Float64(), 10*r.Float64()
		s.x[4] = s.x[2]
		if r.IntN(2) == 0 {
			s.x[4] = s.x[0] + s.x[1]*s.resist[0]
		}
		const step = 1e-7
		s.x[4] += step / 2
		s.evaluate(nil)
		above := s.f
		s.x[4] -= step
		s.evaluate(nil)
		for i := range s.vars {
			require.InDelta(t, above[i], s.f[i], 1e-4)
		}
		s.x[4] += 8 * (r.Float64() - 0.5)
		s.evaluate(j)
		slopes, at := *j, s.f
		d := s.t[2] - s.t[1]
		if min(math.Abs(d), math.Abs(s.x[4]-s.t[1]), math.Abs(s.x[4]-s.t[2])) < 0.01 {
			continue
		}
		for v := range s.vars {
			s.x[v] += 1e-5
			s.evaluate(nil)
			for i := range s.vars {
				require.InDelta(t, (s.f[i]-at[i])/1e-5, slopes.matrix[i][v], 2e-3*(1+math.Abs(slopes.matrix[i][v])), "row %d, unknown %d", i, v)
			}
			s.x[v] -= 1e-5
		}
	}
}
