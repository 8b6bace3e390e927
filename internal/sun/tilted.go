package sun

import (
	"math"

	"cloche.example/internal/domain"
)

// Ranges of the radiation of an hour and of a plane in it.
var (
	directRange      = domain.Range{Min: 0, Max: 1500, Unit: "W/m²"}
	diffuseRange     = domain.Range{Min: 0, Max: 1500, Unit: "W/m²"}
	outsideRange     = domain.Range{Min: 1000, Max: 1500, Unit: "W/m²", Source: "1,316 to 1,412 through the year"}
	elevationRange   = domain.Range{Min: -90, Max: 90, Unit: "degree"}
	bearingRange     = domain.Range{Min: -360, Max: 360, Unit: "degree", Source: "clockwise from north"}
	reflectanceRange = domain.Range{Min: 0, Max: 1, Unit: "fraction"}
	tiltRange        = domain.Range{Min: 0, Max: 180, Unit: "degree", Source: "0 looks up, 90 is a wall"}
)

// Radiation is what sun and sky send to level ground at one instant or as the
// means of an hour, with the sun's place in it.
type Radiation struct {
	Direct           float64 // W/m², 0 to 1500; across the beam
	Diffuse          float64 // W/m², 0 to 1500; from the sky on level ground
	Extraterrestrial float64 // W/m², 1000 to 1500; across the beam, outside the atmosphere
	Elevation        float64 // degree, -90 to 90; of the sun
	Azimuth          float64 // degree, -360 to 360; of the sun, clockwise from north
	Reflectance      float64 // fraction, 0 to 1; of the ground around, for sunlight
}

// Tilted is the radiation on a plane by where it comes from.
type Tilted struct {
	Beam        float64 // W/m², from the sun's disc
	Circumsolar float64 // W/m², from the sky around the disc, taken to come along the beam
	Isotropic   float64 // W/m², from the rest of the sky, equally bright everywhere
	Reflected   float64 // W/m², from the ground
	Incidence   float64 // ratio, the cosine of the angle between beam and the plane's normal; negative from behind
}

// Total returns all of it, W/m².
func (t Tilted) Total() float64 { return t.Beam + t.Circumsolar + t.Isotropic + t.Reflected }

// HayDavies returns the radiation on a plane whose normal leans by tilt,
// degree, 0 to 180, from straight up towards azimuth, degree, -360 to 360,
// clockwise from north: [Hay80] with a ground of even brightness. The share of
// the diffuse light that comes along the beam is the beam's own
// transmittance. That part is never brighter than the beam itself, which the
// source does not say: it holds for a sun near the horizon, where hourly data
// would otherwise give any number. NaN in every field outside the ranges.
func (r Radiation) HayDavies(tilt, azimuth float64) Tilted {
	if !r.valid() || !tiltRange.Contains(tilt) || !bearingRange.Contains(azimuth) {
		return Tilted{none, none, none, none, none}
	}
	sinT, cosT := math.Sincos(tilt * radian)
	sinE, cosE := math.Sincos(r.Elevation * radian)
	var t Tilted
	t.Incidence = sinE*cosT + cosE*sinT*math.Cos((r.Azimuth-azimuth)*radian)
	along := 0.0 // circumsolar radiation across the beam
	level := r.Diffuse
	if sinE > 0 {
		along = r.Direct / r.Extraterrestrial * math.Min(r.Diffuse/sinE, r.Extraterrestrial) // [Hay80], anisotropy index times Rb
		level = r.Diffuse + r.Direct*sinE
		face := math.Max(0, t.Incidence)
		t.Beam = r.Direct * face
		t.Circumsolar = along * face
	}
	t.Isotropic = math.Max(0, r.Diffuse-along*math.Max(0, sinE)) * (1 + cosT) / 2 // [Hay80]
	t.Reflected = r.Reflectance * level * (1 - cosT) / 2
	return t
}

func (r Radiation) valid() bool {
	return directRange.Contains(r.Direct) && diffuseRange.Contains(r.Diffuse) &&
		outsideRange.Contains(r.Extraterrestrial) && elevationRange.Contains(r.Elevation) &&
		bearingRange.Contains(r.Azimuth) && reflectanceRange.Contains(r.Reflectance)
}
