package ventilation_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/ventilation"
)

// realHouse is an invented house of 6.4 by 14.8 m under the given film, with a
// screen below its roof, a door, a frame and leaks.
func realHouse(t testing.TB, film envelope.Cover, see envelope.RadiantRoom) *envelope.House {
	t.Helper()
	form := envelope.DefaultForm()
	form.Span, form.Length, form.Eave, form.Ridge, form.DwarfWall, form.Azimuth = 6.4, 14.8, 1.8, 3.3, 0.2, 90
	shape, err := envelope.NewShape(form)
	require.NoError(t, err)
	wall, err := envelope.OpaqueWall("brick", 0.3, 0.24)
	require.NoError(t, err)
	screened, err := envelope.WithScreen(film, envelope.AluminisedScreen())
	require.NoError(t, err)
	h, err := envelope.NewHouse(envelope.HousePlan{
		Shape:          shape,
		Covers:         map[envelope.FacetKind]envelope.Cover{envelope.Roof: film, envelope.SideWall: film, envelope.EndWall: film, envelope.DwarfWall: wall},
		Screened:       map[envelope.FacetKind]envelope.Cover{envelope.Roof: screened},
		Radiant:        see,
		FrameAllowance: 0.04,
		Doors:          []envelope.Door{{Name: "door", Facet: 4, Area: 1.8, U: 3}},
		Bridges:        []envelope.Bridge{{Name: "sill", Length: 42.4, Psi: 0.15}},
		Ground:         envelope.DefaultGround(envelope.ClaySoil()),
		Climate:        envelope.DefaultGroundClimate(),
		Leakage:        envelope.DefaultLeakage(),
	})
	require.NoError(t, err)
	return h
}

// realClimate is summerHouse under the covers of realHouse.
func realClimate(t testing.TB, film envelope.Cover) ventilation.ClimateHouse {
	h := summerHouse(t)
	h.Cover, h.Real = ventilation.SimpleCover{}, ventilation.DefaultRealCover(realHouse(t, film, envelope.RadiantEnclosure))
	return h
}

// sameCovers holds the heat through the covers of the state x against package
// envelope at that state.
func sameCovers(t *testing.T, h ventilation.ClimateHouse, w ventilation.Weather, s ventilation.Setting, x ventilation.ClimateState) {
	t.Helper()
	require.Empty(t, coversDiffer(t, h, w, s, x))
}

// coversDiffer tells by how much they do, beyond 1e-6 of it, what condenses by its
// heat.
func coversDiffer(t *testing.T, h ventilation.ClimateHouse, w ventilation.Weather, s ventilation.Setting, x ventilation.ClimateState) string {
	t.Helper()
	r, err := coversAt(h, w, s, x)
	if err != nil {
		return err.Error()
	}
	want := throughCovers(&r)
	size := coversSize(&x)
	if x.CoversBetween || math.Abs(want-x.CoverLoss) <= 1e-6*size+1e-4 && math.Abs(r.Condensate-x.Condensed) <= 1e-6*size/2.5e6+1e-9 &&
		math.Abs(r.Leakage.DryAir-x.Leakage) <= 1e-6*x.Leakage {
		return ""
	}
	return fmt.Sprintf("covers take %.9g W and %.6g kg/s, envelope says %.9g W and %.6g kg/s; leaks %.9g and %.9g kg/s", x.CoverLoss, x.Condensed, want, r.Condensate, x.Leakage, r.Leakage.DryAir)
}

// coversSize is the heat that passes covers one way and the other, W.
func coversSize(x *ventilation.ClimateState) float64 {
	return math.Abs(x.CoverHeat) + math.Abs(x.CanopyUp+x.FloorUp) + x.CoverLatent
}

// edgeDiffers tells whether covers between dry and wet take what lies not between
// envelope's heat on either side of an edge, some thousandths of a kelvin off.
func edgeDiffers(t *testing.T, h ventilation.ClimateHouse, w ventilation.Weather, s ventilation.Setting, x ventilation.ClimateState) string {
	t.Helper()
	low, high := math.Inf(1), math.Inf(-1)
	for _, off := range edgeOffsets {
		y := x
		y.Temperature += off[0]
		y.RelativeHumidity = min(1, x.RelativeHumidity*(1+off[1]))
		y.CanopyTemperature, y.FloorTemperature = x.CanopyTemperature+off[2], x.FloorTemperature+off[2]
		r, err := coversAt(h, w, s, y)
		if err != nil {
			return err.Error()
		}
		low, high = min(low, throughCovers(&r)), max(high, throughCovers(&r))
	}
	size := coversSize(&x)
	if x.CoverLoss > low-1e-4*size && x.CoverLoss < high+1e-4*size {
		return ""
	}
	return fmt.Sprintf("covers between dry and wet take %.9g W, envelope says %.9g to %.9g W about that state", x.CoverLoss, low, high)
}

