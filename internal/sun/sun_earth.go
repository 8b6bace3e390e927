package sun

import "math"

// earth is where the Earth stands about the sun.
type earth struct {
	longitude, latitude float64 // rad, heliocentric
	distance            float64 // au
	nutation            float64 // rad, in longitude
	obliquity           float64 // rad, true
}

// earthAt evaluates the series of [Reda04] at Julian centuries of dynamical
// time from J2000.0.
func earthAt(century float64) earth {
	t := century / 10
	psi, eps := nutation(century)
	return earth{
		longitude: series(earthLongitude[:], t), // eqs. 9 to 12
		latitude:  series(earthLatitude[:], t),
		distance:  series(earthDistance[:], t),
		nutation:  psi,
		obliquity: meanObliquity(t) + eps, // eq. 25
	}
}

// series sums the periodic terms of each power of t.
func series(powers [][]periodic, t float64) float64 {
	sum := 0.0
	for i := len(powers) - 1; i >= 0; i-- {
		sum *= t
		for _, p := range powers[i] {
			sum += p.a * math.Cos(p.b+p.c*t)
		}
	}
	return sum * 1e-8
}

// arguments are the mean elongation of the Moon from the sun, the mean
// anomalies of sun and Moon, the Moon's argument of latitude and the longitude
// of its node, degree, eqs. 15 to 19 of [Reda04]: a polynomial in centuries,
// the last coefficient as a divisor.
var arguments = [5][4]float64{
	{297.85036, 445267.111480, -0.0019142, 189474},
	{357.52772, 35999.050340, -0.0001603, -300000},
	{134.96298, 477198.867398, 0.0086972, 56250},
	{93.27191, 483202.017538, -0.0036825, 327270},
	{125.04452, -1934.136261, 0.0020708, 450000},
}

// nutation returns the nutation in longitude and obliquity, rad.
func nutation(c float64) (psi, eps float64) {
	var x [5]float64
	for i, a := range arguments {
		x[i] = (a[0] + c*(a[1]+c*(a[2]+c/a[3]))) * radian
	}
	for _, n := range nutationTerms {
		arg := 0.0
		for i, y := range n.y {
			arg += y * x[i]
		}
		sin, cos := math.Sincos(arg)
		psi += (n.a + n.b*c) * sin // eq. 20
		eps += (n.c + n.d*c) * cos // eq. 21
	}
	const unit = 1e-4 * arcsecond // eqs. 22, 23
	return psi * unit, eps * unit
}

// obliquityTerms are in arcseconds by powers of 10,000 Julian years, eq. 24 of
// [Reda04].
var obliquityTerms = [...]float64{84381.448, -4680.93, -1.55, 1999.25, -51.38, -249.67, -39.05, 7.12, 27.87, 5.79, 2.45}

// meanObliquity is in rad; t in Julian millennia.
func meanObliquity(t float64) float64 {
	u, sum := t/10, 0.0
	for i := len(obliquityTerms) - 1; i >= 0; i-- {
		sum = sum*u + obliquityTerms[i]
	}
	return sum * arcsecond
}
