package psychro

// Second virial coefficients, cm³/mol, as polynomials in z = 100/T.
//
// Air-air: [HylWex83] eq. 10, as printed. Air-water: [HarHua07], in the form
// of [IapwsAir15] eq. 7, refitted for this library, within 0.003 cm³/mol from
// -40 to 90 °C. Water-water: [HylWex83], refitted for this library, within
// 0.05 %. A test compares both refits with the formulas they replace.
const (
	aa0, aa1, aa2, aa3 = 34.9568, -66.8772, -210.141, 92.4746
	aw0, aw1, aw2, aw4 = 32.360065, -125.784738, -170.557048, -84.843106
	ww2, ww5, ww8      = -2935.208, -151192.1, -1.144781e6
	ww11               = -8.772425e6
)

// Molar volume of the condensed phase, cm³/mol.
const (
	volumeLiquid = 18.2  // near the middle of the range
	volumeIce    = 19.65 // at 0 °C
)

// virials returns the three coefficients at z = 100/T, cm³/mol.
func virials(z float64) (baa, baw, bww float64) {
	z2 := z * z
	z3 := z2 * z
	baa = aa0 + aa1*z + aa2*z2 + aa3*z3 // [HylWex83] eq. 10
	baw = aw0 + aw1*z + aw2*z2 + aw4*z2*z2
	bww = z2 * (ww2 + z3*(ww5+z3*(ww8+z3*ww11)))
	return baa, baw, bww
}

// caloric returns B - T dB/dT of the three, cm³/mol. A term c z^k gives
// (1+k) c z^k, since T d/dT = -z d/dz.
func caloric(z float64) (caa, caw, cww float64) {
	z2 := z * z
	z3 := z2 * z
	caa = aa0 + 2*aa1*z + 3*aa2*z2 + 4*aa3*z3
	caw = aw0 + 2*aw1*z + 3*aw2*z2 + 5*aw4*z2*z2
	cww = z2 * (3*ww2 + z3*(6*ww5+z3*(9*ww8+z3*12*ww11)))
	return caa, caw, cww
}

func mix(x, aa, aw, ww float64) float64 {
	xa := 1 - x
	return xa*xa*aa + 2*xa*x*aw + x*x*ww
}

// enhancement is the factor by which the vapour pressure of saturated air
// exceeds the saturation pressure r p of pure water, from 1/T in 1/K and p in
// Pa: [HylWex83] eq. 18 with second virials alone, two passes from f = 1 and
// what they leave by its slope. Third virials and Henry's law would move it by
// 0.006 % at most below 60 °C.
func enhancement(s Surface, perT, p, r float64) float64 {
	vc := volumeLiquid
	if s == Ice {
		vc = volumeIce
	}
	baa, baw, bww := virials(100 * perT)
	k := 1e-6 / gasConstant * perT * p
	xa := 1 - r
	pure := k * xa * (vc - bww)
	mixed := k * (baa - 2*baw + bww)
	first := pure + mixed*xa*xa
	xa = 1 - r*(1+first*(1+first/2))
	y := pure + mixed*xa*xa
	y = settled(first, y, 2*mixed*xa*r*(1+y))
	return 1 + y*(1+y/2)
}

// enhancementSlope returns the logarithm of the factor and its derivative
// d ln f/dT, 1/K, given the slope d ln ps/dT, 1/K, and what caloric returns.
func enhancementSlope(s Surface, perT, p, r, slope, caa, caw, cww float64) (logF, logSlope float64) {
	vc := volumeLiquid
	if s == Ice {
		vc = volumeIce
	}
	baa, baw, bww := virials(100 * perT)
	k := 1e-6 / gasConstant * perT * p
	b, c := baa-2*baw+bww, caa-2*caw+cww
	xa := 1 - r
	pure, mixed := k*xa*(vc-bww), k*b
	// dB/dT = (B - C)/T, and k goes as 1/T.
	dPure := -pure*perT - k*(r*slope*(vc-bww)+xa*(bww-cww)*perT)
	dMixed := -k * c * perT
	first := pure + mixed*xa*xa
	xa = 1 - r*(1+first*(1+first/2))
	y := pure + mixed*xa*xa
	a := 2 * mixed * xa * r * (1 + y)
	y = settled(first, y, a)
	g := 1 + y*(1+y/2)
	dy := (dPure + dMixed*xa*xa - 2*mixed*xa*r*g*slope) * (1 - a*(1-a*(1-a)))
	return logOfFactor(y, dy)
}

// settled is where the passes end that went from first to y, when each leaves a
// of the error before it with the other sign.
func settled(first, y, a float64) float64 { return y + a*(1-a*(1-a))*(first-y) }

// logOfFactor returns ln(1 + y + y²/2), to 1e-11 for the largest y in range,
// 0.025, and its derivative.
func logOfFactor(y, dy float64) (logF, slope float64) {
	y2 := y * y
	return y - y2*y*(1.0/6-y*(1.0/8-y*(1.0/20))), dy * (1 - y2/2*(1-y))
}

// enhancementOfVapour is enhancementSlope at a known mole fraction xa of dry
// air, which leaves nothing to iterate.
func enhancementOfVapour(s Surface, perT, p, r, xa, slope float64) (logF, logSlope float64) {
	vc := volumeLiquid
	if s == Ice {
		vc = volumeIce
	}
	z := 100 * perT
	baa, baw, bww := virials(z)
	caa, caw, cww := caloric(z)
	k := 1e-6 / gasConstant * perT * p
	square := xa * xa
	dPure := -k * ((1-r)*(vc-bww)*perT + r*slope*(vc-bww) + (1-r)*(bww-cww)*perT)
	return logOfFactor(k*((1-r)*(vc-bww)+(baa-2*baw+bww)*square), dPure-k*(caa-2*caw+cww)*perT*square)
}

// EnhancementFactor returns the ratio of the vapour pressure of air saturated
// over ice or liquid at temperature t, °C, -100 to 200, and pressure p, Pa,
// 30e3 to 200e3, to that of pure water; dimensionless, 1 to 1.025. Within 0.007
// % of [HerRP09] below 60 °C and 0.015 % below 80 °C, at 70 to 105 kPa. NaN
// outside and where water boils.
func EnhancementFactor(t, p float64) float64 {
	if !temperaturesRange.Contains(t) || !pressuresRange.Contains(p) {
		return nan
	}
	s := SurfaceAt(t)
	ps := pureSaturation(s, t)
	if !(ps < p) {
		return nan
	}
	return enhancement(s, 1/(t+kelvin), p, ps/p)
}

// caloricSlope returns z d/dz of what caloric returns, cm³/mol: a term c z^k
// of B gives k (1+k) c z^k.
func caloricSlope(z float64) (aa, aw, ww float64) {
	z2 := z * z
	z3 := z2 * z
	aa = 2*aa1*z + 6*aa2*z2 + 12*aa3*z3
	aw = 2*aw1*z + 6*aw2*z2 + 20*aw4*z2*z2
	ww = z2 * (6*ww2 + z3*(30*ww5+z3*(72*ww8+z3*132*ww11)))
	return aa, aw, ww
}
