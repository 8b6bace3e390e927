package ventilation_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

const hill = 97300.0 // Pa

func moist(t testing.TB, c, rh float64) psychro.State {
	t.Helper()
	s, err := psychro.FromRelativeHumidity(c, rh, hill)
	require.NoError(t, err)
	return s
}

// winter is a humid house on a cold morning.
func winter(t testing.TB) ventilation.DryingCase {
	return ventilation.DryingCase{
		Wanted: moist(t, 15, 0.85), Outside: moist(t, -2, 0.9), Release: 0.002, Recovery: 0.6,
		Surfaces: []ventilation.ColdSurface{
			{Name: "roof", Temperature: 8, Area: 105, Film: 2.5},
			{Name: "walls", Temperature: 11, Area: 55, Film: 2.5},
			{Name: "inner screen", Temperature: 14, Area: 20, Film: 2.5},
		},
	}
}

func dried(t testing.TB, d ventilation.DryingCase) ventilation.Drying {
	t.Helper()
	r, err := d.Flow()
	require.NoError(t, err)
	return r
}

func TestDryingClosesWaterAndHeat(t *testing.T) {
	d := winter(t)
	r := dried(t, d)
	wi, wo := d.Wanted.HumidityRatio(), d.Outside.HumidityRatio()
	require.InEpsilon(t, r.Release, r.Condensed+r.DryAir*(wi-wo), 1e-12)
	require.InEpsilon(t, r.DryAir*(d.Wanted.Enthalpy()-d.Outside.Enthalpy()), r.Sensible+r.Latent, 1e-12)
	require.InEpsilon(t, r.Total-r.Heat.Saved, r.Cost, 1e-12)
	require.InEpsilon(t, r.DryAir*d.Outside.SpecificVolume(), r.Supply, 1e-12)
	require.InEpsilon(t, r.DryAir*d.Wanted.SpecificVolume(), r.Exhaust, 1e-12)
	// The parts by hand: heat capacities and the heat of vapour at 15 °C.
	require.InEpsilon(t, r.DryAir*(1006+1860*wo)*17, r.Sensible, 2e-3)
	require.InEpsilon(t, r.DryAir*(wi-wo)*(2501e3+1860*15), r.Latent, 1e-3)
	e := r.Over(90 * time.Minute)
	want := ventilation.DryingEnergy{
		Water: 5400 * r.Excess, Dripped: 5400 * r.Condensed, Sensible: 5400 * r.Sensible,
		Latent: 5400 * r.Latent, Saved: 5400 * r.Heat.Saved, Cost: 5400 * r.Cost,
	}
	require.Empty(t, cmp.Diff(want, e, cmpopts.EquateApprox(1e-12, 0)))
}

// Roof and walls lie below the dew point of 12.5 °C and take 43 % of the
// vapour; the screen above it takes none. By hand: h/(cp Le^(2/3)), Le 0.86.
func TestCondensationComesFirst(t *testing.T) {
	d := winter(t)
	r := dried(t, d)
	k := 2.5 / (1020 * math.Pow(0.86, 2.0/3))
	wi := d.Wanted.HumidityRatio()
	roof := wi - psychro.SaturationHumidityRatio(8, hill)
	wall := wi - psychro.SaturationHumidityRatio(11, hill)
	require.Positive(t, wall)
	require.InEpsilon(t, k*(105*roof+55*wall), r.Condensed, 0.02)
	require.InEpsilon(t, r.Condensed*2.48e6, r.OnSurfaces, 5e-3)
	require.InEpsilon(t, 0.002/(wi-d.Outside.HumidityRatio()), r.Uncounted, 1e-12)
	require.Less(t, r.DryAir, 0.6*r.Uncounted)

	d.Surfaces[2].Wet = true // a wet screen gives water
	wet := dried(t, d)
	require.Less(t, wet.Condensed, r.Condensed)
	require.Greater(t, wet.DryAir, r.DryAir)

	d.Surfaces = nil
	require.InEpsilon(t, r.Uncounted, dried(t, d).DryAir, 1e-12)
	require.Zero(t, dried(t, d).Condensed)
}

