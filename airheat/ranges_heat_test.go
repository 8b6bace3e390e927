package airheat

import (
	"errors"
	"math"
	"testing"
	"time"

	"cloche.example/internal/domain"
	"github.com/stretchr/testify/require"
)

// The ends of the heat's ranges: the last value accepted and the first refused
// on either side.
func TestRangesOfHeat(t *testing.T) {
	for name, c := range map[string]struct {
		r        domain.Range
		min, max float64
	}{
		"FlowRange":        {flowRange, 1e-6, 1e4},
		"MassFlowRange":    {massFlowRange, 1e-6, 1e4},
		"PowerRange":       {powerRange, 0, 1e9},
		"positive power":   {positivePower, 1e-6, 1e9},
		"SupplyRange":      {supplyRange, -90, 300},
		"ConductanceRange": {conductanceRange, 0, 1e9},
		"HeatRange":        {heatRange, -1e9, 1e9},
		"RoomRange":        {roomRange, -90, 120},
		"SkyDropRange":     {skyDropRange, -10, 100},
		"FlueRange":        {flueRange, -20, 900},
		"FireAirRange":     {fireAirRange, -30, 60},
		"HeatingRange":     {heatingRange, 1e6, 125e6},
		"AirRatioRange":    {airRatioRange, 1, 50},
		"EfficiencyRange":  {efficiencyRange, 0.05, 1.12},
		"FilmRange":        {filmRange, 0.1, 1000},
		"TeeAngleRange":    {teeAngleRange, 30, 90},
		"TeeAreaRange":     {teeAreaRange, 0.01, 1},
		"share":            {shareRange, 0, 1},
		"sun":              {sunRange, 0, 1500},
		"wet":              {wetRange, -60, 50},
		"positive":         {notZero(domain.Range{Max: 3}), 1e-9, 3},
	} {
		require.Equal(t, [2]float64{c.min, c.max}, [2]float64{c.r.Min, c.r.Max}, name)
	}
}

// edges tries a field at both ends of its range and just beyond them.
func edges(t *testing.T, field string, min, max float64, try func(v float64) error) {
	t.Helper()
	beyond := func(v float64) float64 { return math.Max(math.Abs(v)*1e-3, 1e-9) }
	for _, v := range []float64{min, max} {
		require.NoError(t, try(v), "%s %g", field, v)
	}
	for _, v := range []float64{min - beyond(min), max + beyond(max), math.NaN()} {
		err := try(v)
		require.ErrorIs(t, err, ErrRange, "%s %g", field, v)
		require.ErrorContains(t, err, field)
	}
}

func TestEdgesOfTheFreezeOut(t *testing.T) {
	for _, c := range []struct {
		field    string
		min, max float64
		set      func(f *FreezeOut) *float64
	}{
		{"Soil.Area", 0.1, 1e6, func(f *FreezeOut) *float64 { return &f.Soil.Area }},
		{"Soil.Depth", 0.1, 5, func(f *FreezeOut) *float64 { return &f.Soil.Depth }},
		{"Soil.Dry", 1e5, 4e6, func(f *FreezeOut) *float64 { return &f.Soil.Dry }},
		{"Soil.Water", 0, 900, func(f *FreezeOut) *float64 { return &f.Soil.Water }},
		{"Soil.Thawed", 0.05, 5, func(f *FreezeOut) *float64 { return &f.Soil.Thawed }},
		{"Soil.Frozen", 0.05, 5, func(f *FreezeOut) *float64 { return &f.Soil.Frozen }},
		{"Soil.Surface", 0.1, 50, func(f *FreezeOut) *float64 { return &f.Soil.Surface }},
		{"Soil.FreezingSpan", 0.05, 5, func(f *FreezeOut) *float64 { return &f.Soil.FreezingSpan }},
		{"WetAir", 0, 1e6, func(f *FreezeOut) *float64 { return &f.WetAir }},
		{"Deep", -60, 50, func(f *FreezeOut) *float64 { return &f.Deep }},
		{"Start", -60, 50, func(f *FreezeOut) *float64 { return &f.Start }},
		{"SkyDrop", -10, 100, func(f *FreezeOut) *float64 { return &f.SkyDrop }},
		{"Heat", -1e9, 1e9, func(f *FreezeOut) *float64 { return &f.Heat }},
		{"Outside", -60, 50, func(f *FreezeOut) *float64 { return &f.Outside[1] }},
	} {
		edges(t, c.field, c.min, c.max, func(v float64) error {
			f := openHouse(2)
			*c.set(&f) = v
			return f.check()
		})
	}
}

