package envelope

import (
	"math"

	"cloche.example/internal/constant"
)

// gapAir is what the air of a gap at its mean temperature has to say of it.
type gapAir struct {
	per     float64 // 1/K, Rayleigh number for each kelvin across the gap
	rel     float64 // 1/K, its change with the mean temperature, by its own size
	over    float64 // W/(m² K), what still air of the width conducts
	conduct float64 // W/(m² K²), change of that with the mean temperature
}

// gapAir returns it for gap i.
func (s *solver) gapAir(i int) gapAir {
	g := &s.gaps[i]
	mean := (s.t[outerFace(i+1)]+s.t[innerFace(i)])/2 + constant.ZeroCelsius
	air := s.c.air(mean, s.k.Pressure)
	b, rel := s.c.buoyancy(mean, air)
	return gapAir{per: b * g.width * g.width * g.width, rel: rel, over: air.Conductivity / g.width, conduct: airConductivity1 / g.width}
}

// across finds the Nusselt number of the gap with the difference d in K across
// it, positive where the house side is warmer, and its derivative over ln(ra); per
// is gapAir.per.
func (s *solver) across(g *gapCalc, per, d float64, pin int) (slope float64) {
	g.ra = per * math.Abs(d)
	g.side = 0
	if d < 0 {
		g.side = 1
	}
	switch {
	case g.pinned:
		g.nu = s.x[pin]
	case g.held > 0:
		g.nu = g.held
	default:
		branch := g.branch
		if !g.locked {
			branch = branchOf(g.ra)
			g.branch = branch
		}
		g.nu, slope = g.flow[g.side].nusselt(g.ra, g.lnAspect, branch)
	}
	if s.plain {
		slope = 0
	}
	return slope
}

// gap adds the balances of gap i; pin is the next unknown for a Nusselt
// number, and the return value the one after it.
func (s *solver) gap(i, pin int, j *system) int {
	if s.leaks {
		return s.leakyGap(i, pin, j)
	}
	g := &s.gaps[i]
	o, f := innerFace(i), outerFace(i+1) // outer and inner side of the gap
	d := s.t[f] - s.t[o]
	a := s.gapAir(i)
	slope := s.across(g, a.per, d, pin)
	g.h = g.nu * a.over
	// d h/d t at the outer (-) and inner (+) side, times d.
	bend := a.over * slope
	drift := (a.over*slope*a.rel + g.nu*a.conduct) * d / 2
	if s.plain {
		drift = 0
	}
	dIn, dOut := bend+drift, -bend+drift
	q := (g.h + g.bridge) * d
	s.f[o] += q
	s.f[f] -= q
	g.air = (s.t[f] + s.t[o]) / 2
	if j != nil {
		j.matrix[o][f] += g.h + g.bridge + dIn
		j.matrix[o][o] += -g.h - g.bridge + dOut
		j.matrix[f][f] -= g.h + g.bridge + dIn
		j.matrix[f][o] -= -g.h - g.bridge + dOut
	}
	if !g.pinned {
		return pin
	}
	s.f[pin] = g.ra/wrightHigh - 1
	if j != nil {
		sign := math.Copysign(1, d)
		j.matrix[o][pin] += a.over * d
		j.matrix[f][pin] -= a.over * d
		j.matrix[pin][f] += (sign*a.per + g.ra*a.rel/2) / wrightHigh
		j.matrix[pin][o] += (-sign*a.per + g.ra*a.rel/2) / wrightHigh
	}
	return pin + 1
}
