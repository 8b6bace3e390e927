package ventilation_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

// Zero values that no constructor made are refused, with the constructor's
// name.
func TestZeroValuesAreRefused(t *testing.T) {
	w := ventilation.Weather{Air: air(t, 20, 0.5), Sun: 300, Wind: 1, Sky: 5, Ground: 12}
	var c ventilation.Climate
	var n ventilation.Network
	var z ventilation.Zones
	dry := ventilation.FlowConditions{InsideDensity: 1.15, OutsideDensity: 1.2}
	load, out := ventilation.Load{Solar: 1000}, ventilation.Outdoors{Temperature: 20, Pressure: 101325}
	house := ventilation.ClimateHouse{FloorArea: 90, Volume: 270, Cover: ventilation.DefaultSimpleCover(180), Floor: ventilation.DefaultFloorSurface(), Air: &n}
	for name, f := range map[string]func() error{
		"NewClimate":            func() error { _, err := c.Solve(w, ventilation.Setting{}); return err },
		"Climate.States":        func() error { _, err := c.States(w, ventilation.Setting{}); return err },
		"Climate.HeatFor":       func() error { _, err := c.HeatFor(w, ventilation.Setting{}, 20); return err },
		"OpeningForTemperature": func() error { _, err := c.OpeningForTemperature(w, ventilation.Setting{}, 20); return err },
		"OpeningForDeficit":     func() error { _, err := c.OpeningForDeficit(w, ventilation.Setting{}, 300, 900); return err },
		"PathsTo": func() error {
			_, err := c.PathsTo(nil, w, ventilation.Setting{}, ventilation.ClimateState{})
			return err
		},
		"YearTo": func() error {
			_, err := c.YearTo(nil, ventilation.Hours{Pressure: 101325, Settings: make([]ventilation.Setting, 1)})
			return err
		},
		"Day": func() error {
			_, err := c.Day([]ventilation.DayStep{{Weather: w}}, time.Hour, ventilation.DefaultOpeningRule(), ventilation.DefaultDayLimits())
			return err
		},
		"Network.Solve": func() error { _, err := n.Solve(dry); return err },
		"SteadyStates":  func() error { _, err := n.SteadyStates(load, out); return err },
		"AreaForRise":   func() error { _, err := n.AreaForRise(load, out, 4); return err },
		"Zones.Solve":   func() error { _, err := z.Solve(ventilation.ZoneConditions{OutsideDensity: 1.2}); return err },
		"ColdVents": func() error {
			_, err := ventilation.ColdVents{Network: &n, Inside: 15, Pressure: 101325}.At(nil)
			return err
		},
		"a house of it": func() error { _, err := ventilation.NewClimate(house); return err },
	} {
		require.NotPanics(t, func() {
			err := f()
			require.ErrorIs(t, err, ventilation.ErrRange, name)
			require.ErrorContains(t, err, "New", name)
		}, name)
	}
}

// A nil dst allocates and keeps the flows of the elements.
func TestANilDestinationKeepsTheFlows(t *testing.T) {
	n := build(t, point(0.4, 1.2, 0.6), point(3, 2, -0.6))
	c := dry(t, 28, 20, 2)
	b, err := n.SolveTo(nil, c)
	require.NoError(t, err)
	require.Len(t, b.Paths, 2)
	require.InDelta(t, b.Flow, b.Paths[0].In, 1e-12)
	require.InEpsilon(t, b.Flow, b.Volume*c.OutsideDensity, 1e-12)
	require.InEpsilon(t, b.Flow, b.VolumeOut*c.InsideDensity, 1e-12)
}
