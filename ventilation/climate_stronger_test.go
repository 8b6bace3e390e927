package ventilation_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

// heldHouse is a house whose heat is sought for a temperature.
type heldHouse struct {
	house   ventilation.ClimateHouse
	weather ventilation.Weather
	setting ventilation.Setting
	held    float64 // °C
}

// manyStates are houses whose balance has more than one state: two in which a
// crop cools the air, one whose leaves jump between open and shut stomata.
func manyStates(t *testing.T) map[string]heldHouse {
	t.Helper()
	house := func(area, cover, u, wet, lai float64, openings []ventilation.Opening, leaks ...ventilation.Leak) ventilation.ClimateHouse {
		n, err := ventilation.NewNetwork(openings, leaks, nil)
		require.NoError(t, err)
		h := ventilation.ClimateHouse{FloorArea: area, Volume: 3 * area, Cover: ventilation.DefaultSimpleCover(cover),
			Floor: ventilation.DefaultFloorSurface(), Crop: ventilation.DefaultCanopy(lai), Air: n}
		h.Cover.U, h.Floor.Wet = u, wet
		return h
	}
	return map[string]heldHouse{
		"denser still in a strong flow, light wind": {
			house(542.6022, 834.05207, 1.9646448, 0.41091359, 4.1017389, []ventilation.Opening{
				{Height: 0.71438318, Vertical: 0.24178842, Area: 42.253818, Discharge: 0.42172195, PressureCoefficient: 0.12712268},
				{Height: 3.2853521, Area: 23.371765, Discharge: 0.77852372, PressureCoefficient: -0.37755601},
				{Height: 1.3698765, Vertical: 0.25029047, Area: 20.475105, Discharge: 0.54731887, PressureCoefficient: 0.028846948}},
				ventilation.Leak{Height: 2.8893628, Flow: 0.13723151, Exponent: 0.6029583, PressureCoefficient: 0.37652395},
				ventilation.Leak{Height: 0.40549187, Flow: 0.18344058, Exponent: 0.65, PressureCoefficient: -0.19476159}),
			ventilation.Weather{Air: air(t, -4.3134293, 0.12001257), Sun: 537.16021, Wind: 0.14960938, Sky: -12.451434, Ground: 17.673575},
			ventilation.Setting{Opening: 0.93387683}, -5.1524875,
		},
		"a narrow peak in calm": {
			house(32.481761, 48.395893, 2.5695293, 0, 3.2617057, []ventilation.Opening{
				{Height: 2.1753669, Vertical: 0.58219249, Area: 2.9376142, Discharge: 0.65006754, PressureCoefficient: -0.54095526},
				{Height: 3.9128819, Vertical: 0.48933632, Area: 0.22973213, Discharge: 0.71517354, PressureCoefficient: 0.16400205}},
				ventilation.Leak{Height: 3.9896144, Flow: 0.0035464152, Exponent: 0.68307389, PressureCoefficient: -0.097074938},
				ventilation.Leak{Height: 0.055821766, Flow: 0.0057235912, Exponent: 0.65, PressureCoefficient: 0.22766680}),
			ventilation.Weather{Air: air(t, 34.872209, 0.1694688), Sky: 17.356307, Ground: 14.587966},
			ventilation.Setting{Opening: 0.67331112}, 31.904741,
		},
		"leaves that jump": {
			house(11.249864, 17.060138, 1.292017222, 0, 4.06636387, []ventilation.Opening{
				{Height: 1.274214593, Vertical: 1.098436836, Area: 0.3498657864, Discharge: 0.6457395255, PressureCoefficient: -0.29977},
				{Height: 1.570866943, Area: 0.5906880663, Discharge: 0.4293248104, PressureCoefficient: 0.091077},
				{Height: 1.956446248, Area: 0.06967911635, Discharge: 0.4289650143, PressureCoefficient: 0.535549}},
				ventilation.Leak{Height: 2.016281791, Flow: 0.0008852551174, Exponent: 0.604573972, PressureCoefficient: -0.0669},
				ventilation.Leak{Height: 0.2980900323, Flow: 0.001479859144, Exponent: 0.65, PressureCoefficient: 0.0788}),
			ventilation.Weather{Air: air(t, 8.952326785, 0.8548114331), Sun: 29.84093610, Sky: 2.225341174, Ground: 18.02410993},
			ventilation.Setting{Opening: 0.251678296}, 29.0537248,
		},
	}
}

// With the heat that holds a stable state Solve finds that one or one with a
// stronger flow.
func TestStrongerStates(t *testing.T) {
	for name, e := range manyStates(t) {
		t.Run(name, func(t *testing.T) {
			c := climate(t, e.house)
			x, err := c.HeatFor(e.weather, e.setting, e.held)
			require.NoError(t, err)
			require.True(t, x.Stable)
			e.setting.Heat = x.Heat
			y, err := c.Solve(e.weather, e.setting)
			require.NoError(t, err)
			require.GreaterOrEqual(t, y.DryAir, x.DryAir*(1-1e-6))
			require.Less(t, y.NodeResidual, 1e-9)
		})
	}
}

// Bare houses, calm and dark, that are hardly warmer than outside: air that what
// condenses has dried may be as dense as that outside, or denser; neither that at
// rest nor a weak flow of it is the answer where a stronger one stands.
func TestDriedAirIsLookedBeyond(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 1))
	looked := 0
	for range 6000 {
		h, err := randomHouse(rnd)
		require.NoError(t, err)
		h.Crop, h.Floor.Wet = ventilation.Canopy{}, 0
		w, s, err := randomHour(rnd)
		require.NoError(t, err)
		w.Wind, w.Sun = 0, 0
		c := climate(t, h)
		x, err := c.HeatFor(w, s, w.Air.Temperature()+rnd.Float64())
		if err != nil || !x.Stable {
			continue
		}
		s.Heat = x.Heat
		y, err := c.Solve(w, s)
		require.NoError(t, err)
		require.GreaterOrEqual(t, y.DryAir, x.DryAir*(1-1e-6), "%.4f and %.4f °C", x.Temperature, y.Temperature)
		looked++
	}
	require.Greater(t, looked, 5900)
}
