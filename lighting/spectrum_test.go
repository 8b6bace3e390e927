package lighting

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func spectrum(t testing.TB, nm, power []float64) Spectrum {
	s, err := NewSpectrum(nm, power)
	require.NoError(t, err)
	return s
}

func TestSpectrumIntegralsHaveExactBandEnds(t *testing.T) {
	flat := spectrum(t, []float64{300, 900}, []float64{2, 2})
	require.InEpsilon(t, 600, flat.Power(400, 700), 1e-15)
	require.InEpsilon(t, 2*(700*700-400*400)/2/nmPerMicromole, flat.PPF(), 1e-14)
	// A ramp from 390 to 410 nm: half of it lies in the band.
	ramp := spectrum(t, []float64{390, 410}, []float64{0, 1})
	require.InEpsilon(t, 7.5, ramp.Power(400, 700), 1e-14)
	// ∫ (λ-390)/20 λ dλ from 400 to 410.
	want := ((410*410*410-400*400*400)/3.0 - 390*(410*410-400*400)/2.0) / 20 / nmPerMicromole
	require.InEpsilon(t, want, ramp.PPF(), 1e-12)
	require.Zero(t, ramp.at(389.9))
	require.InEpsilon(t, 0.5, ramp.at(400), 1e-15)
	require.Zero(t, Spectrum{}.PPF())
	require.True(t, math.IsNaN(Spectrum{}.LuxPerPPFD()))
	require.True(t, math.IsNaN(Spectrum{}.PARPhotonsPerJoule()))
}

func TestBandsAreKeptApart(t *testing.T) {
	s := IlluminantD65()
	require.InEpsilon(t, s.PPF(), s.Photons(band("blue"))+s.Photons(band("green"))+s.Photons(band("red")), 1e-13)
	to750 := Band{"far-red to 750", 700, 750}
	require.InEpsilon(t, s.Photons(band("extended 400-750 nm")), s.PPF()+s.Photons(to750), 1e-13)
	require.Greater(t, s.Photons(FarRed()), s.Photons(to750))
	require.Equal(t, []float64{400, 700, 700, 800, 100, 400}, []float64{PAR().From, PAR().To, FarRed().From, FarRed().To, band("ultraviolet").From, band("ultraviolet").To})
	require.Equal(t, []float64{400, 750, 400, 500, 500, 600, 600, 700}, []float64{band("extended 400-750 nm").From, band("extended 400-750 nm").To, band("blue").From, band("blue").To, band("green").From, band("green").To, band("red").From, band("red").To})
}

func TestSpectrumLaws(t *testing.T) {
	line := func(nm float64) Spectrum {
		return spectrum(t, []float64{nm - 0.01, nm, nm + 0.01}, []float64{0, 100, 0})
	}
	for _, nm := range []float64{450, 555, 660} {
		s := line(nm)
		require.InEpsilon(t, 1, s.Power(400, 700), 1e-9)
		require.InEpsilon(t, PhotonsPerJoule(nm), s.PARPhotonsPerJoule(), 1e-7)
		require.InEpsilon(t, luminousEfficacy*LuminousEfficiency(nm), s.Luminous(), 1e-6)
	}
	require.InEpsilon(t, 683.002, line(555).Luminous(), 1e-6, "K_m is 683.002 lm/W")

	a, b := IlluminantD65(), IlluminantA()
	mix := MixSpectra(a, b.Scaled(2))
	require.InEpsilon(t, a.PPF()+2*b.PPF(), mix.PPF(), 1e-13)
	require.InEpsilon(t, a.Luminous()+2*b.Luminous(), mix.Luminous(), 1e-10)
	require.InEpsilon(t, a.at(555)+2*b.at(555), mix.at(555), 1e-14)
	// A source that starts above zero keeps its step.
	step := MixSpectra(spectrum(t, []float64{500, 600}, []float64{1, 1}), spectrum(t, []float64{400, 700}, []float64{1, 1}))
	require.InEpsilon(t, 400, step.Power(400, 700), 1e-12)
	require.True(t, math.IsNaN(a.Scaled(-1).PPF()))
}

