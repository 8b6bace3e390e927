package sun

import (
	"errors"
	"math"
	"time"

	"cloche.example/internal/domain"
)

// hourAngleRange holds one turn and a little, degree.
var hourAngleRange = domain.Range{Min: -200, Max: 200, Unit: "degree", Source: "0 at noon, 15 an hour"}

// SeasonalCorrection returns by how much the sun is ahead of a clock of mean
// solar time, h, on day 1 to 366 of the year: [FAO56] eq. 32, within 90 s of
// the equation of time. NaN outside.
func SeasonalCorrection(day int) float64 {
	if day < 1 || day > 366 {
		return math.NaN()
	}
	b := 2 * math.Pi * float64(day-81) / 364 // eq. 33
	return 0.1645*math.Sin(2*b) - 0.1255*math.Cos(b) - 0.025*math.Sin(b)
}

// ClockHourAngle returns the hour angle of the sun in degree, 0 at noon and 15
// for each hour after it, when a clock that is ahead of UTC by zone, h, -12 to
// 14, shows clock, h, 0 to 24, on day 1 to 366 at longitude, degree east, -180
// to 180: [FAO56] eq. 31. NaN outside.
func ClockHourAngle(clock float64, day int, longitude, zone float64) float64 {
	if !(clock >= 0 && clock <= 24) || !(zone >= -12 && zone <= 14) || !longitudeRange.Contains(longitude) {
		return math.NaN()
	}
	return 15*(clock+SeasonalCorrection(day)-12) + longitude - 15*zone
}

// DayZenith returns the angle of the sun from straight up, degree, without
// refraction, at latitude, degree north, -90 to 90, on day 1 to 366 at the
// hour angle hour, degree, 0 at noon, by the declination of [FAO56]. NaN
// outside.
func DayZenith(latitude float64, day int, hour float64) float64 {
	if !latitudeRange.Contains(latitude) {
		return math.NaN()
	}
	sinP, cosP := math.Sincos(latitude * radian)
	sinD, cosD := math.Sincos(DayDeclination(day) * radian)
	return math.Acos(max(-1, min(1, sinP*sinD+cosP*cosD*math.Cos(hour*radian)))) / radian
}

// ExtraterrestrialSpan returns the radiation outside the atmosphere on a level
// square metre, J/m², at latitude, degree north, -90 to 90, on day 1 to 366
// while the hour angle of the sun runs from one value to another, from and to
// in degree, -200 to 200, of which only what lies between sunrise and sunset
// counts: [FAO56] eq. 28. NaN outside, and when to is less than from.
func ExtraterrestrialSpan(latitude float64, day int, from, to float64) float64 {
	if !(hourAngleRange.Contains(from) && hourAngleRange.Contains(to) && from <= to) {
		return math.NaN()
	}
	return span(latitude, day, from, to)
}

// span is ExtraterrestrialSpan for any hour angles.
func span(latitude float64, day int, from, to float64) float64 {
	set := SunsetAngle(latitude, day)
	a, b := max(from, -set)*radian, min(to, set)*radian
	if a >= b {
		return 0
	}
	sinP, cosP := math.Sincos(latitude * radian)
	sinD, cosD := math.Sincos(DayDeclination(day) * radian)
	return 12 * 60 / math.Pi * faoSolarConstant * InverseDistance(day) * ((b-a)*sinP*sinD + cosP*cosD*(math.Sin(b)-math.Sin(a)))
}

// Period is a part of a day by the clock.
type Period struct {
	Latitude  float64       // degree north, -90 to 90
	Longitude float64       // degree east, -180 to 180
	Day       int           // day of the year, 1 to 366
	Zone      time.Duration // the clock less UTC, -12 h to 14 h
	From      time.Duration // time of day at which the period begins, 0 to 24 h
	Until     time.Duration // time of day at which it ends, From to 24 h
}

var (
	dayRange   = domain.Range{Min: 1, Max: 366, Unit: "day of the year"}
	zoneRange  = domain.Range{Min: -12, Max: 14, Unit: "h"}
	clockRange = domain.Range{Min: 0, Max: 24, Unit: "h"}
)

// Extraterrestrial returns the radiation outside the atmosphere on a level
// square metre in the period, J/m²: [FAO56] eqs. 28 to 33. What of the period
// lies before sunrise or after sunset does not count. All faults are reported
// together.
func (p Period) Extraterrestrial() (float64, error) {
	last := clockRange
	if clockRange.Contains(p.From.Hours()) {
		last.Min, last.Source = p.From.Hours(), "a period does not end before it begins"
	}
	err := errors.Join(latitudeRange.Check("Latitude", p.Latitude), longitudeRange.Check("Longitude", p.Longitude),
		dayRange.Check("Day", float64(p.Day)), zoneRange.Check("Zone", p.Zone.Hours()),
		clockRange.Check("From", p.From.Hours()), last.Check("Until", p.Until.Hours()))
	if err != nil {
		return 0, err
	}
	from := ClockHourAngle(p.From.Hours(), p.Day, p.Longitude, p.Zone.Hours())
	to := from + 15*(p.Until-p.From).Hours()
	sum := 0.0
	for turn := -360.0; turn <= 360; turn += 360 { // the sun's day begins anew at its midnight
		sum += span(p.Latitude, p.Day, from+turn, to+turn)
	}
	return sum, nil
}
