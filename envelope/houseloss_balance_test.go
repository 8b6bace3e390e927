package envelope_test

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
)

// filmRoof is a house whose roof passes heat radiation, over walls that do not:
// what the roof sends depends on whether it is wet, and the walls' condensate on
// what the roof sends.
func filmRoof(t *testing.T, section Section, roof, side, end Cover) *House {
	f := DefaultForm()
	f.Section, f.Span, f.Length, f.Eave, f.Ridge, f.RidgeOffset, f.ArchStrips = section, 6.4, 29, 2.1, 4.3, 1.7, 2
	s, err := NewShape(f)
	require.NoError(t, err)
	return built(t, HousePlan{Shape: s, Covers: map[FacetKind]Cover{Roof: roof, SideWall: side, EndWall: end},
		Ground: DefaultGround(ClaySoil()), Climate: DefaultGroundClimate(), Leakage: DefaultLeakage()})
}

// The vapour balance has the same answer whatever hour came before. Roofs of
// clear film over opaque walls have, at some vapour, one balance with a slope
// dry and a moister one with it wet: the moister is the answer.
func TestVapourBalanceOneAnswer(t *testing.T) {
	single, double, twin := SingleFilm(), DoubleFilm(), TwinWall10()
	for name, h := range map[string]*House{
		"pointed, double film": filmRoof(t, PointedArch, double, twin, DoubleGlass()),
		"uneven, single film":  filmRoof(t, UnevenGable, single, twin, DoubleGlass()),
		"gable, both films":    filmRoof(t, Gable, single, double, twin),
	} {
		k := DefaultHouseConditions()
		k.Inside, k.Outside, k.SkyDrop, k.Wind, k.OutsideHumidity = 26, 9.5, 14.6, 7.7, 0.76
		for grams := 2.0; grams < 60; grams *= 1.03 {
			v := VapourSources{Released: gramsPerHour(h, grams)}
			cold, err := h.SolveVapour(k, v)
			require.NoError(t, err)
			for _, before := range []float64{0.2, 0.9, 1.1, 5} {
				var b VapourBalance
				other := k
				other.SkyDrop += 2 * (1 - before)
				require.NoError(t, h.SolveVapourTo(&b, &other, VapourSources{Released: before * v.Released}))
				require.NoError(t, h.SolveVapourTo(&b, &k, v))
				require.InEpsilon(t, cold.Humidity, b.Humidity, 1e-7, "%s, %g g/(m² h) after %g of it", name, grams, before)
				require.InEpsilon(t, cold.Loss.Cover, b.Loss.Cover, 1e-7)
			}
			require.LessOrEqual(t, cold.Loss.RadiantResidual, 1e-8) // a state that holds
		}
	}
}

var balances = flag.Int("balances", 300, "random houses whose vapour TestRandomBalances balances")

// randomHouse makes a house of any form and covers.
func randomHouse(t *testing.T, r *rand.Rand) *House {
	span := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	pick := func() Cover { return randomCover(t, r) }
	f := DefaultForm()
	f.Section = Section(r.IntN(5))
	f.Span, f.Length, f.Eave, f.Depth = span(3, 15), span(2, 80), span(0.5, 4), span(0, 1)*float64(r.IntN(2))
	f.Ridge, f.RidgeOffset, f.RidgeTilt, f.ArchStrips = f.Eave+span(0.1, 0.45)*f.Span, span(0.2, 0.8)*f.Span, 5, 1+r.IntN(8)
	if f.Section != LeanTo {
		f.Bays = 1 + r.IntN(3)
	}
	s, err := NewShape(f)
	require.NoError(t, err)
	p := HousePlan{Shape: s, Covers: map[FacetKind]Cover{}, Ground: DefaultGround(ClaySoil()), Climate: DefaultGroundClimate(),
		Leakage: DefaultLeakage(), FrameAllowance: span(0, 0.1), Radiant: RadiantRoom(r.IntN(2))}
	for _, k := range []FacetKind{Roof, SideWall, EndWall, BackWall, DwarfWall, Gutter} {
		p.Covers[k] = pick()
	}
	return built(t, p)
}