func TestSpectrumErrorsNameEveryFault(t *testing.T) {
	_, err := NewSpectrum([]float64{400, 300, 0.5}, []float64{-1, math.NaN()})
	require.ErrorIs(t, err, ErrRange)
	for _, want := range []string{"3 wavelengths for 2 powers", "wavelength 2 is 300 nm after 400 nm", "wavelength 3 is 0.5", "power 1 is -1", "power 2 is NaN"} {
		require.ErrorContains(t, err, want)
	}
	_, err = NewSpectrum([]float64{400}, []float64{1})
	require.ErrorIs(t, err, ErrRange)
	var e *RangeError
	_, err = NewSpectrum([]float64{400, 700}, []float64{1, math.Inf(1)})
	require.True(t, errors.As(err, &e))
	require.Equal(t, "power 2", e.Field)
	for _, nm := range []float64{359, 831, math.NaN()} {
		require.True(t, math.IsNaN(LuminousEfficiency(nm)))
	}
	require.True(t, math.IsNaN(PhotonsPerJoule(0.55)))
}

func TestPhotonTables(t *testing.T) {
	table, err := NewCandelaTable(CandelaWeb{TypeC, []float64{0, 90}, []float64{0}, [][]float64{{100, 0}}})
	require.NoError(t, err)
	s := IlluminantD65()
	photons, err := PhotonTable(table, s, PAR())
	require.NoError(t, err)
	require.InEpsilon(t, table.Lumens()/s.LuxPerPPFD(), photons.Flux(), 1e-13)

	blue := spectrum(t, []float64{440, 450, 460}, []float64{0, 1, 0})
	channels := []Channel{{"white", s, 0.97}, {"blue", blue, 0.03}}
	parts, err := ChannelTables(table, channels, PAR())
	require.NoError(t, err)
	require.Len(t, parts, 2)
	require.InEpsilon(t, 0.97*table.Lumens()*s.PhotonsPerLumen(PAR()), parts[0].Flux(), 1e-13)
	require.InEpsilon(t, 0.03*table.Lumens()/blue.LuxPerPPFD(), parts[1].Flux(), 1e-13)

	_, err = ChannelTables(table, []Channel{{"white", s, 0.5}, {"blue", blue, math.NaN()}}, PAR())
	require.ErrorContains(t, err, "channels[1].Lumens is NaN")
	require.ErrorContains(t, err, "sum of the channels' Lumens")
	dark := spectrum(t, []float64{900, 950}, []float64{1, 1})
	_, err = PhotonTable(table, dark, FarRed())
	require.ErrorIs(t, err, ErrNoSolution)
	_, err = ChannelTables(table, []Channel{{"infrared", dark, 1}}, FarRed())
	require.ErrorContains(t, err, "infrared")
}

// The bounds of a spectrum's entries: a value at each is taken, one beyond is
// not.
func TestSpectrumBounds(t *testing.T) {
	s := spectrum(t, []float64{100, 5000}, []float64{0, 1e12})
	require.False(t, math.IsNaN(s.Scaled(1e12).PPF()))
	require.True(t, math.IsNaN(s.Scaled(1.005e12).PPF()))
	for want, c := range map[string][2][]float64{"wavelength 1": {{99.5, 500}, {1, 1}}, "wavelength 2": {{400, 5025}, {1, 1}}, "power 2": {{400, 500}, {1, 1.005e12}}} {
		_, err := NewSpectrum(c[0], c[1])
		require.ErrorContains(t, err, want)
	}
	for nm, fine := range map[float64]bool{100: true, 5000: true, 99.5: false, 5025: false} {
		require.Equal(t, fine, !math.IsNaN(PhotonsPerJoule(nm)))
	}
	table, err := NewCandelaTable(CandelaWeb{TypeC, []float64{0, 90}, []float64{0}, [][]float64{{100, 0}}})
	require.NoError(t, err)
	for off, fine := range map[float64]bool{0.9e-6: true, -0.9e-6: true, 1.005e-6: false, -1.005e-6: false} {
		_, err := ChannelTables(table, []Channel{{"a", IlluminantD65(), 0.5}, {"b", IlluminantA(), 0.5 + off}}, PAR())
		require.Equal(t, fine, err == nil, off)
	}
	_, err = LightingTime(8.64, 100) // exactly a day
	require.NoError(t, err)
	_, err = LightingTime(8.65, 100)
	require.ErrorIs(t, err, ErrNoSolution)
}
