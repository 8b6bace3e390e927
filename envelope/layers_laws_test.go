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
			require.Greater(t, s.UAir, 0.5, c.Name)
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
		require.InDelta(t, clear.UAir*(k.Inside-k.Outside), clear.AirDriven, 1e-9)
		k.SkyDrop = 0
		overcast := solved(t, c.Cover, k)
		require.InDelta(t, 0, overcast.SkyDriven, 1e-9)
		require.InDelta(t, overcast.U, overcast.UAir, 1e-9)
		require.InEpsilon(t, clear.FluxIn-overcast.FluxIn, clear.SkyDriven, 0.2, c.Name)
		k.AbsorbedSun[0] = 50
		lit := solved(t, c.Cover, k)
		require.Less(t, lit.SunDriven, 0.0)
		require.InDelta(t, lit.FluxIn+50, lit.FluxOut, 1e-9)
	}
}

// A wet film: the latent heat is heat of vaporisation times condensate, the
// inner face warmer than dry, film opaque; at the humidity of DripHumidity the
// dry face is just at the dew point.
func TestWetFace(t *testing.T) {
	k := night()
	k.InsideHumidity = 0.9
	dry := solved(t, SingleFilm(), k)
	require.True(t, dry.Condenses)
	require.False(t, dry.Wet)
	require.InDelta(t, dry.InnerTemperature, coverDewPoint(k.Inside, dry.DripHumidity), 1e-9)
	k.InnerFace = InnerAuto
	wet := solved(t, SingleFilm(), k)
	require.True(t, wet.Wet)
	require.Greater(t, wet.Condensate, 0.0)
	l, _ := latentHeat(wet.InnerTemperature, false)
	require.InDelta(t, l*wet.Condensate, wet.InLatent, 1e-9)
	// Lewis relation by hand, constants written out.
	a := airAt(k.Inside, k.Pressure)
	rho := func(t, rh float64) float64 { return rh * coverSaturation(t) / (461.5 * (t + 273.15)) }
	g := wet.InsideCoefficient / (a.Density * a.HeatCapacity * math.Pow(0.87, 2.0/3)) * (rho(k.Inside, 0.9) - rho(wet.InnerTemperature, 1))
	require.InEpsilon(t, g, wet.Condensate, 1e-9)
	k.InsideHumidity = 0.2
	require.False(t, solved(t, SingleFilm(), k).Wet)
	k.InsideHumidity = 0
	s := solved(t, SingleFilm(), k)
	require.True(t, math.IsInf(s.DewPoint, -1))
	require.False(t, s.Condenses)
	// Clear film loses less when wet, glass more: both are measured.
	k.InsideHumidity, k.InnerFace = 0.95, InnerWet
	require.Less(t, solved(t, SingleFilm(), k).FluxIn-solved(t, SingleFilm(), k).InLatent, dry.FluxIn)
	dryGlass := k
	dryGlass.InnerFace = InnerDry
	require.Greater(t, solved(t, SingleGlass(), k).FluxIn, solved(t, SingleGlass(), dryGlass).FluxIn)
}

// Where face and air are equally warm, still air brings vapour with 0.5 W/(m²
// K): by hand, with no heat by convection left.
func TestVapourInStillAir(t *testing.T) {
	k := night()
	k.InnerFace, k.InsideConvection, k.InsideHumidity, k.InsideCoefficient = InnerWet, InsideGiven, 0.6, 0
	s := solved(t, SingleGlass(), k)
	a := airAt(k.Inside, k.Pressure)
	rho := func(t, rh float64) float64 { return rh * coverSaturation(t) / (461.5 * (t + 273.15)) }
	g := 0.5 / (a.Density * a.HeatCapacity * math.Pow(0.87, 2.0/3)) * (rho(k.Inside, 0.6) - rho(s.InnerTemperature, 1))
	require.InEpsilon(t, g, s.Condensate, 1e-9)
	require.Zero(t, s.InConvective)
}

func TestLatentHeatSteps(t *testing.T) {
	for _, c := range []struct {
		t    float64
		dry  bool
		want float64
	}{{10, false, 2.501e6 - 23610}, {-10, false, 2.501e6 + 23610 + 3.335e5}, {-10, true, 2.501e6 + 23610}, {-0.1, false, 2.501e6 + 236.1 + 3.335e5/2}} {
		l, _ := latentHeat(c.t, c.dry)
		require.InDelta(t, c.want, l, 1e-6)
	}
}

// ISO 13788 and DIN 4108-3 dew points, from memory, to 0.1 K.
func TestDewPoints(t *testing.T) {
	for _, r := range [][3]float64{{20, 0.5, 9.3}, {20, 0.6, 12.0}, {20, 0.7, 14.4}, {20, 0.8, 16.4}, {18, 0.8, 14.5}, {15, 0.9, 13.4}} {
		require.InDelta(t, r[2], coverDewPoint(r[0], r[1]), 0.0501)
	}
	for x := -40.0; x < 50; x++ {
		require.InDelta(t, x, coverDewPoint(x, 1), 1e-9)
	}
	require.InDelta(t, 610.5*math.Exp(17.269*20/257.3), coverSaturation(20), 1e-9)
	require.InDelta(t, 610.5*math.Exp(-21.875*20/245.5), coverSaturation(-20), 1e-9)
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
