package sun

import (
	"errors"
	"math"
	"time"

	"cloche.example/internal/domain"
)

// Ranges of a place and a time.
var (
	latitudeRange  = domain.Range{Min: -90, Max: 90, Unit: "degree"}
	longitudeRange = domain.Range{Min: -180, Max: 180, Unit: "degree", Source: "east of Greenwich positive"}
	altitudeRange  = domain.Range{Min: -500, Max: 9000, Unit: "m"}
	yearRange      = domain.Range{Min: 1950, Max: 2100, Unit: "year", Source: "civil time is tied to dynamical time by a table up to 2017 and its last value"}
	// RangeEpoch is where the sun may be asked for with a given lead of
	// dynamical time.
	epochRange = domain.Range{Min: -2000, Max: 6000, Unit: "year", Source: "[Reda04]"}
)

// Site is a place on Earth. Make it with NewSite.
type Site struct{ latitude, longitude, altitude float64 }

// NewSite returns the place at latitude, degree north, -90 to 90 (geodetic,
// as on maps), longitude, degree east, -180 to 180, and altitude, m above the
// ellipsoid, -500 to 9000. All faults are reported together.
func NewSite(latitude, longitude, altitude float64) (Site, error) {
	err := errors.Join(latitudeRange.Check("latitude", latitude), longitudeRange.Check("longitude", longitude), altitudeRange.Check("altitude", altitude))
	if err != nil {
		return Site{}, err
	}
	return Site{latitude, longitude, altitude}, nil
}

// Latitude returns the latitude in degree north.
func (s Site) Latitude() float64 { return s.latitude }

// Longitude returns the longitude in degree east.
func (s Site) Longitude() float64 { return s.longitude }

// Altitude returns the altitude in m.
func (s Site) Altitude() float64 { return s.altitude }

// Sun is where the centre of the sun's disc stands, seen from a site.
type Sun struct {
	Elevation      float64 // degree above the horizon, without refraction
	Azimuth        float64 // degree from north through east, 0 to 360
	Declination    float64 // degree, from the Earth's centre
	RightAscension float64 // degree, from the Earth's centre, 0 to 360
	HourAngle      float64 // degree, seen from the site, west of the meridian positive, -180 to 180
	EquationOfTime float64 // s, apparent less mean solar time
	Distance       float64 // ratio to the astronomical unit
}

// Zenith returns the angle from straight up, degree, without refraction.
func (s Sun) Zenith() float64 { return 90 - s.Elevation }

// Sun returns where the sun stands at t, in 1950 to 2100, by NREL's solar
// position algorithm [Reda04]: within 0.0003 degree by its authors. UT1 is
// taken as UTC, which is at most 0.9 s or 0.004 degree of hour angle; refraction
// is left out: see Refraction. Outside the years every field is NaN.
func (s Site) Sun(t time.Time) Sun {
	if !yearRange.Contains(float64(t.UTC().Year())) {
		return noSun
	}
	return s.sun(julian(t), DynamicalLead(t))
}

// SunDeltaT is Sun for the years -2000 to 6000 by the calendar of package time,
// the Gregorian one at all times, with a given lead of dynamical (terrestrial)
// time over UT1, which counts 0.0007 degree for a minute. A time.Time counts
// days of 86,400 s: t stands for UT1.
func (s Site) SunDeltaT(t time.Time, lead time.Duration) Sun {
	if !epochRange.Contains(float64(t.UTC().Year())) {
		return noSun
	}
	return s.sun(julian(t), lead)
}

// noSun stands for a year outside the range.
var noSun = Sun{none, none, none, none, none, none, none}

// j2000 is Julian day 2451545.0.
var j2000 = time.Date(2000, 1, 1, 12, 0, 0, 0, time.UTC)

// julian returns the days since J2000.0.
func julian(t time.Time) float64 {
	s := t.Unix() - j2000.Unix()
	return (float64(s) + float64(t.Nanosecond())*1e-9) / secondsPerDay
}

const (
	secondsPerDay = 86400.0
	arcsecond     = radian / 3600
)

