package sun

import "math"

// The daily radiation of the paper [FAO56]. Days are counted from 1 on 1
// January; use the calendar day, not the shortcut int(30.4 month - 15).

// faoSolarConstant is in J/(m² min), [FAO56] eq. 21.
const faoSolarConstant = 0.0820e6

// InverseDistance returns the square of the mean over the actual distance of
// the sun, dimensionless, on day 1 to 366 of the year: [FAO56] eq. 23.
func InverseDistance(day int) float64 { return 1 + 0.033*math.Cos(yearAngle(day)) }

// DayDeclination returns the declination of the sun in degree on day 1 to 366
// of the year: [FAO56] eq. 24; up to 1.2 degree off in October.
func DayDeclination(day int) float64 { return 0.409 * math.Sin(yearAngle(day)-1.39) / radian }

func yearAngle(day int) float64 {
	if day < 1 || day > 366 {
		return math.NaN()
	}
	return 2 * math.Pi / 365 * float64(day)
}

// SunsetAngle returns the hour angle of sunset in degree at latitude, degree
// north, -90 to 90, on day 1 to 366: [FAO56] eq. 25; 0 in polar night, 180
// in polar day. NaN outside.
func SunsetAngle(latitude float64, day int) float64 {
	if !latitudeRange.Contains(latitude) {
		return math.NaN()
	}
	c := -math.Tan(latitude*radian) * math.Tan(DayDeclination(day)*radian)
	switch {
	case c >= 1:
		return 0
	case c <= -1:
		return 180
	}
	return math.Acos(c) / radian
}

// DayLength returns the time between sunrise and sunset without refraction at
// latitude, degree north, -90 to 90, on day 1 to 366, in h: [FAO56] eq. 34. NaN
// outside.
func DayLength(latitude float64, day int) float64 { return SunsetAngle(latitude, day) / 7.5 }

// ExtraterrestrialDay returns the radiation outside the atmosphere on a level
// square metre in a day, J/(m² d), at latitude, degree north, -90 to 90, on
// day 1 to 366: [FAO56] eq. 21. At 36 degree its declination makes months of
// spring and autumn come out up to 2.5 % low. NaN outside.
func ExtraterrestrialDay(latitude float64, day int) float64 {
	w := SunsetAngle(latitude, day) * radian
	sinP, cosP := math.Sincos(latitude * radian)
	sinD, cosD := math.Sincos(DayDeclination(day) * radian)
	return 24 * 60 / math.Pi * faoSolarConstant * InverseDistance(day) * (w*sinP*sinD + cosP*cosD*math.Sin(w))
}

// Coefficients of Angstrom where none were fitted, fractions [FAO56] eq. 35.
const (
	angstromA = 0.25
	angstromB = 0.50
)

// GlobalFromSunshine returns the radiation on level ground in J/(m² d): (0.25 +
// 0.50 n/N) Ra [FAO56] eq. 35, where extraterrestrial is Ra, J/(m² d), and
// sunshine is n/N, the fraction 0 to 1 of the day with bright sun. NaN outside.
func GlobalFromSunshine(extraterrestrial, sunshine float64) float64 {
	if !(extraterrestrial >= 0) || !(sunshine >= 0 && sunshine <= 1) {
		return math.NaN()
	}
	return (angstromA + angstromB*sunshine) * extraterrestrial
}

// ClearSkyDay returns the radiation on level ground in J/(m² d) of a cloudless
// day where extraterrestrial, J/(m² d), falls on the atmosphere, at altitude,
// m, -500 to 9000: [FAO56] eq. 37. NaN outside.
func ClearSkyDay(extraterrestrial, altitude float64) float64 {
	if !(extraterrestrial >= 0) || !altitudeRange.Contains(altitude) {
		return math.NaN()
	}
	return (0.75 + 2e-5*altitude) * extraterrestrial
}
