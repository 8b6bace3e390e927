package envelope_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
)

func glassHouse(t *testing.T) (Shape, Glazing) {
	t.Helper()
	s := filmHouse(t).Shape
	pane, err := NewLightLayers(Sheet{Index: 1.526, Extinction: 20, Thickness: 0.004})
	require.NoError(t, err)
	lights := make([]FacetLight, len(s.Facets))
	for i, f := range s.Facets {
		if f.Kind != DwarfWall {
			lights[i] = FacetLight{Sheets: pane, Factors: LightFactors{Dirt: 0.95, Condensation: 0.9, Frame: 0.92}}
		}
	}
	g, err := NewGlazing(s, lights, 0.8)
	require.NoError(t, err)
	return s, g
}

// South roof of tilt b under a sun in the south: each part by hand.
func TestSunOnAFacet(t *testing.T) {
	f := Facet{Tilt: 30, Azimuth: 180}
	p := f.Sun(Sunlight{BeamNormal: 600, DiffuseHorizontal: 100, Albedo: 0.2, Elevation: 30, Azimuth: 180})
	require.InDelta(t, 30, p.Incidence, 1e-9)
	require.InDelta(t, 600*math.Sqrt(3)/2, p.Beam, 1e-9)
	view := (1 + math.Sqrt(3)/2) / 2
	require.InDelta(t, 100*view, p.Sky, 1e-9)
	require.InDelta(t, 0.2*(100+300)*(1-view), p.Ground, 1e-9)
	require.InDelta(t, p.Beam+p.Sky+p.Ground, p.Total(), 1e-12)
	require.Zero(t, f.Sun(Sunlight{BeamNormal: 600, Elevation: -1, Azimuth: 180}).Beam)
	require.Zero(t, Facet{Tilt: 90}.Sun(Sunlight{BeamNormal: 600, Elevation: 30, Azimuth: 180}).Beam)
	require.True(t, math.IsNaN(f.Sun(Sunlight{Elevation: 95}).Total()))
}

// A closed convex house catches on its lit facets what its shadow holds: the
// beam on all facets above grade is the sum of positive projections, which
// equals half the sum of absolute ones for a closed surface with its floor.
func TestBeamOnAClosedHouse(t *testing.T) {
	s, g := glassHouse(t)
	sun := Sunlight{BeamNormal: 500, Elevation: 35, Azimuth: 140}
	half, lit := 0.0, 0.0
	for _, f := range s.Facets {
		c := math.Cos(f.Incidence(sun.Elevation, sun.Azimuth) * math.Pi / 180)
		if f.Kind != BuriedWall {
			half += math.Abs(c) * f.Area / 2
		}
		if f.Kind != BuriedWall && f.Kind != DwarfWall && c > 0 {
			lit += c * f.Area
		}
	}
	r, err := g.Gain(sun)
	require.NoError(t, err)
	require.InEpsilon(t, 500*lit, r.Incident, 1e-9)
	dwarf := 0.0
	for _, f := range s.Facets {
		if f.Kind == DwarfWall {
			dwarf += f.Area * math.Max(0, math.Cos(f.Incidence(35, 140)*math.Pi/180))
		}
	}
	require.InEpsilon(t, half, lit+dwarf, 1e-9)
}

func TestSolarGain(t *testing.T) {
	s, g := glassHouse(t)
	sun := Sunlight{BeamNormal: 400, DiffuseHorizontal: 120, Albedo: 0.3, Elevation: 25, Azimuth: 170}
	r, err := g.Gain(sun)
	require.NoError(t, err)
	beam, diffuse, absorbed := 0.0, 0.0, 0.0
	for i, f := range r.Facets {
		beam += f.BeamTransmitted
		diffuse += f.DiffuseTransmitted
		absorbed += f.Absorbed
		require.InDelta(t, f.Absorbed, r.Sun[i][0]*s.Facets[i].Area, 1e-9)
		if s.Facets[i].Kind.InGround() {
			require.Zero(t, f)
		}
	}
	require.InDelta(t, beam+diffuse, r.Transmitted, 1e-9)
	require.InDelta(t, absorbed, r.Absorbed, 1e-9)
	require.InDelta(t, 0.8*r.Transmitted, r.Gain, 1e-9)
	require.Less(t, r.Transmitted+r.Absorbed, r.Incident)
	// Diffuse through the north roof alone: factor, diffuse value, irradiance.
	pane, err := NewLightLayers(Sheet{Index: 1.526, Extinction: 20, Thickness: 0.004})
	require.NoError(t, err)
	d := pane.Diffuse()
	p := s.Facets[0].Sun(sun)
	require.InEpsilon(t, s.Facets[0].Area*0.95*0.9*0.92*d.Transmittance*(p.Sky+p.Ground), r.Facets[0].DiffuseTransmitted, 1e-12)
	dark, err := g.Gain(Sunlight{})
	require.NoError(t, err)
	require.Zero(t, dark.Transmitted)
	var again SolarGain
	require.NoError(t, g.GainTo(&again, sun))
	require.Zero(t, testing.AllocsPerRun(20, func() { _ = g.GainTo(&again, sun) }))
	// The absorbed sun goes into the loss of the house.
	plan := filmHouse(t)
	glass := SingleGlass()
	plan.Covers = map[FacetKind]Cover{Roof: glass, SideWall: glass, EndWall: glass, DwarfWall: glass}
	plan.Screened = nil
	k := winterNight()
	k.Sun = r.Sun
	require.Negative(t, loss(t, built(t, plan), k).CoverSun)
}

func TestAllFaultsOfSunlight(t *testing.T) {
	s, g := glassHouse(t)
	_, err := g.Gain(Sunlight{BeamNormal: -1, DiffuseHorizontal: 2000, Albedo: 2, Elevation: 99, Azimuth: 900})
	requireFields(t, err, "BeamNormal", "DiffuseHorizontal", "Albedo", "Elevation", "Azimuth")
	_, err = NewGlazing(s, nil, 3)
	requireFields(t, err, "number of lights", "retained")
	pane, err := NewLightLayers(Sheet{Index: 1.5, Thickness: 0.004})
	require.NoError(t, err)
	lights := make([]FacetLight, len(s.Facets))
	lights[2] = FacetLight{Sheets: pane, Factors: LightFactors{Dirt: 2, Condensation: -1, Frame: 3}}
	_, err = NewGlazing(s, lights, 0.8)
	requireFields(t, err, "lights[2].Factors.Dirt", "lights[2].Factors.Condensation", "lights[2].Factors.Frame")
}
