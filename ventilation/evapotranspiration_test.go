package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func TestFaultsOfTheReferenceAreListedTogether(t *testing.T) {
	_, err := ventilation.Grass{Temperature: 300, Saturation: -1, Vapour: 3e4, Wind: 80, Net: 500, Soil: 99, Pressure: 101.3}.Day()
	require.ErrorIs(t, err, ventilation.ErrRange)
	for _, f := range []string{"Temperature", "Saturation", "Vapour", "Wind", "Net", "Soil", "Pressure"} {
		require.ErrorContains(t, err, f)
	}
	_, err = ventilation.Grass{Temperature: 20, Saturation: 2338, Vapour: 3000, Wind: 2, Net: 0.3, Pressure: 101325}.Hour()
	require.ErrorContains(t, err, "Vapour is 3000")
}

func TestFaoFormulasAreNaNOutsideTheirRanges(t *testing.T) {
	for i, v := range []float64{
		ventilation.SunOfDay(91, 1).Distance,
		ventilation.ExtraterrestrialDay(10, 0),
		ventilation.ExtraterrestrialHour(10, 200, 0, 1, 12, 1).Radiation,
		ventilation.ExtraterrestrialHour(10, 0, 0, 1, 25, 1).Angle,
		ventilation.ExtraterrestrialHour(10, 0, 0, 1, 12, 0).Correction,
		ventilation.DaylightHours(-91, 1),
		ventilation.SolarFromSunshine(13, 12, 30),
		ventilation.SolarFromSunshine(5, 12, 300),
		ventilation.SolarFromTemperature(20, 10, 30, false),
		ventilation.SolarClear(9000, 30),
		ventilation.NetShortwave(-1),
		ventilation.NetLongwaveDay(20, 10, 1000, 0.8),
		ventilation.NetLongwaveDay(10, 20, 1000, 1.2),
		ventilation.NetLongwaveHour(300, 1000, 0.8),
		ventilation.NetLongwaveHour(20, -1, 0.8),
		ventilation.SoilHeatMonth(300, 10),
		ventilation.SoilHeatMonthSoFar(10, 300),
		ventilation.SoilHeatHour(50, true),
		ventilation.FaoMeanSaturation(300, 10),
		ventilation.FaoVapour(10, 20, 80, 40),
		ventilation.FaoVapourFromBulbs(20, 25, 1e5),
	} {
		require.True(t, math.IsNaN(v), "case %d", i)
	}
}

func TestPolarDayAndNight(t *testing.T) {
	require.InDelta(t, 24, ventilation.DaylightHours(75, 172), 1e-12)
	require.Zero(t, ventilation.DaylightHours(75, 355))
	require.InDelta(t, 0, ventilation.ExtraterrestrialDay(75, 355), 1e-12)
}

// The hours of a day sum to the day, by two formulas of the paper.
func TestHoursSumToTheDay(t *testing.T) {
	for _, lat := range []float64{-40, 0, 16.2, 50.8, 66, 80} {
		sum := 0.0
		for h := range 24 {
			sum += ventilation.ExtraterrestrialHour(lat, 40, 0, 150, float64(h)+0.5, 1).Radiation
		}
		require.InDelta(t, ventilation.ExtraterrestrialDay(lat, 150), sum, 0.02, "latitude %v", lat)
	}
}

// Near a coast [Fao98] eq. 50 takes 0.19 for 0.16.
func TestSolarNearACoast(t *testing.T) {
	require.InDelta(t, 0.19*3*30, ventilation.SolarFromTemperature(10, 19, 30, true), 1e-12)
	require.InDelta(t, 0.16*3*30, ventilation.SolarFromTemperature(10, 19, 30, false), 1e-12)
}

// The small coefficients by hand, to all digits.
func TestSmallFaoCoefficientsByHand(t *testing.T) {
	require.InDelta(t, psychro.FAO56(19.5)-0.000662*87900*6.1, ventilation.FaoVapourFromBulbs(25.6, 19.5, 87900), 1e-9)
	require.InDelta(t, 0.7, ventilation.SoilHeatMonth(5, 15), 1e-12)
	require.InDelta(t, 1.4, ventilation.SoilHeatMonthSoFar(5, 15), 1e-12)
	require.InDelta(t, 0.2, ventilation.SoilHeatHour(2, true), 1e-12)
	require.InDelta(t, -0.5, ventilation.SoilHeatHour(-1, false), 1e-12)
}
