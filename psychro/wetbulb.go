package psychro

import "math"

// WetBulb returns the thermodynamic wet bulb, °C: the temperature at which
// water, evaporating into the air at constant pressure and enthalpy, saturates
// it. Within about 1 K of freezing a liquid and an iced bulb can both be in
// equilibrium with the same air, the iced one below the other; WetBulb then
// returns the liquid one. It returns the iced one where no liquid bulb at or
// above 0.01 °C exists. See WetBulbOver to choose.
func (s State) WetBulb() float64 { return s.wetBulbOf(s.Enthalpy()) }

// A liquid bulb at or above 0.01 °C is asked for where the guess lies above
// -guessRoom, °C: where there is one the guess is above -0.5. Above guessRoom it
// is asked for first. An iced bulb beside a liquid one lies above -twoBulbs, °C:
// at 30 kPa as low as -1.08. A test holds both.
const guessRoom, twoBulbs = 1.0, 1.2

// wetBulbOf takes the state's enthalpy.
func (s State) wetBulbOf(h float64) float64 {
	t := s.guessBulb()
	if s.t < TriplePoint { // no liquid branch
		return s.wetBulb(Ice, t, h)
	}
	if t > guessRoom {
		if tw := s.wetBulb(Liquid, t, h); tw >= TriplePoint {
			return tw
		}
	} else if t > -guessRoom && s.bulbBalance(Liquid, TriplePoint, h) <= 0 {
		return s.wetBulb(Liquid, t, h)
	}
	tw := s.wetBulb(Ice, t, h)
	if tw > -twoBulbs && s.bulbBalance(Liquid, TriplePoint, h) <= 0 {
		return s.wetBulb(Liquid, t, h)
	}
	return tw
}

// WetBulbOver returns the wet bulb, °C, of a bulb covered with the given
// surface: a liquid one may be supercooled. NaN where no such bulb is in
// equilibrium with the air: an iced one above the triple point, a liquid one
// below -40 °C.
func (s State) WetBulbOver(surface Surface) float64 {
	if surface > Ice {
		return nan
	}
	h := s.Enthalpy()
	if surface == Ice {
		if s.bulbBalance(Ice, TriplePoint, h) < 0 {
			return nan
		}
		return s.wetBulb(Ice, s.guessBulb(), h)
	}
	if s.t < liquidTemperaturesRange.Min || s.bulbBalance(Liquid, liquidTemperaturesRange.Min, h) > 0 {
		return nan
	}
	return s.wetBulb(Liquid, s.guessBulb(), h)
}

// bulbBalance is hs(tw) - (Ws(tw) - W) hc(tw) - h, J/kg dry air, rising with
// the bulb's temperature tw and zero at the wet bulb [HoF17] ch. 1 eq. 31.
func (s State) bulbBalance(surface Surface, tw, h float64) float64 {
	xs := s.model.saturated(surface, tw, s.p)
	if !(xs < 1) {
		return math.Inf(1)
	}
	ws := ratioOf(xs)
	return s.model.enthalpy(tw, s.p, xs, ws) - (ws-s.w)*s.model.condensed(surface, tw) - h // eq. 31
}

// d ln(d ln ps/dT)/dT is -2/T and the relative change of the latent heat, 1/K:
// means over 0 to 60 °C and -45 to 0 °C.
const turnLiquid, turnIce = -9.0e-4, -1.87e-5

// bulb returns the balance, its slope, J/(kg K), and the relative change of
// the slope, 1/K, accurate to some tenths of a per cent.
func (s State) bulb(surface Surface, tw, h float64) (y, slope, bend float64) {
	T := tw + kelvin
	perT := 1 / T
	m, p := s.model, s.p
	caa, caw, cww := caloric(100 * perT)
	var ps, rise float64 // saturation pressure and d ln ps/dT
	var xs, grow float64 // mole fraction and d ln xs/dT
	switch {
	case m == IdealGas:
		ps, rise = handbookSaturation(surface, tw), handbookLogSlope(surface, tw)
	case surface == Liquid:
		root, x := liquidRoot(T)
		ps = root * root
		ps *= ps * 1e6
		rise = liquidLogSlope(T, x, root)
	default:
		ps, rise = iceSaturation(tw), iceLogSlope(tw)
	}
	xs, grow = ps/p, rise
	if !(xs < 1) {
		return math.Inf(1), 1, 0
	}
	if m == RealGas {
		f, extra := enhancementSlope(surface, perT, p, xs, rise, caa, caw, cww)
		xs, grow = xs*expMinus(-f), rise+extra
	}
	perXa := 1 / (1 - xs)
	ws := molarRatio * xs * perXa
	dws := ws * perXa * grow
	hc, cc := m.condensedSlope(surface, tw)
	// Enthalpy, its change with temperature, with humidity ratio, and with both.
	var hs, cs, hw, cw float64
	if m == IdealGas {
		hw, cw = latentZero+heatVapour*tw, heatVapour
		hs, cs = heatAir*tw+ws*hw, heatAir+ws*heatVapour
	} else {
		hs, cs, hw, cw = realEnthalpy(T, perT, p, xs, perXa, mix(xs, caa, caw, cww), xs*cww-(1-xs)*caa+(1-2*xs)*caw)
	}
	latent := (hw - hc) * dws
	slope = cs + latent - (ws-s.w)*cc
	turn := turnLiquid
	if surface == Ice {
		turn = turnIce
	}
	bend = (latent*(grow*(1+2*xs*perXa)-2*perT+turn) + 2*(cw-cc)*dws) / slope
	return hs - (ws-s.w)*hc - h, slope, bend // eq. 31
}

