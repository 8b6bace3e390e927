package envelope_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
)

// A straight form misses of a change at most three times the share that the move is
// of Smooth: on every cover, bare and under a leaking screen, wet and dry, for each
// drive either way. Across a kink that is not told, or into another state, a short
// move would miss some tenths, or more than the change.
func TestStraightCoversMissNoMoreThanTheyTell(t *testing.T) {
	rnd := rand.New(rand.NewPCG(27, 11))
	tried := 0
	for _, room := range []RadiantRoom{RadiantGiven, RadiantEnclosure} {
		for i, h := range coveredHouses(t, room, doorless) {
			for range 150 {
				k := randomNight(rnd, h)
				var c HouseCovers
				closeCovers(t, h, &c, &k)
				if c.Smooth < 0.01 || c.Open > 1e-7 {
					continue
				}
				base := c
				for d := range 3 {
					far := (0.02 + 0.4*rnd.Float64()) * base.Smooth
					if rnd.IntN(2) == 0 {
						far = -far
					}
					moved, by := k, far
					switch d {
					case 0:
						moved.Inside += far
						moved.RadiantRise -= far
						moved.InsideHumidity *= saturation(k.Inside) / saturation(moved.Inside)
					case 1:
						before := black(k.Inside + k.RadiantRise)
						moved.RadiantRise += far
						by = black(moved.Inside+moved.RadiantRise) - before
					case 2:
						by = far * 40 // Pa
						moved.InsideHumidity += by / saturation(k.Inside)
					}
					if moved.InsideHumidity > 1 {
						continue
					}
					closeCovers(t, h, &c, &moved)
					tried++
					foreseen := math.Abs(base.Slope[0][d]*by) + math.Abs(base.Slope[1][d]*by) + 2.5e6*math.Abs(base.Slope[2][d]*by)
					miss := math.Abs(c.Air-base.Air-base.Slope[0][d]*by) + math.Abs(c.Radiation-base.Radiation-base.Slope[1][d]*by) + 2.5e6*math.Abs(c.Condensate-base.Condensate-base.Slope[2][d]*by)
					require.LessOrEqualf(t, miss, 3*foreseen*math.Abs(far)/base.Smooth+1e-6*(math.Abs(c.Air)+math.Abs(c.Radiation)), "%v cover %d drive %d by %g K of %g, screen %v: %+v", room, i, d, far, base.Smooth, k.ScreenDrawn, k)
				}
			}
		}
	}
	require.Greater(t, tried, 2000)
}

// doorless leaves out doors, whose slopes are only near theirs.
func doorless(p *HousePlan) { p.Doors = nil }

func saturation(t float64) float64 { return 610.94 * math.Exp(17.625*t/(t+243.04)) } // Pa, near enough for a move

// Milder air is milder by itself, a colder sky or more wind about a warm house is
// colder, and nothing is known before the covers have been solved.
func TestMilder(t *testing.T) {
	h := coveredHouses(t, RadiantEnclosure)[0]
	k := DefaultHouseConditions()
	k.Inside, k.Outside, k.SkyDrop, k.Wind = 15, -2, 8, 3
	var c HouseCovers
	require.Zero(t, c.Milder(&k))
	closeCovers(t, h, &c, &k)
	require.Zero(t, c.Milder(&k))
	air, sky, wind := k, k, k
	air.Outside++
	sky.SkyDrop++
	wind.Wind++
	require.InDelta(t, 1, c.Milder(&air), 1e-12)
	require.InDelta(t, -3.0/(3+k.OutsideConvection.Coefficient(3)), c.Milder(&sky), 1e-12)
	require.Less(t, c.Milder(&wind), 0.0)
	// As much warmer inside, the covers take about what they took: of a change by a
	// tenth nine tenths are gone.
	before := c.Air + c.Radiation
	closeCovers(t, h, &c, &wind)
	alone := c.Air + c.Radiation - before
	closeCovers(t, h, &c, &k)
	both := wind
	by := c.Milder(&wind)
	both.Inside += by
	closeCovers(t, h, &c, &both)
	require.Less(t, math.Abs(c.Air+c.Radiation-before), 0.2*math.Abs(alone))
}
