package envelope

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
)

// airOfRoom is the inside air of k.
func airOfRoom(t testing.TB, k CoverConditions) psychro.State {
	s, err := psychro.FromRelativeHumidity(k.Inside, k.InsideHumidity, k.Pressure)
	require.NoError(t, err)
	return s
}

// A wet film: psychro's flux at the face, its heat there and at the heater; the
// dry face at the humidity of DripHumidity is just at the dew point.
func TestWetFace(t *testing.T) {
	k := night()
	k.InsideHumidity = 0.9
	dry := solved(t, SingleFilm(), k)
	require.True(t, dry.Condenses)
	require.Zero(t, dry.WetShare)
	at := k
	at.InsideHumidity = dry.DripHumidity
	require.InDelta(t, dry.InnerTemperature, airOfRoom(t, at).DewPoint(), 1e-9)
	k.InnerFace = InnerAuto
	k.Outside = 0
	wet := solved(t, SingleFilm(), k)
	require.Equal(t, 1.0, wet.WetShare)
	require.Zero(t, wet.IceShare)
	v, err := airOfRoom(t, k).VapourFlux(wet.InnerTemperature, wet.InsideCoefficient)
	require.NoError(t, err)
	require.Greater(t, v.Flux, 0.0)
	require.InEpsilon(t, v.Flux, wet.Condensate, 1e-12)
	require.InEpsilon(t, v.Latent, wet.InLatent, 1e-12)
	require.InEpsilon(t, v.Flux*psychro.LatentHeat(k.Inside), wet.LatentLoad, 1e-12)
	require.InDelta(t, wet.Load, wet.InConvective+wet.InRadiative+wet.LatentLoad, 1e-9)
	require.InDelta(t, wet.Load/15, wet.U, 1e-12)
	require.InDelta(t, airOfRoom(t, k).DewPoint(), wet.DewPoint, 1e-12)
	k.InsideHumidity = 0.2
	require.Zero(t, solved(t, SingleFilm(), k).WetShare)
	k.InsideHumidity = 0
	s := solved(t, SingleFilm(), k)
	require.True(t, math.IsInf(s.DewPoint, -1))
	require.False(t, s.Condenses)
	// Clear film loses less when wet, glass more: both are measured.
	k = night()
	k.InsideHumidity, k.InnerFace = 0.95, InnerWet
	require.Less(t, solved(t, SingleFilm(), k).FluxIn-solved(t, SingleFilm(), k).InLatent, dry.FluxIn)
	dryGlass := k
	dryGlass.InnerFace = InnerDry
	require.Greater(t, solved(t, SingleGlass(), k).FluxIn, solved(t, SingleGlass(), dryGlass).FluxIn)
}

// At the dew point nothing passes, on either side of it the sign is right, and
// a face that decides for itself never dries. By hand: air of 20 °C and 60 %
// with a face 0.35 K below the dew point.
func TestNoVapourAtTheDewPoint(t *testing.T) {
	k := DefaultCoverConditions()
	k.Inside, k.InsideHumidity = 20, 0.6
	room := newRoomAir(&k)
	require.InDelta(t, 0, room.ratio-room.wetAt(room.dew).ratio, 1e-14)
	w := room.wetAt(room.dew - 0.35)
	require.InDelta(t, 3.2, 4*w.perH*(room.ratio-w.ratio)*3.6e6, 0.05, "g/(m² h), where a difference of densities gave -0.84")
	for rh := 0.3; rh < 1; rh += 0.01 {
		for _, c := range Covers() {
			k := night()
			k.InnerFace, k.InsideHumidity = InnerAuto, rh
			s := solved(t, c.Cover, k)
			require.GreaterOrEqual(t, s.Condensate, 0.0)
			require.Equal(t, s.Condenses, s.WetShare > 0)
			if s.WetShare > 0 && s.WetShare < 1 {
				require.Zero(t, s.Condensate)
				require.InDelta(t, s.DewPoint, s.InnerTemperature, 1e-9)
			}
		}
	}
}