// Air that carries off 100 kg/h between humidity ratios of 0.001 and 0.010, as
// "Air Required to Remove Moisture" of engineeringtoolbox.com works it, kg/h.
func TestAirToRemoveMoisture(t *testing.T) {
	check.Run(t, []check.Row{{
		Where: "EngineeringToolBox.d1636/example", In: []float64{100, 0.010, 0.001}, Printed: "11020",
		Suspect: "100/(0.010 - 0.001) is 11111: the page used ratios with more digits than it prints", Right: "11111",
	}}, func(in ...float64) float64 {
		inside, err1 := psychro.FromHumidityRatio(20, in[1], 101325)
		outside, err2 := psychro.FromHumidityRatio(0, in[2], 101325)
		require.NoError(t, errors.Join(err1, err2))
		return 3600 * dried(t, ventilation.DryingCase{Wanted: inside, Outside: outside, Release: in[0] / 3600}).DryAir
	})
}

func TestCoverThatTakesAllNeedsNoAir(t *testing.T) {
	d := winter(t)
	d.Release = 0.0005
	r := dried(t, d)
	require.Zero(t, r.Excess)
	require.Zero(t, r.DryAir)
	require.Zero(t, r.Cost)
	require.Greater(t, r.Condensed, d.Release)
	require.Equal(t, ventilation.RecoveredAir{Supply: -2, Exhaust: 15, Plate: 6.5}, r.Heat)
	s, err := d.Settled(0)
	require.NoError(t, err)
	require.Less(t, s.HumidityRatio(), d.Wanted.HumidityRatio())
}

func TestDryingGrows(t *testing.T) {
	d := winter(t)
	last := 0.0
	for _, e := range []float64{0.001, 0.002, 0.004, 0.01} {
		d.Release = e
		r := dried(t, d)
		require.Greater(t, r.DryAir, last)
		last = r.DryAir
	}
	d = winter(t)
	last = 0
	for _, rh := range []float64{0, 0.3, 0.6, 1} {
		d.Outside = moist(t, -2, rh)
		require.Greater(t, dried(t, d).DryAir, last)
		last = dried(t, d).DryAir
	}
	d = winter(t)
	last = 0
	for _, rh := range []float64{0.9, 0.85, 0.75, 0.6} { // drier wanted: less drips, each kg of air carries less
		d.Wanted = moist(t, 15, rh)
		require.Greater(t, dried(t, d).DryAir, last)
		last = dried(t, d).DryAir
	}
}

func TestRecoveryHandsOverHeatAndDropsWater(t *testing.T) {
	d := winter(t)
	last := -1.0
	for _, e := range []float64{0, 0.3, 0.6, 0.8, 1} {
		d.Recovery = e
		r := dried(t, d)
		require.InDelta(t, -2+17*e, r.Heat.Supply, 1e-12)
		require.Greater(t, r.Heat.Saved, last)
		last = r.Heat.Saved
		require.InDelta(t, e*r.Sensible, r.Heat.Saved, 1e-3*r.Sensible)
		// The exhaust air gives what the supply air takes.
		out, err := psychro.FromDewPoint(r.Heat.Exhaust, math.Min(r.Heat.Exhaust, d.Wanted.DewPoint()), hill)
		require.NoError(t, err)
		require.InDelta(t, r.DryAir*(d.Wanted.HumidityRatio()-out.HumidityRatio()), r.Heat.Condensate, 1e-9)
		gone := r.Heat.Condensate * psychro.LiquidEnthalpy(math.Max(0.01, r.Heat.Exhaust))
		require.InDelta(t, r.DryAir*d.Wanted.Enthalpy()-r.Heat.Saved, r.DryAir*out.Enthalpy()+gone, 1e-2)
		require.InDelta(t, 0.5*(r.Heat.Exhaust-2), r.Heat.Plate, 1e-12)
	}
	d.Recovery = 1
	r := dried(t, d)
	require.InDelta(t, r.Sensible, r.Heat.Saved, 1e-9)
	require.InDelta(t, r.Latent, r.Cost, 1e-6)
	require.False(t, r.Heat.Frost)

	d.Outside, d.Recovery = moist(t, -14, 0.85), 0.8
	r = dried(t, d)
	require.True(t, r.Heat.Frost)
	require.Negative(t, r.Heat.Plate)
	require.Positive(t, r.Heat.Exhaust)
	d.Wanted, d.Surfaces, d.Recovery = moist(t, 15, 0.2), nil, 0.4 // frost point -6.7 °C
	require.False(t, dried(t, d).Heat.Frost)
	require.Negative(t, dried(t, d).Heat.Plate)
}

