package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/ventilation"
)

// A heater that only radiates cannot warm the air of an empty house by as much as
// it is asked to, and would need floors hotter than any: it gives all it has, and
// every hour has a state that closes.
func TestAHeaterThatCannotRadiateEnough(t *testing.T) {
	for _, cover := range []envelope.Cover{envelope.DoubleFilm(), envelope.SingleFilm(), envelope.SingleGlass()} {
		h := realClimate(t, cover)
		h.Crop.LAI = 0
		hours := wetHours(6)
		for i := range hours.Temperature {
			hours.Temperature[i] -= 10
			hours.Sky[i] -= 10
		}
		x := ventilation.DefaultTargets(300 * h.FloorArea)
		x.Radiant, x.Humidity = 1, 0.75
		var moments []ventilation.HourMoment
		var targets []ventilation.Targets
		hours.Rule = watched{x, &moments, &targets}
		year, err := climate(t, h).YearTo(nil, hours)
		require.NoError(t, err)
		for i, m := range moments[1:] {
			s := m.Before
			require.Less(t, s.NodeResidual, 1e-9, "hour %d", i)
			require.InDelta(t, 0, s.HeatResidual, 1e-3, "hour %d", i)
			require.LessOrEqual(t, s.Radiant, x.Heater)
			if s.Temperature < x.Warm-1e-6 {
				require.Equal(t, x.Heater, s.Radiant, "hour %d", i)
			}
		}
		require.Greater(t, year.Short, 100)
	}
}

// What lamps radiate is no heat of the heater.
func TestHeatOfTheYearIsWithoutLamps(t *testing.T) {
	hours := wetHours(1)
	hours.Rule = ventilation.DefaultTargets(60e3)
	hours.Settings[0].Lamps = ventilation.LampHeat{Light: 2000, Radiant: 40e3, Air: 60e3}
	year, err := climate(t, summerHouse(t)).YearTo(nil, hours)
	require.NoError(t, err)
	for i, heat := range year.Heat {
		require.Greater(t, year.Temperature[i], 17.0, "hour %d", i)
		require.Zero(t, heat, "hour %d", i)
	}
}

// Heat that shines on a wet floor makes the air no drier: the house is kept warm and
// no warmer, and the hour counts as short.
func TestHeatThatMakesDamp(t *testing.T) {
	h := summerHouse(t)
	h.Crop.LAI, h.Floor.Wet, h.Floor.Resistance = 0, 1, 0
	x := ventilation.DefaultTargets(1e5)
	x.Radiant, x.Humidity, x.Dry = 1, 0.8, 0
	kept := func(lift float64) *ventilation.HouseYear {
		hours := wetHours(2)
		x.Lift = lift
		hours.Rule = x
		year, err := climate(t, h).YearTo(nil, hours)
		require.NoError(t, err)
		return year
	}
	kept0, kept3 := kept(0), kept(3)
	require.Greater(t, kept0.RelativeHumidity[3], 0.99)
	require.Equal(t, len(kept0.Heat), kept3.Short)
	for i := range kept0.Heat {
		require.InDelta(t, kept0.Heat[i], kept3.Heat[i], 1e-3, "hour %d", i)
		require.InDelta(t, kept0.Temperature[i], kept3.Temperature[i], 1e-6, "hour %d", i)
	}
}
