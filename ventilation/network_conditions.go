package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// gasConstantDryAir is the specific gas constant of dry air, J/(kg K)
// [HoF17] ch. 1 eq. 1.
const gasConstantDryAir = constant.GasDryAir

// Ranges of the conditions that drive the flow.
var (
	temperatureRange = domain.Range{Min: -60, Max: 80, Unit: "°C", Source: "weather and houses; a kelvin value falls outside"}
	pressureRange    = domain.Range{Min: 60000, Max: 110000, Unit: "Pa", Source: "sites up to 4,000 m; a value in kPa or hPa falls outside"}
	windRange        = domain.Range{Min: 0, Max: 45, Unit: "m/s", Source: "a speed, not a component; hurricanes excluded"}
	densityRange     = domain.Range{Min: 0.5, Max: 2, Unit: "kg/m³", Source: "air at 60 to 110 kPa and -60 to 80 °C"}
)

// DryAirDensity returns the density, kg/m³, of dry air at t, °C, -60 to 80, and
// pressure p, Pa, 60000 to 110000: rho = p/(R_da T) [HoF17] ch. 1 eq. 10. NaN outside. Vapour makes moist air lighter, by 0.4 %
// at 15 °C and 2.6 % at 40 °C when saturated; take psychro.State.Density then.
func DryAirDensity(t, p float64) float64 {
	if !temperatureRange.Contains(t) || !pressureRange.Contains(p) {
		return math.NaN()
	}
	return p / (gasConstantDryAir * (t + constant.ZeroCelsius))
}

// FlowConditions drive the flow through a house of one air space. MoistSides
// makes them of the two states of the air, DrySides of two temperatures.
type FlowConditions struct {
	InsideDensity  float64 // kg/m³, 0.5 to 2, of the inside air, uniform
	OutsideDensity float64 // kg/m³, 0.5 to 2, of the outside air, uniform
	Wind           float64 // m/s, 0 to 45, at the height to which the pressure coefficients refer
}

// MoistSides is the air on the two sides of a house's openings.
type MoistSides struct {
	Inside  psychro.State // house air
	Outside psychro.State // outside air
	Wind    float64       // m/s, 0 to 45, at the height to which the pressure coefficients refer
}

// Conditions returns what drives the flow between the two: their densities and
// the wind. The error joins every fault by field.
func (a MoistSides) Conditions() (FlowConditions, error) {
	if err := errors.Join(checkAir("Inside", a.Inside), checkAir("Outside", a.Outside), windRange.Check("Wind", a.Wind)); err != nil {
		return FlowConditions{}, err
	}
	return a.conditions(), nil
}

// conditions is Conditions for sound input.
func (a MoistSides) conditions() FlowConditions {
	return FlowConditions{InsideDensity: a.Inside.Density(), OutsideDensity: a.Outside.Density(), Wind: a.Wind}
}

// DrySides is dry air on the two sides of a house's openings, for checks by
// hand.
type DrySides struct {
	Inside   float64 // °C, -60 to 80
	Outside  float64 // °C, -60 to 80
	Pressure float64 // Pa, 60000 to 110000
	Wind     float64 // m/s, 0 to 45, at the height to which the pressure coefficients refer
}

// Conditions returns what drives the flow between the two: their densities and
// the wind. The error joins every fault by field.
func (a DrySides) Conditions() (FlowConditions, error) {
	if err := errors.Join(
		temperatureRange.Check("Inside", a.Inside),
		temperatureRange.Check("Outside", a.Outside),
		pressureRange.Check("Pressure", a.Pressure),
		windRange.Check("Wind", a.Wind),
	); err != nil {
		return FlowConditions{}, err
	}
	return FlowConditions{InsideDensity: DryAirDensity(a.Inside, a.Pressure), OutsideDensity: DryAirDensity(a.Outside, a.Pressure), Wind: a.Wind}, nil
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

// checkAir refuses air outside the ranges of this package, and the zero State.
func checkAir(field string, s psychro.State) error {
	if temperatureRange.Contains(s.Temperature()) && pressureRange.Contains(s.Pressure()) {
		return nil
	}
	if !(s.Pressure() > 0) {
		return &RangeError{Field: field + ".Pressure", Value: s.Pressure(), Min: pressureRange.Min, Max: pressureRange.Max, Unit: pressureRange.Unit, Source: "the zero State is invalid"}
	}
	return errors.Join(
		temperatureRange.Check(field+".Temperature", s.Temperature()),
		pressureRange.Check(field+".Pressure", s.Pressure()),
	)
}
