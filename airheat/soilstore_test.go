package airheat

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func demoSoil() SoilStore {
	s := DefaultSoilStore()
	s.Tubes, s.Diameter, s.Length, s.Spacing = 8, 0.16, 12, 0.5
	return s
}

func TestStoreKeepsHeat(t *testing.T) {
	air := DryAir(25, 101325)
	soil, err := NewSoilStore(demoSoil(), 14)
	require.NoError(t, err)
	b := DefaultRockBed()
	b.Area, b.Depth, b.DesignFlow = 3, 1.5, 0.4
	bed, err := NewRockBedStore(b, 14, air)
	require.NoError(t, err)
	for _, s := range []*Store{soil, bed} {
		sum := 0.0
		for h := range 72 {
			in, q := 32.0, 0.4
			if h%24 >= 10 {
				in, q = 12, 0.4
			}
			if h%24 >= 20 {
				q = 0
			}
			r, err := s.Step(q, in, air, time.Hour, h%24 >= 10)
			require.NoError(t, err)
			sum += r.Heat * 3600
			require.InDelta(t, sum, s.Stored(), 1e-9*s.Capacity())
			require.InDelta(t, q*air.Density*air.HeatCapacity*(in-r.Outlet), r.Heat, 1e-8)
		}
	}
}

func TestStoreComesToRestAtTheInlet(t *testing.T) {
	air := DryAir(25, 101325)
	s, err := NewSoilStore(demoSoil(), 14)
	require.NoError(t, err)
	var r StoreStep
	for range 2000 {
		r, err = s.Step(0.5, 30, air, 24*time.Hour, false)
		require.NoError(t, err)
	}
	require.InDelta(t, 30, r.Outlet, 1e-6)
	require.InEpsilon(t, 16*s.Capacity(), s.Stored(), 1e-6)
	// All soil around eight tubes is there, less the tubes' own space.
	require.InEpsilon(t, 8*12*(0.25-math.Pi*0.08*0.08)*2e6, s.Capacity(), 1e-12)
}

// Long after a steady flux starts, the face of a thick pipe follows the line
// source: 2π k/q' T = ½ (ln(4 a t/r²) − γ).
func TestSoilDiffusesLikeALineSource(t *testing.T) {
	soil := demoSoil()
	soil.Spacing, soil.Tubes, soil.Diameter = 4, 1, 0.1
	s, err := NewSoilStore(soil, 0)
	require.NoError(t, err)
	// No stream gives a constant flux; the rings are driven by it directly.
	cell := s.temp[0]
	const flux, step = 50.0, 600.0 // W in this cell
	n := 900
	for range n {
		c := s.sweep(cell, step)
		c.settle(cell, c.free+c.per*flux)
	}
	perMetre := flux / (12.0 / storeCells)
	r := 0.05 * math.Pow(4/math.Sqrt(math.Pi)/0.05, 0.5/storeRings)
	want := perMetre / (4 * math.Pi * 2) * (math.Log(4*(2/2e6)*float64(n)*step/(r*r)) - 0.5772156649)
	require.InEpsilon(t, want, cell[0], 0.02)
}

func TestBedLaws(t *testing.T) {
	air := DryAir(20, 101325)
	b := DefaultRockBed()
	b.Area, b.Depth, b.DesignFlow = 2, 1, 0.3
	// Ergun by hand: 0.15 m/s, voids 0.42, 40 mm.
	v, e, d := 0.15, 0.42, 0.04
	want := 150*air.Viscosity*(1-e)*(1-e)*v/(e*e*e*d*d) + 1.75*air.Density*(1-e)*v*v/(e*e*e*d)
	require.InEpsilon(t, want, b.loss(0.3, air), 1e-12)
	require.InEpsilon(t, 650*math.Pow(0.15/0.04, 0.7), bedTransfer(0.15, 0.04), 1e-12)
	require.True(t, math.IsNaN(bedTransfer(2, 0.04)))
	require.False(t, math.IsNaN(bedTransfer(0.01, 0.04)))
	require.True(t, math.IsNaN(bedTransfer(0.00999, 0.04)))
	s, err := NewRockBedStore(b, 10, air)
	require.NoError(t, err)
	r, err := s.Step(0.3, 30, air, time.Minute, false)
	require.NoError(t, err)
	require.InEpsilon(t, b.loss(0.3, air)*0.3/0.4, r.FanPower, 1e-12)
	require.InEpsilon(t, bedTransfer(0.3*air.Density/2, 0.04)*2/(0.3*air.Density*1006), r.Units, 1e-12)
	require.InDelta(t, 10, r.Outlet, 0.5)
}

func TestStoreFaultsAreListed(t *testing.T) {
	_, err := NewSoilStore(SoilStore{Diameter: 0.2, Spacing: 0.1}, 500)
	for _, s := range []string{"Tubes", "Length", "Spacing", "Film", "SoilConductivity", "SoilCapacity", "FanEfficiency", "start"} {
		require.ErrorContains(t, err, s)
	}
	_, err = NewRockBedStore(RockBed{}, 10, Air{})
	for _, s := range []string{"Area", "Depth", "Stone", "Void", "Air.Density", "DesignFlow"} {
		require.ErrorContains(t, err, s)
	}
	s, err := NewSoilStore(demoSoil(), 10)
	require.NoError(t, err)
	_, err = s.Step(-1, math.NaN(), DryAir(20, 101325), 0, false)
	for _, w := range []string{"flow", "inlet", "step"} {
		require.ErrorContains(t, err, w)
	}
}

// Tubes side by side need soil between them: a spacing of 1.05 diameters.
func TestTubesKeepApart(t *testing.T) {
	s := demoSoil()
	s.Spacing = 1.0501 * s.Diameter
	_, err := NewSoilStore(s, 12)
	require.NoError(t, err)
	s.Spacing = 1.0499 * s.Diameter
	_, err = NewSoilStore(s, 12)
	require.ErrorContains(t, err, "Spacing")
}
