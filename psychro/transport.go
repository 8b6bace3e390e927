package psychro

import "math"

// Transport properties of dry air [UsStd76] eq. 51 and 53, T in K.
const (
	viscosityA, viscosityS            = 1.458e-6, 110.4          // kg/(s m K^1/2), K; eq. 51
	conductA, conductB, conductC      = 2.64638e-3, 245.4, -12.0 // W/(m K^3/2), K, K; eq. 53
	diffusivity0, diffusivityExponent = 0.2178e-4, 1.81          // m²/s at 0 °C and 101325 Pa [Massman98]
)

// Viscosity returns the dynamic viscosity of dry air, Pa s, at temperature t,
// °C, within Temperatures: Sutherland's form, [UsStd76] eq. 51. NaN outside.
func Viscosity(t float64) float64 {
	if !Temperatures.Contains(t) {
		return nan
	}
	T := t + kelvin
	return viscosityA * T * math.Sqrt(T) / (T + viscosityS) // eq. 51
}

// Conductivity returns the thermal conductivity of dry air, W/(m K), at
// temperature t, °C, within Temperatures: [UsStd76] eq. 53. NaN outside.
func Conductivity(t float64) float64 {
	if !Temperatures.Contains(t) {
		return nan
	}
	T := t + kelvin
	return conductA * T * math.Sqrt(T) / (T + conductB*math.Exp(conductC*math.Ln10/T)) // eq. 53
}

// VapourDiffusivity returns the diffusivity of water vapour in air, m²/s, at
// temperature t, °C, within Temperatures and pressure p, Pa, within Pressures:
// [Massman98], measured values within about 7 %. NaN outside.
func VapourDiffusivity(t, p float64) float64 {
	if !Temperatures.Contains(t) || !Pressures.Contains(p) {
		return nan
	}
	return diffusivity0 * standardPressure / p * math.Exp(diffusivityExponent*math.Log1p(t/kelvin))
}
