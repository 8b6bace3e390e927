package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/domain"
	"cloche.example/ventilation"
)

// The accepted ranges are part of the interface.
func TestRangesOfTheBalance(t *testing.T) {
	for _, c := range []struct {
		r        domain.Range
		min, max float64
	}{
		{ventilation.SunRange, 0, 1500}, {ventilation.FloorAreaRange, 0.1, 1e6}, {ventilation.VolumeRange, 0.05, 1e7},
		{ventilation.CoverAreaRange, 0.1, 2e6}, {ventilation.CoverURange, 0.05, 12}, {ventilation.SurfaceRange, 0.5, 100},
		{ventilation.ConductanceRange, 0, 100}, {ventilation.ShareRange, 0, 1}, {ventilation.SoilVapourRange, 0, 1e5},
		{ventilation.ClimateHeatRange, -1e8, 1e8}, {ventilation.VapourRange, 0, 1000}, {ventilation.SkyRange, -100, 80},
		{ventilation.GroundRange, -40, 60}, {ventilation.PadRange, 0, 0.99}, {ventilation.SoilCapacityRange, 0, 1e8},
		{ventilation.HeaterRange, 0, 1e8}, {ventilation.LeafAreaRange, 0, 12}, {ventilation.ExtinctionRange, 0.1, 1.2},
		{ventilation.ReflectanceRange, 0, 0.6}, {ventilation.LeafSizeRange, 0.002, 1}, {ventilation.AirSpeedRange, 0.01, 10},
		{ventilation.CarbonRange, 50, 5000}, {ventilation.BigLeafRange, 0, 1e5},

		{ventilation.DayRadiationRange, 0, 60e6}, {ventilation.ClearnessRange, 0.25, 1},
		{ventilation.NetRadiationRange, -15e6, 40e6}, {ventilation.SoilHeatRange, -10e6, 15e6}, {ventilation.FaoVapourRange, 0, 20000},
		{ventilation.DeficitRange, 0, 10000},
	} {
		require.InDelta(t, c.min, c.r.Min, 1e-300, c.r.Source) // more than 0 counts as 0
		require.Equal(t, c.max, c.r.Max, c.r.Source)
		require.NotEmpty(t, c.r.Source)
	}
}
