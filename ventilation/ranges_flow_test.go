package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/domain"
	"cloche.example/ventilation"
)

// The accepted ranges are part of the interface.
func TestRangesOfFlow(t *testing.T) {
	for _, c := range []struct {
		r        domain.Range
		min, max float64
	}{
		{ventilation.TemperatureRange, -60, 80}, {ventilation.PressureRange, 60000, 110000}, {ventilation.WindRange, 0, 45},
		{ventilation.DensityRange, 0.5, 2}, {ventilation.HeightRange, -10, 50}, {ventilation.AreaRange, 0, 1e5},
		{ventilation.DischargeRange, 0, 1}, {ventilation.PressureCoefRange, -3, 2}, {ventilation.VerticalRange, 0, 20},
		{ventilation.ViscousRange, 0, 1e6}, {ventilation.ExponentRange, 0.5, 1}, {ventilation.LeakageRange, 0, 100},
		{ventilation.FanFlowRange, -500, 500}, {ventilation.FanSlopeRange, 0, 10}, {ventilation.FreeAreaRange, 0, 200},
		{ventilation.FlapRange, 0, 200}, {ventilation.FlapAngleRange, 0, 90}, {ventilation.PitchRange, 0, 80},
		{ventilation.ThicknessRange, 1e-5, 0.01}, {ventilation.PermeabilityRange, 1e-12, 1e-6}, {ventilation.InertiaRange, 0, 10},
		{ventilation.PorosityRange, 0.05, 0.95}, {ventilation.BlockedRange, 0, 0.95}, {ventilation.ViscosityRange, 1e-5, 3e-5},
		{ventilation.WindHeightRange, 0.1, 200}, {ventilation.RoughnessRange, 1e-5, 3}, {ventilation.IncidenceRange, 0, 180},
		{ventilation.SolarRange, 0, 1e8}, {ventilation.TranspiredRange, 0, 1}, {ventilation.LossRange, 0, 1e7}, {ventilation.RiseRange, 0.01, 80},
	} {
		require.InDelta(t, c.min, c.r.Min, 1e-300, c.r.Source) // more than 0 counts as 0
		require.Equal(t, c.max, c.r.Max, c.r.Source)
		require.NotEmpty(t, c.r.Source)
	}
	require.Equal(t, 287.042, ventilation.GasConstantDryAir)
	require.Equal(t, 1006.0, ventilation.HeatCapacityAir)
}
