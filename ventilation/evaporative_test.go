package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func humid(t testing.TB, temperature, rh float64) psychro.State {
	t.Helper()
	s, err := psychro.FromRelativeHumidity(temperature, rh, 101325)
	require.NoError(t, err)
	return s
}

func pads() ventilation.PadWall {
	return ventilation.PadWall{Area: 4, Efficiency: 0.75, Speed: 1.5, Cycles: 3}
}

// [Hundy16] ex. 22.1: 37 °C, limit 21.5 °C, efficiency 0.75.
func TestPadPublished(t *testing.T) {
	out, err := psychro.FromWetBulb(37, 21.5, 101325)
	require.NoError(t, err)
	check.Run(t, []check.Row{{Where: "Hundy16.ex22.1", In: []float64{6}, Printed: "25.4"}}, func(in ...float64) float64 {
		c, err := pads().Cool(out, in[0])
		require.NoError(t, err)
		require.InDelta(t, 25.375, c.Supply.Temperature(), 1e-9)
		return c.Supply.Temperature()
	})
}

// Pads of which a speed and the pressure they take are known, here 1.25 m/s and 20 Pa
// (invented), are an opening of their face: fans that draw that speed through them find
// that pressure, and at half the flow a quarter of it.
func TestPadsAsAnOpening(t *testing.T) {
	const area, speed, taken = 12.0, 1.25, 20.0
	rho := 1 / humid(t, 20, 0).SpecificVolume()
	face := ventilation.Opening{Height: 1, Area: area, Discharge: speed * math.Sqrt(rho/(2*taken))}
	for _, part := range []float64{1, 0.5} {
		n, err := ventilation.NewNetwork([]ventilation.Opening{face}, nil, []ventilation.FixedFan{{Height: 1, Flow: -part * area * speed}})
		require.NoError(t, err)
		b := solveNet(t, n, dry(t, 20, 20, 0))
		require.InDelta(t, taken*part*part, b.Paths[0].Drive, 0.01)
	}
}

func TestPadKeepsMassAndEnthalpy(t *testing.T) {
	for _, temperature := range []float64{15, 28, 40} {
		for _, rh := range []float64{0.1, 0.4, 0.8} {
			out := humid(t, temperature, rh)
			c, err := pads().Cool(out, 5)
			require.NoError(t, err)
			require.InDelta(t, 1.25, c.Speed, 1e-12)
			require.Greater(t, c.Efficiency, 0.75) // slower than measured
			require.InDelta(t, c.Efficiency*(temperature-c.WetBulb), c.Fall, 1e-9)
			require.InDelta(t, c.WetBulb, c.Supply.WetBulb(), 1e-8)
			require.GreaterOrEqual(t, c.Supply.Temperature(), c.WetBulb)
			require.InDelta(t, c.DryAir*(c.Supply.HumidityRatio()-out.HumidityRatio()), c.Evaporated, 1e-12)
			gain := c.DryAir * (c.Supply.Enthalpy() - out.Enthalpy())
			require.InDelta(t, c.Evaporated*psychro.LiquidEnthalpy(c.WetBulb), gain, 1e-6*c.Cooling)
			require.InEpsilon(t, c.Cooling, c.Evaporated*psychro.LatentHeat(c.WetBulb), 0.01)
			require.InDelta(t, c.Evaporated/2, c.Bled, 1e-15) // three cycles
			require.InDelta(t, c.Evaporated+c.Bled, c.Water, 1e-15)
		}
	}
}

// Transfer units go as the speed to -0.2, worked by hand.
func TestPadEfficiencyOverSpeed(t *testing.T) {
	p := pads()
	require.InDelta(t, 0.75, p.EfficiencyAt(1.5), 1e-12)
	require.InDelta(t, 1-math.Exp(-math.Log(4)*math.Pow(2, 0.2)), p.EfficiencyAt(0.75), 1e-12)
	require.InDelta(t, 1-math.Exp(-math.Log(4)*math.Pow(2, -0.2)), p.EfficiencyAt(3), 1e-12)
	require.True(t, math.IsNaN(p.EfficiencyAt(3.1)))
	p.Efficiency = 1
	require.Equal(t, 1.0, p.EfficiencyAt(0.5))
}