// Constants of [Reda04], with its equation numbers.
const (
	aberration       = 20.4898    // arcseconds, eq. 26
	parallax         = 8.794      // arcseconds, eq. 35
	polarToEquator   = 0.99664719 // ratio of the Earth's axes, eq. 36
	equatorialRadius = 6378140.0  // m, eq. 37
)

// sun follows [Reda04] section 3; d is in days of UT from J2000.0.
func (s Site) sun(d float64, lead time.Duration) Sun {
	century := (d + lead.Seconds()/secondsPerDay) / 36525
	e := earthAt(century)

	sinE, cosE := math.Sincos(e.obliquity)
	lambda := e.longitude + math.Pi + e.nutation - aberration*arcsecond/e.distance // eqs. 13, 26, 27
	beta := -e.latitude                                                            // eq. 14
	sinL, cosL := math.Sincos(lambda)
	alpha := math.Atan2(sinL*cosE-math.Tan(beta)*sinE, cosL)             // eq. 30
	delta := math.Asin(math.Sin(beta)*cosE + math.Cos(beta)*sinE*sinL)   // eq. 31
	sidereal := siderealTime(d)*radian + e.nutation*cosE                 // eq. 29
	hour := math.Remainder(sidereal+s.longitude*radian-alpha, 2*math.Pi) // eq. 32
	xi := parallax * arcsecond / e.distance                              // eq. 35
	phi := s.latitude * radian
	u := math.Atan(polarToEquator * math.Tan(phi))                              // eq. 36
	x := math.Cos(u) + s.altitude/equatorialRadius*math.Cos(phi)                // eq. 37
	y := polarToEquator*math.Sin(u) + s.altitude/equatorialRadius*math.Sin(phi) // eq. 38
	sinH, cosH := math.Sincos(hour)
	sinD, cosD := math.Sincos(delta)
	shift := math.Atan2(-x*math.Sin(xi)*sinH, cosD-x*math.Sin(xi)*cosH)                // eq. 39
	local := hour - shift                                                              // eq. 42
	dec := math.Atan2((sinD-y*math.Sin(xi))*math.Cos(shift), cosD-x*math.Sin(xi)*cosH) // eq. 41
	sinP, cosP := math.Sincos(phi)
	sinT, cosT := math.Sincos(local)
	// East, north and up, so that no digit is lost near the zenith: eqs. 43, 47.
	up := sinP*math.Sin(dec) + cosP*math.Cos(dec)*cosT
	north := cosP*math.Sin(dec) - sinP*math.Cos(dec)*cosT
	east := -math.Cos(dec) * sinT
	return Sun{
		Elevation:      math.Atan2(up, math.Hypot(north, east)) / radian,
		Azimuth:        circle(math.Atan2(east, north) / radian),
		Declination:    delta / radian,
		RightAscension: circle(alpha / radian),
		HourAngle:      math.Remainder(local/radian, 360),
		EquationOfTime: 240 * math.Remainder(meanLongitude(century/10)-meanAberration-alpha/radian+e.nutation*cosE/radian, 360), // eq. A1
		Distance:       e.distance,
	}
}

// meanAberration is in degree, eq. A1 of [Reda04].
const meanAberration = 0.0057183

// circle turns an angle in degree into 0 to 360.
func circle(a float64) float64 {
	a = math.Mod(a, 360)
	if a < 0 {
		a += 360
	}
	return a
}

// siderealTime is Greenwich mean sidereal time in degree, d days of UT from
// J2000.0, eq. 28 of [Reda04].
func siderealTime(d float64) float64 {
	c := d / 36525
	return circle(280.46061837 + 360.98564736629*d + c*c*(0.000387933-c/38710000))
}

// meanLongitude is the sun's, in degree; t in Julian millennia, eq. A2 of
// [Reda04].
func meanLongitude(t float64) float64 {
	return 280.4664567 + t*(360007.6982779+t*(0.03032028+t*(1.0/49931-t*(1.0/15300+t/2000000))))
}