// Where face and air are equally warm, still air brings vapour with 0.5 W/(m²
// K), with no heat by convection left.
func TestVapourInStillAir(t *testing.T) {
	k := night()
	k.InnerFace, k.InsideConvection, k.InsideHumidity, k.InsideCoefficient = InnerWet, InsideGiven, 0.6, 0
	s := solved(t, SingleGlass(), k)
	v, err := airOfRoom(t, k).VapourFlux(s.InnerTemperature, 0.5)
	require.NoError(t, err)
	require.InEpsilon(t, v.Flux, s.Condensate, 1e-12)
	require.Zero(t, s.InConvective)
}

// Outside temperatures down through the freezing point of the face: water, then
// water and ice at 0.01 °C, then frost; heat and condensate go on without a
// step, and what the heater pays has no fusion in it.
func TestFreezingFace(t *testing.T) {
	k := DefaultCoverConditions()
	k.InnerFace, k.InsideHumidity, k.Wind = InnerWet, 0.8, 3
	const step = 0.002
	last := math.NaN()
	count := map[string]int{}
	for k.Outside = -8; k.Outside > -16; k.Outside -= step {
		s := solved(t, SingleGlass(), k)
		if !math.IsNaN(last) {
			require.InDelta(t, last, s.FluxIn, 22*step, "at %g °C", k.Outside)
		}
		last = s.FluxIn
		water, ice := psychro.LatentHeatOver(psychro.Liquid, max(0.01, s.InnerTemperature)), psychro.LatentHeatOver(psychro.Ice, min(0.01, s.InnerTemperature))
		require.InEpsilon(t, s.Condensate*(water+s.IceShare*(ice-water)), s.InLatent, 1e-9)
		require.InEpsilon(t, s.Condensate*psychro.LatentHeat(15), s.LatentLoad, 1e-12)
		switch {
		case s.IceShare == 0:
			count["water"]++
			require.GreaterOrEqual(t, s.InnerTemperature, 0.01)
		case s.IceShare == 1:
			count["frost"]++
			require.Less(t, s.InnerTemperature, 0.01)
		default:
			count["both"]++
			require.InDelta(t, 0.01, s.InnerTemperature, 1e-9)
		}
	}
	require.Len(t, count, 3)
	require.Greater(t, count["both"], 50)
}

// Frost that dries off takes the heat of sublimation.
func TestDryingFrost(t *testing.T) {
	k := DefaultCoverConditions()
	k.InnerFace, k.InsideHumidity, k.Inside, k.Outside = InnerWet, 0.2, 0, -20
	s := solved(t, DoubleGlass(), k)
	require.Negative(t, s.Condensate)
	require.False(t, s.Condenses)
	require.Equal(t, 1.0, s.IceShare)
	require.InEpsilon(t, s.Condensate*psychro.LatentHeatOver(psychro.Ice, s.InnerTemperature), s.InLatent, 1e-12)
}

// Clear films pass heat radiation; water on them does not, and is cold: over a
// band of humidity a wet and a dry state each keep themselves up.
func TestTwoStates(t *testing.T) {
	k := DefaultCoverConditions()
	k.SkyDrop, k.Tilt, k.InnerFace, k.InsideHumidity = 20, 26.6, InnerAuto, 0.58
	s := solved(t, DoubleFilm(), k)
	require.True(t, s.TwoStates)
	require.Equal(t, 1.0, s.WetShare)
	k.InnerFace = InnerDry
	dry := solved(t, DoubleFilm(), k)
	require.False(t, dry.Condenses)
	require.InDelta(t, dry.FluxIn, s.DryFluxIn, 1e-7)
	require.Greater(t, s.DryFluxIn, 1.2*s.FluxIn)
	k.InnerFace = InnerWet
	require.InDelta(t, solved(t, DoubleFilm(), k).FluxIn, s.FluxIn, 1e-7)
}

// ISO 13788 and DIN 4108-3 dew points, from memory, to 0.1 K.
func TestDewPoints(t *testing.T) {
	for _, r := range [][3]float64{{20, 0.5, 9.3}, {20, 0.6, 12.0}, {20, 0.7, 14.4}, {20, 0.8, 16.4}, {18, 0.8, 14.5}, {15, 0.9, 13.4}} {
		k := DefaultCoverConditions()
		k.Inside, k.InsideHumidity = r[0], r[1]
		require.InDelta(t, r[2], solved(t, SingleGlass(), k).DewPoint, 0.0501)
	}
}

