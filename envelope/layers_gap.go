package envelope

import (
	"math"

	"cloche.example/internal/constant"
)

// gap adds the balances of gap i; pin is the next unknown for a Nusselt
// number, and the return value the one after it.
func (s *solver) gap(i, pin int, j *system) int {
	g := &s.gaps[i]
	o, f := innerFace(i), outerFace(i+1) // outer and inner side of the gap
	d := s.t[f] - s.t[o]
	mean := (s.t[f]+s.t[o])/2 + constant.ZeroCelsius
	air := s.c.air(mean, s.k.Pressure)
	b, rel := s.c.buoyancy(mean, air)
	per := b * g.width * g.width * g.width
	g.ra = per * math.Abs(d)
	side := 0
	if d < 0 {
		side = 1
	}
	var slope float64 // dNu/d ln(ra)
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
		g.nu, slope = g.flow[side].nusselt(g.ra, g.lnAspect, branch)
	}
	if s.plain {
		slope = 0
	}
	over := air.Conductivity / g.width
	g.h = g.nu * over
	// d h/d t at the outer (-) and inner (+) side, times d.
	bend := over * slope
	drift := (over*slope*rel + g.nu*airConductivity1/g.width) * d / 2
	if s.plain {
		drift = 0
	}
	dIn, dOut := bend+drift, -bend+drift
	if !s.leaks {
		q := (g.h + g.bridge) * d
		s.f[o] += q
		s.f[f] -= q
		if j != nil {
			j.matrix[o][f] += g.h + g.bridge + dIn
			j.matrix[o][o] += -g.h - g.bridge + dOut
			j.matrix[f][f] -= g.h + g.bridge + dIn
			j.matrix[f][o] -= -g.h - g.bridge + dOut
		}
		g.air = (s.t[f] + s.t[o]) / 2
		if g.pinned && j != nil {
			j.matrix[o][pin] += over * d
			j.matrix[f][pin] -= over * d
		}
	} else {
		s.leakyGap(i, pin, d, over, dIn, dOut, j)
	}
	if !g.pinned {
		return pin
	}
	s.f[pin] = g.ra/wrightHigh - 1
	if j != nil {
		sign := 1.0
		if d < 0 {
			sign = -1
		}
		j.matrix[pin][f] += (sign*per + g.ra*rel/2) / wrightHigh
		j.matrix[pin][o] += (-sign*per + g.ra*rel/2) / wrightHigh
	}
	return pin + 1
}

// leakyGap is gap with its air as a node between two equal films, each of
// twice the gap's conductance, and with air exchanged through leaking layers.
// Without leakage it is the same gap.
func (s *solver) leakyGap(i, pin int, d, over, dIn, dOut float64, j *system) {
	g := &s.gaps[i]
	o, f := innerFace(i), outerFace(i+1)
	node := 2*s.n + i
	ta := s.x[node]
	g.air = ta
	up, down := ta-s.t[o], ta-s.t[f]
	s.f[o] += 2*g.h*up + g.bridge*d
	s.f[f] += 2*g.h*down - g.bridge*d
	s.f[node] = -2 * g.h * (up + down)
	outer, inner := s.leak[i], s.leak[i+1]
	before, after := s.out, s.in
	if i > 0 {
		before = s.x[node-1]
	}
	if i+1 < s.n-1 {
		after = s.x[node+1]
	}
	s.f[node] += outer*(before-ta) + inner*(after-ta)
	if j == nil {
		return
	}
	// d h/d t comes as d times it; scale to the films' own differences.
	var hf, ho float64
	if math.Abs(d) > 1e-9 {
		hf, ho = dIn/d, dOut/d
	}
	j.matrix[o][o] += -2*g.h - g.bridge + 2*ho*up
	j.matrix[o][f] += g.bridge + 2*hf*up
	j.matrix[o][node] += 2 * g.h
	j.matrix[f][f] += -2*g.h - g.bridge + 2*hf*down
	j.matrix[f][o] += g.bridge + 2*ho*down
	j.matrix[f][node] += 2 * g.h
	j.matrix[node][o] += 2*g.h - 2*ho*(up+down)
	j.matrix[node][f] += 2*g.h - 2*hf*(up+down)
	j.matrix[node][node] -= 4*g.h + outer + inner
	if i > 0 {
		j.matrix[node][node-1] += outer
	}
	if i+1 < s.n-1 {
		j.matrix[node][node+1] += inner
	}
	if g.pinned {
		j.matrix[o][pin] += 2 * over * up
		j.matrix[f][pin] += 2 * over * down
		j.matrix[node][pin] -= 2 * over * (up + down)
	}
}
