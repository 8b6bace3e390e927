package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func TestFaultsOfTheReferenceAreListedTogether(t *testing.T) {
	_, err := ventilation.Grass{Temperature: 300, Saturation: -1, Vapour: 3e4, Wind: 80, Net: 500e6, Soil: 99e6, Pressure: 101.3}.Day()
	require.ErrorIs(t, err, ventilation.ErrRange)
	for _, f := range []string{"Temperature", "Saturation", "Vapour", "Wind", "Net", "Soil", "Pressure"} {
		require.ErrorContains(t, err, f)
	}
	_, err = ventilation.Grass{Temperature: 20, Saturation: 2338, Vapour: 3000, Wind: 2, Net: 0.3e6, Pressure: 101325}.Hour()
	require.ErrorContains(t, err, "Vapour is 3000")
}

func TestFAO56FormulasAreNaNOutsideTheirRanges(t *testing.T) {
	for i, v := range []float64{
		ventilation.FAO56SolarFromTemperature(20, 10, 30e6, false),
		ventilation.FAO56SoilHeatMonth(300, 10),
		ventilation.FAO56SoilHeatMonthSoFar(10, 300),
		ventilation.FAO56VapourFromBulbs(20, 25, 1e5),
	} {
		require.True(t, math.IsNaN(v), "case %d", i)
	}
}

// Near a coast [FAO56] eq. 50 takes 0.19 for 0.16.
func TestSolarNearACoast(t *testing.T) {
	require.InDelta(t, 0.19*3*30e6, ventilation.FAO56SolarFromTemperature(10, 19, 30e6, true), 1e-6)
	require.InDelta(t, 0.16*3*30e6, ventilation.FAO56SolarFromTemperature(10, 19, 30e6, false), 1e-6)
}

// The small coefficients by hand, to all digits.
func TestSmallFAO56CoefficientsByHand(t *testing.T) {
	require.InDelta(t, psychro.FAO56Saturation(19.5)-0.000662*87900*6.1, ventilation.FAO56VapourFromBulbs(25.6, 19.5, 87900), 1e-9)
	require.InDelta(t, 0.7e6, ventilation.FAO56SoilHeatMonth(5, 15), 1e-6)
	require.InDelta(t, 1.4e6, ventilation.FAO56SoilHeatMonthSoFar(5, 15), 1e-6)
	require.InDelta(t, 0.2e6, ventilation.SoilHeatHour(2e6, true), 1e-6)
	require.InDelta(t, -0.5e6, ventilation.SoilHeatHour(-1e6, false), 1e-6)
}

func TestFaultsOfTheWeatherOfGrassComeTogether(t *testing.T) {
	_, err := ventilation.GrassDay{Lowest: 20, Highest: 10, LeastHumidity: 0.8, MostHumidity: 0.4, Solar: -1, ClearSky: 99e6, Wind: 80, Soil: 99e6, Pressure: 101.3}.Grass()
	requireFields(t, err, "Highest", "MostHumidity", "Solar", "ClearSky", "Wind", "Soil", "Pressure")
	_, err = ventilation.GrassHour{Temperature: 300, Humidity: 80, Solar: -1, Clearness: 1.2, Wind: 80, Pressure: 101.3}.Grass()
	requireFields(t, err, "Temperature", "Humidity", "Solar", "Clearness", "Wind", "Pressure")
}

// A day without sun counts as overcast; a clearer sky than clear as clear.
func TestClearnessStaysWithinTheEquation(t *testing.T) {
	d := ventilation.GrassDay{Lowest: -5, Highest: 2, LeastHumidity: 0.7, MostHumidity: 0.9, Wind: 2, Pressure: 101325}
	dark, err := d.Grass()
	require.NoError(t, err)
	require.InEpsilon(t, -ventilation.NetLongwaveDay(-5, 2, dark.Vapour, 0.25), dark.Net, 1e-12)
	d.Solar, d.ClearSky = 5e6, 4e6
	bright, err := d.Grass()
	require.NoError(t, err)
	require.InEpsilon(t, 0.77*5e6-ventilation.NetLongwaveDay(-5, 2, bright.Vapour, 1), bright.Net, 1e-12)
}
