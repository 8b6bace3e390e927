package psychro

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// What is left of the balance at the wet bulb, as a temperature: whatever path
// the solver took, at most a third of a nK.
func TestWetBulbResidual(t *testing.T) {
	for _, m := range []Model{RealGas, IdealGas} {
		for _, p := range []float64{30e3, 61e3, 90e3, 101325, 200e3} {
			for at := -97.3; at < 200; at += 1.37 {
				for _, rh := range []float64{0, 0.003, 0.04, 0.2, 0.45, 0.7, 0.9, 0.99, 1} {
					s, err := m.FromRelativeHumidity(at, rh, p)
					if err != nil {
						continue // nearly all vapour
					}
					tw := s.WetBulb()
					y, slope, _ := s.bulb(SurfaceAt(tw), tw, s.Enthalpy())
					require.Less(t, math.Abs(y/slope), 3.3e-10, "%v %g %g %g", m, at, rh, p)
				}
			}
		}
	}
}

// The starting value must be good to some mK where houses live: then one
// evaluation of the balance is mostly the last.
func TestBulbGuess(t *testing.T) {
	for at := -40.0; at < 32; at += 0.7 {
		for rh := 0.2; rh <= 1; rh += 0.05 {
			s, err := FromRelativeHumidity(at, rh, 97e3)
			require.NoError(t, err)
			if tw := s.WetBulb(); math.Abs(tw) > 1 {
				require.InDelta(t, tw, s.guessBulb(), 0.004, "%g °C %g", at, rh)
			}
		}
	}
}

// The relative change of the slope of the saturation lines, in the mean over
// what the solver meets.
func TestTurnOfTheLines(t *testing.T) {
	mean := func(s Surface, from, to float64) float64 {
		log := func(at float64) float64 {
			return math.Log(SaturationSlopeOver(s, at) / SaturationPressureOver(s, at))
		}
		// The mean of a derivative is a difference; -2/T integrates to ln T.
		return (log(to) - log(from) + 2*math.Log((to+kelvin)/(from+kelvin))) / (to - from)
	}
	require.InDelta(t, mean(Liquid, 0, 60), turnLiquid, 5e-6)
	require.InDelta(t, mean(Ice, -45, 0), turnIce, 1.5e-7)
}

// What wetBulbOf relies on near freezing.
func TestGuessNextToFreezing(t *testing.T) {
	found := 0
	for _, m := range []Model{RealGas, IdealGas} {
		for _, p := range []float64{30e3, 50e3, 101325, 200e3} {
			for at := 0.0; at < 50; at += 0.31 {
				for rh := 0.0; rh <= 1; rh += 0.02 {
					s, err := m.FromRelativeHumidity(at, rh, p)
					require.NoError(t, err)
					ice, liquid := s.WetBulbOver(Ice), s.WetBulbOver(Liquid)
					if math.IsNaN(ice) || !(liquid >= TriplePoint) {
						continue
					}
					found++
					require.Greater(t, s.guessBulb(), -0.5, "%v", s)
					require.Greater(t, ice, -1.1, "%v", s)
					require.Equal(t, liquid, s.WetBulb(), "%v", s)
				}
			}
		}
	}
	require.Greater(t, found, 300)
}
