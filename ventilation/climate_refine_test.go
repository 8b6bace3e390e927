package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

// Vapour that condenses in the store is the rate times what the air's vapour
// pressure lies above the store's; the balances close with it, and a store that
// is damper than the air takes none.
func TestWaterInTheStore(t *testing.T) {
	c := climate(t, summerHouse(t))
	w := ventilation.Weather{Air: air(t, 12, 0.8), Sun: 300, Wind: 1, Sky: 2, Ground: 14}
	s := ventilation.Setting{Opening: 0.02, Exchange: 200, Store: 14, StoreVapour: 1500, Condensing: 5e-7}
	x, err := c.Solve(w, s)
	require.NoError(t, err)
	require.Greater(t, x.VapourPressure, 1600.0)
	require.InDelta(t, 5e-7*(x.VapourPressure-1500), x.IntoStore, 1e-12)
	require.InDelta(t, x.IntoStore*(2501e3+1.86e3*x.Temperature), x.StoreLatent, 1e-3*x.StoreLatent)
	require.InDelta(t, 0, x.HeatResidual, 1e-6*x.HeatIn)
	require.InDelta(t, 0, x.WaterResidual, 1e-9*x.WaterIn)
	s.Condensing = 0
	damp, err := c.Solve(w, s)
	require.NoError(t, err)
	require.Less(t, x.HumidityRatio, damp.HumidityRatio)
	s.Condensing, s.StoreVapour = 5e-7, damp.VapourPressure+1
	none, err := c.Solve(w, s)
	require.NoError(t, err)
	require.Zero(t, none.IntoStore+none.StoreLatent)
	require.InDelta(t, damp.VapourPressure, none.VapourPressure, 1e-6)
	_, err = c.Solve(w, ventilation.Setting{Opening: 0.3, Condensing: -1, StoreVapour: 2e5})
	require.ErrorContains(t, err, "Condensing")
	require.ErrorContains(t, err, "StoreVapour")
	wrong := ventilation.DefaultTargets(0)
	wrong.Condensing, wrong.StoreVapour = -1, 2e5
	require.ErrorContains(t, wrong.Check(), "Condensing")
	require.ErrorContains(t, wrong.Check(), "StoreVapour")
}

// cooled is a rule whose store takes heat as the square of what the house is
// warmer: straight lines through the state that was found come to it.
type cooled struct {
	hourlyRule
	asked *int
}

func (r cooled) Refine(x *ventilation.ClimateState, t *ventilation.Targets) bool {
	*r.asked++
	d := math.Max(0.1, x.Temperature-12)
	more := math.Abs(x.ToStore-10*d*d) > 1e-7
	t.Exchange, t.Store = 20*d, x.Temperature-d/2
	return more
}

// A rule that refines its targets is asked until it is content, and the state that
// stands is that of its last ones.
func TestARuleRefines(t *testing.T) {
	c := climate(t, summerHouse(t))
	hours := summerHours(24)
	x := ventilation.DefaultTargets(0)
	x.Humidity, x.Least, x.Vent, x.Exchange, x.Store = 1, 0.1, 60, 300, 16
	asked := 0
	rule := cooled{hourlyRule{of: func(ventilation.HourMoment) ventilation.Targets { return x }}, &asked}
	hours.Rule = &rule
	_, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	for i, s := range rule.before {
		d := s.Temperature - 12
		require.InDelta(t, 10*d*d, s.ToStore, 2e-7, i)
		require.Less(t, s.NodeResidual, 1e-8)
	}
	require.Greater(t, asked, 2*24)
	require.Less(t, asked, 8*24)
}

// What gives CO2 by burning brings its heat and vapour in proportion, in the hours
// in which it burns and in no other; the level is kept, and the hour is that of the
// same heat and vapour from elsewhere.
func TestABurnerForCO2(t *testing.T) {
	h := summerHouse(t)
	c := climate(t, h)
	hours := wetHours(2)
	x := ventilation.DefaultTargets(40e3)
	x.Humidity, x.CO2, x.Vent = 1, 800, 30
	rule := &hourlyRule{of: func(m ventilation.HourMoment) ventilation.Targets {
		y := x
		if m.Weather.Sun < 20 {
			y.CO2 = 0
		}
		return y
	}}
	hours.Rule, hours.CO2 = rule, ventilation.DefaultCO2Hours()
	hours.CO2.Doser, hours.CO2.Heat, hours.CO2.Vapour = 3e-4, 18.2e6, 0.82
	year, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	held, burnt := 0, 0
	same := hours
	bottle := *hours.CO2
	bottle.Heat, bottle.Vapour = 0, 0
	same.CO2, same.Settings = &bottle, make([]ventilation.Setting, len(hours.Temperature))
	for i, given := range year.Dosed {
		same.Settings[i] = ventilation.Setting{Heat: 18.2e6 * given, Moisture: 0.82 * given}
		if i < len(rule.before) {
			require.InDelta(t, 0.82*given, rule.before[i].Moisture, 1e-12)
		}
		if hours.Sun[i] < 20 {
			require.Zero(t, given)
			continue
		}
		burnt++
		if given > 0 && given < hours.CO2.Doser {
			held++
			require.InDelta(t, 800, year.CO2[i], 0.05)
		}
	}
	require.Greater(t, held, burnt/2)
	want, err := c.YearTo(nil, same)
	require.NoError(t, err)
	for i := range want.Temperature {
		require.InDelta(t, want.Temperature[i], year.Temperature[i], 1e-6, i)
		require.InDelta(t, want.HumidityRatio[i], year.HumidityRatio[i], 1e-9, i)
		require.InDelta(t, want.Heat[i], year.Heat[i], 1e-2, i)
	}
	hours.CO2.Heat, hours.CO2.Vapour = -1, -1
	_, err = c.YearTo(nil, hours)
	require.ErrorContains(t, err, "CO2.Heat")
	require.ErrorContains(t, err, "CO2.Vapour")
}

// A store that takes the vapour, vents all but shut: the water closes to what a
// difference of vapour pressures leaves.
func TestAStoreBesideShutVents(t *testing.T) {
	side := ventilation.Opening{Height: 1, Vertical: 1, Area: 3.9, Discharge: 0.6, PressureCoefficient: 0.3}
	lee := side
	lee.PressureCoefficient = -0.3
	h := ventilation.ClimateHouse{FloorArea: 38.8, Volume: 99, Cover: ventilation.DefaultSimpleCover(58), Floor: ventilation.DefaultFloorSurface(), Air: network(t, side, lee)}
	h.Floor.Wet = 0
	c := climate(t, h)
	w := ventilation.Weather{Air: air(t, 27.4, 0.41), Wind: 3, Sky: 13.8, Ground: 15.7}
	for i := range 400 {
		s := ventilation.Setting{Opening: 1e-9 * float64(1+i), Heat: 1700, Radiant: 270, Exchange: 200, Store: 15.9, Condensing: 3.5e-6, StoreVapour: 1200}
		x, err := c.Solve(w, s)
		require.NoError(t, err)
		require.InDelta(t, x.WaterIn, x.WaterOut, 1e-16)
	}
}
