package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

// Without a store each hour is Solve's.
func TestAYearWithoutSoilIsItsHours(t *testing.T) {
	c := climate(t, summerHouse(t))
	hours := yearHours(48)
	hours.Soil = ventilation.FloorStore{Ground: 11}
	hours.Settings = []ventilation.Setting{{Opening: 0.2, Heat: 2000, Shade: 0.1}}
	year, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	for i := range 48 {
		x, err := c.Solve(ventilation.Weather{Air: air(t, hours.Temperature[i], hours.RelativeHumidity[i]), Sun: hours.Sun[i], Wind: hours.Wind[i], Sky: hours.Sky[i], Ground: 11}, hours.Settings[0])
		require.NoError(t, err)
		require.InDelta(t, x.Temperature, year.Temperature[i], 1e-9)
		require.InDelta(t, x.HumidityRatio, year.HumidityRatio[i], 1e-12)
		require.InDelta(t, x.RelativeHumidity, year.RelativeHumidity[i], 1e-9)
		require.InDelta(t, x.Deficit, year.Deficit[i], 1e-9)
		require.InDelta(t, x.CanopyTemperature, year.CanopyTemperature[i], 1e-9)
		require.InDelta(t, x.DryAir, year.DryAir[i], 1e-9)
		require.InDelta(t, x.Transpired, year.Transpired[i], 1e-12)
		require.InDelta(t, x.Condensed, year.Condensed[i], 1e-12)
		require.Equal(t, []float64{0.2, 2000, 11}, []float64{year.Opening[i], year.Heat[i], year.SoilTemperature[i]})
	}
}

// One hour with soil by hand: G = 2 from the floor, D = 1 to ground of 9 °C, C =
// 300 kJ/(m² K) from 6 °C: x = 3*3600/3e5 = 0.036, phi = (1 - e^-x)/x; the floor
// sees G (1 - (1 - phi) G/(G + D)) W/(m² K) towards
// G ((1 - phi) D Td/(G + D) + phi Ts) over that.
func TestAnHourWithSoilByHand(t *testing.T) {
	hours := yearHours(2)
	hours.Settings = []ventilation.Setting{{Opening: 0.2}}
	year, err := climate(t, summerHouse(t)).YearTo(nil, hours)
	require.NoError(t, err)
	now := 6.0
	for i := range 2 {
		x := 0.036
		phi := (1 - math.Exp(-x)) / x
		h := summerHouse(t)
		h.Floor.Conductance = 2 * (1 - (1-phi)*2/3)
		seen := 2 * ((1-phi)*1*9/3 + phi*now) / h.Floor.Conductance
		s, err := climate(t, h).Solve(ventilation.Weather{Air: air(t, hours.Temperature[i], hours.RelativeHumidity[i]), Sun: hours.Sun[i], Wind: hours.Wind[i], Sky: hours.Sky[i], Ground: seen}, hours.Settings[0])
		require.NoError(t, err)
		require.InDelta(t, s.Temperature, year.Temperature[i], 1e-9)
		// The mass takes up what the floor gives and the deep ground takes.
		goal := (2*s.FloorTemperature + 9) / 3
		mean, end := goal+(now-goal)*phi, goal+(now-goal)*math.Exp(-x)
		require.InDelta(t, mean, year.SoilTemperature[i], 1e-9)
		require.InDelta(t, 2*(s.FloorTemperature-mean), s.Ground/94.7, 1e-9, "the floor's heat is that into the mass")
		require.InDelta(t, 3e5*(end-now)/3600, 2*(s.FloorTemperature-mean)-1*(mean-9), 1e-9, "energy of the mass closes")
		now = end
	}
}

// In weather that stays, the soil settles to G and D in series.
func TestSoilSettles(t *testing.T) {
	n := 400
	hours := ventilation.Hours{Pressure: 101325, Settings: []ventilation.Setting{{Opening: 0.1}}, Soil: ventilation.FloorStore{Capacity: 2e5, Deep: 1, Ground: 9, Start: 20}}
	for range n {
		hours.Temperature = append(hours.Temperature, 12)
		hours.RelativeHumidity = append(hours.RelativeHumidity, 0.7)
		hours.Sun = append(hours.Sun, 200)
		hours.Wind = append(hours.Wind, 1)
		hours.Sky = append(hours.Sky, 0)
	}
	year, err := climate(t, summerHouse(t)).YearTo(nil, hours)
	require.NoError(t, err)
	h := summerHouse(t)
	h.Floor.Conductance = 1 / (1.0/2 + 1.0/1)
	x, err := climate(t, h).Solve(ventilation.Weather{Air: air(t, 12, 0.7), Sun: 200, Wind: 1, Sky: 0, Ground: 9}, hours.Settings[0])
	require.NoError(t, err)
	require.InDelta(t, x.Temperature, year.Temperature[n-1], 1e-6)
	require.Greater(t, year.Temperature[0], year.Temperature[n-1], "warm soil warms the house")
}

