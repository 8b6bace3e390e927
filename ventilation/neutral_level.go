package ventilation

import "math"

// neutralLevel returns the height above the datum, m, at which the inside
// pressure equals the outside static pressure, for the inside pressure at the
// datum, Pa, over the outside one, and the conditions c: z = P0/((rho_i -
// rho_o) g). It is a level without wind; with wind each face has its own. It
// returns NaN for equal densities.
func neutralLevel(pressure float64, c FlowConditions) float64 {
	b := buoyancy(c)
	if b == 0 {
		return math.NaN()
	}
	return pressure / b
}
