package ventilation

import (
	"math"

	"cloche.example/internal/domain"
)

// Radiation of [Fao98] ch. 3, in MJ/m² as the paper has it.
const (
	faoSolarConstant = 0.0820   // MJ/(m² min) [Fao98] eq. 21
	faoDistance      = 0.033    // dimensionless, eq. 23
	faoDeclination   = 0.409    // rad, eq. 24
	faoPhase         = 1.39     // rad, eq. 24
	faoDays          = 365.0    // days, eq. 23 and 24
	faoDayFactor     = 24 * 60  // min a day, eq. 21
	faoCloudyShare   = 0.25     // dimensionless a_s, eq. 35
	faoSunnyShare    = 0.50     // dimensionless b_s, eq. 35
	faoClear         = 0.75     // dimensionless, eq. 37
	faoClearHeight   = 2e-5     // 1/m, eq. 37
	faoAlbedo        = 0.23     // fraction, eq. 38
	faoSigmaDay      = 4.903e-9 // MJ/(K⁴ m² d), eq. 39
	faoHumid1        = 0.34     // dimensionless, eq. 39
	faoHumid2        = 0.14     // 1/sqrt(kPa), eq. 39
	faoCloud1        = 1.35     // dimensionless, eq. 39
	faoCloud2        = 0.35     // dimensionless, eq. 39
	faoKelvin        = 273.16   // K, eq. 39
	faoKRs           = 0.16     // 1/sqrt(K), eq. 50, inland
	faoKRsCoast      = 0.19     // 1/sqrt(K), eq. 50, coast
)

// Ranges of the radiation of FAO-56.
var (
	latitudeRange     = domain.Range{Min: -90, Max: 90, Unit: "degree", Source: "north positive"}
	longitudeRange    = domain.Range{Min: -180, Max: 180, Unit: "degree", Source: "east positive"}
	dayRange          = domain.Range{Min: 1, Max: 366, Unit: "count of days from 1 January", Source: "calendar"}
	altitudeRange     = domain.Range{Min: -500, Max: 6000, Unit: "m", Source: "above sea level; cultivated land"}
	dayRadiationRange = domain.Range{Min: 0, Max: 60, Unit: "MJ/(m² d)", Source: "outside the atmosphere at most about 47"}
	sunHoursRange     = domain.Range{Min: 0, Max: 24, Unit: "h", Source: "a day"}
	clearnessRange    = domain.Range{Min: 0.25, Max: 1, Unit: "dimensionless", Source: "FAO-56: Rs/Rso is limited to 1, overcast is about 0.33"}
)

// SunGeometry is the sun of a day by FAO-56.
type SunGeometry struct {
	Distance    float64 // dimensionless, inverse relative distance of earth and sun dr [Fao98] eq. 23
	Declination float64 // rad, dimensionless [Fao98] eq. 24
	SunsetAngle float64 // rad, dimensionless, sunset hour angle [Fao98] eq. 25; 0 in polar night, pi in polar day
}

// SunOfDay returns the sun's geometry at latitude, degree (LatitudeRange), on
// day, a count of days from 1 January (DayRange). NaN outside. Angles are in
// radian, as the paper has them.
func SunOfDay(latitude, day float64) SunGeometry {
	if !latitudeRange.Contains(latitude) || !dayRange.Contains(day) {
		n := math.NaN()
		return SunGeometry{n, n, n}
	}
	year := 2 * math.Pi / faoDays * day
	g := SunGeometry{
		Distance:    1 + faoDistance*math.Cos(year),           // eq. 23
		Declination: faoDeclination * math.Sin(year-faoPhase), // eq. 24
	}
	g.SunsetAngle = math.Acos(max(-1, min(1, -math.Tan(radian(latitude))*math.Tan(g.Declination)))) // eq. 25
	return g
}

func radian(degree float64) float64 { return degree * math.Pi / 180 }

