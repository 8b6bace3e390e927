package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// gasConstantDryAir is the specific gas constant of dry air, J/(kg K)
// [AshHoF17] ch. 1 eq. 1.
const gasConstantDryAir = constant.GasDryAir

// Ranges of the conditions that drive the flow.
var (
	temperatureRange = domain.Range{Min: -60, Max: 80, Unit: "°C", Source: "weather and houses; a kelvin value falls outside"}
	pressureRange    = domain.Range{Min: 60000, Max: 110000, Unit: "Pa", Source: "sites up to 4,000 m; a value in kPa or hPa falls outside"}
	windRange        = domain.Range{Min: 0, Max: 45, Unit: "m/s", Source: "a speed, not a component; hurricanes excluded"}
	densityRange     = domain.Range{Min: 0.5, Max: 2, Unit: "kg/m³", Source: "air at 60 to 110 kPa and -60 to 80 °C"}
)

// DryAirDensity returns the density, kg/m³, of dry air at t, °C, and pressure
// p, Pa: rho = p/(R_da T) [AshHoF17] ch. 1 eq. 10. It returns NaN outside
// TemperatureRange and PressureRange. Vapour makes moist air lighter, by 0.4 %
// at 15 °C and 2.6 % at 40 °C when saturated; take psychro.State.Density then.
func DryAirDensity(t, p float64) float64 {
	if !temperatureRange.Contains(t) || !pressureRange.Contains(p) {
		return math.NaN()
	}
	return p / (gasConstantDryAir * (t + constant.ZeroCelsius))
}

// FlowConditions drive the flow through a house of one air space.
type FlowConditions struct {
	InsideDensity  float64 // kg/m³, density of the inside air, uniform
	OutsideDensity float64 // kg/m³, density of the outside air, uniform
	Wind           float64 // m/s, at the height to which the pressure coefficients refer
}

// DryConditions returns the conditions of dry air inside at inside, °C, and
// outside at outside, °C, at the pressure p, Pa, with the wind, m/s, at the
// reference height of the pressure coefficients. The error joins every input
// outside TemperatureRange, PressureRange and WindRange.
func DryConditions(inside, outside, wind, p float64) (FlowConditions, error) {
	err := errors.Join(
		temperatureRange.Check("inside", inside),
		temperatureRange.Check("outside", outside),
		windRange.Check("wind", wind),
		pressureRange.Check("p", p),
	)
	if err != nil {
		return FlowConditions{}, err
	}
	return FlowConditions{InsideDensity: DryAirDensity(inside, p), OutsideDensity: DryAirDensity(outside, p), Wind: wind}, nil
}

func (c FlowConditions) check() error {
	if densityRange.Contains(c.InsideDensity) && densityRange.Contains(c.OutsideDensity) && windRange.Contains(c.Wind) {
		return nil
	}
	return errors.Join(
		densityRange.Check("InsideDensity", c.InsideDensity),
		densityRange.Check("OutsideDensity", c.OutsideDensity),
		windRange.Check("Wind", c.Wind),
	)
}
