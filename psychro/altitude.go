package psychro

import "math"

// Standard atmosphere [HoF17] ch. 1 eq. 3 and 4.
const (
	standardPressure = 101325.0   // Pa
	lapseFactor      = 2.25577e-5 // 1/m, eq. 3
	lapseExponent    = 5.2559     // eq. 3
	standardLapse    = 0.0065     // K/m, eq. 4
	standardZero     = 15.0       // °C, eq. 4
)

// StandardPressure returns the pressure of the standard atmosphere, Pa, at the
// given altitude above sea level, m, from -500 to 11000: [HoF17] ch. 1 eq. 3.
// NaN outside.
func StandardPressure(altitude float64) float64 {
	if !altitudesRange.Contains(altitude) {
		return nan
	}
	return standardPressure * math.Pow(1-lapseFactor*altitude, lapseExponent) // eq. 3
}

// StandardTemperature returns the temperature of the standard atmosphere, °C,
// at the given altitude above sea level, m, from -500 to 11000: [HoF17] ch. 1
// eq. 4. NaN outside.
func StandardTemperature(altitude float64) float64 {
	if !altitudesRange.Contains(altitude) {
		return nan
	}
	return standardZero - standardLapse*altitude // eq. 4
}

// StandardAltitude returns the altitude above sea level, m, at which the
// standard atmosphere has pressure p, Pa: the inverse of StandardPressure. NaN
// where that lies outside -500 to 11000 m.
func StandardAltitude(p float64) float64 {
	z := (1 - math.Pow(p/standardPressure, 1/lapseExponent)) / lapseFactor
	if !(z > altitudesRange.Min-1e-6 && z < altitudesRange.Max+1e-6) {
		return nan
	}
	return z
}
