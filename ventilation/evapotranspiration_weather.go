package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// GrassDay is a day's weather, or that of the mean day of a month, as a station
// measures it.
type GrassDay struct {
	Lowest        float64 // °C, -40 to 60, air
	Highest       float64 // °C, Lowest to 60, air
	LeastHumidity float64 // fraction, 0 to 1, of the warmest hour
	MostHumidity  float64 // fraction, LeastHumidity to 1, of the coolest hour
	Solar         float64 // J/m² in the day, 0 to 60e6, on level ground
	ClearSky      float64 // J/m² in the day, 0 to 60e6, without clouds, as package lighting has it
	Wind          float64 // m/s, 0 to 45, at 2 m
	Soil          float64 // J/m² in the day, -10e6 to 15e6, heat that goes into the ground: 0 for a day, of a month FAO56SoilHeatMonth
	Pressure      float64 // Pa, 60000 to 110000
}

// Grass returns what the reference evapotranspiration of d asks for: mean
// saturation [FAO56] eq. 12, vapour pressure eq. 17, net radiation eq. 38 to 40
// with Solar over ClearSky within 0.25 to 1. The error joins the faults by
// field.
func (d GrassDay) Grass() (Grass, error) {
	high, most := faoTemperatureRange, shareRange
	if faoTemperatureRange.Contains(d.Lowest) {
		high.Min, high.Source = d.Lowest, "Lowest"
	}
	if shareRange.Contains(d.LeastHumidity) {
		most.Min, most.Source = d.LeastHumidity, "LeastHumidity"
	}
	if err := errors.Join(
		faoTemperatureRange.Check("Lowest", d.Lowest),
		high.Check("Highest", d.Highest),
		shareRange.Check("LeastHumidity", d.LeastHumidity),
		most.Check("MostHumidity", d.MostHumidity),
		dayRadiationRange.Check("Solar", d.Solar),
		dayRadiationRange.Check("ClearSky", d.ClearSky),
		windRange.Check("Wind", d.Wind),
		soilHeatRange.Check("Soil", d.Soil),
		pressureRange.Check("Pressure", d.Pressure),
	); err != nil {
		return Grass{}, err
	}
	g := Grass{
		Temperature: (d.Lowest + d.Highest) / 2,
		Saturation:  faoMeanSaturation(d.Lowest, d.Highest),
		Vapour:      faoVapour(d.Lowest, d.Highest, d.MostHumidity, d.LeastHumidity),
		Wind:        d.Wind, Soil: d.Soil, Pressure: d.Pressure,
	}
	g.Net = netShortwave(d.Solar) - netLongwaveDay(d.Lowest, d.Highest, g.Vapour, clearness(d.Solar, d.ClearSky)) // eq. 40
	return g, g.check()
}

// clearness returns Rs/Rso within the range of eq. 39; a day without sun has
// that of an overcast one.
func clearness(solar, clear float64) float64 {
	if !(clear > 0) {
		return clearnessRange.Min
	}
	return max(clearnessRange.Min, min(clearnessRange.Max, solar/clear))
}

// GrassHour is an hour's weather as a station measures it.
type GrassHour struct {
	Temperature float64 // °C, -40 to 60, air
	Humidity    float64 // fraction, 0 to 1
	Solar       float64 // J/m² in the hour, 0 to 6e6, on level ground
	Clearness   float64 // fraction, 0.25 to 1, Solar over that of a clear sky; by night of the last hours before sunset
	Daylight    bool    // true: the sun is up
	Wind        float64 // m/s, 0 to 45, at 2 m
	Pressure    float64 // Pa, 60000 to 110000
}

// Grass returns what the reference evapotranspiration of h asks for: net
// radiation [FAO56] eq. 38 to 40, heat into the ground eq. 45 and 46. The error
// joins the faults by field.
func (h GrassHour) Grass() (Grass, error) {
	if err := errors.Join(
		faoTemperatureRange.Check("Temperature", h.Temperature),
		shareRange.Check("Humidity", h.Humidity),
		hourRadiationRange.Check("Solar", h.Solar),
		clearnessRange.Check("Clearness", h.Clearness),
		windRange.Check("Wind", h.Wind),
		pressureRange.Check("Pressure", h.Pressure),
	); err != nil {
		return Grass{}, err
	}
	g := Grass{Temperature: h.Temperature, Saturation: psychro.FAO56Saturation(h.Temperature), Wind: h.Wind, Pressure: h.Pressure}
	g.Vapour = g.Saturation * h.Humidity
	g.Net = netShortwave(h.Solar) - netLongwaveHour(h.Temperature, g.Vapour, h.Clearness)
	g.Soil = soilHeatHour(g.Net, h.Daylight)
	return g, g.check()
}

// faoMeanSaturation returns the mean saturation vapour pressure of a day, Pa,
// from its lowest and highest temperature, °C: the mean of the two ends' [FAO56]
// eq. 12.
func faoMeanSaturation(lowest, highest float64) float64 {
	return (psychro.FAO56Saturation(highest) + psychro.FAO56Saturation(lowest)) / 2 // eq. 12
}

// faoVapour returns the vapour pressure of a day, Pa, from its lowest and
// highest temperature, °C, and its greatest and least relative humidity,
// fraction, of which the greatest stands with the lowest temperature: [FAO56]
// eq. 17.
func faoVapour(lowest, highest, most, least float64) float64 {
	return (psychro.FAO56Saturation(lowest)*most + psychro.FAO56Saturation(highest)*least) / 2 // eq. 17
}

// faoAspirated is the coefficient of an Asmann psychrometer, 1/K [FAO56] eq. 16.
const faoAspirated = 0.000662

// bulbRange is that of a psychrometer's bulbs.
var bulbRange = domain.Range{Min: -40, Max: 60, Unit: "°C", Source: "weather"}

// FAO56VapourFromBulbs returns the vapour pressure, Pa, from dry and wet bulb of
// an aspirated psychrometer, °C, -40 to 60, at the pressure, Pa, 60000 to
// 110000: ea = e°(Tw) - 0.000662 P (Td - Tw) [FAO56] eq. 15 and 16. NaN outside,
// and for wet above dry.
func FAO56VapourFromBulbs(dry, wet, pressure float64) float64 {
	if !bulbRange.Contains(dry) || !bulbRange.Contains(wet) || wet > dry || !pressureRange.Contains(pressure) {
		return math.NaN()
	}
	return psychro.FAO56Saturation(wet) - faoAspirated*pressure*(dry-wet) // eq. 15
}