// A double film that has collapsed in part: each part is wet or dry by itself,
// so that the whole is the sum of the two: 10 % collapsed, 15 °C and 50 %, outside
// 0 °C and sky -15 °C.
func TestCollapsedPartIsJudgedAlone(t *testing.T) {
	k := DefaultCoverConditions()
	k.SkyDrop, k.InsideHumidity, k.InnerFace, k.Wind = 15, 0.5, InnerAuto, 2
	for _, inner := range []Layer{infraredFilm, clearFilm} {
		both := mustCover(t, []Layer{clearFilm, inner}, Gap{Width: 0.1, Collapsed: 0.1, CollapsedWidth: 0.001})
		s := solved(t, both, k)
		apart := solved(t, mustCover(t, []Layer{clearFilm, inner}, Gap{Width: 0.1}), k)
		patch := solved(t, mustCover(t, []Layer{clearFilm, inner}, Gap{Width: 0.001}), k)
		require.InDelta(t, 0.9*apart.FluxIn+0.1*patch.FluxIn, s.FluxIn, 1e-7)
		require.InDelta(t, 0.9*apart.Condensate+0.1*patch.Condensate, s.Condensate, 1e-14)
		require.Zero(t, apart.WetShare)
		require.Greater(t, s.Patch.WetShare, 0.0)
		require.GreaterOrEqual(t, s.Condensate, 0.0)
		require.True(t, s.Condenses)
	}
}

// A screen with openings gathers water on its closed part alone.
func TestOpenScreenCondensesOnItsClosedPart(t *testing.T) {
	k := night()
	k.InnerFace, k.InsideHumidity = InnerWet, 0.9
	c, err := WithScreen(SingleGlass(), openScreen)
	require.NoError(t, err)
	s := solved(t, c, k)
	v, err := airOfRoom(t, k).VapourFlux(s.InnerTemperature, s.InsideCoefficient)
	require.NoError(t, err)
	require.InEpsilon(t, (1-c.Layers()[1].Openness)*v.Flux, s.Condensate, 1e-12)
}

// A clear film upright, wet, whose dry face lies below the dew point: a few drops
// warm it to the dew point, as a second state; a drier room leaves no wet state.
func TestWetBesideDrops(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	found := 0
	for range 4000 {
		c, k := realistic(r)
		k.InnerFace = InnerAuto
		if s, err := c.Solve(k); err == nil && s.DripHumidity < 1 && s.DripHumidity > 0.05 {
			k.InsideHumidity = math.Min(1, s.DripHumidity*(1+0.01*r.Float64()))
		}
		s := solved(t, c, k)
		if !s.TwoStates || s.WetShare < 1 || !(k.InsideHumidity > s.DripHumidity) || s.Patch.Share > 0 {
			continue
		}
		found++
		require.Greater(t, math.Abs(s.DryFluxIn-s.FluxIn), 0.1)
		// The drier state lies between dry and wet.
		k.InnerFace = InnerDry
		dry := solved(t, c, k)
		require.Less(t, math.Abs(s.DryFluxIn-dry.FluxIn), math.Abs(s.FluxIn-dry.FluxIn))
		// The wet one is still there as the answer.
		require.GreaterOrEqual(t, s.Condensate, 0.0)
		require.LessOrEqual(t, s.InnerTemperature, s.DewPoint+1e-9)
	}
	require.Positive(t, found)
}

// A wet film in dry air, as warm as the air outside and under a sky warmer than both,
// cools by drying more than anything around it.
func TestWetFaceColderThanAllAround(t *testing.T) {
	k := DefaultCoverConditions()
	k.Inside, k.InsideHumidity, k.RadiantRise, k.Outside, k.SkyDrop, k.Wind = 30, 0.3, 1.1670655315307954, 30, -6, 1.0/6
	k.Tilt, k.Height, k.InnerFace = 82.40535663140855, 11.35, InnerWet
	s, err := SingleFilm().Solve(k)
	require.NoError(t, err)
	require.Less(t, s.InnerTemperature, 29.0)
	require.Less(t, s.Residual, 1e-9)
	require.Less(t, s.Condensate, 0.0)
}
