package envelope

import (
	"math"

	"cloche.example/internal/constant"
)

// Formulas that the solver has in another form, for checks of it.

// airAt returns the properties of air at t in °C and p in Pa.
func airAt(t, p float64) airProperties { return standard.air(t+constant.ZeroCelsius, p) }

// rayleigh returns the Rayleigh number of an air layer of width in m with faces
// a and b in °C at p in Pa: g L³ |dT| cp rho²/(Tm mu k), [IsoWin03] eq. 40.
func rayleigh(a, b, width, p float64) float64 {
	k := (a+b)/2 + constant.ZeroCelsius
	s, _ := standard.buoyancy(k, standard.air(k, p))
	return s * math.Abs(a-b) * width * width * width
}

// swinbankFlux is the coefficient of [Swinbank63] in its form for the flux,
// W/(m² K⁶), converted from 5.31e-14 mW/(cm² K⁶).
const swinbankFlux = 5.31e-13

// swinbankIrradiance returns the long-wave irradiance in W/m² of a clear sky on
// level ground for air at t in °C; it lies 0.9 % above the temperature form.
func swinbankIrradiance(t float64) float64 {
	if !swinbankAirRange.Contains(t) {
		return nan
	}
	return swinbankFlux * math.Pow(t+constant.ZeroCelsius, 6)
}