// realEnthalpy returns the enthalpy of moist air, J/kg dry air, its change
// with temperature at constant humidity, J/(kg K), and with the humidity ratio
// at constant temperature, J/kg; perT and perXa are the inverses of T and of
// 1 - x, mixed is the mixture's B - T dB/dT, cm³/mol, and half its derivative
// by x is bend. The change with both, J/(kg K), is that of the ideal vapour.
func realEnthalpy(T, perT, p, x, perXa, mixed, bend float64) (h, c, byW, both float64) {
	k := p * 1e-6
	xa := 1 - x
	air, vapour := airIdeal(T), vapourIdeal(T)
	n := xa*air + x*vapour + k*mixed
	dn := vapour - air + 2*k*bend
	h = n * perXa * (1 / molarAir)
	// dW = 0.622 dx/(1 - x)².
	byW = (dn*xa + n) * (1 / (molarAir * molarRatio))
	heat := vapourHeat(T)
	c = xa*airHeat(T) + x*heat
	daa, daw, dww := caloricSlope(100 * perT)
	c = (c - k*perT*mix(x, daa, daw, dww)) * perXa * (1 / molarAir)
	return h, c, byW, heat * (1 / molarWater)
}

// lowest is where every search for a bulb begins, °C: below the wet bulb of the
// coldest air.
const lowest = -130.0

// wetBulb solves the balance for air that is not fog, from the bulb t.
func (s State) wetBulb(surface Surface, t, h float64) float64 {
	hi := s.t
	if surface == Ice && hi > TriplePoint {
		hi = TriplePoint
	}
	return s.solveBulb(surface, lowest, hi, t, h)
}

// When the search for a bulb ends. The error left in the balance, J/kg, is about
// a thousandth of balance times turn, where turn, dimensionless, is the relative
// change of the slope over the step.
const (
	mostLeft, leastLeft = 1e-4, 1e-7 // J/kg, of balance times turn: 4e-14 of the humidity ratio, in cold dry air less
	steepSaturation     = 0.1        // mole fraction of saturated air, above which bend is less well known
	shortStep           = 0.01       // K, a last step
	smallTurn           = 5e-4       // of a last step, so that the pole at boiling is not near
	reusedTurn          = 0.01       // below which the bent slope of one step is good for the next
	leastDivisor        = 0.2        // of Halley's step, which is at most five of Newton's
	narrowest           = 1e-9       // K, a bracket that cannot usefully be halved
	strictShare         = 0.01       // of what may be left, where turn says less: a hundred times stricter
)

// solveBulb finds the bulb at which the balance is zero, between lo and hi,
// °C, by Halley's method from the bulb x, kept inside the bracket.
func (s State) solveBulb(surface Surface, lo, hi, x, h float64) float64 {
	x = max(lo, min(x, hi))
	near := min(mostLeft, max(leastLeft, s.w))
	if !(s.xs < steepSaturation) {
		near *= strictShare // the bend is less well known
	}
	for range 100 {
		y, slope, bend := s.bulb(surface, x, h)
		switch {
		case y < 0:
			lo = x
		case y > 0:
			hi = x
		default:
			return x
		}
		step := y / slope
		turn := bend * step
		step /= max(leastDivisor, 1-0.5*turn)
		next := x - step
		// Near boiling the balance has a pole: short steps, yet far away.
		// What is left of the balance is about a thousandth, by the error of
		// bend, of y times turn; a J/kg is 4e-7 of the humidity ratio.
		if math.Abs(step) < shortStep && math.Abs(turn) < smallTurn && math.Abs(y*turn) < near {
			return max(lo, min(next, hi))
		}
		if !(next > lo && next < hi) {
			if hi-lo < narrowest {
				return x
			}
			x = 0.5 * (lo + hi)
			continue
		}
		if math.Abs(turn) < reusedTurn {
			// Mostly the second evaluation is the last, and needs no slope of
			// its own: that of the first, bent, is accurate to a tenth of turn.
			y = s.bulbBalance(surface, next, h)
			if math.Abs(y*turn) < strictShare*near {
				return max(lo, min(next-y/(slope*(1-bend*step)), hi))
			}
		}
		x = next
	}
	return x
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
