package airheat

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
)

func dewDuct() Duct { return Duct{Section: Round(0.25), Length: 15, HeatTransfer: 4} }

func TestDryDuctIsThatOfHeat(t *testing.T) {
	in := idealAir(t, 30, 0.1, 101325)
	d := dewDuct()
	r, err := d.Dew(9, 0.2, in, 5)
	require.NoError(t, err)
	air := AirProperties{Density: 1.1, Viscosity: 1.8e-5, HeatCapacity: in.HeatCapacity()}
	h, err := d.Heat(0.2/1.1, 30, 5, air)
	require.NoError(t, err)
	require.InDelta(t, h.Outlet, r.Outlet, 1e-9)
	require.InEpsilon(t, h.Loss, r.Loss, 1e-9)
	require.Zero(t, r.Water)
	require.True(t, math.IsNaN(r.WetFrom))
	require.InDelta(t, r.Outlet-4.0/9*(r.Outlet-5), r.ColdestWall, 0.1)
}

// TestDuctDewKeepsMassAndEnergy: what the air's enthalpy loses passes the wall
// or leaves with the water.
func TestDuctDewKeepsMassAndEnergy(t *testing.T) {
	for _, around := range []float64{-50, 2, 12} {
		in := idealAir(t, 24, 0.9, 101325)
		d := dewDuct()
		r, err := d.Dew(9, 0.1, in, around)
		require.NoError(t, err)
		require.Positive(t, r.Water)
		require.Equal(t, around == -50, r.Frost)
		require.InEpsilon(t, r.Water, 0.1*(in.HumidityRatio()-r.HumidityRatio), 1e-9)
		h := func(t, w float64) float64 { return 1006*t + w*(2501000+1860*t) }
		lost := 0.1 * (h(24, in.HumidityRatio()) - h(r.Outlet, r.HumidityRatio))
		// The water leaves between the coldest wall's temperature and the dew point.
		require.InDelta(t, lost, r.Loss, r.Water*(fusionHeat+4200*25))
		require.LessOrEqual(t, r.HumidityRatio, psychro.IdealGas.SaturationHumidityRatio(r.Outlet, 101325)*(1+1e-9))
		require.Greater(t, r.Loss, 0.0)
		require.Greater(t, r.Latent, 0.3*r.Loss)
		// A wet wall takes more heat than a dry one and leaves the air warmer.
		dry, err := d.Heat(0.1, 24, around, AirProperties{Density: 1, Viscosity: 1.8e-5, HeatCapacity: in.HeatCapacity()})
		require.NoError(t, err)
		require.Greater(t, r.Loss, dry.Loss)
		require.Greater(t, r.Outlet, dry.Outlet)
	}
}

// Ten ducts in a row, each cut as fine as the whole: the cells are many enough.
func TestDewCellsAreFineEnough(t *testing.T) {
	in := idealAir(t, 24, 0.85, 101325)
	d := dewDuct()
	whole, err := d.Dew(9, 0.15, in, 3)
	require.NoError(t, err)
	d.Length /= 10
	loss, water := 0.0, 0.0
	for range 10 {
		r, err := d.Dew(9, 0.15, in, 3)
		require.NoError(t, err)
		loss += r.Loss
		water += r.Water
		in, err = psychro.IdealGas.FromHumidityRatio(r.Outlet, r.HumidityRatio, 101325)
		require.NoError(t, err)
	}
	require.InEpsilon(t, loss, whole.Loss, 2e-3)
	require.InEpsilon(t, water, whole.Water, 5e-3)
	require.InDelta(t, in.Temperature(), whole.Outlet, 0.02)
}

// One short cell by hand: the wall's balance, and the ratio of the two
// approaches.
func TestWetCellBalances(t *testing.T) {
	in := idealAir(t, 22, 0.8, 101325)
	w := in.HumidityRatio()
	c := wetCell(psychro.IdealGas, passing{22, w, 101325, 0.2, 0.05}, 0.9, 40, 4)
	require.InDelta(t, c.heat, 40*(c.wall-4), 1e-8)
	ws := psychro.IdealGas.SaturationHumidityRatio(c.wall, 101325)
	require.InDelta(t, 0.05, -math.Log1p(-(22-c.t)/(22-c.wall)), 1e-9)
	require.InDelta(t, 0.05/0.9, -math.Log1p(-(w-c.w)/(w-ws)), 1e-9)
	h := func(t, w float64) float64 { return 1006*t + w*(2501000+1860*t) }
	require.InDelta(t, 0.2*(h(22, w)-h(c.t, c.w)-(w-c.w)*4200*c.wall), c.heat, 1e-8)
	// Frost gives its heat of melting too.
	f := wetCell(psychro.IdealGas, passing{2, 0.004, 101325, 0.2, 0.05}, 0.9, 40, -20)
	require.InDelta(t, 0.2*(h(2, 0.004)-h(f.t, f.w)-(0.004-f.w)*(2100*f.wall-333600)), f.heat, 1e-8)
}