// ExtraterrestrialDay returns the radiation outside the atmosphere on a
// horizontal plane, MJ/(m² d), at latitude, degree (LatitudeRange), on day, a
// count of days from 1 January (DayRange): [Fao98] eq. 21. NaN outside.
func ExtraterrestrialDay(latitude, day float64) float64 {
	g := SunOfDay(latitude, day)
	phi := radian(latitude)
	return faoDayFactor / math.Pi * faoSolarConstant * g.Distance *
		(g.SunsetAngle*math.Sin(phi)*math.Sin(g.Declination) + math.Cos(phi)*math.Cos(g.Declination)*math.Sin(g.SunsetAngle)) // eq. 21
}

// DaylightHours returns the longest possible sunshine, h, at latitude, degree
// (LatitudeRange), on day, a count of days from 1 January (DayRange):
// N = 24 ws/pi [Fao98] eq. 34. NaN outside.
func DaylightHours(latitude, day float64) float64 {
	return 24 / math.Pi * SunOfDay(latitude, day).SunsetAngle // eq. 34
}

// SolarHour is the place of an hour in the day by FAO-56.
type SolarHour struct {
	Correction float64 // h, seasonal correction of solar time Sc [Fao98] eq. 32
	Angle      float64 // rad, dimensionless, solar time angle at the middle of the period [Fao98] eq. 31
	Radiation  float64 // MJ/m² in the period, extraterrestrial [Fao98] eq. 28; 0 with the sun down
}

// ExtraterrestrialHour returns the sun's place and radiation for a period of
// hours length, h (0 to 24), around the clock time middle, h (0 to 24), at
// latitude, degree (LatitudeRange), and longitude, degree east
// (LongitudeRange), in a zone whose meridian lies at meridian, degree east, on
// day, a count of days from 1 January (DayRange): [Fao98] eq. 28 to 33. What of
// the period lies before sunrise or after sunset does not count: the paper's
// equations would give it a radiation below zero. NaN outside.
func ExtraterrestrialHour(latitude, longitude, meridian, day, middle, length float64) SolarHour {
	g := SunOfDay(latitude, day)
	if !longitudeRange.Contains(longitude) || !longitudeRange.Contains(meridian) || !sunHoursRange.Contains(middle) || !(length > 0 && length <= 24) || math.IsNaN(g.Distance) {
		n := math.NaN()
		return SolarHour{n, n, n}
	}
	b := 2 * math.Pi * (day - 81) / 364                                   // eq. 33
	sc := 0.1645*math.Sin(2*b) - 0.1255*math.Cos(b) - 0.025*math.Sin(b)   // eq. 32
	w := math.Pi / 12 * (middle + 0.06667*(longitude-meridian) + sc - 12) // eq. 31, longitudes east
	w = math.Remainder(w, 2*math.Pi)                                      // the day begins anew at midnight
	w1, w2 := w-math.Pi*length/24, w+math.Pi*length/24                    // eq. 29, 30
	if g.SunsetAngle < math.Pi {
		w1, w2 = max(w1, -g.SunsetAngle), min(w2, g.SunsetAngle)
	}
	s := SolarHour{Correction: sc, Angle: w}
	if w2 > w1 {
		phi := radian(latitude)
		s.Radiation = 12 * 60 / math.Pi * faoSolarConstant * g.Distance *
			((w2-w1)*math.Sin(phi)*math.Sin(g.Declination) + math.Cos(phi)*math.Cos(g.Declination)*(math.Sin(w2)-math.Sin(w1))) // eq. 28
	}
	return s
}

// SolarFromSunshine returns the solar radiation on the ground, MJ/(m² d), from
// the sunshine, h, of a day whose longest possible sunshine is daylight, h, and
// whose radiation outside the atmosphere is extraterrestrial, MJ/(m² d)
// (DayRadiationRange): Rs = (0.25 + 0.50 n/N) Ra [Fao98] eq. 35. NaN outside,
// and where sunshine exceeds daylight.
func SolarFromSunshine(sunshine, daylight, extraterrestrial float64) float64 {
	if !sunHoursRange.Contains(daylight) || !(sunshine >= 0 && sunshine <= daylight && daylight > 0) || !dayRadiationRange.Contains(extraterrestrial) {
		return math.NaN()
	}
	return (faoCloudyShare + faoSunnyShare*sunshine/daylight) * extraterrestrial // eq. 35
}

