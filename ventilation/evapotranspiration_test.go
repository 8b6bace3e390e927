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

func TestFaoFormulasAreNaNOutsideTheirRanges(t *testing.T) {
	for i, v := range []float64{
		ventilation.SolarFromTemperature(20, 10, 30e6, false),
		ventilation.NetShortwave(-1),
		ventilation.NetLongwaveDay(20, 10, 1000, 0.8),
		ventilation.NetLongwaveDay(10, 20, 1000, 1.2),
		ventilation.NetLongwaveHour(300, 1000, 0.8),
		ventilation.NetLongwaveHour(20, -1, 0.8),
		ventilation.SoilHeatMonth(300, 10),
		ventilation.SoilHeatMonthSoFar(10, 300),
		ventilation.SoilHeatHour(50e6, true),
		ventilation.FaoMeanSaturation(300, 10),
		ventilation.FaoVapour(10, 20, 80, 40),
		ventilation.FaoVapourFromBulbs(20, 25, 1e5),
	} {
		require.True(t, math.IsNaN(v), "case %d", i)
	}
}

// Near a coast [Fao98] eq. 50 takes 0.19 for 0.16.
func TestSolarNearACoast(t *testing.T) {
	require.InDelta(t, 0.19*3*30e6, ventilation.SolarFromTemperature(10, 19, 30e6, true), 1e-6)
	require.InDelta(t, 0.16*3*30e6, ventilation.SolarFromTemperature(10, 19, 30e6, false), 1e-6)
}

// The small coefficients by hand, to all digits.
func TestSmallFaoCoefficientsByHand(t *testing.T) {
	require.InDelta(t, psychro.FAO56(19.5)-0.000662*87900*6.1, ventilation.FaoVapourFromBulbs(25.6, 19.5, 87900), 1e-9)
	require.InDelta(t, 0.7e6, ventilation.SoilHeatMonth(5, 15), 1e-6)
	require.InDelta(t, 1.4e6, ventilation.SoilHeatMonthSoFar(5, 15), 1e-6)
	require.InDelta(t, 0.2e6, ventilation.SoilHeatHour(2e6, true), 1e-6)
	require.InDelta(t, -0.5e6, ventilation.SoilHeatHour(-1e6, false), 1e-6)
}
