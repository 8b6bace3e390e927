package envelope

import "math"

// gapSide is one side of a gap whose air is a node: half of the gap, of twice its
// coefficient, which is that of a difference across the gap.
type gapSide struct {
	h         float64 // W/(m² K), coefficient of the whole gap
	byAcross  float64 // W/(m² K²), its change with the difference
	byMean    float64 // W/(m² K²), and with each side's temperature besides
	byNusselt float64 // W/(m² K), and with the Nusselt number where that is an unknown
	of        across
}

// across says of which temperatures the difference is: house side less outer.
type across struct{ outer, inner, air float64 }

var (
	betweenSides = across{outer: -1, inner: 1}
	airToOuter   = across{outer: -1, air: 1}
	innerToAir   = across{inner: 1, air: -1}
)

// leastAcross is the difference in K below which a coefficient is taken not to
// change with it.
const leastAcross = 1e-9

// leakyGap is gap with its air as a node between two films, each of twice the
// gap's conductance, and with air exchanged through leaking layers. Without
// leakage it is the same gap.
//
// Air that leaks in may be warmer than both sides, or colder. What differs
// between these, which may be nothing, then tells neither how the air moves nor
// which way heat goes: each side has the coefficient of its own difference from
// the air, upward or downward as that is. Where the air becomes as warm as one
// side the two rules meet. What a side takes so grows with the air and falls
// with the side, however small the difference, and a cover has one state.
func (s *solver) leakyGap(i, pin int, j *system) int {
	g := &s.gaps[i]
	o, f := innerFace(i), outerFace(i+1) // outer and inner side of the gap
	node := 2*s.n + i
	ta := s.x[node]
	g.air = ta
	a := s.gapAir(i)
	d, up, down := s.t[f]-s.t[o], ta-s.t[o], ta-s.t[f]
	var outer, inner gapSide
	strong := d
	switch {
	case up*down <= 0:
		outer = s.stronger(g, &a, betweenSides, d, pin)
		inner = outer
	case math.Abs(up) > math.Abs(down):
		strong = up
		outer, inner = s.stronger(g, &a, airToOuter, up, pin), s.weaker(g, &a, innerToAir, -down)
	default:
		strong = -down
		inner, outer = s.stronger(g, &a, innerToAir, -down, pin), s.weaker(g, &a, airToOuter, up)
	}
	g.h, g.films = g.nu*a.over, [2]float64{outer.h, inner.h}
	toOuter, toInner := 2*outer.h*up, 2*inner.h*down
	s.f[o] += toOuter + g.bridge*d
	s.f[f] += toInner - g.bridge*d
	leakOuter, leakInner := s.leak[i], s.leak[i+1]
	before, after := s.out, s.in
	if i > 0 {
		before = s.x[node-1]
	}
	if i+1 < s.n-1 {
		after = s.x[node+1]
	}
	s.f[node] = leakOuter*(before-ta) + leakInner*(after-ta) - toOuter - toInner
	if j != nil {
		j.matrix[o][f] += g.bridge
		j.matrix[o][o] -= g.bridge
		j.matrix[f][o] += g.bridge
		j.matrix[f][f] -= g.bridge
		j.side(&outer, up, o, [4]int{o, f, node, pin}, node, g.pinned)
		j.side(&inner, down, f, [4]int{o, f, node, pin}, node, g.pinned)
		j.matrix[node][node] -= leakOuter + leakInner
		if i > 0 {
			j.matrix[node][node-1] += leakOuter
		}
		if i+1 < s.n-1 {
			j.matrix[node][node+1] += leakInner
		}
	}
	if !g.pinned {
		return pin
	}
	s.f[pin] = g.ra/wrightHigh - 1
	if j != nil {
		of := outer.of
		if outer.byNusselt == 0 {
			of = inner.of
		}
		sign := math.Copysign(a.per, strong)
		j.matrix[pin][o] += (sign*of.outer + g.ra*a.rel/2) / wrightHigh
		j.matrix[pin][f] += (sign*of.inner + g.ra*a.rel/2) / wrightHigh
		j.matrix[pin][node] += sign * of.air / wrightHigh
	}
	return pin + 1
}

// stronger returns the side that is farther from the air, or both, with the
// difference d in K: it decides the branch of the gap.
func (s *solver) stronger(g *gapCalc, a *gapAir, of across, d float64, pin int) gapSide {
	slope := s.across(g, a.per, d, pin)
	r := s.sideOf(a, of, d, g.nu, slope)
	if g.pinned {
		r.byNusselt = a.over
	}
	return r
}

// jumpWidth is the fraction about a jump of the correlation for upright gaps over
// which the nearer side passes from one branch to the other: the jumps are under
// a hundredth, so that what the side takes still grows with its difference.
const jumpWidth = 0.05

// weaker returns the side that is nearer to the air, with the difference d in K.
func (s *solver) weaker(g *gapCalc, a *gapAir, of across, d float64) gapSide {
	ra, side := a.per*math.Abs(d), 0
	if d < 0 {
		side = 1
	}
	tilt := &g.flow[side]
	nu, slope := tilt.nusselt(ra, g.lnAspect, branchOf(ra))
	if tilt.jumps() {
		for _, jump := range [2]float64{wrightLow, wrightHigh} {
			if beyond := ra/jump - 1; math.Abs(beyond) < jumpWidth {
				before := branchOf(jump)
				high, steep := tilt.nusselt(ra, g.lnAspect, before+1)
				nu, slope = tilt.nusselt(ra, g.lnAspect, before)
				share := (1 + beyond/jumpWidth) / 2
				slope += share*(steep-slope) + (high-nu)*ra/(2*jumpWidth*jump)
				nu += share * (high - nu)
			}
		}
	}
	if s.plain {
		slope = 0
	}
	return s.sideOf(a, of, d, nu, slope)
}

// sideOf returns the side of a Nusselt number and its slope.
func (s *solver) sideOf(a *gapAir, of across, d, nu, slope float64) gapSide {
	r := gapSide{h: nu * a.over, of: of}
	if !s.plain && math.Abs(d) > leastAcross {
		r.byAcross = a.over * slope / d
		r.byMean = (a.over*slope*a.rel + nu*a.conduct) / 2
	}
	return r
}

// side adds what the side with the balance own takes from air that is apart by y
// in K: at holds the outer side, the inner, the air and the Nusselt number.
func (j *system) side(r *gapSide, y float64, own int, at [4]int, node int, pinned bool) {
	outer, inner, air := 2*y*(r.byAcross*r.of.outer+r.byMean), 2*y*(r.byAcross*r.of.inner+r.byMean), 2*y*r.byAcross*r.of.air
	for _, to := range [2]struct {
		row  int
		sign float64
	}{{own, 1}, {node, -1}} {
		row := &j.matrix[to.row]
		row[at[0]] += to.sign * outer
		row[at[1]] += to.sign * inner
		row[at[2]] += to.sign * (air + 2*r.h)
		row[own] -= to.sign * 2 * r.h
		if pinned {
			row[at[3]] += to.sign * 2 * r.byNusselt * y
		}
	}
}
