package envelope

import (
	"errors"
	"math"
	"time"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// Clear-sky emissivity of Berdahl and Martin, [BerMar84]: a quadratic in the
// dew point over 100 °C, a daily swing, and the station pressure in mbar.
const (
	berdahl0, berdahl1, berdahl2 = 0.711, 0.56, 0.73
	berdahlDay                   = 0.013
	berdahlPressure              = 1.2e-4
	cloudBaseScale               = 8200.0 // m, decay of the cloud effect with height, Martin and Berdahl 1984 (from memory)
	swinbankFactor               = 0.0552 // K^-0.5, [Swinbank63]
)

// Ranges of the sky's inputs.
var (
	skyDewPointRange = domain.Range{Min: -40, Max: 30, Unit: "°C", Source: "chosen around the sites of Berdahl and Martin, -20 to 30 °C"}
	skyHourRange     = domain.Range{Min: 0, Max: 24, Unit: "h", Source: "definition"}
	cloudBaseRange   = domain.Range{Min: 0, Max: 15e3, Unit: "m", Source: "chosen"}
)

// lowCloudBase is the height in m of the underside of low cloud, which covers
// a night sky most often (chosen).
const lowCloudBase = 1000.0

// SkyTemperature returns the effective black temperature of the sky in °C over
// the outside air, at the hour since midnight in solar time, 0 to 24 h, as in 6*time.Hour, with
// cloud the fraction of the sky, 0 to 1, under low cloud whose base lies at
// 1,000 m: SkyEmissivity, CloudySky and SkyTemperatureOf in one call. The
// error joins a *RangeError for each fault; the dew point of the air must lie
// within -40 to 30 °C, where the emissivity is known.
func SkyTemperature(outside psychro.State, hour time.Duration, cloud float64) (float64, error) {
	return skyTemperature(outside, hour, cloud, skyNames{"outside", "hour", "cloud"})
}

// skyNames are the caller's words for the inputs of the sky.
type skyNames struct{ outside, hour, cloud string }

func skyTemperature(outside psychro.State, hour time.Duration, cloud float64, name skyNames) (float64, error) {
	if err := pressureRange.Check("pressure of "+name.outside, outside.Pressure()); err != nil {
		return nan, err
	}
	dew := outside.DewPoint()
	if err := errors.Join(
		coverTemperatureRange.Check("temperature of "+name.outside, outside.Temperature()),
		skyDewPointRange.Check("dew point of "+name.outside, dew),
		skyHourRange.Check(name.hour, hours(hour)),
		fractionRange.Check(name.cloud, cloud),
	); err != nil {
		return nan, err
	}
	clear := SkyEmissivity(dew, hour, outside.Pressure())
	return SkyTemperatureOf(outside.Temperature(), CloudySky(clear, Clouds{Cover: cloud, Emittance: 1, Base: lowCloudBase})), nil
}

// SkyEmissivity returns the emissivity of a clear sky as a fraction, referred
// to the air temperature at the ground, for the dewPoint, °C, -40 to 30, the
// hour since midnight in solar time, 0 to 24 h, as in 6*time.Hour, and the
// pressure p, Pa, 50000 to 110000: [BerMar84] eq. 3 with daily and pressure term. NaN outside these.
// Stated accuracy: 0.03 for single hours, better for monthly means (from
// memory).
func SkyEmissivity(dewPoint float64, hour time.Duration, p float64) float64 {
	h := hours(hour)
	if !skyDewPointRange.Contains(dewPoint) || !skyHourRange.Contains(h) || !pressureRange.Contains(p) {
		return nan
	}
	x := dewPoint / 100
	return berdahl0 + berdahl1*x + berdahl2*x*x +
		berdahlDay*math.Cos(2*math.Pi*h/24) + berdahlPressure*(p/100-1000) // [BerMar84]
}

// hours returns the hour of the day in h. A bare number, which counts
// nanoseconds, is no hour: NaN.
func hours(hour time.Duration) float64 {
	if hour > 0 && hour < time.Second {
		return nan
	}
	return hour.Hours()
}

// Clouds are one layer of cloud.
type Clouds struct {
	Cover     float64 // fraction, 0 to 1, of the sky
	Emittance float64 // fraction, 0 to 1: 1 for low and middle cloud, about 0.4 for cirrus
	Base      float64 // m, 0 to 15000, height of the underside above the ground
}

// CloudySky returns the emissivity of a sky under the clouds, a fraction, from
// its clear value, fraction, 0 to 1: clear + (1 - clear) cover emittance
// exp(-base/8.2 km), Martin and Berdahl in [BerMar84] (from memory). NaN
// outside the ranges.
func CloudySky(clear float64, c Clouds) float64 {
	if !fractionRange.Contains(clear) || !fractionRange.Contains(c.Cover) ||
		!fractionRange.Contains(c.Emittance) || !cloudBaseRange.Contains(c.Base) {
		return nan
	}
	return clear + (1-clear)*c.Cover*c.Emittance*math.Exp(-c.Base/cloudBaseScale)
}

// SkyTemperatureOf returns the effective black temperature of the sky in °C
// for air at t, °C, -60 to 60, and the sky's emissivity, fraction, 0 to 1; NaN
// outside these.
func SkyTemperatureOf(t, emissivity float64) float64 {
	if !coverTemperatureRange.Contains(t) || !fractionRange.Contains(emissivity) {
		return nan
	}
	return fourthRoot(emissivity)*(t+constant.ZeroCelsius) - constant.ZeroCelsius
}

// Swinbank returns the temperature of a clear sky in °C from the air
// temperature t, °C, -30 to 40, alone, 0.0552 T^1.5 in kelvin [Swinbank63]: a fallback
// when no humidity is known, 5 K and more off in dry or humid air. NaN outside.
func Swinbank(t float64) float64 {
	if !swinbankAirRange.Contains(t) {
		return nan
	}
	k := t + constant.ZeroCelsius
	return swinbankFactor*k*math.Sqrt(k) - constant.ZeroCelsius
}

// swinbankAirRange is the range in °C of Swinbank.
var swinbankAirRange = domain.Range{Min: -30, Max: 40, Unit: "°C", Source: "chosen; measured at 8 to 30 °C (from memory)"}

// Sky emissivity of Clark and Allen with the clouds of Walton, [ClaAll78].
const (
	clarkAllen0, clarkAllen1  = 0.787, 0.764
	clarkAllenKelvin          = 273.0 // K, as the source writes it
	walton1, walton2, walton3 = 0.0224, -0.0035, 0.00028
	tenths                    = 10
)

// clarkAllenDewPointRange is the range in °C of ClarkAllen: above it an overcast
// sky would radiate more than a black body.
var clarkAllenDewPointRange = domain.Range{Min: -40, Max: 29, Unit: "°C", Source: "chosen"}

// ClarkAllen returns the emissivity of a sky as a fraction, referred to the air
// temperature at the ground, for the dewPoint, °C, -40 to 29, and the cloud
// cover, fraction, 0 to 1: (0.787 + 0.764 ln(Tdp/273)) (1 + 0.0224 N - 0.0035
// N² + 0.00028 N³) with N in tenths, [ClaAll78]. An alternative to
// SkyEmissivity and CloudySky that needs no cloud height. NaN outside these.
func ClarkAllen(dewPoint, cloud float64) float64 {
	if !clarkAllenDewPointRange.Contains(dewPoint) || !fractionRange.Contains(cloud) {
		return nan
	}
	n := tenths * cloud
	clear := clarkAllen0 + clarkAllen1*math.Log((dewPoint+constant.ZeroCelsius)/clarkAllenKelvin) // [ClaAll78]
	return clear * (1 + n*(walton1+n*(walton2+n*walton3)))                                        // Walton in [ClaAll78]
}
