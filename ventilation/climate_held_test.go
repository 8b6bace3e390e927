package ventilation_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

// The heat that holds a temperature holds it, however the search for the flow
// goes: in tight and leaky winter houses, dry and moist, by day and night.
func TestHeatForHoldsWhatWasAsked(t *testing.T) {
	rnd := rand.New(rand.NewPCG(11, 6))
	for i := range 3000 {
		n, err := ventilation.NewNetwork(nil, []ventilation.Leak{{Height: 3 * rnd.Float64(), Flow: 0.001 + 0.05*rnd.Float64(), Exponent: 0.65, PressureCoefficient: rnd.Float64() - 0.5}}, nil)
		require.NoError(t, err)
		h := ventilation.ClimateHouse{FloorArea: 150, Volume: 450, Cover: ventilation.DefaultSimpleCover(260), Floor: ventilation.DefaultFloorSurface(), Air: n}
		h.Floor.Wet *= float64(i % 2) // a dry house keeps its water
		if i%4 > 1 {
			h.Crop = ventilation.DefaultCanopy(0.5 + 3*rnd.Float64())
		}
		outside := -15 + 25*rnd.Float64()
		wind := [3]float64{0, 0.5, 4}[i%3] * rnd.Float64()
		w := ventilation.Weather{Air: air(t, outside, 0.5+0.45*rnd.Float64()), Sun: max(0, 400*rnd.Float64()-200), Wind: wind, Sky: outside - 15*rnd.Float64(), Ground: 8}
		want := outside + 0.2 + 15*rnd.Float64()
		s, err := climate(t, h).HeatFor(w, ventilation.Setting{}, want)
		require.NoError(t, err)
		require.InDelta(t, want, s.Temperature, 1e-9)
		back, err := climate(t, h).Solve(w, ventilation.Setting{Heat: s.Heat})
		require.NoError(t, err)
		require.InDelta(t, want, back.Temperature, 1e-4)
	}
}
