package psychro_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
)

// total is the water, kg/s, and the enthalpy, W, of a mixture with its fog.
func total(m psychro.Mixture) (water, heat float64) {
	return m.Air.VapourFlow() + m.FogLiquid + m.FogIce, m.Air.EnthalpyFlow() + m.FogEnthalpy
}

func TestMixingKeepsWaterAndEnthalpy(t *testing.T) {
	fogs, ices, both := 0, 0, 0
	for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
		for _, hot := range []float64{4, 12, 18.5, 26, 40, 60} {
			for _, cold := range []float64{-38, -21, -12.5, -6, -1, 3} {
				for _, part := range []float64{0.05, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.95} {
					for _, rh := range []float64{0.4, 0.97, 1} {
						a := psychro.Stream{State: must(t)(m.FromRelativeHumidity(hot, rh, 98e3)), DryAir: part}
						b := psychro.Stream{State: must(t)(m.FromRelativeHumidity(cold, rh, 98e3)), DryAir: 1 - part}
						c := psychro.Stream{State: a.State, DryAir: 0}
						mix, err := psychro.Mix(a, b, c)
						require.NoError(t, err)
						water, heat := total(mix)
						require.InEpsilon(t, a.VapourFlow()+b.VapourFlow(), water, 1e-9)
						require.InDelta(t, a.EnthalpyFlow()+b.EnthalpyFlow(), heat, 1e-5)
						require.InDelta(t, 1, mix.Air.DryAir, 1e-12)
						s := mix.Air.State
						if mix.FogLiquid+mix.FogIce > 0 {
							fogs++
							require.InDelta(t, 1, s.RelativeHumidity(), 1e-9)
						}
						if mix.FogIce > 0 {
							ices++
							require.LessOrEqual(t, s.Temperature(), psychro.TriplePoint)
						}
						if mix.FogIce > 0 && mix.FogLiquid > 0 {
							both++
							require.InDelta(t, psychro.TriplePoint, s.Temperature(), 1e-12)
						}
					}
				}
			}
		}
	}
	require.Greater(t, fogs, 100)
	require.Greater(t, ices, 50)
	require.Positive(t, both)
}

func TestMixRefuses(t *testing.T) {
	a := psychro.Stream{State: must(t)(psychro.FromRelativeHumidity(20, 0.5, 101325)), DryAir: 1}
	b := psychro.Stream{State: must(t)(psychro.FromRelativeHumidity(20, 0.5, 95e3)), DryAir: 1}
	c := psychro.Stream{State: must(t)(psychro.IdealGas.FromRelativeHumidity(20, 0.5, 101325)), DryAir: -1}
	d := psychro.Stream{State: must(t)(psychro.IdealGas.FromRelativeHumidity(20, 0.5, 101325)), DryAir: 1}
	_, err := psychro.Mix(a, b, c, d, psychro.Stream{DryAir: 1})
	require.ErrorIs(t, err, psychro.ErrRange)
	for _, want := range []string{"streams[1].State.Pressure is 95000", "streams[2].DryAir is -1", "streams[3]: its model is ideal gas", "streams[4].State.Pressure is 0"} {
		require.ErrorContains(t, err, want)
	}
	_, err = psychro.Mix()
	require.ErrorIs(t, err, psychro.ErrRange)
	_, err = psychro.Mix(psychro.Stream{State: a.State})
	require.ErrorContains(t, err, "DryAir of all streams is 0")
}

func TestHeatedAndCooled(t *testing.T) {
	in := psychro.Stream{State: must(t)(psychro.FromRelativeHumidity(28, 0.6, 101325)), DryAir: 0.8}
	warm, err := in.Heated(9000)
	require.NoError(t, err)
	require.InDelta(t, 9000, warm.EnthalpyFlow()-in.EnthalpyFlow(), 1e-6)
	require.Equal(t, in.State.HumidityRatio(), warm.State.HumidityRatio())
	back, err := warm.Heated(-9000)
	require.NoError(t, err)
	require.InDelta(t, 28, back.State.Temperature(), 1e-9)
	_, err = in.Heated(-60e3)
	require.ErrorIs(t, err, psychro.ErrRange)
	require.ErrorContains(t, err, "heat is -60000, allowed -7")
	_, err = in.Heated(300e3)
	require.ErrorContains(t, err, "heat is 300000, allowed -7")

	for _, at := range []float64{27, 20, 5, -8} {
		c, err := in.Coil(at)
		require.NoError(t, err)
		require.InDelta(t, in.EnthalpyFlow(), c.Out.EnthalpyFlow()+c.Heat+c.Drain, 1e-6)
		require.InDelta(t, in.VapourFlow(), c.Out.VapourFlow()+c.Condensate, 1e-12)
		require.InDelta(t, c.Heat, c.Sensible+c.Latent, 1e-9)
		require.Equal(t, at < in.State.DewPoint(), c.Condensate > 0)
		if c.Condensate > 0 { // latent is about the heat of condensation
			require.InEpsilon(t, c.Condensate*psychro.LatentHeat(at), c.Latent, 0.02)
		}
	}
	_, err = in.Coil(30)
	require.ErrorContains(t, err, "leaving temperature is 30")
	_, err = psychro.Stream{}.Coil(3)
	require.ErrorIs(t, err, psychro.ErrRange)
	_, err = psychro.Stream{State: in.State}.Heated(3)
	require.ErrorContains(t, err, "DryAir is 0")
}

