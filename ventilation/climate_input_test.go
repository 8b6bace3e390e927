package ventilation_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// What sealed air cannot hold drips out of it.
func TestASealedHouseWithMistIsSaturated(t *testing.T) {
	h := summerHouse(t)
	x, err := climate(t, h).Solve(ventilation.Weather{Air: air(t, 10, 0.7), Sky: 5, Ground: 12}, ventilation.Setting{Mist: 0.02})
	require.NoError(t, err)
	require.Zero(t, x.DryAir)
	require.True(t, math.IsNaN(x.Pressure))
	require.InDelta(t, 1, x.RelativeHumidity, 1e-12)
	require.Greater(t, x.Drip, 0.0)
	require.InDelta(t, x.WaterIn, x.Condensed+x.Drip, 1e-12)
}

// A pad cools what enters towards the wet bulb; mist does so to the air inside.
func TestPadAndMistCool(t *testing.T) {
	c := climate(t, summerHouse(t))
	w := ventilation.Weather{Air: air(t, 34, 0.3), Sun: 800, Wind: 2, Sky: 20, Ground: 18}
	plain, err := c.Solve(w, ventilation.Setting{Opening: 1})
	require.NoError(t, err)
	pad, err := c.Solve(w, ventilation.Setting{Opening: 1, Pad: 0.8})
	require.NoError(t, err)
	out, err := psychro.Stream{State: w.Air, DryAir: 1}.Pad(0.8)
	require.NoError(t, err)
	require.InDelta(t, out.Out.State.Temperature(), pad.Entering, 1e-12)
	require.InDelta(t, out.Out.State.HumidityRatio(), pad.EnteringRatio, 1e-12)
	require.InDelta(t, out.Evaporated*pad.DryAir, pad.FromPad, 1e-9)
	require.Less(t, pad.Temperature, plain.Temperature-4)
	mist, err := c.Solve(w, ventilation.Setting{Opening: 1, Mist: 0.01})
	require.NoError(t, err)
	require.Less(t, mist.Temperature, plain.Temperature-1)
	shade, err := c.Solve(w, ventilation.Setting{Opening: 1, Shade: 0.5})
	require.NoError(t, err)
	require.Less(t, shade.Temperature, plain.Temperature)
	require.InDelta(t, 0.5*plain.SunFloor, shade.SunFloor, 1e-9)
}

func TestFaultsOfAHouseAreListedTogether(t *testing.T) {
	_, err := ventilation.NewClimate(ventilation.ClimateHouse{FloorArea: -1, Volume: 0,
		Cover: ventilation.SimpleCover{Area: 0, U: 7, Inside: 8, Outside: 23, Convection: 0, Emissivity: 2, Transmittance: 0.9, Absorptance: 0.3, SkyFactor: -1},
		Floor: ventilation.FloorSurface{Conductance: -1, Convection: 0, Absorptance: 2, Wet: 2, Resistance: -1},
		Crop:  ventilation.Canopy{LAI: 50}})
	require.ErrorIs(t, err, ventilation.ErrRange)
	for _, f := range []string{"FloorArea", "Volume", "Cover.Area", "Cover.U is 7", "Cover.Convection", "Cover.Emissivity", "Cover.Transmittance + Cover.Absorptance",
		"Cover.SkyFactor", "Floor.Conductance", "Floor.Convection", "Floor.Absorptance", "Floor.Wet", "Floor.Resistance", "Crop.LAI", "Air"} {
		require.ErrorContains(t, err, f)
	}
	c := climate(t, summerHouse(t))
	_, err = c.Solve(ventilation.Weather{Sun: -1, Wind: 90, Sky: 300, Ground: 300}, ventilation.Setting{Opening: 2, Heat: 1e9, Moisture: -1, Mist: -1, Pad: 1, Shade: 2})
	for _, f := range []string{"Air.", "Sun", "Wind", "Sky", "Ground", "Opening", "Heat", "Moisture", "Mist", "Pad", "Shade"} {
		require.ErrorContains(t, err, f)
	}
}

// A fan that blows into a sealed house has no answer; with a leak it has.
func TestAFanNeedsAWayOut(t *testing.T) {
	fan := []ventilation.FixedFan{{Flow: 0.5}}
	o := []ventilation.Opening{point(1, 1, 0)}
	n, err := ventilation.NewNetwork(o, nil, fan)
	require.NoError(t, err)
	h := summerHouse(t)
	h.Air = n
	w := ventilation.Weather{Air: air(t, 20, 0.5), Sun: 300, Sky: 10, Ground: 15}
	_, err = climate(t, h).Solve(w, ventilation.Setting{})
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	require.ErrorContains(t, err, "fan")
	h.Air, err = ventilation.NewNetwork(o, []ventilation.Leak{{Height: 1, Flow: 0.05, Exponent: 0.6}}, fan)
	require.NoError(t, err)
	x, err := climate(t, h).Solve(w, ventilation.Setting{})
	require.NoError(t, err)
	require.InDelta(t, 0.5, x.Volume, 1e-6)
}

// A house that no flow keeps within the range is refused, not guessed.
func TestAHouseThatWouldCook(t *testing.T) {
	h := summerHouse(t)
	h.Crop.LAI, h.Floor.Wet, h.Cover.U = 0, 0, 0.2
	_, err := climate(t, h).Solve(ventilation.Weather{Air: air(t, 30, 0.3), Sun: 1000, Sky: 20, Ground: 20}, ventilation.Setting{})
	require.True(t, errors.Is(err, ventilation.ErrNoSolution), "%v", err)
}

// One opening alone carries no flow, wind or not: the house is as if sealed.
func TestOneOpeningAlonePassesNothing(t *testing.T) {
	h := summerHouse(t)
	for _, o := range []ventilation.Opening{point(1.29, 2, 0.24), {Height: 1.29, Area: 2, Discharge: 0.6, Viscous: 0.3, PressureCoefficient: 0.1}} {
		h.Air = build(t, o)
		for _, wind := range []float64{0, 3.7, 7.81} {
			w := ventilation.Weather{Air: air(t, -14, 0.5), Sun: 70, Wind: wind, Sky: -20, Ground: 11}
			open, err := climate(t, h).Solve(w, ventilation.Setting{Opening: 0.6, Heat: 9000, Mist: 0.001})
			require.NoError(t, err)
			require.Zero(t, open.DryAir)
			shut, err := climate(t, h).Solve(w, ventilation.Setting{Heat: 9000, Mist: 0.001})
			require.NoError(t, err)
			require.InDelta(t, shut.Temperature, open.Temperature, 1e-9)
		}
	}
}