// Under a rule the house stays between the two temperatures where it can, the
// heater and the vents never work together, and what falls short is counted.
func TestAYearUnderARule(t *testing.T) {
	c := climate(t, summerHouse(t))
	n := 8760 / 12
	hours := yearHours(8760)
	for _, column := range []*[]float64{&hours.Temperature, &hours.RelativeHumidity, &hours.Sun, &hours.Wind, &hours.Sky} {
		var thin []float64 // every twelfth hour but one, day and night
		for i := range n {
			thin = append(thin, (*column)[min(8759, i*12+i%12)])
		}
		*column = thin
	}
	hours.Settings = []ventilation.Setting{{}}
	rule := ventilation.Targets{Vent: 24, Warm: 12, Heater: 20000, Humidity: 1, Most: 1}
	hours.Rule = rule
	year, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	short, heated, opened := 0, 0, 0
	for i := range n {
		v := year.Temperature[i]
		require.Falsef(t, year.Heat[i] > 0 && year.Opening[i] > 0, "hour %d heats and vents", i)
		if year.Heat[i] > 0 {
			heated++
			if year.Heat[i] < rule.Heater {
				require.InDelta(t, 12, v, 1e-6)
			} else {
				require.Less(t, v, 12.0)
				short++
			}
		}
		if year.Opening[i] > 0 {
			opened++
			if year.Opening[i] == 1 && v > 24 {
				short++
			} else {
				require.InDelta(t, 24, v, 1e-5)
			}
		}
		if year.Heat[i] == 0 && year.Opening[i] == 0 {
			require.GreaterOrEqual(t, v, 12-1e-9)
			require.LessOrEqual(t, v, 24+1e-9)
		}
	}
	require.Equal(t, short, year.Short)
	require.Greater(t, heated, 50)
	require.Greater(t, opened, 50)
	hours.Rule = ventilation.Targets{Vent: 10, Warm: 20, Heater: -1}
	_, err = c.YearTo(year, hours)
	require.ErrorContains(t, err, "Rule.Warm")
	require.ErrorContains(t, err, "Rule.Heater")
}

// Hours that have no answer are NaN, counted, and told by the first.
func TestHoursWithoutAnAnswer(t *testing.T) {
	hours := yearHours(24)
	hours.Settings = []ventilation.Setting{{Opening: 0.5}}
	hours.RelativeHumidity[5] = 60
	hours.Wind[7] = -1
	year, err := climate(t, summerHouse(t)).YearTo(nil, hours)
	require.ErrorIs(t, err, ventilation.ErrRange)
	require.ErrorContains(t, err, "2 of 24 hours")
	require.ErrorContains(t, err, "hour 5")
	require.Equal(t, 2, year.Failed)
	require.True(t, math.IsNaN(year.Temperature[5]) && math.IsNaN(year.SoilTemperature[7]))
	require.False(t, math.IsNaN(year.Temperature[6]))
	require.Panics(t, func() { _, _ = climate(t, summerHouse(t)).YearTo(&ventilation.HouseYear{}, hours) })
	hours.Soil.Capacity = -1
	_, err = climate(t, summerHouse(t)).YearTo(year, hours)
	require.ErrorContains(t, err, "Soil.Capacity")
	hours.Settings = nil
	_, err = climate(t, summerHouse(t)).YearTo(year, hours)
	require.ErrorContains(t, err, "number of Settings")
}

func TestTheBalanceAllocatesNothing(t *testing.T) {
	c := climate(t, summerHouse(t))
	w := ventilation.Weather{Air: air(t, 27, 0.5), Sun: 820, Wind: 2, Sky: 12, Ground: 17}
	require.Zero(t, testing.AllocsPerRun(50, func() { _, _ = c.Solve(w, ventilation.Setting{Opening: 1}) }))
	require.Zero(t, testing.AllocsPerRun(20, func() { _, _ = c.OpeningForTemperature(w, ventilation.Setting{}, 31) }))
	hours := yearHours(24)
	hours.Settings = []ventilation.Setting{{Opening: 0.4}}
	year, err := c.YearTo(nil, hours)
	require.NoError(t, err)
	require.LessOrEqual(t, testing.AllocsPerRun(5, func() { _, _ = c.YearTo(year, hours) }), 1.0, "once a call, not by the hour")
}

// Thin soil under a heated floor, with nothing below it, grows hotter than any
// ground that weather may have.
func TestSoilHotterThanTheGround(t *testing.T) {
	h := summerHouse(t)
	h.Floor.Wet = 0
	hours := wetHours(1)
	hours.Settings = []ventilation.Setting{{Opening: 0.1, Floor: 300 * h.FloorArea}}
	hours.Soil = ventilation.FloorStore{Capacity: 1e4, Start: 20}
	year, err := climate(t, h).YearTo(nil, hours)
	require.NoError(t, err)
	require.Greater(t, year.SoilTemperature[14], 61.0)
}
