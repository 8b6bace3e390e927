package envelope

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func night() CoverConditions {
	k := DefaultCoverConditions()
	k.Outside, k.SkyDrop, k.Wind = -10, 15, 3
	return k
}

func solved(t testing.TB, c Cover, k CoverConditions) Solution {
	t.Helper()
	s, err := c.Solve(k)
	require.NoError(t, err)
	return s
}

func TestNoHeatAtNoDifference(t *testing.T) {
	k := DefaultCoverConditions()
	for _, v := range []float64{-20, 0, 15} {
		k.Inside, k.Outside = v, v
		for _, c := range Covers() {
			s := solved(t, c.Cover, k)
			require.InDelta(t, 0, s.FluxIn, 1e-9, c.Name)
			require.InDelta(t, v, s.InnerTemperature, 1e-9, c.Name)
			require.True(t, math.IsNaN(s.U))
			require.Greater(t, s.UOvercast, 0.5, c.Name)
		}
	}
}

// Opaque layers in reverse order between equal surfaces carries the same heat.
func TestOpaqueLayersReversed(t *testing.T) {
	a := Layer{EmittanceOut: 0.2, EmittanceIn: 0.9, Thickness: 0.003, Conductivity: 1}
	b := Layer{EmittanceOut: 0.84, EmittanceIn: 0.5, Thickness: 0.01, Conductivity: 0.2}
	turn := func(l Layer) Layer { l.EmittanceOut, l.EmittanceIn = l.EmittanceIn, l.EmittanceOut; return l }
	k := DefaultCoverConditions()
	k.Tilt, k.OutsideConvection, k.InsideConvection, k.OutsideCoefficient, k.InsideCoefficient = 90, OutsideGiven, InsideGiven, 5, 5
	k.Inside, k.Outside = 20, -5
	gap := Gap{Width: 0.02}
	warm := solved(t, mustCover(t, []Layer{a, b}, gap), k)
	k.Inside, k.Outside = -5, 20
	cold := solved(t, mustCover(t, []Layer{turn(b), turn(a)}, gap), k)
	require.InDelta(t, warm.FluxIn, -cold.FluxIn, 1e-8)
}

func TestWindAndLayers(t *testing.T) {
	for _, m := range []OutsideConvection{OutsideISO6946, OutsideWatmuff, OutsidePapadakis} {
		before := 0.0
		for v := 0.0; v <= 40; v += 2 {
			k := night()
			k.SkyDrop, k.Wind, k.OutsideConvection = 0, v, m
			s := solved(t, SingleFilm(), k)
			require.Greater(t, s.FluxIn, before)
			require.Equal(t, m.published().Contains(v), s.OutsideInRange)
			before = s.FluxIn
		}
	}
	before := math.Inf(1)
	for n := 1; n <= MaxLayers; n++ {
		var layers []Layer
		var gaps []Gap
		for i := range n {
			layers = append(layers, clearFilm)
			if i > 0 {
				gaps = append(gaps, Gap{Width: 0.02})
			}
		}
		s := solved(t, mustCover(t, layers, gaps...), night())
		require.Less(t, s.U, before)
		before = s.U
	}
}

// A colder sky adds to the loss, and the sky's part is what it adds but for
// the change of the coefficients.
func TestDrives(t *testing.T) {
	for _, c := range Covers() {
		k := night()
		clear := solved(t, c.Cover, k)
		require.InDelta(t, clear.FluxIn, clear.AirDriven+clear.SkyDriven+clear.SunDriven, 1e-9)
		require.InDelta(t, clear.UOvercast*(k.Inside-k.Outside), clear.AirDriven, 1e-9)
		k.SkyDrop = 0
		overcast := solved(t, c.Cover, k)
		require.InDelta(t, 0, overcast.SkyDriven, 1e-9)
		require.InDelta(t, overcast.U, overcast.UOvercast, 1e-9)
		require.InEpsilon(t, clear.FluxIn-overcast.FluxIn, clear.SkyDriven, 0.2, c.Name)
		k.AbsorbedSun[0] = 50
		lit := solved(t, c.Cover, k)
		require.Less(t, lit.SunDriven, 0.0)
		require.InDelta(t, lit.FluxIn+50, lit.FluxOut, 1e-9)
	}
}

// A double film that has collapsed in part lies between the two extremes,
// linear in the share.
func TestCollapsedShare(t *testing.T) {
	at := func(share float64) Solution {
		return solved(t, mustCover(t, []Layer{clearFilm, clearFilm}, Gap{Width: 0.1, Collapsed: share, CollapsedWidth: 0.002}), night())
	}
	none, half, all := at(0), at(0.5), at(1)
	require.InDelta(t, (none.FluxIn+all.FluxIn)/2, half.FluxIn, 1e-9)
	thin := solved(t, mustCover(t, []Layer{clearFilm, clearFilm}, Gap{Width: 0.002}), night())
	require.InDelta(t, thin.FluxIn, all.FluxIn, 1e-9)
	require.Greater(t, all.FluxIn, none.FluxIn)
	require.InDelta(t, thin.InnerTemperature, half.Patch.InnerTemperature, 1e-9)
	require.LessOrEqual(t, half.Patch.Residual, 1e-9)
}

