package ventilation_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func air(t testing.TB, temperature, rh float64) psychro.State {
	t.Helper()
	s, err := psychro.FromRelativeHumidity(temperature, rh, 101325)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// summerHouse is a small gable house with side and ridge vents and a crop.
func summerHouse(t testing.TB) ventilation.ClimateHouse {
	return ventilation.ClimateHouse{
		FloorArea: 94.7, Volume: 275,
		Cover: ventilation.DefaultSimpleCover(186),
		Floor: ventilation.DefaultFloorSurface(),
		Crop:  ventilation.DefaultCanopy(2.5),
		Air: build(t,
			ventilation.Opening{Name: "south side", Height: 0.6, Area: 2.4, Discharge: 0.62, PressureCoefficient: 0.3},
			ventilation.Opening{Name: "north side", Height: 0.6, Area: 2.4, Discharge: 0.62, PressureCoefficient: -0.25},
			ventilation.Opening{Name: "ridge", Height: 2.9, Area: 3.6, Discharge: 0.60, PressureCoefficient: -0.45},
			ventilation.Opening{Name: "door", Height: 1.0, Vertical: 1.9, Area: 1.7, Discharge: 0.62, PressureCoefficient: -0.2}),
	}
}

func climate(t testing.TB, h ventilation.ClimateHouse) *ventilation.Climate {
	t.Helper()
	c, err := ventilation.NewClimate(h)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestAHouseOnASummerNoonAndOnAWinterNight(t *testing.T) {
	c := climate(t, summerHouse(t))
	noon, err := c.Solve(ventilation.Weather{Air: air(t, 27, 0.5), Sun: 820, Wind: 2, Sky: 12, Ground: 17}, ventilation.Setting{Opening: 1})
	require.NoError(t, err)
	require.InDelta(t, 30, noon.Temperature, 1)
	require.Greater(t, noon.Transpired, 0.005)
	require.Zero(t, noon.Condensed)
	night, err := c.Solve(ventilation.Weather{Air: air(t, -5, 0.8), Wind: 2, Sky: -20, Ground: 10}, ventilation.Setting{Opening: 0.02, Heat: 12000})
	require.NoError(t, err)
	require.Greater(t, night.Temperature, 0.0)
	require.Greater(t, night.Condensed, 0.0)
	require.Less(t, night.CanopyTemperature, night.Temperature, "the leaves radiate to the cold cover")
}

// The defaults are those that the comments state.
func TestDefaultsAreAsStated(t *testing.T) {
	require.Equal(t, ventilation.SimpleCover{Area: 186, U: 5.8, Inside: 8, Outside: 23, Convection: 4, Emissivity: 0.8,
		Transmittance: 0.65, Absorptance: 0.10, SkyFactor: 0.6}, ventilation.DefaultSimpleCover(186))
	require.Equal(t, ventilation.FloorSurface{Conductance: 2, Convection: 3, Absorptance: 0.8, Wet: 0.5, Resistance: 500}, ventilation.DefaultFloorSurface())
	require.Equal(t, ventilation.StructureStore{Capacity: 26e3, Exchange: 7, Sun: 0.1, Start: 15}, ventilation.DefaultStructureStore())
	day := ventilation.Targets{Warm: 16, Vent: 24, Heater: 30e3, Humidity: 0.9, Lift: 3, Dry: 0.1, Most: 1}
	require.Equal(t, day, ventilation.DefaultTargets(30e3))
	night := day
	night.Warm = 13
	require.Equal(t, ventilation.DayNight{Day: day, Night: night, Morning: 7 * time.Hour, Evening: 19 * time.Hour,
		ScreenFrom: 16 * time.Hour, ScreenTo: 9 * time.Hour, ScreenSun: 20, ScreenOutside: 12}, ventilation.DefaultDayNight(30e3))
	// The film coefficients of the standard give its 5.8 for a single pane: 1/(1/8 + 1/23) = 5.94.
	h := ventilation.ClimateHouse{FloorArea: 10, Volume: 20, Cover: ventilation.DefaultSimpleCover(20), Floor: ventilation.DefaultFloorSurface(),
		Air: build(t, point(1, 1, 0))}
	_, err := ventilation.NewClimate(h)
	require.NoError(t, err)
	h.Cover.U = 5.95
	_, err = ventilation.NewClimate(h)
	require.ErrorContains(t, err, "Cover.U is 5.95")
	require.Equal(t, 20.0, climate(t, ventilation.ClimateHouse{FloorArea: 10, Volume: 20, Cover: ventilation.DefaultSimpleCover(20), Floor: ventilation.DefaultFloorSurface(), Air: build(t, point(1, 1, 0))}).House().Volume)
}
