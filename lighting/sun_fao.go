package lighting

import (
	"math"
	"time"
)

// The daily radiation of FAO-56 [Allen98]. Days are counted from 1 on 1
// January; use the calendar day, not the shortcut int(30.4 month - 15).

// faoSolarConstant is in J/(m² min), [Allen98] eq. 21.
const faoSolarConstant = 0.0820e6

// InverseDistance returns the square of the mean over the actual distance of
// the sun, dimensionless, on day 1 to 366 of the year: [Allen98] eq. 23.
func InverseDistance(day int) float64 { return 1 + 0.033*math.Cos(yearAngle(day)) }

// DayDeclination returns the declination of the sun in degree on day 1 to 366
// of the year: [Allen98] eq. 24; up to 1.2 degree off in October.
func DayDeclination(day int) float64 { return 0.409 * math.Sin(yearAngle(day)-1.39) / radian }

func yearAngle(day int) float64 {
	if day < 1 || day > 366 {
		return math.NaN()
	}
	return 2 * math.Pi / 365 * float64(day)
}

// SunsetAngle returns the hour angle of sunset in degree at latitude, degree
// north, -90 to 90, on day 1 to 366: [Allen98] eq. 25; 0 in polar night, 180
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
// latitude, degree north, -90 to 90, on day 1 to 366: [Allen98] eq. 34; 0
// outside the ranges.
func DayLength(latitude float64, day int) time.Duration {
	w := SunsetAngle(latitude, day)
	if math.IsNaN(w) {
		return 0
	}
	return time.Duration(w / 7.5 * float64(time.Hour))
}

// ExtraterrestrialDay returns the radiation outside the atmosphere on a level
// square metre in a day, J/(m² d), at latitude, degree north, -90 to 90, on
// day 1 to 366: [Allen98] eq. 21. At 36 degree its declination makes months of
// spring and autumn come out up to 2.5 % low. NaN outside.
func ExtraterrestrialDay(latitude float64, day int) float64 {
	w := SunsetAngle(latitude, day) * radian
	sinP, cosP := math.Sincos(latitude * radian)
	sinD, cosD := math.Sincos(DayDeclination(day) * radian)
	return 24 * 60 / math.Pi * faoSolarConstant * InverseDistance(day) * (w*sinP*sinD + cosP*cosD*math.Sin(w))
}

// Angstrom returns the radiation on level ground in J/(m² d): (a + b n/N) Ra
// [Allen98] eq. 35, where extraterrestrial is Ra, J/(m² d), sunshine is n/N,
// the fraction 0 to 1 of the day with bright sun, and a and b are fractions;
// AngstromA and AngstromB stand for places without a calibration. NaN outside.
func Angstrom(extraterrestrial, sunshine, a, b float64) float64 {
	if !(extraterrestrial >= 0) || !(sunshine >= 0 && sunshine <= 1) || !(a >= 0 && b >= 0 && a+b <= 1) {
		return math.NaN()
	}
	return (a + b*sunshine) * extraterrestrial
}

// Coefficients of Angstrom where none were fitted, fractions [Allen98].
const (
	AngstromA = 0.25
	AngstromB = 0.50
)

// ClearSkyDay returns the radiation on level ground in J/(m² d) of a cloudless
// day where extraterrestrial, J/(m² d), falls on the atmosphere, at altitude,
// m, -500 to 9000: [Allen98] eq. 37. NaN outside.
func ClearSkyDay(extraterrestrial, altitude float64) float64 {
	if !(extraterrestrial >= 0) || !altitudeRange.Contains(altitude) {
		return math.NaN()
	}
	return (0.75 + 2e-5*altitude) * extraterrestrial
}
