package ventilation_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Dry air of no release in an airtight house: the law of dilution.
func TestDilutionTime(t *testing.T) {
	check.Run(t, []check.Row{{
		Where: "Douglas.Ex25.11D", In: []float64{100, 1}, Printed: "4.61",
		// Douglas, Gasiorek, Swaffield, Jack, Fluid Mechanics, example 25.11D:
		// a hundredfold dilution at one air change an hour, hours.
	}}, func(in ...float64) float64 {
		const volume = 300.0
		d := ventilation.DryingCase{Outside: moist(t, 15, 0), Wanted: moist(t, 15, 0.9/in[0])}
		r, err := d.Time(moist(t, 15, 0.9), in[1]*volume/d.Wanted.SpecificVolume()/3600, volume)
		require.NoError(t, err)
		// Vapour of equal relative humidity is not quite of equal ratio.
		ratio := moist(t, 15, 0.9).HumidityRatio() / d.Wanted.HumidityRatio()
		return r.Time.Hours() * math.Log(in[0]) / math.Log(ratio)
	})
}

// A slow integration of the same equation in small steps, surfaces and all.
func TestDryingTimeAgainstSteps(t *testing.T) {
	d := winter(t)
	d.Surfaces[2].Wet = true
	d.Surfaces = append(d.Surfaces, ventilation.ColdSurface{Temperature: 13, Area: 30, Film: 2}) // takes for a while
	from := moist(t, 15, 0.99)
	const volume, air = 250.0, 0.35
	got, err := d.Time(from, air, volume)
	require.NoError(t, err)
	mass := volume / d.Wanted.SpecificVolume()
	pull := make([]float64, len(d.Surfaces))
	floor := make([]float64, len(d.Surfaces))
	for i, s := range d.Surfaces {
		v, err := d.Wanted.VapourFlux(s.Temperature, s.Film)
		require.NoError(t, err)
		pull[i], floor[i] = v.Coefficient*s.Area, v.Saturation
	}
	rates := func(w float64) (net, vent, drip float64) {
		for i, s := range d.Surfaces {
			if s.Wet || w > floor[i] {
				drip += pull[i] * (w - floor[i])
			}
		}
		vent = air * (w - d.Outside.HumidityRatio())
		return (d.Release - vent - drip) / mass, vent, drip
	}
	w, clock, vented, dripped := from.HumidityRatio(), 0.0, 0.0, 0.0
	const dt = 0.01
	for {
		k1, v1, d1 := rates(w)
		k2, v2, d2 := rates(w + 0.5*dt*k1)
		next := w + dt*k2
		if next <= d.Wanted.HumidityRatio() {
			part := (w - d.Wanted.HumidityRatio()) / (w - next)
			clock += part * dt
			vented += part * dt * v2
			dripped += part * dt * d2
			break
		}
		_, _ = v1, d1
		w, clock, vented, dripped = next, clock+dt, vented+dt*v2, dripped+dt*d2
	}
	require.InDelta(t, clock, got.Time.Seconds(), 1e-4)
	require.InEpsilon(t, vented, got.Vented, 1e-6)
	require.InEpsilon(t, dripped, got.Condensed, 1e-6)
	require.InEpsilon(t, mass, got.Mass, 1e-12)

	// Water closes; heat is that of the enthalpies of the air exchanged.
	require.InEpsilon(t, got.Released+mass*(from.HumidityRatio()-d.Wanted.HumidityRatio()), got.Vented+got.Condensed, 1e-9)
	mean, err := psychro.FromHumidityRatio(15, d.Outside.HumidityRatio()+got.Vented/(air*got.Time.Seconds()), hill)
	require.NoError(t, err)
	require.InEpsilon(t, air*got.Time.Seconds()*(mean.Enthalpy()-d.Outside.Enthalpy()), got.Sensible+got.Latent, 3e-5) // enthalpy is not quite straight in the humidity
	require.InEpsilon(t, got.Vented*(2501e3+1860*15), got.Latent, 1e-3)

	// At the end the screen that is wet and the roof and walls pull.
	require.InEpsilon(t, mass/(air+pull[0]+pull[1]+pull[2]), got.Constant.Seconds(), 1e-9)
}