// edgeOffsets move a state a little, K of air, fraction of its humidity, K of crop
// and floor.
var edgeOffsets = [][3]float64{{0, 0, 0}, {5e-3, 0, 0}, {-5e-3, 0, 0}, {1e-3, 0, 0}, {-1e-3, 0, 0}, {0, 1e-4, 0}, {0, -1e-4, 0}, {0, 0, 1e-3}, {0, 0, -1e-3}, {1e-3, -1e-4, 1e-3}, {-1e-3, 1e-4, -1e-3}}

// throughCovers is the heat that the covers take, frame, doors and bridges, too.
func throughCovers(r *envelope.HouseLoss) float64 {
	return r.Total - r.Ground.Total - r.Leakage.Total
}

// coversAt is envelope's loss at the state x.
func coversAt(h ventilation.ClimateHouse, w ventilation.Weather, s ventilation.Setting, x ventilation.ClimateState) (envelope.HouseLoss, error) {
	k := h.Real.Conditions
	share := 0.0
	if h.Crop.LAI > 0 {
		share = -math.Expm1(-h.Crop.LongwaveExtinction * h.Crop.LAI)
	}
	fourth := func(c float64) float64 { return math.Pow(c+273.15, 4) }
	glow := (1 - share) * fourth(x.FloorTemperature)
	if share > 0 {
		glow += share * fourth(x.CanopyTemperature)
	}
	k.Inside, k.InsideHumidity = x.Temperature, min(1, x.RelativeHumidity)
	k.RadiantRise = math.Pow(glow, 0.25) - 273.15 - x.Temperature
	k.Outside, k.OutsideHumidity = w.Air.Temperature(), w.Air.RelativeHumidity()
	k.SkyDrop, k.Wind, k.Pressure, k.ScreenDrawn = k.Outside-w.Sky, w.Wind, w.Air.Pressure(), s.Screen
	shape := h.Real.House.Shape()
	k.Sun = make([][envelope.MaxLayers]float64, len(shape.Facets))
	for i, f := range shape.Facets {
		if !f.Kind.InGround() && !f.Party {
			k.Sun[i][0] = w.Sun * (1 - s.Shade) * h.Real.Absorptance * h.FloorArea / shape.CoverArea
		}
	}
	return h.Real.House.Loss(k)
}

// The heat through the covers is envelope's at the state that is found, on all
// ready-made covers, by day and night, shut and open, dry and wet, and every
// balance closes.
func TestRealCoversTakeWhatEnvelopeSays(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 9))
	for _, cover := range envelope.Covers() {
		for i := range 12 {
			h := realClimate(t, cover.Cover)
			if i%2 == 0 {
				h.Real.House = realHouse(t, cover.Cover, envelope.RadiantGiven)
			}
			if rnd.IntN(3) == 0 {
				h.Crop.LAI, h.Floor.Wet = 0, 0
			}
			outside := -15 + 35*rnd.Float64()
			w := ventilation.Weather{Air: air(t, outside, 0.3+0.65*rnd.Float64()), Sun: max(0, 900*(rnd.Float64()-0.4)),
				Wind: 8 * rnd.Float64(), Sky: outside - 20*rnd.Float64(), Ground: 9}
			s := ventilation.Setting{Opening: max(0, rnd.Float64()-0.6), Heat: 1e4 * rnd.Float64(), Radiant: 5000 * rnd.Float64(), Screen: rnd.IntN(2) == 0}
			if w.Sun > 0 {
				s.Opening += 0.2
			}
			x, err := climate(t, h).Solve(w, s)
			require.NoErrorf(t, err, "%s %+v %+v", cover.Name, w, s)
			sameCovers(t, h, w, s, x)
			require.Less(t, x.NodeResidual, 1e-9)
			require.InDelta(t, 0, x.HeatResidual, 1e-9*(math.Abs(x.HeatIn)+math.Abs(x.AirSensible)+math.Abs(x.AirLatent)+1e4))
			require.InDelta(t, 0, x.WaterResidual, 1e-9*(x.WaterIn+x.DryAir*x.HumidityRatio+1e-3))
			want := x.Temperature + 2
			held, err := climate(t, h).HeatFor(w, s, want)
			require.NoError(t, err)
			require.Equal(t, want, held.Temperature)
			sameCovers(t, h, w, s, held)
		}
	}
}

// A dry film that lets heat radiation through cools its house below the air on a
// clear night, where an opaque cover of the same kind does not.
func TestAFilmThatLetsHeatRadiationThrough(t *testing.T) {
	w := ventilation.Weather{Air: air(t, 2, 0.6), Wind: 1, Sky: -16, Ground: 8}
	h := realClimate(t, envelope.SingleFilm())
	h.Floor.Wet, h.Crop.LAI = 0, 0
	h.Real.Conditions.InnerFace = envelope.InnerDry
	clear, err := climate(t, h).Solve(w, ventilation.Setting{})
	require.NoError(t, err)
	require.Less(t, clear.Temperature, -0.8)
	h.Real = nil
	h.Cover = summerHouse(t).Cover
	opaque, err := climate(t, h).Solve(w, ventilation.Setting{})
	require.NoError(t, err)
	require.Greater(t, opaque.Temperature, clear.Temperature+1)
}

