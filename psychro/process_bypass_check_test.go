package psychro_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/psychro"
)

// Example 10.19 of a textbook of thermodynamics, as the open code of its worked
// examples (FOSSEE, Scilab textbook companion 551) has it, read off a chart: air
// of 82.5 kJ/kg and 19.6 g/kg passes a coil whose surface has 36.6 kJ/kg, 13 °C
// saturated, and leaves with 47.5 kJ/kg, a by-pass factor of 0.2375; 11.8 g/kg and
// 17.6 °C.
func TestBypassPublished(t *testing.T) {
	const chart = "the source reads a chart"
	in := flowing(must(t)(psychro.IdealGas.FromEnthalpyAndHumidityRatio(82.5e3, 0.0196, 101325)), 250.0/60)
	one(t, check.Row{Where: "Scilab551.Ex10.19/specific volume", Printed: "0.892", Tol: 0.003, Why: chart}, in.State.SpecificVolume())
	c, err := in.BypassedCoil(13, (47.5-36.6)/(82.5-36.6))
	require.NoError(t, err)
	out := c.Out.State
	one(t, check.Row{Where: "Scilab551.Ex10.19/enthalpy", Printed: "47.5", Tol: 0.15, Why: chart}, out.Enthalpy()/1000)
	one(t, check.Row{Where: "Scilab551.Ex10.19/humidity", Printed: "11.8", Tol: 0.06, Why: chart}, 1000*out.HumidityRatio())
	one(t, check.Row{Where: "Scilab551.Ex10.19/temperature", Printed: "17.6", Tol: 0.1, Why: chart}, out.Temperature())
	// Its capacity, m (h1 - h2), leaves the condensate's enthalpy out.
	one(t, check.Row{Where: "Scilab551.Ex10.19/capacity, kW", Printed: "163.5", Tol: 0.8, Why: chart}, (c.Heat+c.Drain)/1000)
}

// The leaving air lies on the straight line to the coil's air; all balances close.
func TestBypassIsALine(t *testing.T) {
	for _, m := range []psychro.Model{psychro.IdealGas, psychro.RealGas} {
		in := flowing(must(t)(m.FromRelativeHumidity(28, 0.7, 95000)), 2)
		whole, err := in.Coil(9)
		require.NoError(t, err)
		for _, b := range []float64{0, 0.1, 0.5, 0.95} {
			c, err := in.BypassedCoil(9, b)
			require.NoError(t, err)
			require.InEpsilon(t, (1-b)*whole.Heat, c.Heat, 1e-12)
			require.InEpsilon(t, (1-b)*whole.Condensate, c.Condensate, 1e-12)
			on := func(a, z float64) float64 { return b*a + (1-b)*z }
			require.InDelta(t, on(in.State.HumidityRatio(), whole.Out.State.HumidityRatio()), c.Out.State.HumidityRatio(), 1e-12)
			require.InDelta(t, on(in.State.Enthalpy(), whole.Out.State.Enthalpy()), c.Out.State.Enthalpy(), 1e-4)
			require.InEpsilon(t, c.Heat, c.Sensible+c.Latent, 1e-12)
			require.InDelta(t, in.DryAir*(in.State.Enthalpy()-c.Out.State.Enthalpy())-c.Drain, c.Heat, 1e-3)
			require.InEpsilon(t, in.DryAir, c.Out.DryAir, 1e-12)
		}
		_, err = in.BypassedCoil(9, 0.951)
		require.ErrorContains(t, err, "bypass")
		_, err = in.BypassedCoil(30, 0.2)
		require.ErrorContains(t, err, "leaving temperature")
		_, err = psychro.Stream{}.BypassedCoil(9, 2)
		require.ErrorIs(t, err, psychro.ErrRange)
	}
	// In hard frost the mixture may be foggy: water and heat still balance.
	in := flowing(must(t)(psychro.FromRelativeHumidity(-2, 1, 101325)), 2)
	c, err := in.BypassedCoil(-40, 0.5)
	require.NoError(t, err)
	require.InEpsilon(t, in.DryAir*in.State.HumidityRatio(), c.Out.DryAir*c.Out.State.HumidityRatio()+c.Condensate, 1e-12)
	require.InEpsilon(t, in.DryAir*(in.State.Enthalpy()-c.Out.State.Enthalpy())-c.Drain, c.Heat, 1e-9)
}
