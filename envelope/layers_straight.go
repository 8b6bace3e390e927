package envelope

import "math"

// straight returns by how much temperatures may move, K, before a coefficient of
// convection changes its course: by a change of sign of a difference, or of the
// Rayleigh number across one where correlations meet. It is 0 where that is not
// told.
func (s *solver) straight() float64 {
	d := s.in - s.t[innerFace(s.n-1)]
	k := abs(d) * min(1, s.film.kink(s.in, d))
	if s.inner != faceDry {
		// Vapour follows the convection from stillVapour on, which rises with the
		// difference by a third of its order at most.
		ratio := stillVapour / s.hIn
		k = min(k, abs(d)*abs(ratio*ratio*ratio-1))
	}
	for i := range s.n - 1 {
		g := &s.gaps[i]
		outer, inner := s.t[innerFace(i)], s.t[outerFace(i+1)]
		if !s.leaks {
			k = min(k, abs(inner-outer)*min(1, g.flow[g.side].kink(g.ra, g.lnAspect, g.branch)))
			continue
		}
		up, down := g.air-outer, g.air-inner
		k = min(k, abs(up), abs(down), abs(inner-outer))
		if up*down <= 0 {
			k = min(k, abs(inner-outer)*g.flow[g.side].kink(g.ra, g.lnAspect, g.branch))
			continue
		}
		k = min(k, abs(abs(up)-abs(down)))
		per := s.gapAir(i).per
		for _, d := range [2]float64{up, -down} {
			side := 0
			if d < 0 {
				side = 1
			}
			ra := per * abs(d)
			k = min(k, abs(d)*max(0, g.flow[side].kink(ra, g.lnAspect, branchOf(ra))-jumpWidth))
		}
	}
	return k
}

// kink returns the distance, as a fraction of the Rayleigh number, to where the
// correlation is another.
func (s *innerFilmCalc) kink(inside, d float64) float64 {
	switch s.model {
	case InsideISO6946, InsideGiven, InsidePapadakis, InsideBaille:
		return math.Inf(1)
	case InsideISO15099:
		tilt, critical := s.tilt, s.critical[0]
		if d < 0 {
			tilt, critical = 180-s.tilt, s.critical[1]
		}
		if tilt < 15 || tilt > 90 {
			return math.Inf(1)
		}
		return abs(s.rayleigh(inside, d)/critical - 1)
	}
	return 0
}

// kink is that of a gap. Between 60 and 90 degree, and from 90 on, several
// correlations meet: their larger is taken, and there it is not told.
func (s *gapTilt) kink(ra, lnAspect float64, branch int) float64 {
	switch s.kind {
	case gapHollands:
		x := ra * s.cosine
		return min(abs(x/hollandsCritical-1), abs(x/hollandsSecond-1))
	case gapUpright, gapDown:
		if !(ra > 1) {
			return 1
		}
		l := math.Log(ra)
		tall, _ := wright(ra, l, math.Inf(1), branch) // without what short gaps have
		short := wrightH * math.Exp(wrightHN*(l-lnAspect))
		meet := abs(math.Log(tall/short)) / wright3N // at least, in ln(ra): by which powers differ at most
		return min(meet, abs(ra/wrightLow-1), abs(ra/wrightHigh-1))
	}
	return 0
}
