// Package constant holds the physical constants that Cloche's packages share,
// each with its year.
//
// Sources:
//
//	CODATA18  CODATA recommended values 2018. The molar gas constant, the
//	          Avogadro and Planck constants and the speed of light are exact in
//	          the SI of 2019; the Stefan-Boltzmann constant follows from them.
//	CGPM1901  standard gravity, 3rd General Conference on Weights and Measures.
//	CGPM2019  the Celsius scale: 0 °C is 273.15 K exactly.
//	HoF17     ASHRAE Handbook - Fundamentals (SI), 2017, ch. 1.
//	UsStd76   U.S. Standard Atmosphere, 1976.
package constant

const (
	ZeroCelsius      = 273.15           // K, exact [CGPM2019]
	Gravity          = 9.80665          // m/s², standard gravity, exact [CGPM1901]
	MolarGas         = 8.31446261815324 // J/(mol K), exact [CODATA18]
	Avogadro         = 6.02214076e23    // 1/mol, exact [CODATA18]
	Planck           = 6.62607015e-34   // J s, exact [CODATA18]
	LightSpeed       = 299792458.0      // m/s, exact [CODATA18]
	Boltzmann        = 1.380649e-23     // J/K, exact [CODATA18]
	StefanBoltzmann  = 5.670374419e-8   // W/(m² K⁴) [CODATA18]
	StandardPressure = 101325.0         // Pa, the standard atmosphere, exact [CGPM 1954]
)

// Moist air in the handbook's ideal form [HoF17] ch. 1, and the viscosity of
// air by Sutherland's law [UsStd76] eq. 51, factor T^1.5/(T + reference).
const (
	GasDryAir           = 287.042   // J/(kg K), eq. 1
	MoleRatio           = 0.621945  // kg/kg, mass of a mole of water over that of dry air, eq. 20
	HeatDryAir          = 1006.0    // J/(kg K), eq. 28
	HeatVapour          = 1860.0    // J/(kg K), eq. 29
	LatentZero          = 2501000.0 // J/kg, enthalpy of vapour at 0 °C, eq. 29
	HeatLiquid          = 4186.0    // J/(kg K), liquid water, eq. 33
	SutherlandFactor    = 1.458e-6  // kg/(s m √K)
	SutherlandReference = 110.4     // K
)
