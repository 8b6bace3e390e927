package envelope

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// Sunlight is the sun and sky of one hour.
type Sunlight struct {
	BeamNormal        float64 // W/m², 0 to 1500, on a plane that faces the sun
	DiffuseHorizontal float64 // W/m², 0 to 1500, from the sky on a level plane
	Albedo            float64 // fraction, 0 to 1, that the ground outside reflects: 0.2 grass, 0.7 fresh snow
	Elevation         float64 // degree, -90 to 90, of the sun above the horizon
	Azimuth           float64 // degree, -180 to 360, of the sun clockwise from north
}

// Ranges of sunlight.
var (
	irradianceRange = domain.Range{Min: 0, Max: 1500, Unit: "W/m²", Source: "above the solar constant"}
	sunAzimuthRange = domain.Range{Min: -180, Max: 360, Unit: "degree", Source: "definition"}
)

// check returns nil, or the join of a *RangeError for each field out of range.
func (s Sunlight) check() error {
	if s.valid() {
		return nil
	}
	return errors.Join(
		irradianceRange.Check("BeamNormal", s.BeamNormal),
		irradianceRange.Check("DiffuseHorizontal", s.DiffuseHorizontal),
		fractionRange.Check("Albedo", s.Albedo),
		sunElevationRange.Check("Elevation", s.Elevation),
		sunAzimuthRange.Check("Azimuth", s.Azimuth),
	)
}

func (s *Sunlight) valid() bool {
	return irradianceRange.Contains(s.BeamNormal) && irradianceRange.Contains(s.DiffuseHorizontal) &&
		fractionRange.Contains(s.Albedo) && sunElevationRange.Contains(s.Elevation) && sunAzimuthRange.Contains(s.Azimuth)
}

// PlaneSun is the sunlight on a facet.
type PlaneSun struct {
	Incidence float64 // degree, of the beam; above 90 the sun is behind the facet
	Beam      float64 // W/m²
	Sky       float64 // W/m², diffuse from the sky
	Ground    float64 // W/m², reflected by the ground
}

// Total returns the sum in W/m².
func (p PlaneSun) Total() float64 { return p.Beam + p.Sky + p.Ground }

// Sun returns the sunlight on the facet in W/m² under a sky of even radiance:
// [DufBec13] eq. 2.15.1. No hill, tree or other part of the house shades it.
// Fields are NaN for sunlight that is out of range.
func (f Facet) Sun(s Sunlight) PlaneSun {
	if !s.valid() {
		return PlaneSun{nan, nan, nan, nan}
	}
	p := PlaneSun{Incidence: f.Incidence(s.Elevation, s.Azimuth)}
	view := skyView(f.Tilt)
	level := s.DiffuseHorizontal
	if s.Elevation > 0 {
		level += s.BeamNormal * math.Sin(s.Elevation*degree)
		p.Beam = s.BeamNormal * math.Max(0, f.cosIncidence(s.Elevation, s.Azimuth))
	}
	p.Sky = s.DiffuseHorizontal * view
	p.Ground = level * s.Albedo * (1 - view)
	return p
}

// FacetLight is the cover of a facet for light and sun.
type FacetLight struct {
	Sheets  LightLayers  // sheets, the same as the layers of its Cover; empty for an opaque facet
	Factors LightFactors // dirt, condensation and frame
}

// Glazing is a house for sunlight. It is made by NewGlazing and may be used by
// several goroutines at once.
type Glazing struct {
	form     Form
	facets   []Facet
	lights   []FacetLight
	diffuse  []Light
	factor   []float64
	retained float64
	shade    bayShade
}

