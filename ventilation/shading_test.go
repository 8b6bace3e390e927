package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/ventilation"
)

func shade(place ventilation.ShadePlace) ventilation.Shade {
	return ventilation.Shade{
		Place: place, Layer: ventilation.Optics{Transmittance: 0.5, Reflectance: 0.2}, Drawn: 1,
		Cover: ventilation.Optics{Transmittance: 0.8, Reflectance: 0.1}, U: 5.8, Outside: 23,
	}
}

var places = []ventilation.ShadePlace{ventilation.OutsideScreen, ventilation.Whitewash, ventilation.InsideScreen}

func TestShadeKeepsTheSun(t *testing.T) {
	for _, place := range places {
		for _, drawn := range []float64{0, 0.3, 1} {
			s := shade(place)
			s.Drawn = drawn
			b, err := s.Balance()
			require.NoError(t, err)
			require.InDelta(t, 1, b.Transmitted+b.Reflected+b.ToOutside+b.CoverInward+b.ShadeInward, 1e-12)
			require.InDelta(t, 0.8, b.Bare, 1e-12)
			require.InDelta(t, 0.1*5.8/23, b.BareInward, 1e-12)
			if drawn == 0 {
				require.InDelta(t, 1, b.Factor, 1e-12)
				require.InDelta(t, 1, b.InwardFactor, 1e-12)
			}
		}
	}
}

// Two layers by hand: reflections between them give 1/(1 - 0.2 x 0.1).
func TestShadeByHand(t *testing.T) {
	const between = 1 / 0.98
	b, err := shade(ventilation.OutsideScreen).Balance()
	require.NoError(t, err)
	require.InDelta(t, 0.5*0.8*between, b.Transmitted, 1e-12)
	require.InDelta(t, 0.2+0.25*0.1*between, b.Reflected, 1e-12)
	require.InDelta(t, 0.5*0.1*between*5.8/23, b.CoverInward, 1e-12)
	require.Zero(t, b.ShadeInward)
	in, err := shade(ventilation.InsideScreen).Balance()
	require.NoError(t, err)
	require.InDelta(t, b.Transmitted, in.Transmitted, 1e-12) // the light is the same
	require.InDelta(t, 0.8*0.3*between, in.ShadeInward, 1e-12)
	wash, err := shade(ventilation.Whitewash).Balance()
	require.NoError(t, err)
	// What the same layer leaves of the heat: least outside, most inside.
	require.Less(t, b.InwardFactor, wash.InwardFactor)
	require.Less(t, wash.InwardFactor, in.InwardFactor)
	require.Less(t, in.InwardFactor, 1.0)
}

func TestShadeLimits(t *testing.T) {
	for _, place := range places {
		s := shade(place)
		s.Layer = ventilation.Optics{Transmittance: 1}
		b, err := s.Balance()
		require.NoError(t, err)
		require.InDelta(t, 1, b.InwardFactor, 1e-12)
		s.Layer = ventilation.Optics{Reflectance: 1}
		b, err = s.Balance()
		require.NoError(t, err)
		require.Zero(t, b.Factor)
		// Black: the sun ends up as heat, all of it where the screen hangs inside.
		s.Layer = ventilation.Optics{}
		b, err = s.Balance()
		require.NoError(t, err)
		if place == ventilation.InsideScreen {
			require.InDelta(t, 1, b.InwardFactor, 1e-12)
		}
	}
}

// [Baille01]: whitening took a glasshouse from 0.62 to 0.31.
func TestWhitewashPublished(t *testing.T) {
	s := shade(ventilation.Whitewash)
	s.Cover = ventilation.Optics{Transmittance: 0.62, Reflectance: 0.2}
	layer, err := ventilation.LayerFor(s.Cover, 0.31, 0.05)
	require.NoError(t, err)
	s.Layer = layer
	b, err := s.Balance()
	require.NoError(t, err)
	check.Run(t, []check.Row{
		{Where: "Baille01.abstract/before", In: []float64{b.Bare}, Printed: "0.62"},
		{Where: "Baille01.abstract/after", In: []float64{b.Transmitted}, Printed: "0.31"},
	}, func(in ...float64) float64 { return in[0] })
	require.InDelta(t, 0.5, b.Factor, 1e-12)
	require.InDelta(t, 0.05, layer.Absorptance(), 1e-12)
	_, err = ventilation.LayerFor(s.Cover, 0.7, 0.05)
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	_, err = ventilation.LayerFor(ventilation.Optics{Transmittance: 0.9, Reflectance: 0.3}, 31, -1)
	for _, field := range []string{"cover.Transmittance + cover.Reflectance", "together", "absorptance"} {
		require.ErrorContains(t, err, field)
	}
}

func TestShadeFaultsComeTogether(t *testing.T) {
	_, err := ventilation.Shade{Place: 7, Layer: ventilation.Optics{Transmittance: 50, Reflectance: -1}, Drawn: 2, U: 50, Outside: 3}.Balance()
	require.ErrorIs(t, err, ventilation.ErrRange)
	for _, field := range []string{"Place", "Layer.Transmittance", "Layer.Reflectance", "Drawn", "Cover.Transmittance", "U is 50", "Outside"} {
		require.ErrorContains(t, err, field)
	}
}
