package ventilation

import (
	"math"

	"cloche.example/internal/domain"
)

// Radiation of [FAO56] ch. 3. The paper counts in MJ/m²; here all is in J/m².
const (
	faoAlbedo   = 0.23     // fraction, eq. 38
	faoSigmaDay = 4.903e-3 // J/(K⁴ m² d), eq. 39
	faoHumid1   = 0.34     // dimensionless, eq. 39
	faoHumid2   = 0.14     // 1/sqrt(kPa), eq. 39
	faoCloud1   = 1.35     // dimensionless, eq. 39
	faoCloud2   = 0.35     // dimensionless, eq. 39
	faoKelvin   = 273.16   // K, eq. 39
	faoKRs      = 0.16     // 1/sqrt(K), eq. 50, inland
	faoKRsCoast = 0.19     // 1/sqrt(K), eq. 50, coast
)

// Ranges of the radiation of FAO56.
var (
	faoTemperatureRange = domain.Range{Min: -40, Max: 60, Unit: "°C", Source: "weather"}
	dayRadiationRange   = domain.Range{Min: 0, Max: 60e6, Unit: "J/m²", Source: "a day outside the atmosphere has at most about 47 MJ/m²"}
	hourRadiationRange  = domain.Range{Min: 0, Max: 6e6, Unit: "J/m²", Source: "an hour outside the atmosphere has at most about 4.9 MJ/m²"}
	clearnessRange      = domain.Range{Min: 0.25, Max: 1, Unit: "fraction", Source: "FAO56: Rs/Rso is limited to 1, overcast is about 0.33"}
)

// FAO56SolarFromTemperature returns an estimate of the solar radiation, J/m² in
// a day, from the day's lowest and highest temperature, °C, -40 to 60, and the
// radiation outside the atmosphere, extraterrestrial, J/m², 0 to 60e6, inland or
// near a coast: Rs = k sqrt(Tmax - Tmin) Ra with k 0.16 or 0.19 [FAO56] eq. 50.
// NaN outside, and for highest below lowest.
func FAO56SolarFromTemperature(lowest, highest, extraterrestrial float64, coast bool) float64 {
	if !faoTemperatureRange.Contains(lowest) || !faoTemperatureRange.Contains(highest) || highest < lowest || !dayRadiationRange.Contains(extraterrestrial) {
		return math.NaN()
	}
	k := faoKRs
	if coast {
		k = faoKRsCoast
	}
	return k * math.Sqrt(highest-lowest) * extraterrestrial // eq. 50
}

// netShortwave returns the solar radiation that grass keeps of what falls on
// it, in the unit of solar: Rns = (1 - 0.23) Rs [FAO56] eq. 38.
func netShortwave(solar float64) float64 { return (1 - faoAlbedo) * solar } // eq. 38

// netLongwaveDay returns the heat radiation that grass loses over a day, J/m²,
// from the day's lowest and highest temperature, °C, the vapour pressure, Pa,
// and clearness, the ratio Rs/Rso: [FAO56] eq. 39.
func netLongwaveDay(lowest, highest, vapour, clearness float64) float64 {
	a, b := lowest+faoKelvin, highest+faoKelvin
	return faoSigmaDay * (a*a*a*a + b*b*b*b) / 2 * faoSky(vapour, clearness) // eq. 39
}

// netLongwaveHour returns the heat radiation that grass loses in an hour, J/m²:
// [FAO56] eq. 39 with sigma/24 (ch. 4, hourly time step).
func netLongwaveHour(temperature, vapour, clearness float64) float64 {
	a := temperature + faoKelvin
	return faoSigmaDay / 24 * a * a * a * a * faoSky(vapour, clearness)
}

// faoSky is what humidity and clouds leave of the loss, eq. 39.
func faoSky(vapour, clearness float64) float64 {
	return (faoHumid1 - faoHumid2*math.Sqrt(vapour/1000)) * (faoCloud1*clearness - faoCloud2)
}

// Soil heat of [FAO56] eq. 43 to 46.
const (
	faoSoilMonths = 0.07e6 // J/(m² d K), eq. 43
	faoSoilMonth  = 0.14e6 // J/(m² d K), eq. 44
	faoSoilDay    = 0.1    // fraction of Rn, eq. 45
	faoSoilNight  = 0.5    // fraction of Rn, eq. 46
)

// FAO56SoilHeatMonth returns the heat that goes into the ground in a mean day of
// a month, J/m², from the mean temperatures of the month before and the month
// after, before and after, °C, -40 to 60: G = 0.07 (T(i+1) - T(i-1)), in MJ
// there, [FAO56] eq. 43. NaN outside.
func FAO56SoilHeatMonth(before, after float64) float64 {
	if !faoTemperatureRange.Contains(before) || !faoTemperatureRange.Contains(after) {
		return math.NaN()
	}
	return faoSoilMonths * (after - before) // eq. 43
}

// FAO56SoilHeatMonthSoFar is FAO56SoilHeatMonth with the month's own mean
// temperature in place of the next one's, before and now in °C, -40 to 60:
// G = 0.14 (T(i) - T(i-1)), in MJ there, [FAO56] eq. 44; J/m². NaN outside.
func FAO56SoilHeatMonthSoFar(before, now float64) float64 {
	if !faoTemperatureRange.Contains(before) || !faoTemperatureRange.Contains(now) {
		return math.NaN()
	}
	return faoSoilMonth * (now - before) // eq. 44
}

// soilHeatHour returns the heat that goes into the ground under grass in an
// hour, in the unit of the net radiation net: a tenth of it by day, half of it
// by night [FAO56] eq. 45 and 46.
func soilHeatHour(net float64, day bool) float64 {
	if day {
		return faoSoilDay * net // eq. 45
	}
	return faoSoilNight * net // eq. 46
}