func TestEdgesOfTheTwoLayers(t *testing.T) {
	l := TwoLayers{LowerLoss: 300, UpperLoss: 400, Lower: 16, Outside: -10, RisingShare: 0.5, Mixing: 0.2, HeaterFlow: 1, HeatCapacity: 1220}
	fans := MixingFans{Flow: 1, Power: 100, FilmFactor: 1.05}
	for _, c := range []struct {
		field    string
		min, max float64
		set      func(l *TwoLayers, f *MixingFans, worth *float64) *float64
	}{
		{"LowerLoss", 0, 1e9, func(l *TwoLayers, _ *MixingFans, _ *float64) *float64 { return &l.LowerLoss }},
		{"UpperLoss", 1e-6, 1e9, func(l *TwoLayers, _ *MixingFans, _ *float64) *float64 { return &l.UpperLoss }},
		{"Mixing", 0, 1e4, func(l *TwoLayers, _ *MixingFans, _ *float64) *float64 { return &l.Mixing }},
		{"HeatCapacity", 300, 3000, func(l *TwoLayers, _ *MixingFans, _ *float64) *float64 { return &l.HeatCapacity }},
		{"RisingShare", 0, 1, func(l *TwoLayers, _ *MixingFans, _ *float64) *float64 { return &l.RisingShare }},
		{"Flow", 0, 1e4, func(_ *TwoLayers, f *MixingFans, _ *float64) *float64 { return &f.Flow }},
		{"FilmFactor", 1, 3, func(_ *TwoLayers, f *MixingFans, _ *float64) *float64 { return &f.FilmFactor }},
		{"worth", 0, 100, func(_ *TwoLayers, _ *MixingFans, w *float64) *float64 { return w }},
	} {
		edges(t, c.field, c.min, c.max, func(v float64) error {
			a, b, w := l, fans, 2.0
			*c.set(&a, &b, &w) = v
			_, err := a.Fans(b, w)
			if errors.Is(err, ErrNoSolution) {
				return nil // accepted, though no house is like that
			}
			return err
		})
	}
}

