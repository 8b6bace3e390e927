package envelope

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// Radiosities at given temperatures, printed by the unit tests
// shade_generic/DoubleIGU_With_TIR_and_Openness and shade_generic/ShadeOut of
// an open reference engine (LBNL-ETA/Windows-CalcEngine, revision bdbfd84).
func TestRadiositiesAgainstTheReferenceEngine(t *testing.T) {
	layer := func(out, in, tau float64) Layer {
		return Layer{EmittanceOut: out, EmittanceIn: in, Transmittance: tau, Thickness: 0.003, Conductivity: 1}
	}
	for _, c := range []struct {
		name    string
		layers  []Layer
		kelvin  [4]float64
		printed [4]string
	}{
		{"TransmittingInside", []Layer{layer(0.84, 0.84, 0), layer(0.796259999275, 0.796259999275, 0.10916)},
			[4]float64{259.350462, 259.724865, 279.767733, 280.443187}, [4]string{"253.917317", "272.505694", "348.677765", "349.142912"}},
		{"TransmittingOutside", []Layer{layer(0.832855582237, 0.832855582237, 0.074604861438), layer(0.84, 0.038798544556, 0)},
			[4]float64{257.039975, 257.040388, 269.858197, 270.315817}, [4]string{"250.203343", "251.145517", "292.753317", "419.735593"}},
	} {
		cover := mustCover(t, c.layers, Gap{Width: 0.0127})
		var black [maxFaces]float64
		for i, k := range c.kelvin {
			black[i] = calcEngine.sigma * math.Pow(k, 4)
		}
		w := &cover.set.dry
		out, in := calcEngine.sigma*math.Pow(255.15, 4), calcEngine.sigma*math.Pow(294.15, 4)
		for i := range 4 {
			g, other := w.irradiance(i, 4, &black, out, in), w.irradiance(i^1, 4, &black, out, in)
			check.Run(t, []check.Row{{Where: "CalcEngine." + c.name + "/face", Printed: c.printed[i], Tol: 2e-5, Why: "the engine's printed temperatures are rounded to 1e-6 K"}},
				func(...float64) float64 { return w.radiosity(i, black[i], g, other) })
		}
	}
}

// In an enclosure of one temperature every irradiance is the black emission.
func TestIsothermalEnclosure(t *testing.T) {
	cover := mustCover(t, []Layer{clearFilm, closedScreen(), clearFilm, glass4}, Gap{Width: 0.1}, Gap{Width: 0.1}, Gap{Width: 0.1})
	var black [maxFaces]float64
	for i := range black {
		black[i] = 300
	}
	for _, w := range []*longwave{&cover.set.dry, &cover.set.wet} {
		for i := range 8 {
			require.InDelta(t, 300, w.irradiance(i, 8, &black, 300, 300), 1e-10)
		}
	}
}

func closedScreen() Layer {
	l := aluminisedScreen
	l.Leakage = 0
	return l
}

// A film of water makes the innermost layer opaque.
func TestWetLayerIsOpaque(t *testing.T) {
	c := mustCover(t, []Layer{clearFilm})
	require.Zero(t, c.set.wet.transmit[0])
	require.Equal(t, 0.95, c.set.wet.emittance[1])
	// Through the film: reflectance 0.07, water 0.05 behind 0.65.
	require.InDelta(t, 1-0.07-0.65*0.65*0.05/(1-0.07*0.05), c.set.wet.emittance[0], 1e-12)
}

func TestSkyView(t *testing.T) {
	require.InDelta(t, 1, skyView(0), 1e-15)
	require.InDelta(t, 0.75, skyView(60), 1e-12)
	require.InDelta(t, 0.5, skyView(90), 1e-12)
	require.InDelta(t, 0, skyView(180), 1e-12)
}

// Water on a screen leaves its openings open.
func TestWetScreenStaysOpen(t *testing.T) {
	l := aluminisedScreen
	l.Openness = 0.4
	c := mustCover(t, []Layer{glass4, l}, Gap{Width: 0.2})
	require.InDelta(t, 0.4, c.set.wet.transmit[1], 1e-15)
	require.InDelta(t, 0.6*0.95, c.set.wet.emittance[3], 1e-15)
	require.InDelta(t, 0.6*(1-0.65-0.05*0.05*0.05/(1-0.35*0.05)), c.set.wet.emittance[2], 1e-12)
}
