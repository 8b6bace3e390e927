package lighting

import (
	"time"

	"cloche.example/internal/sun"
)

// The daily radiation of FAO56. Days are counted from 1 on 1 January; use the
// calendar day, not the shortcut int(30.4 month - 15).

// DayLength returns the time between sunrise and sunset without refraction, h,
// at latitude, degree north, -90 to 90, on day 1 to 366 of the year: [FAO56]
// eq. 34. NaN outside.
func DayLength(latitude float64, day int) float64 { return sun.DayLength(latitude, day) }

// ExtraterrestrialDay returns the radiation outside the atmosphere on a level
// square metre in a day, J/(m² d), at latitude, degree north, -90 to 90, on
// day 1 to 366 of the year: [FAO56] eq. 21. At 36 degree its declination makes
// months of spring and autumn come out up to 2.5 % low. NaN outside.
func ExtraterrestrialDay(latitude float64, day int) float64 {
	return sun.ExtraterrestrialDay(latitude, day)
}

// SunPeriod is a part of a day by the clock.
type SunPeriod struct {
	Latitude  float64       // degree north, -90 to 90
	Longitude float64       // degree east, -180 to 180
	Day       int           // day of the year, 1 to 366
	Zone      time.Duration // the clock less UTC, -12 h to 14 h
	From      time.Duration // time of day at which the period begins, 0 to 24 h
	Until     time.Duration // time of day at which it ends, From to 24 h
}

// Extraterrestrial returns the radiation outside the atmosphere on a level
// square metre in the period, J/m²: [FAO56] eqs. 28 to 33. What of the period
// lies before sunrise or after sunset does not count. All faults are reported
// together.
func (p SunPeriod) Extraterrestrial() (float64, error) { return sun.Period(p).Extraterrestrial() }

// GlobalFromSunshine returns the radiation on level ground in J/(m² d) where
// extraterrestrial, J/(m² d), at least 0, falls on the atmosphere and bright
// sun stands in the fraction sunshine, 0 to 1, of the day: (0.25 + 0.50 n/N) Ra,
// for places without a calibration of their own [FAO56] eq. 35. NaN outside.
func GlobalFromSunshine(extraterrestrial, sunshine float64) float64 {
	return sun.GlobalFromSunshine(extraterrestrial, sunshine)
}

// ClearSkyDay returns the radiation on level ground in J/(m² d) of a cloudless
// day where extraterrestrial, J/(m² d), at least 0, falls on the atmosphere, at
// altitude, m, -500 to 9000: [FAO56] eq. 37. NaN outside.
func ClearSkyDay(extraterrestrial, altitude float64) float64 {
	return sun.ClearSkyDay(extraterrestrial, altitude)
}