func TestEdgesOfTheSeason(t *testing.T) {
	demo, nodes := demoSeason(), demoSeasonNodes(t)
	for _, c := range []struct {
		field    string
		min, max float64
		set      func(s *HeatingSeason) *float64
	}{
		{"Loss", 1e-3, 1e9, func(s *HeatingSeason) *float64 { return &s.Loss }},
		{"Aperture", 0, 1e6, func(s *HeatingSeason) *float64 { return &s.Aperture }},
		{"Price", 0, 1e6, func(s *HeatingSeason) *float64 { return &s.Price }},
		{"Standby", 0, 0.2, func(s *HeatingSeason) *float64 { return &s.Burner.Standby }},
		{"Rated", 1e-6, 1e9, func(s *HeatingSeason) *float64 { return &s.Burner.Rated }},
		{"Gain", 0, 1e9, func(s *HeatingSeason) *float64 { return &s.Gain }},
	} {
		edges(t, c.field, c.min, c.max, func(v float64) error { s := demo; *c.set(&s) = v; return s.check() })
	}
	edges(t, "width", 0.1, 10, func(v float64) error { _, err := demo.Bins(v); return err })
	m, err := demo.MonthlyMeans()
	require.NoError(t, err)
	for _, c := range []struct {
		field    string
		min, max float64
		set      func(h *MonthlyHouse, m *Months) *float64
	}{
		{"Loss", 1e-3, 1e9, func(_ *MonthlyHouse, m *Months) *float64 { return &m.Loss[3] }},
		{"Aperture", 0, 1e6, func(h *MonthlyHouse, _ *Months) *float64 { return &h.Aperture }},
		{"Storage", 0, 1e4, func(h *MonthlyHouse, _ *Months) *float64 { return &h.Storage }},
		{"Price", 0, 1e6, func(h *MonthlyHouse, _ *Months) *float64 { return &h.Price }},
		{"Hours", 1, 745, func(_ *MonthlyHouse, m *Months) *float64 { return &m.Hours[3] }},
		{"Sun", 0, 1500, func(_ *MonthlyHouse, m *Months) *float64 { return &m.Sun[3] }},
	} {
		edges(t, c.field, c.min, c.max, func(v float64) error {
			h, k := MonthlyHouse{SetPoint: 12, Storage: 5, Burner: demo.Burner}, m
			*c.set(&h, &k) = v
			_, _, err := h.Solve(k)
			return err
		})
	}
	for _, c := range []struct {
		field    string
		min, max float64
		set      func(s *SeasonNodes) *float64
	}{
		{"VentAt", 15, 120, func(s *SeasonNodes) *float64 { return &s.VentAt }},
		{"ToAir", 0, 1e6, func(s *SeasonNodes) *float64 { return &s.ToAir }},
		{"ToSoil", 0, 1e6, func(s *SeasonNodes) *float64 { return &s.ToSoil }},
		{"Price", 0, 1e6, func(s *SeasonNodes) *float64 { return &s.Price }},
	} {
		edges(t, c.field, c.min, c.max, func(v float64) error { s := nodes; *c.set(&s) = v; return s.check() })
	}
}

func TestEdgesOfDuctsAndStores(t *testing.T) {
	in := idealAir(t, 20, 0.5, 101325)
	edges(t, "dryAir", 1e-6, 1000, func(v float64) error { _, err := dewDuct().Dew(9, v, in, 5); return err })
	edges(t, "water", 0, 0.65, func(v float64) error { _, err := Wood().MoistFuel(v); return err })
	air := DryAir(20, 101325)
	b := DefaultRockBed()
	b.Area, b.Depth = 1, 1
	edges(t, "DesignFlow over Area", 0.01, 1, func(v float64) error {
		b.DesignFlow = v / air.Density * (1 + 1e-15)
		if v == 1 {
			b.DesignFlow = v / air.Density * (1 - 1e-15)
		}
		_, err := NewRockBedStore(b, 12, air)
		return err
	})
}

// An answer that could be taken for "safe" or "none" is no answer to a slip.
func TestNoFalseComfort(t *testing.T) {
	for _, bad := range [][2]float64{{10, 0}, {10, -1}, {0.5, 2}, {math.NaN(), 1}, {10, math.NaN()}} {
		require.Equal(t, Forever, PurgeTime(bad[0], bad[1]), bad)
	}
	require.Zero(t, PurgeTime(1, 2))
	require.True(t, math.IsNaN(MixedGas{0.01, 0, 1, 100}.ShareAfter(-time.Second)))
	require.True(t, math.IsNaN(MixedGas{-0.01, 0, 1, 100}.ShareAfter(time.Second)))
	require.True(t, math.IsNaN(LeakageRule(-1, 100)))
	require.True(t, math.IsNaN(LeakageRule(1, -100)))
	require.True(t, math.IsNaN(DryGasFromAnalysis(GasAnalysis{0.1, -0.05, 0, 0.8}, 0.5)))
	l := TwoLayers{LowerLoss: 5, UpperLoss: 5, Lower: 15, Outside: 0, RisingShare: 0.5, Mixing: 0.1, HeaterFlow: 0.5, HeatCapacity: 1200}
	_, err := l.Fans(MixingFans{Flow: 0.5, Power: 5000, FilmFactor: 1}, 1)
	require.ErrorIs(t, err, ErrNoSolution)
}
