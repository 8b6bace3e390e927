package main

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/weather"
)

// still is a summer's weather without sun, wind and difference of temperature
// worth the name.
func still(t *testing.T, days int) *weather.Series {
	t.Helper()
	s := part(t, "06-10", days)
	for i := range s.Time {
		s.Global[i], s.Direct[i], s.Diffuse[i], s.Wind[i] = 0, 0, 0, 0
	}
	return s
}

// Without sun nothing is absorbed but the lamps' light, and without lamps nothing
// at all; the lamps burn as long as they may.
func TestNoSun(t *testing.T) {
	dark := solved(t, changed(t, `{"lights": null}`), still(t, 2))
	w := dark.Account.Whole
	require.Zero(t, w.Sun+w.SunCover+w.DayLight+w.TakenUp)
	for _, x := range dark.year.State {
		require.Zero(t, x.SunCanopy+x.SunFloor+x.SunStructure)
	}
	lit := solved(t, changed(t, "{}"), still(t, 2)).Account.Whole
	require.Zero(t, lit.Sun)
	require.Positive(t, lit.Lamps)
	require.Positive(t, lit.TakenUp)
	require.LessOrEqual(t, lit.Lamps, lit.LampPower)
}

// Without a crop nothing transpires and no CO2 is taken up; without a wet floor
// either, the house takes the humidity of the air outside.
func TestNoCrop(t *testing.T) {
	a := solved(t, changed(t, `{"crop": {"leaf_area_ratio": 0}, "floor": {"wet_fraction": 0}}`), part(t, "05-10", 2))
	require.Zero(t, a.Account.Whole.Drawn+a.Account.Whole.TakenUp)
	dry, same := 0, 0
	for i, x := range a.year.State {
		if x.Condensed == 0 && x.FloorEvaporated == 0 {
			require.InDelta(t, x.EnteringRatio, x.HumidityRatio, 1e-7, i)
			same++
		}
		if x.FloorEvaporated <= 0 {
			dry++
		}
	}
	require.Len(t, a.year.State, dry, "a dry floor gives nothing off")
	require.Greater(t, same, 20)
}

// Without leaks the shut house exchanges nothing; without wind and warmth the vents
// hardly do.
func TestNoLeaksAndNoWind(t *testing.T) {
	tight := solved(t, changed(t, `{"leakage": {"air_changes_per_h": 0}, "vents": [], "set_points": {"limits": {"relative_humidity": 0.99}}}`), part(t, "02-02", 2))
	for _, x := range tight.year.State {
		require.Zero(t, x.DryAir)
		require.Zero(t, x.AirSensible)
	}
	require.Zero(t, tight.Account.Whole.Vented)
	breeze := still(t, 1)
	for i := range breeze.Wind {
		breeze.Wind[i] = 3
	}
	open := `{"leakage": {"air_changes_per_h": 0}, "lights": null, "vent_control": {"by": "hand", "hand_from_h": 0, "hand_until_h": 24, "hand_fraction": 1}}`
	calm, windy := solved(t, changed(t, open), still(t, 1)), solved(t, changed(t, open), breeze)
	for i := range calm.year.State {
		require.Less(t, calm.year.State[i].AirChanges, windy.year.State[i].AirChanges, i)
	}
}

// Soil without end keeps its temperature, and takes what the floor's conductance
// lets through; soil of no mass is the deep ground itself.
func TestSoilWithoutEnd(t *testing.T) {
	a := solved(t, changed(t, "{}"), part(t, "02-02", 3))
	h := *a.year.house
	floor := h.climate.House().Floor.Conductance * h.steady.House.Shape.FloorArea
	h.soil.Capacity = 1e8
	y, err := h.solve(context.Background())
	require.NoError(t, err)
	for i, x := range y.State {
		require.InDelta(t, h.soil.Start, y.Soil[i], 0.2)
		require.InDelta(t, floor*(x.FloorTemperature-y.Soil[i]), x.Ground, 1)
	}
	h.soil.Capacity, h.soil.Deep = 0, 0
	y, err = h.solve(context.Background())
	require.NoError(t, err)
	for i, x := range y.State {
		require.InDelta(t, y.Deep[i], y.Soil[i], 1e-9)
		require.InDelta(t, floor*(x.FloorTemperature-y.Deep[i]), x.Ground, 1e-6*floor)
	}
}
