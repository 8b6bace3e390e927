package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/domain"
	"cloche.example/ventilation"
)

func TestWinterRanges(t *testing.T) {
	for name, c := range map[string]struct {
		r        domain.Range
		min, max float64
	}{
		"ReleaseRange":      {ventilation.ReleaseRange, 0, 100},
		"DryAirRange":       {ventilation.DryAirRange, 0, 10000},
		"FilmRange":         {ventilation.FilmRange, 0, 100},
		"RecoveryRange":     {ventilation.RecoveryRange, 0, 1},
		"MarginRange":       {ventilation.MarginRange, 0, 20},
		"HouseVolumeRange":  {ventilation.HouseVolumeRange, 0, 1000000},
		"ExchangeRange":     {ventilation.ExchangeRange, 0.01, 50},
		"RoundRange":        {ventilation.RoundRange, 1, 100},
		"StructureRange":    {ventilation.StructureRange, 0, 10000000000},
		"WellCount":         {ventilation.WellCount, 0, 10},
		"PurgeRange":        {ventilation.PurgeRange, 0, 1000000},
		"InletSizeRange":    {ventilation.InletSizeRange, 0.0001, 10},
		"InletSpeedRange":   {ventilation.InletSpeedRange, 0.0001, 40},
		"InletExcessRange":  {ventilation.InletExcessRange, -80, 0},
		"InletAngleRange":   {ventilation.InletAngleRange, -90, 60},
		"InletFactorRange":  {ventilation.InletFactorRange, 1, 10},
		"DropRange":         {ventilation.DropRange, 0, 50},
		"ReachRange":        {ventilation.ReachRange, 0.01, 500},
		"OpenRange":         {ventilation.OpenRange, 0, 1},
		"DoorSideRange":     {ventilation.DoorSideRange, 0, 20},
		"DoorTimesRange":    {ventilation.DoorTimesRange, 0, 100000},
		"DoorDurationRange": {ventilation.DoorDurationRange, 0, 32000000},
	} {
		require.InDelta(t, c.min, c.r.Min, 1e-300, name) // more than 0 counts as 0
		require.Equal(t, c.max, c.r.Max, name)
		require.NotEmpty(t, c.r.Source, name)
		require.NoError(t, c.r.Check("x", c.max), name)
		require.Error(t, c.r.Check("x", 1.01*c.max+1e-9), name)
	}
}
