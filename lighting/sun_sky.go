package lighting

import (
	"time"

	"cloche.example/internal/sun"
)

// SunHour is the sun of an hour, as needed for hourly radiation.
type SunHour struct {
	Lit              float64 // fraction of the hour in which the sun's centre is above the horizon, without refraction
	Sine             float64 // ratio, mean over the hour of the sine of the elevation, 0 while the sun is down
	Elevation        float64 // degree, the one whose sine is the mean over the lit part; at the middle of an hour without sun
	Azimuth          float64 // degree from north through east, at the middle of the lit part
	Extraterrestrial float64 // W/m² across the beam, outside the atmosphere
}

// SunHour returns the sun of the hour that begins at start, in 1950 to 2100: means
// over the hour, which at sunrise and sunset lie far from the sun of its middle.
// Outside the years every field is NaN.
func (s Site) SunHour(start time.Time) SunHour {
	starts, hours := [1]time.Time{start}, [1]sun.HourSun{}
	s.at.HoursTo(hours[:], starts[:])
	return SunHour(hours[0])
}

// DiffuseFraction returns the fraction of the global radiation of an hour on
// level ground that comes from the sky and not from the sun's disc, where the
// clearness, fraction, 0 to 2, is the global radiation over what falls on a level
// plane outside the atmosphere: [Erbs82]. Single hours scatter widely about it.
// NaN outside.
func DiffuseFraction(clearness float64) float64 { return sun.Erbs(clearness) }

// SunAndSky is what sun and sky send to level ground at one instant or in the
// mean of an hour, with the sun's place in it.
type SunAndSky struct {
	Direct           float64 // W/m², 0 to 1500; across the beam
	Diffuse          float64 // W/m², 0 to 1500; from the sky on level ground
	Extraterrestrial float64 // W/m², 1000 to 1500; across the beam, outside the atmosphere
	Elevation        float64 // degree, -90 to 90; of the sun
	Azimuth          float64 // degree, -360 to 360; of the sun, clockwise from north
	Reflectance      float64 // fraction, 0 to 1; of the ground around, for sunlight: 0.2 grass, 0.7 fresh snow
}

// Split returns sun and sky of the hour whose mean global radiation on level
// ground is global, W/m², at least 0, over ground of the reflectance, fraction, 0
// to 1: by DiffuseFraction, all of it diffuse with the sun below 3 degree, and no
// beam brighter than above the atmosphere. NaN for a negative global.
func (h SunHour) Split(global, reflectance float64) SunAndSky {
	s := SunAndSky{Extraterrestrial: h.Extraterrestrial, Elevation: h.Elevation, Azimuth: h.Azimuth, Reflectance: reflectance}
	s.Direct, s.Diffuse = sun.HourSun(h).Split(global)
	return s
}

// TiltedSun is the radiation on a plane by where it comes from.
type TiltedSun struct {
	Beam        float64 // W/m², from the sun's disc
	Circumsolar float64 // W/m², from the sky around the disc, taken to come along the beam
	Isotropic   float64 // W/m², from the rest of the sky, equally bright everywhere
	Reflected   float64 // W/m², from the ground
	Incidence   float64 // ratio, the cosine of the angle between beam and the plane's normal; negative from behind
}

// Total returns all of it, W/m².
func (t TiltedSun) Total() float64 { return sun.Tilted(t).Total() }

// OnPlane returns the radiation on a plane whose normal leans by tilt, degree, 0
// to 180, from straight up towards azimuth, degree, -360 to 360, clockwise from
// north: [Hay80] over ground of even brightness. The part of the sky's light that
// comes along the beam is never brighter than the beam. NaN in every field
// outside the ranges.
func (s SunAndSky) OnPlane(tilt, azimuth float64) TiltedSun {
	return TiltedSun(sun.Radiation(s).HayDavies(tilt, azimuth))
}
