package airheat

import (
	"math"
	"testing"

	"cloche.example/internal/domain"
	"github.com/stretchr/testify/require"
)

// The ends of every range that moving air is checked against: the last value
// accepted and the first refused on either side.
func TestRangesOfMovingAir(t *testing.T) {
	for name, c := range map[string]struct {
		r        domain.Range
		min, max float64
	}{
		"ReynoldsRange":           {reynoldsRange, 0, 1e9},
		"RelativeRoughnessRange":  {relativeRoughnessRange, 0, 0.1},
		"AirTemperatureRange":     {airTemperatureRange, -60, 200},
		"AirPressureRange":        {airPressureRange, 5e4, 1.2e5},
		"density":                 {densityRange, 0.3, 2},
		"viscosity":               {viscosityRange, 1e-5, 3e-5},
		"heat capacity":           {heatCapacityRange, 1000, 1100},
		"DuctSizeRange":           {ductSizeRange, 0.01, 10},
		"DuctLengthRange":         {ductLengthRange, 0, 1e4},
		"DuctRoughnessRange":      {ductRoughnessRange, 0, 0.02},
		"FittingsRange":           {fittingsRange, 0, 1e6},
		"DuctFlowRange":           {ductFlowRange, 0, 1000},
		"DuctPressureRange":       {ductPressureRange, 0, 1e6},
		"FanFlowRange":            {fanFlowRange, 0, 1000},
		"FanPressureRange":        {fanPressureRange, -1e5, 1e5},
		"FanSpeedRange":           {fanSpeedRange, 0.05, 2},
		"FanEfficiencyRange":      {fanEfficiencyRange, 0.01, 1},
		"BranchPressureRange":     {branchPressureRange, -1000, 1000},
		"TubeDiameterRange":       {tubeDiameterRange, 0.02, 3},
		"TubeLengthRange":         {tubeLengthRange, 0, 200},
		"TubePositionsRange":      {tubePositionsRange, 1, 1e5},
		"TubeHolesRange":          {tubeHolesRange, 1, 1000},
		"HoleDiameterRange":       {holeDiameterRange, 0.001, 0.5},
		"DischargeRange":          {dischargeRange, 0.3, 1},
		"RegainRange":             {regainRange, 0, 1},
		"HeatTransferRange":       {heatTransferRange, 0, 50},
		"JetSizeRange":            {jetSizeRange, 0.001, 3},
		"JetSpeedRange":           {jetSpeedRange, 0.05, 50},
		"JetExcessRange":          {jetExcessRange, -60, 200},
		"JetAngleRange":           {jetAngleRange, -60, 60},
		"JetFactorRange":          {jetFactorRange, 1, 10},
		"CarrierLoadRange":        {carrierLoadRange, 1, 1e8},
		"CarrierTemperatureRange": {carrierTemperatureRange, -60, 130},
		"CarrierCapacityRange":    {carrierCapacityRange, 900, 4500},
		"CarrierDensityRange":     {carrierDensityRange, 0.5, 1200},
		"CarrierLossRange":        {carrierLossRange, 0, 1e6},
		"CarrierVolumeRange":      {carrierVolumeRange, 0, 1e5},
		"CarrierMetalRange":       {carrierMetalRange, 0, 1e10},
		"SoilSpacingRange":        {soilSpacingRange, 0.02, 5},
		"SoilFilmRange":           {soilFilmRange, 0.1, 1000},
		"SoilConductivityRange":   {soilConductivityRange, 0.1, 5},
		"SoilCapacityRange":       {soilCapacityRange, 2e5, 5e6},
		"StoreStepRange":          {storeStepRange, 1, 86400},
		"BedAreaRange":            {bedAreaRange, 0.01, 1e4},
		"BedDepthRange":           {bedDepthRange, 0.05, 100},
		"BedStoneRange":           {bedStoneRange, 0.005, 0.3},
		"BedVoidRange":            {bedVoidRange, 0.25, 0.6},
	} {
		require.NoError(t, c.r.Check(name, c.min), name)
		require.NoError(t, c.r.Check(name, c.max), name)
		require.ErrorIs(t, c.r.Check(name, math.Nextafter(c.min, -math.MaxFloat64)), ErrRange, name)
		require.ErrorIs(t, c.r.Check(name, math.Nextafter(c.max, math.MaxFloat64)), ErrRange, name)
		require.NotEmpty(t, c.r.Unit, name)
		require.NotEmpty(t, c.r.Source, name)
	}
}

// What the defaults say, so that a figure that uses them can be traced.
func TestDefaultsOfMovingAir(t *testing.T) {
	require.Equal(t, FanDrive{Speed: 1, FanEfficiency: 0.5, MotorEfficiency: 0.75, MotorInStream: true}, DefaultFanDrive())
	require.Equal(t, PerforatedTube{Roughness: 1.5e-6, Discharge: 0.65, Regain: 1, HeatTransfer: 6, LargestSpread: 0.85}, DefaultPerforatedTube())
	require.Equal(t, Jet{Shape: RoundJet, Velocity: 6, Thermal: 5}, DefaultJet(RoundJet))
	require.Equal(t, Jet{Shape: PlaneJet, Velocity: 2.43, Thermal: 2.0}, DefaultJet(PlaneJet))
	require.Equal(t, Carrier{Supply: 45, Return: 15, HeatCapacity: 1006, Density: 1.2, Pressure: 300, Efficiency: 0.4}, DefaultAirCarrier())
	require.Equal(t, Carrier{Supply: 60, Return: 40, HeatCapacity: 4187, Density: 988, Pressure: 30000, Efficiency: 0.4}, DefaultWaterCarrier())
	require.Equal(t, SoilStore{Depth: 0.5, Above: 15, Film: 6, Roughness: 1e-5, Fittings: 2.5, SoilConductivity: 2, SoilCapacity: 2e6, FanEfficiency: 0.4}, DefaultSoilStore())
	require.Equal(t, RockBed{Stone: 0.04, Void: 0.42, StoneCapacity: 2.1e6, FanEfficiency: 0.4}, DefaultRockBed())
}
