package ventilation

import (
	"math"

	"cloche.example/internal/domain"
)

// Radiation of [Fao98] ch. 3. The paper counts in MJ/m²; here all is in J/m².
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

// Ranges of the radiation of FAO-56.
var (
	dayRadiationRange = domain.Range{Min: 0, Max: 60e6, Unit: "J/m²", Source: "a day outside the atmosphere has at most about 47 MJ/m²"}
	clearnessRange    = domain.Range{Min: 0.25, Max: 1, Unit: "dimensionless", Source: "FAO-56: Rs/Rso is limited to 1, overcast is about 0.33"}
)

// SolarFromTemperature returns an estimate of the solar radiation, J/(m² d),
// from the day's lowest and highest temperature, °C, -40 to 80, and the
// radiation outside the atmosphere, extraterrestrial, J/(m² d), 0 to 60e6,
// inland or near a coast: Rs = k sqrt(Tmax - Tmin) Ra with k 0.16 or 0.19
// [Fao98] eq. 50. NaN outside, and for highest below lowest.
func SolarFromTemperature(lowest, highest, extraterrestrial float64, coast bool) float64 {
	if !temperatureRange.Contains(lowest) || !temperatureRange.Contains(highest) || highest < lowest || !dayRadiationRange.Contains(extraterrestrial) {
		return math.NaN()
	}
	k := faoKRs
	if coast {
		k = faoKRsCoast
	}
	return k * math.Sqrt(highest-lowest) * extraterrestrial // eq. 50
}

// NetShortwave returns the solar radiation that grass keeps, J/m², of what
// falls on it in a day or an hour, solar, J/m², 0 to 60e6: Rns = (1 - 0.23) Rs
// [Fao98] eq. 38. NaN outside.
func NetShortwave(solar float64) float64 {
	if !dayRadiationRange.Contains(solar) {
		return math.NaN()
	}
	return (1 - faoAlbedo) * solar // eq. 38
}

// NetLongwaveDay returns the heat radiation that grass loses over a day,
// J/(m² d), from the day's lowest and highest temperature, °C
// (TemperatureRange), the vapour pressure, Pa (0 to 10000), and clearness, the
// dimensionless ratio Rs/Rso (ClearnessRange): [Fao98] eq. 39. NaN outside.
func NetLongwaveDay(lowest, highest, vapour, clearness float64) float64 {
	if !temperatureRange.Contains(lowest) || !temperatureRange.Contains(highest) || highest < lowest {
		return math.NaN()
	}
	a, b := lowest+faoKelvin, highest+faoKelvin
	return faoSigmaDay * (a*a*a*a + b*b*b*b) / 2 * faoSky(vapour, clearness) // eq. 39
}

// NetLongwaveHour returns the heat radiation that grass loses in an hour,
// J/m², at the temperature, °C (TemperatureRange), with the vapour
// pressure, Pa (0 to 10000), and clearness, the dimensionless ratio Rs/Rso
// (ClearnessRange) of the hour, by night of the last hours before sunset:
// [Fao98] eq. 39 with sigma/24 (ch. 4, hourly time step). NaN outside.
func NetLongwaveHour(temperature, vapour, clearness float64) float64 {
	if !temperatureRange.Contains(temperature) {
		return math.NaN()
	}
	a := temperature + faoKelvin
	return faoSigmaDay / 24 * a * a * a * a * faoSky(vapour, clearness)
}

// faoSky is what humidity and clouds leave of the loss, eq. 39.
func faoSky(vapour, clearness float64) float64 {
	if !(vapour >= 0 && vapour <= 10000) || !clearnessRange.Contains(clearness) {
		return math.NaN()
	}
	return (faoHumid1 - faoHumid2*math.Sqrt(vapour/1000)) * (faoCloud1*clearness - faoCloud2)
}

// Soil heat of [Fao98] eq. 43 to 46.
const (
	faoSoilMonths = 0.07e6 // J/(m² d K), eq. 43
	faoSoilMonth  = 0.14e6 // J/(m² d K), eq. 44
	faoSoilDay    = 0.1    // fraction of Rn, eq. 45
	faoSoilNight  = 0.5    // fraction of Rn, eq. 46
)

// SoilHeatMonth returns the heat that goes into the ground in a month,
// J/(m² d), from the mean temperatures of the month before and the month
// after, before and after, °C (TemperatureRange): G = 0.07 (T(i+1) - T(i-1)),
// in MJ there, [Fao98] eq. 43. NaN outside.
func SoilHeatMonth(before, after float64) float64 {
	if !temperatureRange.Contains(before) || !temperatureRange.Contains(after) {
		return math.NaN()
	}
	return faoSoilMonths * (after - before) // eq. 43
}

// SoilHeatMonthSoFar is SoilHeatMonth with the month's own mean temperature,
// now, °C, in place of the next one's: G = 0.14 (T(i) - T(i-1)), in MJ there,
// [Fao98] eq. 44; before in °C (TemperatureRange), J/(m² d). NaN outside.
func SoilHeatMonthSoFar(before, now float64) float64 {
	if !temperatureRange.Contains(before) || !temperatureRange.Contains(now) {
		return math.NaN()
	}
	return faoSoilMonth * (now - before) // eq. 44
}

// SoilHeatHour returns the heat that goes into the ground under grass in an
// hour, J/m², from the net radiation net, J/m², -5e6 to 5e6: a tenth of it by
// day, half of it by night [Fao98] eq. 45 and 46. NaN outside.
func SoilHeatHour(net float64, day bool) float64 {
	if !(net >= -5e6 && net <= 5e6) {
		return math.NaN()
	}
	if day {
		return faoSoilDay * net // eq. 45
	}
	return faoSoilNight * net // eq. 46
}