// NewGlazing returns the house of the shape with the light cover of each of its
// facets; those of facets in the ground and of party walls are not read.
// retained, fraction, 0 to 1, is the part of transmitted light that stays inside as heat or
// vapour, the rest leaving through the cover again: 0.7 to 0.9 over dark soil
// and crop (from memory). The error joins a *RangeError for each fault.
func NewGlazing(s Shape, lights []FacetLight, retained float64) (Glazing, error) {
	n := float64(len(s.Facets))
	faults := []error{
		domain.Range{Min: n, Max: n, Unit: "covers", Source: "one for each facet of the shape"}.Check("number of lights", float64(len(lights))),
		fractionRange.Check("retained", retained),
	}
	g := Glazing{form: s.Form, facets: append([]Facet(nil), s.Facets...), lights: append([]FacetLight(nil), lights...), retained: retained}
	for i := range g.lights {
		x := &g.lights[i].Factors
		if g.lights[i].Sheets.n > 0 {
			faults = append(faults,
				fractionRange.Check(fmt.Sprintf("lights[%d].Factors.Dirt", i), x.Dirt),
				fractionRange.Check(fmt.Sprintf("lights[%d].Factors.Condensation", i), x.Condensation),
				fractionRange.Check(fmt.Sprintf("lights[%d].Factors.Frame", i), x.Frame))
		}
	}
	if err := errors.Join(faults...); err != nil {
		return Glazing{}, err
	}
	g.shade = newBayShade(&s)
	g.diffuse, g.factor = make([]Light, len(lights)), make([]float64, len(lights))
	for i := range g.lights {
		f := &g.facets[i]
		if g.lights[i].Sheets.n == 0 || f.Kind.InGround() || f.Party {
			g.lights[i].Sheets.n = 0
			continue
		}
		g.diffuse[i] = g.lights[i].Sheets.Diffuse()
		g.factor[i] = g.lights[i].Factors.Total()
	}
	return g, nil
}

// FacetSun is the sunlight through one facet.
type FacetSun struct {
	Plane              PlaneSun // on the facet, the beam as a mean over lit and shaded parts
	BeamTransmitted    float64  // W
	DiffuseTransmitted float64  // W, from sky and ground
	Absorbed           float64  // W, in the sheets
}

// SolarGain is the sunlight of one hour in a house. It leaves open how much of
// the gain turns to vapour.
type SolarGain struct {
	Facets      []FacetSun           // in the order of the shape
	Incident    float64              // W, on all facets that let light through
	Transmitted float64              // W, into the house
	Gain        float64              // W, that stays inside
	Absorbed    float64              // W, in the sheets; it warms the cover, see HouseConditions.Sun
	Sun         [][MaxLayers]float64 // W/m², absorbed in each sheet of each facet, for HouseConditions.Sun
}

// Gain returns the solar gain in the sunlight s. Bays shade each other from the
// beam; that they hide part of the sky from each other is not counted. Factors
// of dirt, drops and frame take from what passes; the sheets absorb as if
// clean. Beam that crosses the house and leaves on the far side is part of what
// is not retained. The error joins a *RangeError for each field out of range.
func (g Glazing) Gain(s Sunlight) (SolarGain, error) {
	var r SolarGain
	err := g.GainTo(&r, s)
	return r, err
}

// GainTo is Gain that writes to dst and uses its slices again.
func (g Glazing) GainTo(dst *SolarGain, s Sunlight) error {
	if err := s.check(); err != nil {
		return err
	}
	*dst = SolarGain{Facets: dst.Facets[:0], Sun: dst.Sun[:0]}
	for i := range g.facets {
		var r FacetSun
		var sun [MaxLayers]float64
		if sheets := &g.lights[i].Sheets; sheets.n > 0 {
			f := &g.facets[i]
			r.Plane = f.Sun(s)
			r.Plane.Beam *= g.shade.lit(i, &s)
			beam := Light{}
			if r.Plane.Beam > 0 {
				beam = sheets.At(math.Min(90, r.Plane.Incidence))
			}
			scattered := r.Plane.Sky + r.Plane.Ground
			r.BeamTransmitted = f.Area * g.factor[i] * beam.Transmittance * r.Plane.Beam
			r.DiffuseTransmitted = f.Area * g.factor[i] * g.diffuse[i].Transmittance * scattered
			for j := range sheets.n {
				sun[j] = beam.Absorptance[j]*r.Plane.Beam + g.diffuse[i].Absorptance[j]*scattered
				r.Absorbed += f.Area * sun[j]
			}
			dst.Incident += f.Area * r.Plane.Total()
			dst.Transmitted += r.BeamTransmitted + r.DiffuseTransmitted
			dst.Absorbed += r.Absorbed
		}
		dst.Facets = append(dst.Facets, r)
		dst.Sun = append(dst.Sun, sun)
	}
	dst.Gain = g.retained * dst.Transmitted
	return nil
}