func TestPadDesignCarriesTheHeat(t *testing.T) {
	d := ventilation.PadDesign{Outside: humid(t, 34, 0.3), Sensible: 40000, Rise: 5, Efficiency: 0.8, Speed: 1.3}
	s, err := d.Size()
	require.NoError(t, err)
	warmed, err := psychro.Stream{State: s.Supply, DryAir: s.DryAir}.Heated(d.Sensible)
	require.NoError(t, err)
	require.InDelta(t, s.Supply.Temperature()+5, warmed.State.Temperature(), 1e-9)
	require.InDelta(t, s.Exhaust.Temperature(), warmed.State.Temperature(), 1e-9)
	require.InDelta(t, s.Inlet/1.3, s.Area, 1e-12)
	require.InDelta(t, s.DryAir*(s.Supply.HumidityRatio()-d.Outside.HumidityRatio()), s.Evaporated, 1e-12)
	require.InDelta(t, s.DryAir*s.Exhaust.SpecificVolume(), s.Fans, 1e-12)
	require.True(t, math.IsInf(s.Alone, 1)) // the air at the fans is cooler than outside
	// Without pads the air itself must do.
	d.Efficiency = 0
	s, err = d.Size()
	require.NoError(t, err)
	require.InEpsilon(t, s.DryAir, s.Alone, 1e-3)
	require.InDelta(t, 0, s.Evaporated, 1e-12)
}

func TestPadFaultsComeTogether(t *testing.T) {
	_, err := ventilation.PadWall{Efficiency: 70, Speed: 9, Cycles: 1}.Cool(psychro.State{}, -1)
	require.ErrorIs(t, err, ventilation.ErrRange)
	for _, field := range []string{"Area", "Efficiency", "Speed", "Cycles", "flow", "outside.Pressure"} {
		require.ErrorContains(t, err, field)
	}
	_, err = pads().Cool(humid(t, 30, 0.3), 40)
	require.ErrorContains(t, err, "flow/Area is 10")
	_, err = pads().Cool(humid(t, 2, 0.1), 5)
	require.ErrorContains(t, err, "freeze")
	_, err = ventilation.PadDesign{Efficiency: 2, Speed: -1, Rise: -5}.Size()
	for _, field := range []string{"Outside.Pressure", "Sensible", "Rise", "Efficiency", "Speed"} {
		require.ErrorContains(t, err, field)
	}
	_, err = ventilation.PadDesign{Outside: humid(t, 2, 0.1), Efficiency: 0.8, Speed: 1, Rise: 5, Sensible: 1}.Size()
	require.ErrorContains(t, err, "freeze")
}

func TestRangesOfEvaporation(t *testing.T) {
	for _, c := range []struct {
		r        domain.Range
		min, max float64
	}{
		{ventilation.EfficiencyRange, 0, 1}, {ventilation.PadSpeedRange, 0.1, 3}, {ventilation.CyclesRange, 1.1, 100},
		{ventilation.PadFlowRange, 0, 1000}, {ventilation.SprayRange, 0, 100}, {ventilation.SprayWaterRange, 0.01, 60},
	} {
		require.InDelta(t, c.min, c.r.Min, 1e-300, c.r.Source) // more than 0 counts as 0
		require.Equal(t, c.max, c.r.Max, c.r.Source)
	}
}

// Pads and fans reckon in the model of the outside air: the flow goes as one over
// the rise down to the smallest.
func TestPadDesignKeepsTheModel(t *testing.T) {
	for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
		out, err := m.FromRelativeHumidity(33, 0.3, 101325)
		require.NoError(t, err)
		size := func(rise float64) float64 {
			s, err := ventilation.PadDesign{Outside: out, Sensible: 1e4, Rise: rise, Efficiency: 0.8, Speed: 1.2}.Size()
			require.NoError(t, err)
			require.Equal(t, m, s.Exhaust.Model())
			return s.DryAir
		}
		require.InEpsilon(t, 40*size(4), size(0.1), 2e-4, "%v", m)
	}
}