// randomHour makes weather and vapour for the house.
func randomHour(r *rand.Rand, h *House) (HouseConditions, VapourSources) {
	span := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	k := DefaultHouseConditions()
	k.Inside, k.Outside, k.SkyDrop, k.Wind = span(0, 30), span(-25, 25), span(-2, 25), span(0, 12)
	k.OutsideHumidity = span(0.4, 1)
	if k.Outside > k.Inside {
		k.Outside = k.Inside - span(0, 20)
	}
	v := VapourSources{Released: math.Exp(span(math.Log(1), math.Log(300))) * 1e-3 / 3600 * h.Shape().FloorArea, Exchange: float64(r.IntN(2)) * span(0, 0.2)}
	return k, v
}

// Random balances close, five in each house, from afar and from an hour that differs by little or
// much, with the same answer, and Loss at its humidity is that of the balance: one
// of the first 300 has films of which some stay wet only where others are dry.
func TestRandomBalances(t *testing.T) {
	r := rand.New(rand.NewPCG(99, 101))
	open, another, between, drier, rounds := 0, 0, 0, 0, 0
	var h *House
	for i := range *balances {
		if i > 0 && i%20_000 == 0 {
			t.Logf("%d of %d: %d not closed, %d with another answer, %d between two states, %d with a drier state", i, *balances, open, another, between, drier)
		}
		if i%5 == 0 {
			h = randomHouse(t, r)
		}
		k, v := randomHour(r, h)
		cold, err := h.SolveVapour(k, v)
		if err != nil {
			t.Logf("%v: %+v %+v %+v", err, h.Shape().Form, k, v)
			open++
			continue
		}
		rounds += cold.Solutions
		if cold.Loss.RadiantResidual > 1e-8 {
			between++
		}
		brought := (cold.Loss.Leakage.DryAir + v.Exchange) * airOf(t, k.Outside, k.OutsideHumidity, k.Pressure).HumidityRatio()
		limit := 1e-9 * max(v.Released, brought)
		require.InDelta(t, 0, cold.Residual, limit, "%+v %+v %+v", h.Shape().Form, k, v)
		require.True(t, cold.Fog == 0 || cold.Humidity == 1)
		require.GreaterOrEqual(t, cold.Fog, 0.0)
		at := k
		at.InsideHumidity = cold.Humidity
		if alone := loss(t, h, at); math.Abs(alone.Evaporation-cold.Loss.Evaporation) > limit+1e-6*v.Released {
			drier++
		}
		d := []float64{-3, 0.5, 3}[r.IntN(3)]
		var b VapourBalance
		other, before := k, v
		other.Outside, other.SkyDrop, before.Released = k.Outside+d, max(0, k.SkyDrop-d), v.Released*math.Exp2(d)
		if h.SolveVapourTo(&b, &other, before) != nil {
			continue
		}
		if err = h.SolveVapourTo(&b, &k, v); err != nil {
			t.Logf("after %g: %v: %+v %+v %+v", d, err, h.Shape().Form, k, v)
			open++
			continue
		}
		if math.Abs(cold.Humidity/b.Humidity-1) > 1e-5 || // 1.3e-6 was seen once, where the house takes hardly more as it grows moister
			math.Abs(cold.Fog-b.Fog) > max(1e-6*v.Released, limit) || math.Abs(cold.Loss.Total/b.Loss.Total-1) > 1e-5 {
			t.Logf("%g after %g, else %g, residual %g and %g: %+v %+v %+v", b.Humidity, d, cold.Humidity, b.Residual, cold.Residual, h.Shape().Form, k, v)
			another++
		}
	}
	t.Logf("%d balances, %d not closed, %d with another answer, %d between two states, %d with a drier state at the same humidity, %.1f solutions of all covers for each", *balances, open, another, between, drier, float64(rounds)/float64(max(1, *balances)))
	require.LessOrEqual(t, open, *balances/100_000)
	require.LessOrEqual(t, another, *balances/100_000)
	require.LessOrEqual(t, drier, *balances/20_000)
}
