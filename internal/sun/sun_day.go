package sun

import (
	"fmt"
	"math"
	"time"

	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
)

// RiseElevation is where the centre of the disc stands, degree, when its upper
// edge rises or sets: 34' of refraction and 16' of radius [Reda04].
const RiseElevation = -0.8333

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
// disc. The error is a *RangeError for years and elevations outside.
func (s Site) SunDay(date time.Time, elevation float64) (SunDay, error) {
	r := domain.Range{Min: -18, Max: 18, Unit: "degree"}
	if err := r.Check("elevation of rise and set", elevation); err != nil {
		return SunDay{}, err
	}
	y, m, d := date.Date()
	noon := time.Date(y, m, d, 12, 0, 0, 0, date.Location())
	if err := yearRange.Check("year", float64(noon.UTC().Year())); err != nil {
		return SunDay{}, err
	}
	base, lead := julian(noon), DynamicalLead(noon)
	at := func(sec float64) Sun { return s.sun(base+sec/secondsPerDay, lead) }
	clock := func(sec float64) time.Time { return noon.Add(time.Duration(sec * float64(time.Second))) }

	transit := 0.0
	for range 3 { // the hour angle grows by 15 degree an hour within 0.3 %
		transit -= at(transit).HourAngle * 240
	}
	out := SunDay{Transit: clock(transit), Noon: at(transit)}
	above := func(sec float64) float64 { return at(sec).Elevation - elevation }
	switch half := secondsPerDay / 2; {
	case above(transit) <= 0:
	case above(transit-half) >= 0 && above(transit+half) >= 0:
		out.Length = 24 * time.Hour
	default:
		rise, err := crossing(above, transit-half, transit)
		if err != nil {
			return SunDay{}, err
		}
		set, err := crossing(above, transit+half, transit)
		if err != nil {
			return SunDay{}, err
		}
		if !math.IsNaN(rise) {
			out.Rise = clock(rise)
		} else {
			rise = transit - half
		}
		if !math.IsNaN(set) {
			out.Set = clock(set)
		} else {
			set = transit + half
		}
		out.Length = time.Duration((set - rise) * float64(time.Second))
	}
	return out, nil
}

// crossing finds the crossing between a midnight and the transit, to 1 ms; NaN
// when the sun is up at that midnight.
func crossing(above func(float64) float64, midnight, transit float64) (float64, error) {
	if above(midnight) >= 0 {
		return math.NaN(), nil
	}
	x, err := solve.Root(above, midnight, transit, 1e-3)
	if err != nil {
		return 0, fmt.Errorf("sunrise or sunset: %w", err)
	}
	return x, nil
}

// Refraction returns by how much the air lifts the sun, degree, at elevation,
// degree without refraction, -1 to 90, pressure, Pa, 30,000 to 110,000, and
// temperature, °C, -60 to 60: [Reda04] eq. 42 after Sæmundsson. NaN outside.
func Refraction(elevation, pressure, temperature float64) float64 {
	if !(elevation >= -1 && elevation <= 90) || !(pressure >= 3e4 && pressure <= 1.1e5) || !(temperature >= -60 && temperature <= 60) {
		return math.NaN()
	}
	angle := (elevation + 10.3/(elevation+5.11)) * radian
	return pressure / 101000 * 283 / (273 + temperature) * 1.02 / (60 * math.Tan(angle))
}
