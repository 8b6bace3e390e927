package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// Reference evapotranspiration of [Fao98] eq. 6 and 53, from eq. 3 with grass
// of 0.12 m, 70 s/m and an albedo of 0.23.
const (
	faoWater      = 0.408e-6 // kg/J, 1/lambda
	faoDayDry     = 900.0    // K s/(m d) and units of eq. 6
	faoHourDry    = 37.0     // K s/(m h) and units of eq. 53
	faoResistance = 0.34     // s/m, 70/208, eq. 6
	faoCelsius    = 273.0    // K, eq. 6
)

// Ranges of reference evapotranspiration.
var (
	netRadiationRange = domain.Range{Min: -15e6, Max: 40e6, Unit: "J/m²", Source: "net radiation of a day or an hour"}
	soilHeatRange     = domain.Range{Min: -10e6, Max: 15e6, Unit: "J/m²", Source: "heat into the ground of a day or an hour"}
	faoVapourRange    = domain.Range{Min: 0, Max: 20000, Unit: "Pa", Source: "vapour pressures of air to 60 °C"}
)

// Grass is what the reference evapotranspiration asks for. The paper
// has kPa and MJ/m²; here they are Pa and J/m² as everywhere. Radiation outside
// the atmosphere and under a clear sky comes from package lighting.
type Grass struct {
	Temperature float64 // °C, mean of the period
	Saturation  float64 // Pa, saturation vapour pressure: of a day the mean of those at lowest and highest temperature
	Vapour      float64 // Pa, vapour pressure
	Wind        float64 // m/s, at 2 m
	Net         float64 // J/m² in the period, net radiation
	Soil        float64 // J/m² in the period, heat that goes into the ground
	Pressure    float64 // Pa
}

// check joins every fault of g, by field.
func (g Grass) check() error {
	low := error(nil)
	if g.Vapour > g.Saturation && faoVapourRange.Contains(g.Vapour) && faoVapourRange.Contains(g.Saturation) {
		low = &RangeError{Field: "Vapour", Value: g.Vapour, Min: 0, Max: g.Saturation, Unit: "Pa", Source: "saturation"}
	}
	return errors.Join(
		domain.Range{Min: -40, Max: 60, Unit: "°C", Source: "weather"}.Check("Temperature", g.Temperature),
		faoVapourRange.Check("Saturation", g.Saturation),
		faoVapourRange.Check("Vapour", g.Vapour),
		low,
		windRange.Check("Wind", g.Wind),
		netRadiationRange.Check("Net", g.Net),
		soilHeatRange.Check("Soil", g.Soil),
		pressureRange.Check("Pressure", g.Pressure),
	)
}

// ReferenceEvapotranspiration is ETo with the terms it is made of.
type ReferenceEvapotranspiration struct {
	Slope     float64 // Pa/K, of the saturation vapour pressure [Fao98] eq. 13
	Psychro   float64 // Pa/K, psychrometric constant [Fao98] eq. 8
	Factor    float64 // dimensionless, 1 + 0.34 u2
	Radiation float64 // kg/m² (mm) in the period, the share of net radiation
	Dryness   float64 // kg/m² (mm) in the period, the share of wind and dryness
	ETo       float64 // kg/m² (mm) in the period, the sum
}

// Day returns the reference evapotranspiration of a day, or of the mean day of
// a month, mm/d: [Fao98] eq. 6. The error joins the faults of g.
func (g Grass) Day() (ReferenceEvapotranspiration, error) { return g.period(faoDayDry) }

// Hour returns the reference evapotranspiration of an hour, mm/h: [Fao98] eq.
// 53. The error joins the faults of g.
func (g Grass) Hour() (ReferenceEvapotranspiration, error) { return g.period(faoHourDry) }

func (g Grass) period(dry float64) (ReferenceEvapotranspiration, error) {
	if err := g.check(); err != nil {
		return ReferenceEvapotranspiration{}, err
	}
	e := ReferenceEvapotranspiration{
		Slope:   psychro.FAO56Slope(g.Temperature),
		Psychro: psychro.FAO56PsychrometricConstant(g.Pressure),
		Factor:  1 + faoResistance*g.Wind,
	}
	under := e.Slope + e.Psychro*e.Factor
	e.Radiation = faoWater * e.Slope * (g.Net - g.Soil) / under
	e.Dryness = e.Psychro * dry / (g.Temperature + faoCelsius) * g.Wind * (g.Saturation - g.Vapour) / 1000 / under
	e.ETo = e.Radiation + e.Dryness // eq. 6, 53
	return e, nil
}

// FaoMeanSaturation returns the mean saturation vapour pressure of a day, Pa,
// from its lowest and highest temperature, °C (TemperatureRange): the mean of
// the two ends' [Fao98] eq. 12. NaN outside -40 to 80 °C.
func FaoMeanSaturation(lowest, highest float64) float64 {
	if !temperatureRange.Contains(lowest) || !temperatureRange.Contains(highest) {
		return math.NaN()
	}
	return (psychro.FAO56(highest) + psychro.FAO56(lowest)) / 2 // eq. 12
}

// FaoVapour returns the vapour pressure of a day, Pa, from its lowest and
// highest temperature, °C (TemperatureRange), and its greatest and least
// relative humidity, most and least, fraction, of which the greatest stands
// with the lowest temperature: [Fao98] eq. 17. NaN outside.
func FaoVapour(lowest, highest, most, least float64) float64 {
	if !temperatureRange.Contains(lowest) || !temperatureRange.Contains(highest) || !shareRange.Contains(most) || !shareRange.Contains(least) {
		return math.NaN()
	}
	return (psychro.FAO56(lowest)*most + psychro.FAO56(highest)*least) / 2 // eq. 17
}

// Aspirated is the coefficient of an Asmann psychrometer, 1/K [Fao98] eq. 16.
const faoAspirated = 0.000662

// FaoVapourFromBulbs returns the vapour pressure, Pa, from dry and wet bulb of
// an aspirated psychrometer, °C (TemperatureRange), at the pressure, Pa
// (PressureRange): ea = e°(Tw) - 0.000662 P (Td - Tw) [Fao98] eq. 15 and 16.
// NaN outside, and for wet above dry.
func FaoVapourFromBulbs(dry, wet, pressure float64) float64 {
	if !temperatureRange.Contains(dry) || !temperatureRange.Contains(wet) || wet > dry || !pressureRange.Contains(pressure) {
		return math.NaN()
	}
	return psychro.FAO56(wet) - faoAspirated*pressure*(dry-wet) // eq. 15
}
