package airheat

import (
	"errors"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// AirProperties holds the properties of air that its flow and its heating depend on.
type AirProperties struct {
	Density      float64 // kg/m³, 0.3 to 2
	Viscosity    float64 // Pa s, 1e-5 to 3e-5, dynamic
	HeatCapacity float64 // J/(kg K), 1000 to 1100, at constant pressure
}

// The constants of dry air: the gas constant [HoF17] ch. 1 eq. 1, and the heat
// capacity that every heat balance of moving air here uses.
const (
	gasConstantDryAir  = constant.GasDryAir  // J/(kg K)
	heatCapacityDryAir = constant.HeatDryAir // J/(kg K)
)

// StandardDensity is the density of air at which fan pressures are stated,
// kg/m³.
const StandardDensity = 1.2

// airTemperatureRange and airPressureRange are the ranges of DryAir.
var (
	airTemperatureRange = domain.Range{Min: -60, Max: 200, Unit: "°C", Source: "Sutherland's law, ideal gas"}
	airPressureRange    = domain.Range{Min: 50000, Max: 120000, Unit: "Pa", Source: "ground level up to 5,500 m"}
)

// DryAir returns the properties of dry air at the temperature t (-60 to 200
// °C) and the pressure p (50,000 to 120,000 Pa): the density of the ideal gas
// with 287.042 J/(kg K), Sutherland's viscosity, and 1006 J/(kg K), of which dry
// air takes 0.1 % more on the mean between a house and a supply of 45 °C and 0.4 %
// more to one of 150. Moist air is up to 1 % lighter at 20 °C; set the fields from
// a psychrometric state where that matters. Fields are NaN outside the ranges.
func DryAir(t, p float64) AirProperties {
	if !airTemperatureRange.Contains(t) || !airPressureRange.Contains(p) {
		return AirProperties{math.NaN(), math.NaN(), math.NaN()}
	}
	return AirProperties{
		Density:      p / (gasConstantDryAir * (t + constant.ZeroCelsius)),
		Viscosity:    psychro.Viscosity(t),
		HeatCapacity: heatCapacityDryAir,
	}
}

var (
	densityRange      = domain.Range{Min: 0.3, Max: 2, Unit: "kg/m³", Source: "air at ground level to 5,500 m, −60 to 200 °C"}
	viscosityRange    = domain.Range{Min: 1e-5, Max: 3e-5, Unit: "Pa s", Source: "air at −60 to 200 °C"}
	heatCapacityRange = domain.Range{Min: 1000, Max: 1100, Unit: "J/(kg K)", Source: "air, dry to humid"}
)

func (a AirProperties) check() error {
	if densityRange.Contains(a.Density) && viscosityRange.Contains(a.Viscosity) && heatCapacityRange.Contains(a.HeatCapacity) {
		return nil // without building any name
	}
	return errors.Join(
		densityRange.Check("Density", a.Density),
		viscosityRange.Check("Viscosity", a.Viscosity),
		heatCapacityRange.Check("HeatCapacity", a.HeatCapacity),
	)
}