func TestSettledIsWhatFlowHolds(t *testing.T) {
	d := winter(t)
	r := dried(t, d)
	s, err := d.Settled(r.DryAir)
	require.NoError(t, err)
	require.InEpsilon(t, d.Wanted.HumidityRatio(), s.HumidityRatio(), 1e-12)

	last := math.Inf(1)
	d.Release = 0.001
	for _, air := range []float64{0, 0.05, 0.2, 0.8, 3, 100} {
		s, err := d.Settled(air)
		require.NoError(t, err)
		require.Less(t, s.HumidityRatio(), last)
		last = s.HumidityRatio()
	}
	require.InEpsilon(t, d.Outside.HumidityRatio(), last, 0.01)

	// A surface colder than the outside air's dew point holds it below both.
	d.Release, d.Outside = 0, moist(t, 14, 0.9)
	s, err = d.Settled(0.01)
	require.NoError(t, err)
	require.Greater(t, s.HumidityRatio(), psychro.SaturationHumidityRatio(8, hill))
	require.Less(t, s.HumidityRatio(), d.Outside.HumidityRatio())
}

func TestDryingTimeLimits(t *testing.T) {
	d := winter(t)
	from := moist(t, 15, 0.98)
	r, err := d.Time(d.Wanted, 0.1, 250)
	require.NoError(t, err)
	require.Zero(t, r.Time)
	require.Zero(t, r.Vented)
	require.Positive(t, r.Constant)
	last := time.Duration(math.MaxInt64)
	for _, air := range []float64{0.2, 0.4, 0.8, 1.6} {
		r, err := d.Time(from, air, 250)
		require.NoError(t, err)
		require.Less(t, r.Time, last)
		last = r.Time
	}
	twice, err := d.Time(from, 1.6, 500)
	require.NoError(t, err)
	require.InDelta(t, 2*last.Seconds(), twice.Time.Seconds(), 1e-7)

	flow := dried(t, d).DryAir
	_, err = d.Time(from, 0.99*flow, 250)
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	require.ErrorContains(t, err, "0.0094") // where it rests and what is wanted, kg/kg
	_, err = d.Time(from, 0, 250)
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	_, err = d.Settled(0.1)
	require.NoError(t, err)
	d.Surfaces = nil
	_, err = d.Settled(0.01)
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	_, err = d.Settled(0)
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	d.Release, d.Outside = 0, moist(t, -2, 0)
	_, err = d.Time(from, 1e-9, 1e6)
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	require.ErrorContains(t, err, "would take")
	// Thirty years less and more half a per cent, of dilution alone.
	d.Outside = moist(t, 15, 0)
	r, err = d.Time(from, 1, 250)
	require.NoError(t, err)
	for factor, fits := range map[float64]bool{0.995: true, 1.005: false} {
		_, err = d.Time(from, r.Time.Seconds()/(factor*1e9), 250)
		require.Equal(t, fits, err == nil)
	}
}

func TestDryingTimeFaults(t *testing.T) {
	d := winter(t)
	d.Release = -1
	_, err := d.Time(psychro.State{}, -1, 0)
	requireFields(t, err, "Release", "dryAir", "volume", "from.Pressure")
	require.ErrorContains(t, err, "from")
	d.Release = 0.001
	_, err = d.Time(moist(t, 12, 0.9), 1, 250)
	requireFields(t, err, "from.Temperature")
	other, _ := psychro.FromRelativeHumidity(15, 0.9, 101325)
	_, err = d.Time(other, 1, 250)
	requireFields(t, err, "from.Pressure")
	_, err = d.Settled(math.NaN())
	requireFields(t, err, "dryAir")
}