// A screen saves heat; pipes warm the leaves more than an air heater that holds
// the same air.
func TestScreenAndPipes(t *testing.T) {
	c := climate(t, realClimate(t, envelope.SingleGlass()))
	w := ventilation.Weather{Air: air(t, -6, 0.8), Wind: 3, Sky: -20, Ground: 9}
	open, err := c.HeatFor(w, ventilation.Setting{}, 16)
	require.NoError(t, err)
	drawn, err := c.HeatFor(w, ventilation.Setting{Screen: true}, 16)
	require.NoError(t, err)
	require.Less(t, drawn.Heat, 0.85*open.Heat)
	require.Greater(t, drawn.CanopyTemperature, open.CanopyTemperature)
	pipes, err := c.HeatFor(w, ventilation.Setting{Radiant: 0.5 * open.Heat}, 16)
	require.NoError(t, err)
	require.Greater(t, pipes.CanopyTemperature, open.CanopyTemperature+0.5)
	require.InDelta(t, open.Heat, pipes.Heat+pipes.Radiant, 0.2*open.Heat)
	floor, err := c.HeatFor(w, ventilation.Setting{Floor: 0.5 * open.Heat}, 16)
	require.NoError(t, err)
	require.Greater(t, floor.FloorTemperature, open.FloorTemperature+5)
	lamps, err := c.HeatFor(w, ventilation.Setting{Lamps: ventilation.LampHeat{Light: 3000, Radiant: 1000, Air: 2000}}, 16)
	require.NoError(t, err)
	require.Greater(t, lamps.Transpired, open.Transpired)
	require.Less(t, lamps.Heat, open.Heat-3000)
}

// Sun by facets takes the place of the shares of the cover.
func TestSunByFacets(t *testing.T) {
	h := realClimate(t, envelope.SingleGlass())
	c := climate(t, h)
	n := len(h.Real.House.Shape().Facets)
	gain := &envelope.SolarGain{Transmitted: 0.65 * 500 * h.FloorArea, Sun: make([][envelope.MaxLayers]float64, n)}
	shape := h.Real.House.Shape()
	for i, f := range shape.Facets {
		if !f.Kind.InGround() {
			gain.Sun[i][0] = 0.1 * 500 * h.FloorArea / shape.CoverArea
		}
	}
	w := ventilation.Weather{Air: air(t, 20, 0.5), Sun: 500, Wind: 2, Sky: 8, Ground: 15}
	for _, shade := range []float64{0, 0.4} {
		s := ventilation.Setting{Opening: 0.5, Shade: shade}
		w.Gain = nil
		even, err := c.Solve(w, s)
		require.NoError(t, err)
		w.Gain = gain
		facets, err := c.Solve(w, s)
		require.NoError(t, err)
		require.InDelta(t, even.Temperature, facets.Temperature, 1e-6)
		require.InDelta(t, even.SunCover, facets.SunCover, 1e-6)
	}
	w.Gain = &envelope.SolarGain{}
	_, err := c.Solve(w, ventilation.Setting{})
	require.ErrorContains(t, err, "length of Gain.Sun")
}

// What the covers do not know is refused in the caller's words.
func TestRealCoversRefuse(t *testing.T) {
	h := realClimate(t, envelope.SingleGlass())
	h.Air = nil
	c := climate(t, h)
	x, err := c.Solve(ventilation.Weather{Air: air(t, 5, 0.8), Wind: 3, Sky: -5, Ground: 9}, ventilation.Setting{})
	require.NoError(t, err)
	require.Equal(t, x.Leakage, x.DryAir, "no vents: leaks alone")
	require.Positive(t, x.Leakage)
	_, err = c.Solve(ventilation.Weather{Air: air(t, 70, 0.1), Wind: 42, Sky: -40, Ground: 9}, ventilation.Setting{})
	for _, f := range []string{"temperature of Air is 70", "Wind is 42", "Sky is -40"} {
		require.ErrorContains(t, err, f)
	}
	h.Real.House, h.Real.Transmittance = nil, 2
	_, err = ventilation.NewClimate(h)
	require.ErrorContains(t, err, "Real: House")
	h.Real.House = realHouse(t, envelope.SingleGlass(), envelope.RadiantGiven)
	h.Real.Conditions.Pressure = 5
	_, err = ventilation.NewClimate(h)
	require.ErrorContains(t, err, "Real.Conditions.Pressure")
	require.ErrorContains(t, err, "Real.Transmittance is 2")
}

// On the way to a state crop and floor may seem to radiate less than nothing, or what
// drives the covers to be no number: the one is a cold floor, the other no state.
func TestCoversOffTheWay(t *testing.T) {
	c := climate(t, realClimate(t, envelope.SingleGlass()))
	w := ventilation.Weather{Air: air(t, 2, 0.6), Wind: 1, Sky: -16, Ground: 8}
	require.NoError(t, ventilation.CoversAt(c, w, [3]float64{10, 380, 800}))
	require.NoError(t, ventilation.CoversAt(c, w, [3]float64{10, -5, 800}))
	require.ErrorIs(t, ventilation.CoversAt(c, w, [3]float64{math.NaN(), 380, 800}), ventilation.ErrNotConverged)
}