func TestWetOutsideAirCannotDry(t *testing.T) {
	d := winter(t)
	d.Outside = moist(t, 16, 0.95)
	_, err := d.Flow()
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	require.Contains(t, err.Error(), "0.011289")  // outside, kg/kg
	require.Contains(t, err.Error(), "0.0094457") // wanted, kg/kg
	d.Outside = d.Wanted
	_, err = d.Flow()
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	d.Outside = moist(t, 15, 0.8499999999)
	_, err = d.Flow()
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	d.Release = 0 // nothing to carry out: the cover dries
	require.Zero(t, dried(t, d).DryAir)
}

func TestDewLimitKeepsTheCoverDry(t *testing.T) {
	d := winter(t)
	s, err := ventilation.DewLimit(15, 0.5, hill, d.Surfaces)
	require.NoError(t, err)
	require.InDelta(t, 7.5, s.DewPoint(), 1e-9)
	require.Equal(t, 15.0, s.Temperature())
	d.Wanted = s
	r := dried(t, d)
	require.Zero(t, r.Condensed)
	require.Equal(t, r.Uncounted, r.DryAir)
	s, err = ventilation.DewLimit(15, 0, hill, d.Surfaces)
	require.NoError(t, err)
	d.Wanted = s
	require.InDelta(t, 0, dried(t, d).Condensed, 1e-12)

	_, err = ventilation.DewLimit(7, 0, hill, d.Surfaces)
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	_, err = ventilation.DewLimit(300, -1, 101, nil)
	requireFields(t, err, "t", "margin", "p", "number of surfaces")
}

// requireFields wants err to name exactly fields, each with its RangeError.
func requireFields(t testing.TB, err error, fields ...string) {
	t.Helper()
	require.ErrorIs(t, err, ventilation.ErrRange)
	var got []string
	var walk func(error)
	walk = func(e error) {
		var joined interface{ Unwrap() []error }
		var one *ventilation.RangeError
		switch {
		case errors.As(e, &joined) && joined != nil:
			for _, x := range joined.Unwrap() {
				walk(x)
			}
		case errors.As(e, &one):
			got = append(got, one.Field)
		}
	}
	walk(err)
	require.ElementsMatch(t, fields, got)
}

func TestDryingFaultsAreAllNamed(t *testing.T) {
	d := winter(t)
	d.Release, d.Recovery = -1, 60
	d.Surfaces[0].Temperature, d.Surfaces[1].Area, d.Surfaces[2].Film = 281, -1, math.NaN()
	_, err := d.Flow()
	requireFields(t, err, "Release", "Recovery", `Surfaces[0] "roof".Temperature`, `Surfaces[1] "walls".Area`, `Surfaces[2] "inner screen".Film`)
	requireFields(t, d.Check(), "Release", "Recovery", `Surfaces[0] "roof".Temperature`, `Surfaces[1] "walls".Area`, `Surfaces[2] "inner screen".Film`)

	d = winter(t)
	d.Outside = psychro.State{}
	require.ErrorContains(t, d.Check(), "Outside")
	d.Outside, _ = psychro.IdealGas.FromRelativeHumidity(-2, 0.9, 101325)
	err = d.Check()
	requireFields(t, err, "Outside.Pressure")
	require.ErrorContains(t, err, "model")
	d.Wanted, _ = psychro.FromRelativeHumidity(81, 0.1, 59000)
	requireFields(t, d.Check(), "Wanted.Temperature", "Wanted.Pressure", "Outside.Pressure")
}

func TestDryingAllocatesNothing(t *testing.T) {
	d := winter(t)
	require.Zero(t, testing.AllocsPerRun(100, func() { _, _ = d.Flow() }))
}