// A screen without leakage and openness is an ordinary layer; each makes it
// worse.
func TestScreen(t *testing.T) {
	k := night()
	flux := func(open, leak float64) float64 {
		l := closedScreen()
		l.Openness, l.Leakage = open, leak
		c, err := WithSealedScreen(SingleGlass(), l)
		require.NoError(t, err)
		return solved(t, c, k).FluxIn
	}
	require.InDelta(t, flux(0, 0), flux(0, 1e-12), 1e-5)
	require.Greater(t, flux(0.3, 0), flux(0, 0))
	require.Greater(t, flux(0, 0.002), flux(0, 0))
	l := closedScreen()
	l.Leakage = 0.002
	c, err := WithSealedScreen(SingleGlass(), l)
	require.NoError(t, err)
	s := solved(t, c, k)
	require.Greater(t, s.InLeakage, 0.0)
	require.InDelta(t, s.FluxIn, s.InConvective+s.InRadiative+s.InLatent+s.InLeakage, 1e-12)
}

// Below a leaking screen the pane lies under the dew point of the house, though
// the screen itself does not; a sealed one keeps the vapour out.
func TestDripsAboveAScreen(t *testing.T) {
	k := night()
	k.InsideHumidity = 0.5
	for leakage, drips := range map[float64]bool{0: false, 0.001: true} {
		l := closedScreen()
		l.Leakage = leakage
		c, err := WithSealedScreen(SingleGlass(), l)
		require.NoError(t, err)
		s := solved(t, c, k)
		require.False(t, s.Condenses)
		require.Equal(t, drips, s.DripsAbove)
	}
	k.InsideHumidity = 0.05
	c, err := WithSealedScreen(SingleGlass(), aluminisedScreen)
	require.NoError(t, err)
	require.False(t, solved(t, c, k).DripsAbove)
}

func TestBadCover(t *testing.T) {
	_, err := NewCover([]Layer{
		{EmittanceOut: 0.7, EmittanceIn: 1.2, Transmittance: 0.5, Thickness: -1, Conductivity: 0, Openness: 2, Leakage: 1},
		{EmittanceOut: math.NaN(), EmittanceIn: 0.5, Transmittance: 0.1, Thickness: 1e-3, Conductivity: 1},
		clearFilm,
	}, []Gap{{Width: 0, Bridge: -1, Collapsed: 0.5}, {Width: 0.1, Collapsed: 2, CollapsedWidth: 0.01}})
	for _, f := range []string{"layers[0].EmittanceIn", "layers[0].Thickness", "layers[0].Conductivity", "layers[0].Openness",
		"layers[0].Leakage", "layers[1].EmittanceOut", "gaps[0].Width", "gaps[0].Bridge", "gaps[0].CollapsedWidth", "gaps[1].Collapsed", "number of collapsed gaps"} {
		require.ErrorContains(t, err, f)
	}
	_, err = NewCover([]Layer{{EmittanceOut: 0.7, EmittanceIn: 0.7, Transmittance: 0.5, Thickness: 1, Conductivity: 1}}, nil)
	require.ErrorContains(t, err, "layers[0].EmittanceOut + Transmittance is 1.2")
	_, err = NewCover(nil, nil)
	require.ErrorIs(t, err, ErrRange)
	_, err = NewCover(make([]Layer, 7), nil)
	require.ErrorIs(t, err, ErrRange)
	_, err = NewCover([]Layer{clearFilm, clearFilm}, nil)
	require.ErrorContains(t, err, "number of gaps")
	mirror := Layer{Thickness: 1e-3, Conductivity: 1}
	_, err = NewCover([]Layer{mirror, mirror}, []Gap{{Width: 0.1}})
	require.ErrorContains(t, err, "mirrors")
	var none Cover
	_, err = none.Solve(DefaultCoverConditions())
	require.ErrorIs(t, err, ErrRange)
}

func TestBadConditions(t *testing.T) {
	c := SingleFilm()
	k := CoverConditions{Inside: 298.15, RadiantRise: 300, InsideHumidity: 60, Outside: -70, SkyDrop: 190, GroundRise: math.Inf(1), Wind: -1,
		Pressure: 101.325, Tilt: 200, Height: 0, OutsideConvection: 9, InsideConvection: 9, InnerFace: 9}
	k.AbsorbedSun[0], k.AbsorbedSun[1] = -1, 5
	_, err := c.Solve(k)
	for _, f := range []string{"Inside is 298.15", "RadiantRise", "InsideHumidity", "Outside", "SkyDrop", "GroundRise", "Wind", "Pressure",
		"Tilt", "Height", "OutsideConvection", "InsideConvection", "InnerFace", "AbsorbedSun[0]", "AbsorbedSun[1]"} {
		require.ErrorContains(t, err, f)
	}
	k = DefaultCoverConditions()
	k.SkyDrop = -10.1
	_, err = c.Solve(k)
	require.ErrorContains(t, err, "SkyDrop is -10.1")
	k = DefaultCoverConditions()
	k.OutsideConvection, k.OutsideCoefficient = OutsideGiven, -1
	k.InsideConvection, k.InsideCoefficient = InsideGiven, math.NaN()
	_, err = c.Solve(k)
	require.ErrorContains(t, err, "OutsideCoefficient")
	require.ErrorContains(t, err, "InsideCoefficient")
}

func TestSolveAllocatesNothing(t *testing.T) {
	c := DoubleInfraredFilm()
	k := night()
	k.InnerFace = InnerAuto
	require.Zero(t, testing.AllocsPerRun(100, func() {
		if _, err := c.Solve(k); err != nil {
			t.Error(err)
		}
	}))
}
