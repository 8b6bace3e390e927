package psychro

import "math"

// What guessBulb takes for the two surfaces: ln of the vapour pressure of
// saturated air goes as -a/T - b ln T, and water takes latent + fall t, J/kg,
// to evaporate. Fits for this library to RealGas at 97 kPa, 0 to 45 °C and -45
// to 0 °C; they save an evaluation and do not affect the result.
const (
	guessLiquidA, guessLiquidB         = 6698.25, 4.68345
	guessLiquidLatent, guessLiquidFall = 2.4990e6, -2400.0
	guessIceA, guessIceB               = 6158.80, 0.04298
	guessIceLatent, guessIceFall       = 2.83586e6, -72.4
	guessFusion                        = 0.00968 // 1/K, by which the line over ice is steeper at the triple point
)

// In air that could hold more vapour than this mole fraction, above 86 °C at
// sea level, the guess is the middle of the bulbs that heated air has, °C: the
// extrapolation from the dry bulb is too long there, and past boiling it fails. Above the
// humidity ratio refinedTo of saturated air, kg/kg, 65 °C, the second step does
// not improve the first.
const hotSaturation, hotGuess, refinedTo = 0.6, 45.0, 0.2

// guessBulb returns a first wet bulb, °C, mostly accurate to some mK: the balance
// of an ideal gas with constant heat capacities. Saturation as the Padé form of
// first order of an exponential from the dry bulb leaves a quadratic for the
// depression d, which one step of Halley on the exponential itself refines.
func (s State) guessBulb() float64 {
	if !(s.xs < hotSaturation) {
		return hotGuess
	}
	T := s.t + kelvin
	perT := 1 / T
	a, b, latent, fall := guessLiquidA, guessLiquidB, guessLiquidLatent, guessLiquidFall
	if s.t < TriplePoint {
		a, b, latent, fall = guessIceA, guessIceB, guessIceLatent, guessIceFall
	}
	c := heatAir + heatVapour*s.w
	l := latent + fall*s.t
	ws := ratioOf(s.xs)
	y := (ws - s.w) * l
	k := (a*perT - b) * perT
	rise := ws * l * k * (1 + ws*(1/molarRatio))
	half := 0.5 * (c + rise - y*k/2)
	d := y / (half + math.Sqrt(half*half+0.5*c*k*y))
	if ws > refinedTo {
		return s.t - d
	}
	perTw := 1 / (T - d)
	q := d * perTw
	k = (a*perTw - b) * perTw
	y = a*q*perT - b*q*(1-q*(0.5-q*(1.0/3)))
	tw := s.t - d
	if tw < TriplePoint && s.t >= TriplePoint { // the rest of the way over ice
		latent, fall = guessIceLatent, guessIceFall
		y += guessFusion * (TriplePoint - tw)
		k += guessFusion
	}
	// exp(-y) from the Padé form of second order at y/4.
	n, m := 192+y*y, 24*y
	e := (n - m) / (n + m)
	e *= e
	x := s.xs * e * e
	perXa := 1 / (1 - x)
	ws = molarRatio * x * perXa
	l = latent + fall*tw
	rise = ws * l * k * perXa
	f := c*d - l*(ws-s.w)
	slope := c + rise + fall*(ws-s.w)
	return tw + f*slope/(slope*slope+0.5*f*rise*k*(1+2*x*perXa))
}
