package envelope

import "math"

// Correlations of the independent solution, written out once more.

const plainSigma = 5.670374419e-8

func plainAir(t float64) (k, mu, cp, rho float64) {
	return 2.8733e-3 + 7.76e-5*t, 3.7233e-6 + 4.94e-8*t, 1002.737 + 1.2324e-2*t, 101325 * 28.97 / (8314.462618 * t)
}

func plainGapNusselt(ra, aspect, tilt float64) float64 {
	return plainBranch(ra, ra, aspect, tilt)
}

// plainNearer is that of a side that is nearer to the air than the other: it
// passes each jump on a straight line over five per cent either way.
func plainNearer(ra, aspect, tilt float64) float64 {
	for _, jump := range []float64{1e4, 5e4} {
		if w := (ra/jump - .95) / .1; w > 0 && w < 1 {
			return (1-w)*plainBranch(ra, jump, aspect, tilt) + w*plainBranch(ra, 1.01*jump, aspect, tilt)
		}
	}
	return plainGapNusselt(ra, aspect, tilt)
}

// plainBranch has the upright correlation as at the Rayleigh number of.
func plainBranch(ra, of, aspect, tilt float64) float64 {
	sin := func(a float64) float64 { return math.Sin(a * math.Pi / 180) }
	plus := func(x float64) float64 { return math.Max(0, x) }
	nu60 := func() float64 {
		g := .5 / math.Pow(1+math.Pow(ra/3160, 20.6), .1)
		return math.Max(math.Pow(1+math.Pow(.0936*math.Pow(ra, .314)/(1+g), 7), 1./7), (.104+.175/aspect)*math.Pow(ra, .283))
	}
	nu90 := func() float64 {
		n := .0673838 * math.Pow(ra, 1./3)
		if of <= 5e4 {
			n = .028154 * math.Pow(ra, .4134)
		}
		if of <= 1e4 {
			n = 1 + 1.7596678e-10*math.Pow(ra, 2.2984755)
		}
		return math.Max(n, .242*math.Pow(ra/aspect, .272))
	}
	switch {
	case tilt < 60:
		c := math.Cos(tilt * math.Pi / 180)
		if ra == 0 {
			return 1
		}
		return 1 + 1.44*plus(1-1708/(ra*c))*(1-1708*math.Pow(sin(1.8*tilt), 1.6)/(ra*c)) + plus(math.Pow(ra*c/5830, 1./3)-1)
	case tilt <= 90:
		w := (tilt - 60) / 30
		return (1-w)*nu60() + w*nu90()
	}
	return 1 + (nu90()-1)*sin(tilt)
}

func plainInside(k *CoverConditions, tin, ts float64) float64 {
	if k.InsideConvection == InsideISO6946 {
		if k.Tilt >= 60 {
			return 2.5
		}
		return 5
	}
	tf := tin + .25*(ts-tin)
	c, mu, cp, rho := plainAir(tf)
	ra := 9.80665 * math.Pow(k.Height, 3) * math.Abs(ts-tin) * rho * rho * cp / (tf * mu * c)
	g := k.Tilt
	if ts > tin {
		g = 180 - g
	}
	s := math.Sin(g * math.Pi / 180)
	var nu float64
	switch {
	case g < 15:
		nu = .13 * math.Pow(ra, 1./3)
	case g <= 90:
		rc := 2.5e5 * math.Pow(math.Exp(.72*g)/s, .2)
		if ra <= rc {
			nu = .56 * math.Pow(ra*s, .25)
		} else {
			nu = .13*(math.Pow(ra, 1./3)-math.Pow(rc, 1./3)) + .56*math.Pow(rc*s, .25)
		}
	case g <= 179:
		nu = .56 * math.Pow(ra*s, .25)
	default:
		nu = .58 * math.Pow(ra, .2)
	}
	return nu * c / k.Height
}
