package envelope_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
	"cloche.example/psychro"
)

func airOf(t *testing.T, temperature, humidity, pressure float64) psychro.State {
	s, err := psychro.FromRelativeHumidity(temperature, humidity, pressure)
	require.NoError(t, err)
	return s
}

// One air makes the whole night: sky by its humidity, ground and room as warm
// as the air beside them.
func TestConditionsFromTheAir(t *testing.T) {
	a := HouseAir{Inside: airOf(t, 16, 0.8, 97e3), Outside: airOf(t, -10, 0.85, 97e3), Wind: 3, Hour: 6 * time.Hour, Cloud: 0.4}
	k, err := NewHouseConditions(a)
	require.NoError(t, err)
	sky, err := SkyTemperature(a.Outside, a.Hour, a.Cloud)
	require.NoError(t, err)
	require.InDelta(t, sky, k.Outside-k.SkyDrop, 1e-12)
	require.InDelta(t, 0.8, k.InsideHumidity, 1e-9)
	require.InDelta(t, 0.85, k.OutsideHumidity, 1e-9)
	require.Equal(t, []float64{16, -10, 3, 97e3, 0, 0}, []float64{k.Inside, k.Outside, k.Wind, k.Pressure, k.RadiantRise, k.GroundRise})
	require.Equal(t, InnerAuto, k.InnerFace)
	c, err := NewCoverConditions(a)
	require.NoError(t, err)
	require.Equal(t, k.CoverConditions, c)
}

// The outside temperature alone takes sky and ground along: the loss of a cover
// in the cold is that of the same night all over, and no sky stays behind warm.
func TestOutsideAloneMakesANight(t *testing.T) {
	house := built(t, filmHouse(t))
	k := DefaultHouseConditions()
	warm := loss(t, house, k)
	k.Outside = -10
	cold := loss(t, house, k)
	require.InDelta(t, 0, warm.CoverSky, 1e-6)
	require.InDelta(t, 0, cold.CoverSky, 1e-6)
	require.Greater(t, cold.Cover, 1.5*warm.Cover)
}

// SkyTemperature is its three parts in one call.
func TestSkyTemperature(t *testing.T) {
	outside := airOf(t, 5, 0.7, 1e5)
	sky, err := SkyTemperature(outside, 0, 0.5)
	require.NoError(t, err)
	clear := SkyEmissivity(outside.DewPoint(), 0, 1e5)
	require.InDelta(t, SkyTemperatureOf(5, clear+(1-clear)*0.5*math.Exp(-1000/8200.0)), sky, 1e-9)
	last := math.Inf(-1)
	for _, cloud := range []float64{0, 0.3, 0.7, 1} {
		sky, err := SkyTemperature(outside, 0, cloud)
		require.NoError(t, err)
		require.Greater(t, sky, last)
		require.Less(t, sky, 5.0)
		last = sky
	}
}

func TestFaultsOfTheAir(t *testing.T) {
	inside, outside := airOf(t, 15, 0.8, 1e5), airOf(t, 0, 0.8, 1e5)
	_, err := SkyTemperature(outside, 13, 2) // a bare number counts nanoseconds
	requireFields(t, err, "hour", "cloud")
	_, err = SkyTemperature(psychro.State{}, 0, 0)
	requireFields(t, err, "pressure of outside")
	_, err = SkyTemperature(airOf(t, -50, 0.8, 1e5), 0, 0)
	requireFields(t, err, "dew point of outside")
	_, err = NewHouseConditions(HouseAir{Inside: inside, Outside: outside, Wind: 99, Hour: 30 * time.Hour, Cloud: -1})
	requireFields(t, err, "Wind", "Hour", "Cloud")
	_, err = NewCoverConditions(HouseAir{Inside: airOf(t, 15, 0.8, 9e4), Outside: outside})
	requireFields(t, err, "pressure of Inside")
	_, err = NewCoverConditions(HouseAir{})
	requireFields(t, err, "pressure of Outside")
}

// A shape that someone wrote by hand is checked as one that was made.
func TestHandWrittenShapesAreChecked(t *testing.T) {
	for _, c := range []struct {
		spoil func(s *Shape)
		field string
	}{
		{func(s *Shape) { s.Facets[0].Area = -54 }, "Shape.Facets[0].Area"},
		{func(s *Shape) { s.Facets[0].Area = math.NaN() }, "Shape.Facets[0].Area"},
		{func(s *Shape) { s.Facets[1].Tilt = 200 }, "Shape.Facets[1].Tilt"},
		{func(s *Shape) { s.Facets[1].Kind = 44 }, "Shape.Facets[1].Kind"},
		{func(s *Shape) { s.Volume = math.Inf(1) }, "Shape.Volume"},
		{func(s *Shape) { s.FloorArea *= 2 }, "Shape.FloorArea"},
		{func(s *Shape) { s.Perimeter = 0 }, "Shape.Perimeter"},
		{func(s *Shape) { s.Facets = nil }, "Shape.Facets"},
	} {
		p := filmHouse(t)
		c.spoil(&p.Shape)
		_, err := NewHouse(p)
		requireFields(t, err, c.field)
	}
}

// A facet of its own cover keeps it, with the screen drawn, too.
func TestSingleFacets(t *testing.T) {
	p := filmHouse(t)
	base := loss(t, built(t, p), winterNight())
	p.Single = map[int]Cover{0: TripleWall16()}
	k := winterNight()
	one := loss(t, built(t, p), k)
	require.Less(t, one.Facets[0].Loss, base.Facets[0].Loss)
	require.Equal(t, base.Facets[1].Loss, one.Facets[1].Loss)
	k.ScreenDrawn = true
	drawn := loss(t, built(t, p), k)
	require.Equal(t, one.Facets[0].Loss, drawn.Facets[0].Loss)
	require.Less(t, drawn.Facets[1].Loss, one.Facets[1].Loss)
}
