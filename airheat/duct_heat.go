package airheat

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// Duct is a length of duct whose wall lets heat through.
type Duct struct {
	Section      DuctSection // open cross-section
	Length       float64     // m, 0 to 10000
	HeatTransfer float64     // W/(m² K), 0 to 50, from the air inside through the wall to the air around
}

// DuctHeat is the heat that a duct's wall takes.
type DuctHeat struct {
	Units  float64 // number of transfer units U P L/(m cp), dimensionless
	Outlet float64 // °C, air at the end
	Loss   float64 // W, from the air through the wall; negative where the air is warmed
}

// Heat returns what the wall takes from the flow (above 0 to 1000 m³/s, at the
// density of air) that enters at the temperature inlet (-60 to 200 °C) when the
// air around is at around (-60 to 200 °C): the difference falls by the factor
// exp(−U P L/(m cp)), P being the perimeter. The error lists every fault.
func (d Duct) Heat(flow, inlet, around float64, air AirProperties) (DuctHeat, error) {
	if err := errors.Join(
		domain.Within("Section", d.Section.check()),
		ductLengthRange.Check("Length", d.Length),
		heatTransferRange.Check("HeatTransfer", d.HeatTransfer),
		notZero(ductFlowRange).Check("flow", flow),
		airTemperatureRange.Check("inlet", inlet),
		airTemperatureRange.Check("around", around),
		domain.Within("air", air.check()),
	); err != nil {
		return DuctHeat{}, err
	}
	capacity := flow * air.Density * air.HeatCapacity
	h := DuctHeat{Units: d.HeatTransfer * d.Section.perimeter() * d.Length / capacity}
	drop := -(inlet - around) * math.Expm1(-h.Units)
	h.Outlet, h.Loss = inlet-drop, capacity*drop
	return h, nil
}

// Petukhov's formula [Pet70] with his own friction factor.
const (
	petukhovA = 1.82
	petukhovB = 1.64
	petukhovC = 1.07
	petukhovD = 12.7
)

// DuctNusselt returns the Nusselt number of turbulent flow in a duct, h D/k,
// dimensionless, at the Reynolds number re (1e4 to 5e6, dimensionless) and the
// Prandtl number prandtl (0.5 to 200, dimensionless; 0.71 for air). Times the
// conductivity of the air over the hydraulic diameter it is the film coefficient
// inside, W/(m² K). NaN outside. [Pet70], stated within 6 % of measurements.
func DuctNusselt(re, prandtl float64) float64 {
	if !(re >= 1e4 && re <= 5e6) || !(prandtl >= 0.5 && prandtl <= 200) {
		return math.NaN()
	}
	l := petukhovA*math.Log10(re) - petukhovB
	f8 := 1 / (8 * l * l)
	p23 := math.Cbrt(prandtl * prandtl)
	return f8 * re * prandtl / (petukhovC + petukhovD*math.Sqrt(f8)*(p23-1)) // [Pet70]
}
