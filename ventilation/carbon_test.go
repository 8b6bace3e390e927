package ventilation_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

func carbonCase(t testing.TB) ventilation.CO2Case {
	return ventilation.CO2Case{FloorArea: 100, Volume: 400, Crop: ventilation.DefaultCanopy(3), Air: air(t, 24, 0.7), Leaf: 23, PAR: 600, Exchange: 0.2, Outside: 420}
}

// The balance closes, uptake follows the concentration, and without a supply
// the house lies below the outside.
func TestCO2Laws(t *testing.T) {
	c := carbonCase(t)
	last := 0.0
	for _, exchange := range []float64{0.001, 0.01, 0.1, 1, 10} {
		c.Exchange = exchange
		s, err := c.Steady()
		require.NoError(t, err)
		require.Greater(t, s.Concentration, last)
		require.Less(t, s.Concentration, 420.0)
		require.InDelta(t, 0, s.Residual, 1e-9*s.Uptake)
		require.InDelta(t, c.FloorArea*c.Crop.Uptake(600, s.Concentration, 23), s.Uptake, 1e-15)
		require.InDelta(t, ventilation.CO2Density(s.Concentration, 24, 101325), s.Density, 1e-15)
		last = s.Concentration
	}
	c = carbonCase(t)
	dose, err := c.Dose(900)
	require.NoError(t, err)
	c.Supply = dose
	s, err := c.Steady()
	require.NoError(t, err)
	require.InDelta(t, 900, s.Concentration, 1e-6, "the dose's inverse")
	// The time constant V/G, and a long time is steady.
	c.PAR, c.Supply = 0, 0
	over, err := c.Over(1420, 2000*time.Second)
	require.NoError(t, err)
	require.InDelta(t, 420+1000*math.Exp(-1), over.End, 1e-6)
	require.InDelta(t, 420+1000*(1-math.Exp(-1)), over.Concentration, 1e-6)
	require.InDelta(t, 0, over.Residual, 1e-15)
	c = carbonCase(t)
	c.Supply = 1e-3
	steady, err := c.Steady()
	require.NoError(t, err)
	long, err := c.Over(steady.Concentration, 24*time.Hour)
	require.NoError(t, err)
	require.InDelta(t, steady.Concentration, long.Concentration, 1e-6)
	require.InDelta(t, steady.Concentration, long.End, 1e-6)
	// Nearly no exchange is none, with mass kept.
	c.PAR, c.Supply = 0, 5e-4
	c.Exchange = 1e-9
	tiny, err := c.Over(500, time.Hour)
	require.NoError(t, err)
	c.Exchange = 0
	none, err := c.Over(500, time.Hour)
	require.NoError(t, err)
	require.InDelta(t, none.End, tiny.End, 1e-3)
	require.InDelta(t, 1.8, 400*(ventilation.CO2Density(none.End, 24, 101325)-ventilation.CO2Density(500, 24, 101325)), 1e-9)
	// Steps of a minute agree with one of an hour where uptake is nearly even.
	c = carbonCase(t)
	start := 800.0
	hour, err := c.Over(start, 10*time.Minute)
	require.NoError(t, err)
	for range 60 {
		s, err := c.Over(start, 10*time.Second)
		require.NoError(t, err)
		start = s.End
	}
	require.InDelta(t, start, hour.End, 2)
	require.Less(t, c.Crop.Uptake(600, 30, 23), 1e-12, "below the compensation point")
	require.Zero(t, ventilation.Canopy{}.Uptake(600, 400, 22))
}

// Hours with CO2: held by the doser where it can be, mass kept hour by hour, and
// below the outside by day without one.
func TestHoursWithCO2(t *testing.T) {
	h := summerHouse(t)
	c := climate(t, h)
	hours := wetHours(2)
	x := ventilation.DefaultTargets(40e3)
	x.Humidity, x.CO2, x.Vent = 1, 800, 30
	hours.Rule = x
	hours.CO2 = ventilation.DefaultCO2Hours()
	year, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	require.Less(t, year.CO2[12], 420.0)
	require.Greater(t, year.CO2[40+5], 300.0)
	require.Zero(t, year.Dosed[12])
	hours.CO2.Doser = 1
	dosed, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	for i := range dosed.CO2 {
		require.GreaterOrEqual(t, dosed.CO2[i], 800-1e-6)
		if dosed.Dosed[i] > 0 {
			require.InDelta(t, 800, dosed.CO2[i], 1e-6)
		}
	}
	require.Greater(t, dosed.Dosed[12], 0.0)
	require.Less(t, dosed.Transpired[12], year.Transpired[12], "stomata close in rich air")
	hours.CO2.Photons, hours.CO2.Respiration = -1, 1
	_, err = c.YearTo(nil, hours)
	require.ErrorContains(t, err, "CO2.Photons")
	require.ErrorContains(t, err, "CO2.Respiration")
}

func TestCO2Faults(t *testing.T) {
	_, err := ventilation.CO2Case{FloorArea: -1, Exchange: -1, Outside: 1e6, Supply: -1, Respiration: -1, PAR: 1e4, Crop: ventilation.Canopy{LAI: 1}, Leaf: 60}.Steady()
	for _, f := range []string{"FloorArea", "Volume", "Air", "Leaf", "PAR", "Exchange", "Outside", "Supply", "Respiration"} {
		require.ErrorContains(t, err, f)
	}
	c := carbonCase(t)
	c.Exchange, c.PAR = 0, 0
	_, err = c.Steady()
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	c.Supply = 1e-3
	_, err = c.Steady()
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	_, err = c.Over(-1, 0)
	require.ErrorContains(t, err, "start")
	require.ErrorContains(t, err, "d is 0")
	_, err = c.Dose(9999)
	require.ErrorContains(t, err, "co2")
	for _, v := range []float64{ventilation.CO2Density(-1, 20, 1e5), ventilation.CO2Density(400, 99, 1e5), ventilation.CO2Density(400, 20, 5),
		c.Crop.Uptake(-1, 400, 20), c.Crop.Uptake(100, math.NaN(), 20), c.Crop.Uptake(100, 400, 50), ventilation.Canopy{LAI: 13}.Uptake(100, 400, 20)} {
		require.True(t, math.IsNaN(v))
	}
}
