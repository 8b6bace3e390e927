package envelope_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
	"cloche.example/psychro"
)

// gramsPerHour is a vapour of so many g/(m² h) of the house's floor, kg/s.
func gramsPerHour(h *House, grams float64) float64 {
	return grams * 1e-3 / 3600 * h.Shape().FloorArea
}

// Over covers, weathers and sources the balance closes, the loss at its humidity
// takes the vapour that is released, and more vapour makes moister air.
func TestVapourBalanceCloses(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	span := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	for _, c := range Covers() {
		p := filmHouse(t)
		for _, kind := range []FacetKind{Roof, SideWall, EndWall} {
			p.Covers[kind] = c.Cover
		}
		h := built(t, p)
		for range 6 {
			k := winterNight()
			k.Outside, k.OutsideHumidity, k.SkyDrop, k.Wind = span(-20, 12), span(0.4, 1), span(0, 22), span(0, 8)
			last := 0.0
			for _, grams := range []float64{0, 3, 20, 100, 500} {
				v := VapourSources{Released: gramsPerHour(h, grams), Exchange: 0.05 * float64(r.IntN(2))}
				b, err := h.SolveVapour(k, v)
				require.NoError(t, err)
				at := k
				at.InsideHumidity = b.Humidity
				l := loss(t, h, at)
				out := airOf(t, k.Outside, k.OutsideHumidity, k.Pressure).HumidityRatio()
				in := airOf(t, k.Inside, b.Humidity, k.Pressure).HumidityRatio()
				size := max(v.Released, (l.Leakage.DryAir+v.Exchange)*out)
				require.InDelta(t, v.Released-b.Fog, l.Evaporation+v.Exchange*(in-out), 1e-9*size, "%s %+v %+v", c.Name, k, v)
				require.InDelta(t, 0, b.Residual, 1e-9*size)
				require.GreaterOrEqual(t, b.Humidity, last-1e-9)
				require.True(t, b.Fog == 0 || b.Humidity == 1)
				require.InDelta(t, (v.Released-b.Fog)*psychro.LatentHeat(15), b.Latent, 1e-6)
				require.InDelta(t, l.Total-l.Latent+b.Latent+b.Exchange, b.Total, 1e-3)
				last = b.Humidity
			}
		}
	}
}

// Where nothing condenses the humidity is that of the dilution; without air and
// vapour it is the highest at which the covers stay dry; what the house cannot
// get rid of is fog.
func TestVapourBalanceLimits(t *testing.T) {
	p := filmHouse(t)
	h := built(t, p)
	k := DefaultHouseConditions()
	k.Outside, k.OutsideHumidity = 8, 0.5
	v := VapourSources{Released: gramsPerHour(h, 5)}
	b, err := h.SolveVapour(k, v)
	require.NoError(t, err)
	require.Zero(t, b.Condensate)
	out := airOf(t, 8, 0.5, k.Pressure).HumidityRatio()
	require.InEpsilon(t, out+v.Released/b.Loss.Leakage.DryAir, b.HumidityRatio, 1e-9)
	require.LessOrEqual(t, b.Solutions, 3)

	k = winterNight()
	much := VapourSources{Released: gramsPerHour(h, 1e5), Unheated: gramsPerHour(h, 10)}
	b, err = h.SolveVapour(k, much)
	require.NoError(t, err)
	require.Equal(t, 1.0, b.Humidity)
	require.Positive(t, b.Fog)
	require.InDelta(t, much.Released, b.Fog+b.Condensate+b.Carried, 1e-9*much.Released)
	require.InDelta(t, (much.Released-much.Unheated-b.Fog)*psychro.LatentHeat(15), b.Latent, 1e-6)

	p.Leakage.AirChanges = 0
	tight := built(t, p)
	b, err = tight.SolveVapour(k, VapourSources{})
	require.NoError(t, err)
	require.Zero(t, b.Condensate)
	k.InsideHumidity = b.Humidity * (1 + 1e-6)
	require.Positive(t, loss(t, tight, k).Condensate)

	_, err = h.SolveVapour(winterNight(), VapourSources{Released: -1, Unheated: math.NaN(), Exchange: 1e9})
	requireFields(t, err, "Released", "Unheated", "Exchange")
	_, err = h.SolveVapour(winterNight(), VapourSources{Released: 1, Unheated: 2})
	requireFields(t, err, "Unheated")
}

// From the hour before the answer is the same, in fewer solutions.
func TestVapourBalanceFromNear(t *testing.T) {
	h := built(t, filmHouse(t))
	k := winterNight()
	var b VapourBalance
	v := VapourSources{Released: gramsPerHour(h, 20)}
	require.NoError(t, h.SolveVapourTo(&b, &k, v))
	k.Outside += 0.3
	cold, err := h.SolveVapour(k, v)
	require.NoError(t, err)
	require.NoError(t, h.SolveVapourTo(&b, &k, v))
	require.InDelta(t, cold.Humidity, b.Humidity, 1e-8)
	require.InDelta(t, cold.Total, b.Total, 1e-3)
	t.Logf("%d solutions cold, %d from near", cold.Solutions, b.Solutions)
}

// From a drier hour a house in fog is found in fog.
func TestVapourBalanceFogFromNear(t *testing.T) {
	h := built(t, filmHouse(t))
	k := winterNight()
	for _, inside := range []float64{8, 12, 15, 20, 25} {
		var b VapourBalance
		require.NoError(t, h.SolveVapourTo(&b, &k, VapourSources{Released: gramsPerHour(h, 10)}))
		k.Inside, k.Outside = inside, inside-1
		v := VapourSources{Released: gramsPerHour(h, 2000)}
		require.NoError(t, h.SolveVapourTo(&b, &k, v))
		require.Equal(t, 1.0, b.Humidity)
		require.Positive(t, b.Fog)
		require.InDelta(t, 0, b.Residual, 1e-9*v.Released)
	}
}
