package envelope

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// The defaults are those that their comments state.
func TestDefaultsAreAsStated(t *testing.T) {
	require.Equal(t, Leakage{Model: LeakageGiven, AirChanges: 1, At50: 10, Exponent: 0.65, Horizontal: 0.5, RoofLessFloor: 0.5, Shelter: 0.8}, DefaultLeakage())
	cover := CoverConditions{
		Inside: 15, InsideHumidity: 0.8, Sky: SkyWeighted, Tilt: 30, Height: 4, Pressure: 101325,
		OutsideConvection: OutsideISO6946, InsideConvection: InsideISO15099, InnerFace: InnerDry,
	}
	require.Equal(t, cover, DefaultCoverConditions())
	cover.InnerFace = InnerAuto
	require.Equal(t, HouseConditions{CoverConditions: cover, OutsideHumidity: 0.85, Month: 1}, DefaultHouseConditions())
	soil := ClaySoil()
	require.Equal(t, Ground{WallThickness: 0.1, Soil: soil, EdgeConductivity: 0.036, FloorSurface: 0.17, WallSurface: 0.13, OutsideSurface: 0.04}, DefaultGround(soil))
	require.Equal(t, GroundClimate{InsideMean: 16, OutsideMean: 9, OutsideSwing: 10, Coldest: 1, OutsideLag: 1}, DefaultGroundClimate())
	require.Equal(t, NodeStores{Structure: 120e3, SoilDepth: 0.2, AirStructure: 30, AirSoil: 5}, DefaultNodeStores())
	unit := DefaultSealedUnit()
	require.InDelta(t, 9.85, unit.Mean, 1e-9)
	require.Equal(t, SealedUnit{Conductivity: 1, Tilt: 90, ROut: 0.04, RIn: 0.13, Mean: unit.Mean, Difference: 15}, unit)
	require.Equal(t, Form{Span: 6, Length: 12, Eave: 1.8, Ridge: 3.2, ArchStrips: 6, Bays: 1}, DefaultForm())
}

// The ends of what [Hemming19] measured, a third of the default and three times it,
// with the exchanges that go with them.
func TestSpreadOfTheNodeStores(t *testing.T) {
	least, most := NodeStoresSpread()
	require.Equal(t, NodeStores{Structure: 35e3, SoilDepth: 0.2, AirStructure: 30, AirSoil: 5}, least)
	require.Equal(t, NodeStores{Structure: 375e3, SoilDepth: 0.2, AirStructure: 60, AirSoil: 8}, most)
}

// A year has twelve months: the mean of summer and winter is met a quarter of it
// after the coldest one, and after the next twelve all is as before.
func TestMonthsOfTheGroundClimate(t *testing.T) {
	c := DefaultGroundClimate()
	c.InsideSwing = 3
	require.InDelta(t, -1, c.outside(1), 1e-12)
	require.InDelta(t, 9, c.outside(4), 1e-12)
	require.InDelta(t, 19, c.outside(7), 1e-12)
	require.InDelta(t, c.outside(2), c.outside(14), 1e-12)
	require.InDelta(t, 13, c.inside(1), 1e-12)
	require.InDelta(t, 16, c.inside(10), 1e-12)
	require.InDelta(t, 19, c.inside(7), 1e-12)
}

// The slopes that the gap's heat is followed with are those of the correlations, on
// every branch and tilt.
func TestGapSlopes(t *testing.T) {
	for _, tilt := range []float64{0, 20, 45, 59, 60, 75, 90, 120, 160} {
		s := newGapTilt(tilt)
		for _, ra := range []float64{300, 2500, 7000, 3e4, 2e5, 3e6} {
			for branch := range 3 {
				lnAspect := math.Log(40)
				_, slope := s.nusselt(ra, lnAspect, branch)
				const step = 1e-5
				up, _ := s.nusselt(ra*math.Exp(step), lnAspect, branch)
				down, _ := s.nusselt(ra*math.Exp(-step), lnAspect, branch)
				require.InDelta(t, (up-down)/(2*step), slope, 1e-5*(1+math.Abs(slope)), "%g degree, Ra %g, branch %d", tilt, ra, branch)
			}
		}
	}
}
