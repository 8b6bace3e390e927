package envelope

import (
	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// airProperties are those of dry air as a gas in gaps and along surfaces.
type airProperties struct {
	Conductivity float64 // W/(m K)
	Viscosity    float64 // Pa s, dynamic
	HeatCapacity float64 // J/(kg K)
	Density      float64 // kg/m³
}

// airTemperatureRange is the range in °C in which the linear fits of ISO 15099
// Annex B are used here.
var airTemperatureRange = domain.Range{Min: -100, Max: 120, Unit: "°C", Source: "chosen; the fits follow tabulated air within 1 %"}

// pressureRange is the accepted range of the air pressure in Pa.
var pressureRange = domain.Range{Min: 50e3, Max: 110e3, Unit: "Pa", Source: "chosen: from 5,500 m to below sea level"}

// Linear fits of the properties of air over the temperature in kelvin,
// [IsoWin03] Annex B.
const (
	airConductivity0 = 2.8733e-3 // W/(m K)
	airConductivity1 = 7.76e-5   // W/(m K²)
	airViscosity0    = 3.7233e-6 // Pa s
	airViscosity1    = 4.94e-8   // Pa s/K
	airHeat0         = 1002.737  // J/(kg K)
	airHeat1         = 1.2324e-2 // J/(kg K²)
	airMolarMass     = 28.97     // kg/kmol
)

// constants are the physical constants of the solver. They are a parameter
// so that checks against programs with older constants can use theirs.
type constants struct {
	sigma    float64 // W/(m² K⁴)
	gravity  float64 // m/s²
	molarGas float64 // J/(kmol K)
}

var standard = constants{
	sigma:    constant.StefanBoltzmann,
	gravity:  constant.Gravity,
	molarGas: 1000 * constant.MolarGas,
}

// air returns the properties at the temperature k in kelvin and p in Pa.
func (c *constants) air(k, p float64) airProperties {
	return airProperties{
		Conductivity: airConductivity0 + airConductivity1*k, // [IsoWin03] Annex B
		Viscosity:    airViscosity0 + airViscosity1*k,       // [IsoWin03] Annex B
		HeatCapacity: airHeat0 + airHeat1*k,                 // [IsoWin03] Annex B
		Density:      p * airMolarMass / (c.molarGas * k),   // ideal gas
	}
}

// buoyancy returns b with Ra = b |dT| L³ for air at the temperature k in
// kelvin, and the logarithmic slope of b over temperature in 1/K.
func (c *constants) buoyancy(k float64, a airProperties) (b, slope float64) {
	b = c.gravity * a.Density * a.Density * a.HeatCapacity / (k * a.Viscosity * a.Conductivity)
	slope = -3/k + airHeat1/a.HeatCapacity - airViscosity1/a.Viscosity - airConductivity1/a.Conductivity
	return b, slope
}
