package airheat

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/psychro"
)

func TestSupplyWarnings(t *testing.T) {
	l := DefaultSupplyLimits()
	require.Empty(t, l.Warnings(38))
	require.Len(t, l.Warnings(45), 1)
	w := l.Warnings(70)
	require.Len(t, w, 3)
	require.Contains(t, w[0], "film")
	require.Len(t, l.Warnings(60), 2)
	require.Len(t, l.Warnings(40), 0)
	for i, v := range []float64{39.9, 40.1, 49.9, 50.1, 59.9, 60.1} {
		require.Len(t, l.Warnings(v), (i+1)/2, "%g", v)
	}
	require.Len(t, l.Warnings(50), 1)
}

// TestCoilWarmsOutsideAir: 75 people with 0.3 m³ a minute each, at 0.81 m³/kg,
// from 24.5 to 39.5 kJ/kg.
func TestCoilWarmsOutsideAir(t *testing.T) {
	// The air with that volume and enthalpy, in the ideal form.
	temp := 10.19
	for range 50 {
		w := (0.81*101325/(287.042*(temp+273.15)) - 1) / 1.607858
		temp += (24500 - (1006*temp + w*(2501000+1860*temp))) / 20000 * -1
	}
	w := (0.81*101325/(287.042*(temp+273.15)) - 1) / 1.607858
	in, err := psychro.IdealGas.FromHumidityRatio(temp, w, 101325)
	require.NoError(t, err)
	require.InDelta(t, 24500, in.Enthalpy(), 1e-3)
	check.Run(t, []check.Row{
		{Where: "Nag08.Ex15.10/coil-kW", In: []float64{75 * 0.3 / 60, 15000}, Printed: "6.944"},
	}, func(v ...float64) float64 {
		d, err := PowerFor(in, Flow{v[0], FanInlet}, temp+v[1]/in.HeatCapacity())
		require.NoError(t, err)
		return d.Power / 1000
	})
	// Density of air at 575 mbar and -10 °C, Hundy's 0.76 for air that weighs
	// 1.2 kg/m³ at 20 °C and 1013.25 mbar.
	check.Run(t, []check.Row{
		{Where: "Hundy08.Ex24.1/density", In: []float64{-10, 57500}, Printed: "0.76"},
	}, func(v ...float64) float64 { return idealAir(t, v[0], 0, v[1]).Density() })
	// Mixing 20 kg/s of 21 °C with 3 kg/s of 28 °C; the printed enthalpy 41.8
	// of a companion to the book multiplies one stream's twice.
	m, err := psychro.Mix(psychro.Stream{State: idealAir(t, 21, 0.4, 101325), DryAir: 20}, psychro.Stream{State: idealAir(t, 28, 0.4, 101325), DryAir: 3})
	require.NoError(t, err)
	check.Run(t, []check.Row{
		{Where: "Hundy08.Ex21.3/dry-bulb", Printed: "21.9"},
	}, func(...float64) float64 { return m.Air.State.Temperature() })
	check.Run(t, []check.Row{
		{Where: "Hundy08.Ex21.3/enthalpy", In: []float64{20, 41.8, 3, 56.6}, Printed: "41.8", Suspect: "the source's companion multiplies one stream's enthalpy twice", Right: "43.73"},
	}, func(v ...float64) float64 {
		a := stateOfEnthalpy(t, 21, v[1]*1000)
		b := stateOfEnthalpy(t, 28, v[3]*1000)
		mix, err := psychro.Mix(psychro.Stream{State: a, DryAir: v[0]}, psychro.Stream{State: b, DryAir: v[2]})
		require.NoError(t, err)
		return mix.Air.State.Enthalpy() / 1000
	})
}

func stateOfEnthalpy(t *testing.T, c, h float64) psychro.State {
	s, err := psychro.IdealGas.FromEnthalpy(c, h, 101325)
	require.NoError(t, err)
	return s
}