// The coldest wall of a duct wet throughout is a wet wall, warmer than a dry one
// would be: some 12.4 °C here, where a dry wall would have 9.1.
func TestColdestWallIsTheWetOne(t *testing.T) {
	d := Duct{Section: Round(0.2), Length: 25, HeatTransfer: 7}
	in := idealAir(t, 28, 0.85, 101325)
	r, err := d.Dew(14, 0.1, in, 2)
	require.NoError(t, err)
	require.Zero(t, r.WetFrom)
	d.Length = 1e-6 // the outlet's wall alone
	end, err := psychro.IdealGas.FromHumidityRatio(r.Outlet+1e-9, r.HumidityRatio, 101325)
	require.NoError(t, err)
	last, err := d.Dew(14, 0.1, end, 2)
	require.NoError(t, err)
	require.Positive(t, last.Water)
	require.InDelta(t, last.ColdestWall, r.ColdestWall, 0.15)
	dry := r.Outlet - 7.0/14*(r.Outlet-2)
	require.Greater(t, r.ColdestWall, dry+1)
}

// Saturated air of either model past walls of its own temperature gives neither
// fog nor dew.
func TestNoFogWithoutCooling(t *testing.T) {
	for _, m := range []psychro.Model{psychro.IdealGas, psychro.RealGas} {
		for _, c := range []float64{-5, 4, 12.3, 25, 40} {
			in, err := m.FromRelativeHumidity(c, 1, 101325)
			require.NoError(t, err)
			r, err := dewDuct().Dew(9, 0.2, in, c)
			require.NoError(t, err)
			require.Less(t, r.Water, 1e-13, "%v %g °C", m, c)
			require.InDelta(t, c, r.Outlet, 1e-9)
		}
	}
}

func TestDewRefuses(t *testing.T) {
	_, err := dewDuct().Dew(3, 0, psychro.State{}, 900)
	for _, s := range []string{"film", "dryAir", "in", "around"} {
		require.ErrorContains(t, err, s)
	}
}

// TestMoistStoreKeepsHeatAndWater: humid air into cold soil; dry air does as in
// Step, humid air stores more, and the heat into the soil is the air's less what
// the water carries off.
func TestMoistStoreKeepsHeatAndWater(t *testing.T) {
	air := DryAir(26, 101325)
	for _, rh := range []float64{0.1, 0.85} {
		in := idealAir(t, 26, rh, 101325)
		wet, err := NewSoilStore(demoSoil(), 12)
		require.NoError(t, err)
		dry, err := NewSoilStore(demoSoil(), 12)
		require.NoError(t, err)
		sum, gained := 0.0, 0.0
		for range 10 {
			m, err := wet.StepMoist(0.5, in, air, time.Hour, false)
			require.NoError(t, err)
			d, err := dry.Step(0.5, 26, air, time.Hour, false)
			require.NoError(t, err)
			sum += (m.Heat - m.Up) * 3600
			gained += (m.Heat - d.Heat) * 3600
			require.InDelta(t, sum, wet.Stored(), 1e-9*wet.Capacity())
			require.InDelta(t, d.Pressure, m.Pressure, 1e-12)
			mass := 0.5 / in.SpecificVolume()
			h := func(t, w float64) float64 { return 1006*t + w*(2501000+1860*t) }
			lost := mass * (h(26, in.HumidityRatio()) - h(m.Outlet, m.HumidityRatio))
			require.InEpsilon(t, m.Water+1, mass*(in.HumidityRatio()-m.HumidityRatio)+1, 1e-12)
			require.InDelta(t, lost, m.Heat, m.Water*4200*26+1e-6)
			require.Equal(t, rh == 0.85, m.Water > 0)
		}
		if rh == 0.1 {
			// The same but for the moisture's share of the heat capacity and the
			// place of the wall in a cell.
			require.InEpsilon(t, dry.Stored(), wet.Stored(), 0.03)
		} else {
			require.Greater(t, gained, 0.3*dry.Stored())
		}
	}
	bed := DefaultRockBed()
	bed.Area, bed.Depth, bed.DesignFlow = 3, 1.5, 0.4
	s, err := NewRockBedStore(bed, 12, air)
	require.NoError(t, err)
	m, err := s.StepMoist(0.4, idealAir(t, 26, 0.85, 101325), air, time.Hour, true)
	require.NoError(t, err)
	require.Positive(t, m.Water)
	require.InDelta(t, m.Heat*3600, s.Stored(), 1e-6)
	_, err = s.StepMoist(0, psychro.State{}, air, time.Hour, true)
	require.ErrorIs(t, err, ErrRange)
}
