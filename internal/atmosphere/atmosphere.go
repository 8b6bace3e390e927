// Package atmosphere is the standard atmosphere that all of Cloche's packages
// share, in the form of the ASHRAE handbook.
//
// Source: HoF17, ASHRAE Handbook - Fundamentals (SI), 2017, ch. 1.
package atmosphere

import (
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// Standard atmosphere [HoF17] ch. 1 eq. 3 and 4.
const (
	lapseFactor   = 2.25577e-5 // 1/m, eq. 3
	lapseExponent = 5.2559     // eq. 3
	lapse         = 0.0065     // K/m, eq. 4
	seaLevel      = 15.0       // °C, eq. 4
)

// Altitudes are those for which the standard atmosphere answers.
func Altitudes() domain.Range {
	return domain.Range{Min: lowest, Max: highest, Unit: "m", Source: "ASHRAE Fundamentals 2017 ch. 1 eq. 3"}
}

const lowest, highest = -500, 11000 // m, ends of [HoF17] ch. 1 table 1

// Pressure returns the pressure, Pa, at an altitude above sea level, m, from
// -500 to 11000: [HoF17] ch. 1 eq. 3. NaN outside.
func Pressure(altitude float64) float64 {
	if !(altitude >= lowest && altitude <= highest) {
		return math.NaN()
	}
	return constant.StandardPressure * math.Pow(1-lapseFactor*altitude, lapseExponent) // eq. 3
}

// Temperature returns the temperature, °C, at an altitude above sea level, m,
// from -500 to 11000: [HoF17] ch. 1 eq. 4. NaN outside.
func Temperature(altitude float64) float64 {
	if !(altitude >= lowest && altitude <= highest) {
		return math.NaN()
	}
	return seaLevel - lapse*altitude // eq. 4
}

// Altitude is the inverse of Pressure: m above sea level, from Pa. NaN where
// that lies outside -500 to 11000 m.
func Altitude(pressure float64) float64 {
	const rounding = 1e-6 // m, so that the inverse answers at both ends
	z := (1 - math.Pow(pressure/constant.StandardPressure, 1/lapseExponent)) / lapseFactor
	if !(z > lowest-rounding && z < highest+rounding) {
		return math.NaN()
	}
	return z
}
