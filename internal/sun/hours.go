package sun

import (
	"math"
	"time"
)

// HourSun is the sun of an hour, as hourly radiation wants it.
type HourSun struct {
	Lit              float64 // fraction of the hour in which the sun's centre is above the horizon, without refraction
	Sine             float64 // ratio, mean over the hour of the sine of the elevation, 0 while the sun is down
	Elevation        float64 // degree, the one whose sine is the mean over the lit part; at the middle of an hour without sun
	Azimuth          float64 // degree from north through east, at the middle of the lit part
	Extraterrestrial float64 // W/m² across the beam, outside the atmosphere
}

// HoursTo fills dst, or a new slice if dst is nil, with the sun of the hours
// that begin at starts. Means over an hour are exact for a sun whose
// declination and equation of time stand still in it; these two and the
// distance are taken from Sun at noon UTC and run straight from day to day,
// within 0.001 degree. It panics when the lengths differ; years outside 1950
// to 2100 give NaN.
func (s Site) HoursTo(dst []HourSun, starts []time.Time) []HourSun {
	if dst == nil {
		dst = make([]HourSun, len(starts))
	}
	if len(dst) != len(starts) {
		panic("sun: HoursTo needs slices of one length")
	}
	day := int64(math.MinInt64)
	var a, b Sun
	for i, t := range starts {
		middle := t.Unix() + 1800
		noon := middle - secondsPerDay/2
		d := noon / secondsPerDay
		if noon%secondsPerDay < 0 {
			d--
		}
		switch d {
		case day:
		case day + 1:
			a, b = b, s.atNoon(d+1)
		default:
			a, b = s.atNoon(d), s.atNoon(d+1)
		}
		day = d
		f := float64(noon-d*secondsPerDay) / secondsPerDay
		dec := a.Declination + f*(b.Declination-a.Declination)
		eot := a.EquationOfTime + f*(b.EquationOfTime-a.EquationOfTime)
		dist := a.Distance + f*(b.Distance-a.Distance)
		// Seconds of the day, UTC, to the hour angle at the hour's middle.
		clock := float64(noon - d*secondsPerDay)
		hour := math.Remainder((clock+eot)/240+s.longitude, 360)
		if math.IsNaN(dec) {
			dst[i] = HourSun{none, none, none, none, none}
			continue
		}
		dst[i] = s.hour(dec, hour)
		dst[i].Extraterrestrial = SolarConstant / (dist * dist)
	}
	return dst
}

// atNoon is the sun at noon UTC, d days after 1 January 1970.
func (s Site) atNoon(d int64) Sun { return s.Sun(time.Unix(d*secondsPerDay+secondsPerDay/2, 0)) }

// hour is the sun of the hour around an hour angle, in degree, at a
// declination, in degree.
func (s Site) hour(dec, angle float64) HourSun {
	sinP, cosP := math.Sincos(s.latitude * radian)
	sinD, cosD := math.Sincos(dec * radian)
	set := 180.0
	switch c := sinP * sinD; {
	case math.Abs(c) < cosP*cosD:
		set = math.Acos(-c/(cosP*cosD)) / radian
	case c <= 0:
		set = 0
	}
	// The hour may cross midnight: its part after it lies a turn earlier.
	from, to := angle-7.5, angle+7.5
	lit, area, middle := 0.0, 0.0, angle
	longest := 0.0
	for _, turn := range [3]float64{-360, 0, 360} {
		a, b := math.Max(from+turn, -set), math.Min(to+turn, set)
		if !(a < b) {
			continue
		}
		lit += b - a
		area += (b-a)*radian*sinP*sinD + cosP*cosD*(math.Sin(b*radian)-math.Sin(a*radian))
		if set < 180 && b-a > longest {
			longest, middle = b-a, (a+b)/2
		}
	}
	sinH, cosH := math.Sincos(middle * radian)
	up := sinP*sinD + cosP*cosD*cosH
	north := cosP*sinD - sinP*cosD*cosH
	h := HourSun{Azimuth: circle(math.Atan2(-cosD*sinH, north) / radian), Elevation: math.Asin(math.Max(-1, math.Min(1, up))) / radian}
	if lit > 0 {
		h.Lit = lit / 15
		h.Sine = math.Max(0, area/(15*radian))
		h.Elevation = math.Asin(math.Min(1, h.Sine/h.Lit)) / radian
	}
	return h
}