func TestHumidifying(t *testing.T) {
	in := psychro.Stream{State: must(t)(psychro.FromRelativeHumidity(30, 0.3, 101325)), DryAir: 2}
	// Water at the wet bulb keeps the wet bulb: the definition of it.
	tw := in.State.WetBulb()
	out, err := in.Changed(0, 0.006, psychro.LiquidEnthalpy(tw))
	require.NoError(t, err)
	require.InDelta(t, tw, out.Air.State.WetBulb(), 1e-9)
	require.Less(t, out.Air.State.Temperature(), 30.0)
	// Steam hardly changes the dry bulb.
	out, err = in.Changed(0, 0.006, psychro.SteamEnthalpy(100))
	require.NoError(t, err)
	require.InDelta(t, 30.4, out.Air.State.Temperature(), 0.3)
	// Too much of it is fog, and all of it is there.
	out, err = in.Changed(0, 0.06, psychro.SteamEnthalpy(100))
	require.NoError(t, err)
	water, heat := total(out)
	require.InDelta(t, in.VapourFlow()+0.06, water, 1e-12)
	require.InDelta(t, in.EnthalpyFlow()+0.06*psychro.SteamEnthalpy(100), heat, 1e-5)
	require.Positive(t, out.FogLiquid)
	_, err = in.Changed(0, -1, 0)
	require.ErrorContains(t, err, "water is -1")

	pad, err := in.Pad(0.8)
	require.NoError(t, err)
	require.InDelta(t, 30-0.8*(30-tw), pad.Out.State.Temperature(), 1e-9)
	require.InDelta(t, tw, pad.Out.State.WetBulb(), 1e-9)
	require.InDelta(t, in.EnthalpyFlow()+pad.Evaporated*psychro.LiquidEnthalpy(tw), pad.Out.EnthalpyFlow(), 1e-5)
	_, err = in.Pad(80)
	require.ErrorContains(t, err, "efficiency is 80")
	cold := psychro.Stream{State: must(t)(psychro.FromRelativeHumidity(2, 0.3, 101325)), DryAir: 2}
	_, err = cold.Pad(0.8)
	require.ErrorContains(t, err, "the pad would freeze")
}

func TestRecirculationChangesTheSupplyNotTheRoom(t *testing.T) {
	fresh := psychro.Stream{State: must(t)(psychro.FromRelativeHumidity(4, 0.8, 101325)), DryAir: 0.5}
	steam := psychro.SteamEnthalpy(20)
	alone, err := psychro.RecirculatedRoom{Fresh: fresh, Heat: 8000, Water: 1e-3, WaterEnthalpy: steam}.Solve()
	require.NoError(t, err)
	with, err := psychro.RecirculatedRoom{Fresh: fresh, Recirculated: 1.5, Heat: 8000, Water: 1e-3, WaterEnthalpy: steam}.Solve()
	require.NoError(t, err)
	require.Equal(t, alone.Room, with.Room)
	// The balance of the room: what enters, and what it gains, leaves.
	water, heat := total(with.Supply)
	require.InDelta(t, water+1e-3, 2*with.Room.State.HumidityRatio(), 1e-12)
	require.InDelta(t, heat+8000+1e-3*steam, 2*with.Room.State.Enthalpy(), 1e-5)
	_, err = psychro.RecirculatedRoom{Fresh: fresh, Recirculated: 1, Heat: -9000, Water: 1e-2, WaterEnthalpy: steam}.Solve()
	require.ErrorIs(t, err, psychro.ErrNoSolution)
	_, err = psychro.RecirculatedRoom{Fresh: fresh, Recirculated: -1}.Solve()
	require.ErrorContains(t, err, "Recirculated is -1")
}

func TestVapourToASurface(t *testing.T) {
	s := must(t)(psychro.FromRelativeHumidity(18, 0.9, 101325))
	v, err := s.VapourFlux(5, 4)
	require.NoError(t, err)
	require.Positive(t, v.Flux)
	require.InDelta(t, 0.86, v.Lewis, 0.03)
	require.InEpsilon(t, v.Coefficient*(s.HumidityRatio()-psychro.SaturationHumidityRatio(5, 101325)), v.Flux, 1e-12)
	// Of the order of h/cp, 4/1010 kg/(m² s), times 10 % for the Lewis number.
	require.InEpsilon(t, 4.0/1012*1.10, v.Coefficient, 0.02)
	require.InEpsilon(t, v.Flux*psychro.LatentHeat(5), v.Latent, 1e-12)
	// The film is the mean of both: a wet surface in air dry enough for it.
	dry := must(t)(psychro.FromRelativeHumidity(20, 0.3, 101325))
	wet, err := dry.VapourFlux(10, 4)
	require.NoError(t, err)
	film := must(t)(psychro.FromHumidityRatio(15, 0.5*(dry.HumidityRatio()+wet.Saturation), 101325))
	require.InDelta(t, 15, wet.Film, 1e-12)
	require.InEpsilon(t, film.LewisNumber(), wet.Lewis, 1e-12)
	require.InEpsilon(t, 4/(film.HeatCapacity()*film.LewisFactor()), wet.Coefficient, 1e-12)
	none, err := s.VapourFlux(s.DewPoint(), 4)
	require.NoError(t, err)
	require.InDelta(t, 0, none.Flux, 1e-12)
	hot := must(t)(psychro.FromHumidityRatio(150, 0.02, 150e3))
	for _, at := range []float64{5, 60, 109} { // evaporation into hot air
		v, err := hot.VapourFlux(at, 4)
		require.NoError(t, err)
		require.InEpsilon(t, v.Flux*psychro.LatentHeat(at), v.Latent, 1e-12)
	}
	_, err = psychro.State{}.VapourFlux(12, 4)
	require.ErrorContains(t, err, "the zero State is invalid")
	_, err = hot.VapourFlux(112, 4)
	require.ErrorContains(t, err, "surface temperature is 112")
	_, err = s.VapourFlux(298, -4)
	require.ErrorContains(t, err, "surface temperature is 298")
	require.ErrorContains(t, err, "convective coefficient is -4")
}
