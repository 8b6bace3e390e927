package ventilation

import (
	"errors"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// Reference evapotranspiration of [FAO56] eq. 6 and 53, from eq. 3 with grass
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
	grassTemperatureRange = domain.Range{Min: -40, Max: 60, Unit: "°C", Source: "weather"}
	netRadiationRange     = domain.Range{Min: -15e6, Max: 40e6, Unit: "J/m²", Source: "net radiation of a day or an hour"}
	soilHeatRange         = domain.Range{Min: -10e6, Max: 15e6, Unit: "J/m²", Source: "heat into the ground of a day or an hour"}
	faoVapourRange        = domain.Range{Min: 0, Max: 20000, Unit: "Pa", Source: "vapour pressures of air to 60 °C"}
)

// Grass is what the reference evapotranspiration asks for. GrassDay and
// GrassHour make it of what a weather station measures. The paper has kPa and
// MJ/m²; here they are Pa and J/m² as everywhere.
type Grass struct {
	Temperature float64 // °C, -40 to 60, mean of the period
	Saturation  float64 // Pa, 0 to 20000, saturation vapour pressure: of a day the mean of those at lowest and highest temperature
	Vapour      float64 // Pa, 0 to 20000, vapour pressure; at most Saturation
	Wind        float64 // m/s, 0 to 45, at 2 m
	Net         float64 // J/m² in the period, -15e6 to 40e6, net radiation
	Soil        float64 // J/m² in the period, -10e6 to 15e6, heat that goes into the ground
	Pressure    float64 // Pa, 60000 to 110000
}

// check joins every fault of g, by field.
func (g Grass) check() error {
	low := error(nil)
	if g.Vapour > g.Saturation && faoVapourRange.Contains(g.Vapour) && faoVapourRange.Contains(g.Saturation) {
		low = &RangeError{Field: "Vapour", Value: g.Vapour, Min: 0, Max: g.Saturation, Unit: "Pa", Source: "saturation"}
	}
	return errors.Join(
		grassTemperatureRange.Check("Temperature", g.Temperature),
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
	Slope     float64 // Pa/K, of the saturation vapour pressure [FAO56] eq. 13
	Psychro   float64 // Pa/K, psychrometric constant [FAO56] eq. 8
	Factor    float64 // dimensionless, 1 + 0.34 u2
	Radiation float64 // kg/m² (mm) in the period, the share of net radiation
	Dryness   float64 // kg/m² (mm) in the period, the share of wind and dryness
	ETo       float64 // kg/m² (mm) in the period, the sum
}

// Day returns the reference evapotranspiration of a day, or of the mean day of
// a month, mm/d: [FAO56] eq. 6. The error joins the faults of g.
func (g Grass) Day() (ReferenceEvapotranspiration, error) { return g.period(faoDayDry) }

// Hour returns the reference evapotranspiration of an hour, mm/h: [FAO56] eq.
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
