package lighting

import (
	"math"

	"cloche.example/internal/domain"
)

// rangeHourAngle holds one turn and a little, degree.
var rangeHourAngle = domain.Range{Min: -200, Max: 200, Unit: "degree", Source: "0 at noon, 15 an hour"}

// SeasonalCorrection returns by how much the sun is ahead of a clock of mean
// solar time, h, on day 1 to 366 of the year: [Allen98] eq. 32, within 90 s of
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
// to 180: [Allen98] eq. 31. NaN outside.
func ClockHourAngle(clock float64, day int, longitude, zone float64) float64 {
	if !(clock >= 0 && clock <= 24) || !(zone >= -12 && zone <= 14) || !longitudeRange.Contains(longitude) {
		return math.NaN()
	}
	return 15*(clock+SeasonalCorrection(day)-12) + longitude - 15*zone
}

// ExtraterrestrialSpan returns the radiation outside the atmosphere on a level
// square metre, J/m², at latitude, degree north, -90 to 90, on day 1 to 366
// while the hour angle of the sun runs from one value to another, from and to
// in degree, -200 to 200, of which only what lies between sunrise and sunset
// counts: [Allen98] eq. 28. NaN outside, and when to is less than from.
func ExtraterrestrialSpan(latitude float64, day int, from, to float64) float64 {
	if !(rangeHourAngle.Contains(from) && rangeHourAngle.Contains(to) && from <= to) {
		return math.NaN()
	}
	set := SunsetAngle(latitude, day)
	a, b := max(from, -set)*radian, min(to, set)*radian
	if a >= b {
		return 0
	}
	sinP, cosP := math.Sincos(latitude * radian)
	sinD, cosD := math.Sincos(DayDeclination(day) * radian)
	return 12 * 60 / math.Pi * faoSolarConstant * InverseDistance(day) * ((b-a)*sinP*sinD + cosP*cosD*(math.Sin(b)-math.Sin(a)))
}