// SolarFromTemperature returns an estimate of the solar radiation, MJ/(m² d),
// from the day's lowest and highest temperature, °C (TemperatureRange), and
// the radiation outside the atmosphere, extraterrestrial, MJ/(m² d)
// (DayRadiationRange), inland or near a coast: Rs = k sqrt(Tmax - Tmin) Ra with
// k 0.16 or 0.19 [Fao98] eq. 50. NaN outside, and for highest below lowest.
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

// SolarClear returns the radiation of a clear sky, in the unit of
// extraterrestrial, MJ/(m² d) or MJ/(m² h) (DayRadiationRange), at altitude, m
// (AltitudeRange): Rso = (0.75 + 2e-5 z) Ra [Fao98] eq. 37. NaN outside.
func SolarClear(altitude, extraterrestrial float64) float64 {
	if !altitudeRange.Contains(altitude) || !dayRadiationRange.Contains(extraterrestrial) {
		return math.NaN()
	}
	return (faoClear + faoClearHeight*altitude) * extraterrestrial // eq. 37
}

// NetShortwave returns the solar radiation that grass keeps, in the unit of
// solar, MJ/(m² d) or MJ/(m² h) (DayRadiationRange): Rns = (1 - 0.23) Rs
// [Fao98] eq. 38. NaN outside.
func NetShortwave(solar float64) float64 {
	if !dayRadiationRange.Contains(solar) {
		return math.NaN()
	}
	return (1 - faoAlbedo) * solar // eq. 38
}

// NetLongwaveDay returns the heat radiation that grass loses over a day,
// MJ/(m² d), from the day's lowest and highest temperature, °C
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
// MJ/(m² h), at the temperature, °C (TemperatureRange), with the vapour
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
	faoSoilMonths = 0.07 // MJ/(m² d K), eq. 43
	faoSoilMonth  = 0.14 // MJ/(m² d K), eq. 44
	faoSoilDay    = 0.1  // fraction of Rn, eq. 45
	faoSoilNight  = 0.5  // fraction of Rn, eq. 46
)

// SoilHeatMonth returns the heat that goes into the ground in a month,
// MJ/(m² d), from the mean temperatures of the month before and the month
// after, before and after, °C (TemperatureRange): G = 0.07 (T(i+1) - T(i-1))
// [Fao98] eq. 43. NaN outside.
func SoilHeatMonth(before, after float64) float64 {
	if !temperatureRange.Contains(before) || !temperatureRange.Contains(after) {
		return math.NaN()
	}
	return faoSoilMonths * (after - before) // eq. 43
}

// SoilHeatMonthSoFar is SoilHeatMonth with the month's own mean temperature,
// now, °C, in place of the next one's: G = 0.14 (T(i) - T(i-1)), before in °C
// (TemperatureRange), MJ/(m² d) [Fao98] eq. 44. NaN outside.
func SoilHeatMonthSoFar(before, now float64) float64 {
	if !temperatureRange.Contains(before) || !temperatureRange.Contains(now) {
		return math.NaN()
	}
	return faoSoilMonth * (now - before) // eq. 44
}

// SoilHeatHour returns the heat that goes into the ground under grass in an
// hour, in the unit of net, the net radiation, MJ/(m² h) (-5 to 5): a tenth of
// it by day, half of it by night [Fao98] eq. 45 and 46. NaN outside.
func SoilHeatHour(net float64, day bool) float64 {
	if !(net >= -5 && net <= 5) {
		return math.NaN()
	}
	if day {
		return faoSoilDay * net // eq. 45
	}
	return faoSoilNight * net // eq. 46
}
