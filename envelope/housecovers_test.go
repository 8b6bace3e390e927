package envelope_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
	"cloche.example/psychro"
)

// coveredHouses are an invented house under each of the ready-made covers, the
// screen under its roof, with a door, a frame and a sill.
func coveredHouses(t testing.TB, room RadiantRoom, change ...func(*HousePlan)) (houses []*House) {
	for _, cover := range Covers() {
		p := filmHouse(t)
		p.Radiant = room
		for kind := range p.Covers {
			if kind != DwarfWall {
				p.Covers[kind] = cover.Cover
			}
		}
		screened, err := WithScreen(cover.Cover, AluminisedScreen())
		require.NoError(t, err)
		p.Screened = map[FacetKind]Cover{Roof: screened}
		for _, f := range change {
			f(&p)
		}
		houses = append(houses, built(t, p))
	}
	return houses
}

func randomNight(rnd *rand.Rand, h *House) HouseConditions {
	k := DefaultHouseConditions()
	k.Inside, k.InsideHumidity, k.RadiantRise = 2+26*rnd.Float64(), 0.3+0.7*rnd.Float64(), -4+12*rnd.Float64()
	k.Outside, k.OutsideHumidity = k.Inside-30*rnd.Float64(), 0.5+0.5*rnd.Float64()
	k.SkyDrop, k.Wind, k.ScreenDrawn = 20*rnd.Float64(), 8*rnd.Float64(), rnd.IntN(2) == 0
	if rnd.IntN(2) == 0 {
		k.Sun = make([][MaxLayers]float64, len(h.Shape().Facets))
		for i, f := range h.Shape().Facets {
			if !f.Kind.InGround() && !f.Party {
				k.Sun[i][0] = 80 * rnd.Float64()
			}
		}
	}
	return k
}

// close repeats CoversTo until what the facets see agrees.
func closeCovers(t *testing.T, h *House, c *HouseCovers, k *HouseConditions) (rounds int) {
	for rounds = 1; rounds < 40; rounds++ {
		require.NoError(t, h.CoversTo(c, k))
		if c.Open < 1e-7 {
			break
		}
	}
	return rounds
}

// What the covers take is what the loss says, cold and from the hour before.
func TestHouseCoversAreTheLoss(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 1))
	for _, room := range []RadiantRoom{RadiantGiven, RadiantEnclosure, RadiantAir} {
		for i, h := range coveredHouses(t, room) {
			var c HouseCovers
			for range 20 {
				k := randomNight(rnd, h)
				rounds := closeCovers(t, h, &c, &k)
				r := loss(t, h, k)
				glow := 0.0
				for _, f := range r.Facets {
					glow += f.Area * f.Solution.InRadiative
				}
				latent := r.Latent - r.Leakage.Latent
				size := math.Abs(r.Total) + math.Abs(glow) + 10
				if math.Abs(glow-c.Radiation) > 1e-6*size || rounds == 40 {
					t.Logf("%v cover %d open %g rounds %d", room, i, c.Open, rounds)
				}
				require.InDelta(t, glow, c.Radiation, 1e-6*size)
				require.InDelta(t, r.Total-r.Ground.Total-r.Leakage.Total-glow-latent, c.Air, 1e-6*size)
				require.InDelta(t, r.Condensate, c.Condensate, 1e-6*r.Condensate+1e-10)
				require.InDelta(t, latent, c.Latent, 1e-6*latent+1e-3)
				require.InDelta(t, r.CoverSky, c.Sky, 1e-5*size)
				require.Equal(t, r.Leakage, c.Leakage)
				sun := 0.0
				for _, f := range r.Facets {
					if k.Sun != nil {
						sun += f.Area * k.Sun[f.Facet][0]
					}
				}
				require.InDelta(t, sun, c.Sun, 1e-9*sun)
			}
		}
	}
}

// The slopes are those of small steps.
func TestHouseCoversSlopes(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 2))
	bad, n := 0, 0
	for _, room := range []RadiantRoom{RadiantGiven, RadiantEnclosure, RadiantAir} {
		for i, h := range coveredHouses(t, room) {
			for range 8 {
				var c HouseCovers
				k := randomNight(rnd, h)
				closeCovers(t, h, &c, &k)
				for d, step := range [3]float64{0.02, 0.1, -0.5} {
					es := psychro.SaturationPressure(k.Inside)
					e := k.InsideHumidity * es
					glow := stefan * math.Pow(k.Inside+k.RadiantRise+273.15, 4)
					l := k
					switch d {
					case 0:
						l.Inside += step
					case 1:
						glow += step
					case 2:
						e += step
					}
					l.RadiantRise = math.Pow(glow/stefan, 0.25) - 273.15 - l.Inside
					l.InsideHumidity = e / psychro.SaturationPressure(l.Inside)
					var m HouseCovers
					closeCovers(t, h, &m, &l)
					for q, v := range [3][2]float64{{c.Air, m.Air}, {c.Radiation, m.Radiation}, {c.Condensate * 2.5e6, m.Condensate * 2.5e6}} {
						want := (v[1] - v[0]) / step
						got := c.Slope[q][d]
						if q == 2 {
							got *= 2.5e6
						}
						area := 200 * []float64{1, 0.2, 0.02}[d]
						n++
						if math.Abs(want-got) > 0.02*area {
							bad++
							t.Logf("%v cover %d: slope %d by %d: %.4g, by step %.4g (%.3g)", room, i, q, d, got, want, area)
						}
					}
				}
			}
		}
	}
	t.Logf("%d of %d slopes are not those of a step", bad, n)
	require.Less(t, bad, n/25)
}

// Over a floor of 157 °C Loss does not find how the facets agree. What they take one
// round after the other is known all the same, with what is left open.
func TestCoversOverAFloorThatGlows(t *testing.T) {
	s, err := NewShape(DefaultForm())
	require.NoError(t, err)
	sheet := TripleWall16()
	h := built(t, HousePlan{Shape: s, Covers: map[FacetKind]Cover{Roof: sheet, SideWall: sheet, EndWall: sheet}, Ground: DefaultGround(ClaySoil()), Climate: DefaultGroundClimate(), Leakage: DefaultLeakage()})
	k := DefaultHouseConditions()
	k.Inside, k.RadiantRise, k.InsideHumidity, k.Outside, k.SkyDrop, k.Wind = 58.67399896061491, 98.72301468431777, 0.8351416474115995, 17.616254532587263, 11.008480645502697, 11.692511277314349
	var c HouseCovers
	for range 3 {
		require.NoError(t, h.CoversTo(&c, &k))
		require.Greater(t, c.Radiation, 1e4)
	}
}

func BenchmarkHouseCovers(b *testing.B) {
	for _, room := range []RadiantRoom{RadiantGiven, RadiantEnclosure} {
		b.Run(room.String(), func(b *testing.B) {
			h := fourteen(b, room)
			var c HouseCovers
			k := winterNight()
			b.ReportAllocs()
			i := 0
			for b.Loop() {
				l := k
				l.Inside += 0.01 * float64(i&7)
				if err := h.CoversTo(&c, &l); err != nil {
					b.Fatal(err)
				}
				sinkLoss += c.Air
				i++
			}
		})
	}
}
