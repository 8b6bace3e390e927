package psychro

import "math"

// WetBulb returns the thermodynamic wet bulb, °C: the temperature at which
// water, evaporating into the air at constant pressure and enthalpy, saturates
// it. Within about 1 K of freezing a liquid and an iced bulb can both be in
// equilibrium with the same air, the iced one below the other; WetBulb then
// returns the liquid one. It returns the iced one where no liquid bulb at or
// above 0.01 °C exists. See WetBulbOver to choose.
func (s State) WetBulb() float64 {
	h := s.Enthalpy()
	if s.bulbBalance(Liquid, TriplePoint, h) <= 0 {
		return s.wetBulb(Liquid, s.t, h)
	}
	return s.wetBulb(Ice, s.t, h)
}

// WetBulbOver returns the wet bulb, °C, of a bulb covered with the given
// surface: a liquid one may be supercooled. NaN where no such bulb is in
// equilibrium with the air: an iced one above the triple point, a liquid one
// below -40 °C.
func (s State) WetBulbOver(surface Surface) float64 {
	h := s.Enthalpy()
	if surface == Ice {
		if s.bulbBalance(Ice, TriplePoint, h) < 0 {
			return nan
		}
		return s.wetBulb(Ice, s.t, h)
	}
	if s.t < LiquidTemperatures.Min || s.bulbBalance(Liquid, LiquidTemperatures.Min, h) > 0 {
		return nan
	}
	return s.wetBulb(Liquid, s.t, h)
}

// bulbBalance is hs(tw) - (Ws(tw) - W) hc(tw) - h, J/kg dry air, rising with
// the bulb's temperature tw and zero at the wet bulb [HoF17] ch. 1 eq. 31.
func (s State) bulbBalance(surface Surface, tw, h float64) float64 {
	y, _ := s.bulb(surface, tw, h)
	return y
}

// bulb returns the balance and its slope, J/(kg K), the latter to about 1 %.
func (s State) bulb(surface Surface, tw, h float64) (y, slope float64) {
	xs := s.model.saturated(surface, tw, s.p)
	if !(xs < 1) {
		return math.Inf(1), 1
	}
	ws := ratioOf(xs)
	hc := s.model.condensed(surface, tw)
	y = s.model.enthalpy(tw, s.p, xs, ws) - (ws-s.w)*hc - h // eq. 31
	T := tw + kelvin
	latent := latentZero + heatVapour*tw - hc
	// Clausius and Clapeyron: dWs/dT = Ws (1 + Ws/0.622) L/(Rv T²).
	slope = heatAir + heatVapour*ws + latent*latent*ws*(1+ws*(1/molarRatio))/(gasVapour*T*T)
	return y, slope
}

const gasVapour = gasConstant / molarWater // J/(kg K)

// wetBulb solves the balance by Newton's method with the approximate slope,
// then by secants, inside a bracket that ends at hi, °C.
func (s State) wetBulb(surface Surface, hi, h float64) float64 {
	lo := -130.0
	if surface == Ice && hi > TriplePoint {
		hi = TriplePoint
	}
	x := hi
	y, slope := s.bulb(surface, x, h)
	if y <= 0 {
		return x
	}
	next := x - y/slope
	for range 100 {
		if !(next > lo && next < hi) {
			next = 0.5 * (lo + hi)
		}
		yn, sn := s.bulb(surface, next, h)
		if yn == 0 {
			return next
		}
		if yn < 0 {
			lo = next
		} else {
			hi = next
		}
		if d := next - x; math.Abs(d) < 2 {
			if secant := (yn - y) / d; secant > 0.5*sn && secant < 2*sn {
				sn = secant
			}
		}
		step := yn / sn
		x, y = next, yn
		next = x - step
		if math.Abs(step) < 1e-6 {
			return next
		}
	}
	return next
}

// fractionFromWetBulb solves the same balance for the mole fraction of vapour
// in air at t. Multiplied by the dry air's mole fraction it is a quadratic.
func (m Model) fractionFromWetBulb(s Surface, t, tw, p float64) float64 {
	xs := m.saturated(s, tw, p)
	ws := ratioOf(xs)
	hc := m.condensed(s, tw)
	hs := m.enthalpy(tw, p, xs, ws)
	return m.fractionFromHeat(t, p, hs-ws*hc, hc)
}

// fractionFromHeat returns the mole fraction x at which h(t, x) - W hc = g.
func (m Model) fractionFromHeat(t, p, g, hc float64) float64 {
	if m == IdealGas {
		return fractionOf((g - heatAir*t) / (latentZero + heatVapour*t - hc))
	}
	T := t + kelvin
	caa, caw, cww := caloric(100 / T)
	k := p * 1e-6
	air := airIdeal(T) - molarAir*g
	return smallRoot(k*(caa-2*caw+cww), vapourIdeal(T)-air+2*k*(caw-caa)-molarRatio*molarAir*hc, air+k*caa)
}

// smallRoot returns the root of a x² + b x + c near -c/b, for a small a.
func smallRoot(a, b, c float64) float64 {
	return -2 * c / (b + math.Copysign(math.Sqrt(b*b-4*a*c), b))
}
