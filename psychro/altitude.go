package psychro

import (
	"cloche.example/internal/atmosphere"
	"cloche.example/internal/constant"
)

const standardPressure = constant.StandardPressure // Pa

// StandardPressure returns the pressure of the standard atmosphere, Pa, at an
// altitude above sea level, m, -500 to 11000: [HoF17] ch. 1 eq. 3. NaN outside.
func StandardPressure(altitude float64) float64 { return atmosphere.Pressure(altitude) }

// StandardTemperature returns the temperature of the standard atmosphere, °C,
// at an altitude above sea level, m, -500 to 11000: [HoF17] ch. 1 eq. 4. NaN
// outside.
func StandardTemperature(altitude float64) float64 { return atmosphere.Temperature(altitude) }

// StandardAltitude returns the altitude above sea level, m, at which the
// standard atmosphere has pressure p, Pa: the inverse of StandardPressure. NaN
// where that lies outside -500 to 11000 m.
func StandardAltitude(p float64) float64 { return atmosphere.Altitude(p) }
