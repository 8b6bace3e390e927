package lighting

import (
	"time"

	"cloche.example/internal/sun"
)

// RiseElevation is where the centre of the disc stands, degree, when its upper
// edge rises or sets: 34' of refraction and 16' of radius [Reda04]. At -6 civil
// twilight ends, which some plants still take as day.
const RiseElevation = sun.RiseElevation

// Site is a place on Earth. Make it with NewSite.
type Site struct{ at sun.Site }

// NewSite returns the place at latitude, degree north, -90 to 90 (geodetic,
// as on maps), longitude, degree east, -180 to 180, and altitude, m above the
// ellipsoid, -500 to 9000. All faults are reported together.
func NewSite(latitude, longitude, altitude float64) (Site, error) {
	at, err := sun.NewSite(latitude, longitude, altitude)
	return Site{at}, err
}

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

// Sun returns where the sun stands at t, in 1950 to 2100, by NREL's solar
// position algorithm [Reda04]: within 0.0003 degree by its authors. UT1 is
// taken as UTC, which is at most 0.9 s or 0.004 degree of hour angle;
// refraction is left out. Outside the years every field is NaN.
func (s Site) Sun(t time.Time) Sun { return Sun(s.at.Sun(t)) }

// Extraterrestrial returns the irradiance outside the atmosphere on a plane
// that faces the sun, W/m²: 1361 W/m² [Kopp11] over the distance squared.
func (s Sun) Extraterrestrial() float64 { return sun.Sun(s).Extraterrestrial() }

// SunDay is a day of the sun at a site.
type SunDay struct {
	Rise    time.Time     // zero when the sun does not rise
	Transit time.Time     // when it stands on the meridian
	Set     time.Time     // zero when it does not set
	Length  time.Duration // between rise and set; 24 h or 0 in polar day and night
	Noon    Sun           // at transit
}

// SunDay returns the day of the sun whose transit lies within 12 hours of noon
// of date's clock, in date's time zone. The sun rises and sets when its centre
// passes the elevation, degree, -18 to 18: RiseElevation for the edge of the
// disc. The error is a *RangeError for years before 1950 and after 2100 and
// for elevations outside.
func (s Site) SunDay(date time.Time, elevation float64) (SunDay, error) {
	d, err := s.at.SunDay(date, elevation)
	return SunDay{Rise: d.Rise, Transit: d.Transit, Set: d.Set, Length: d.Length, Noon: Sun(d.Noon)}, err
}

// ClearSky is the irradiance under a cloudless sky.
type ClearSky struct {
	Global  float64 // W/m² on level ground
	Direct  float64 // W/m² facing the sun
	Diffuse float64 // W/m² on level ground
}

// ClearSky returns the clear-sky irradiance at the site and time by Ineichen
// and Perez [Ineichen02], without their later enhancement at low turbidity.
// The turbidity is Linke's, dimensionless, 1 to 10: 2 very clear and cold, 3
// clear, 5 hazy. The pressure is the standard atmosphere's, refraction that at
// 10 °C; the site may lie up to 4000 m.
func (s Site) ClearSky(t time.Time, turbidity float64) (ClearSky, error) {
	sky, err := s.at.ClearSky(t, turbidity)
	return ClearSky(sky), err
}
