package airheat

import (
	"fmt"
	"math"
)

// marcher holds what a march through a PerforatedTube needs, in heads: twice
// the pressure over the density, m²/s².
type marcher struct {
	regain, gain float64 // gain: discharge times hole area over the section
	hole         float64 // m², area of a row's holes
	toRe         float64 // Reynolds number over velocity, s/m
	slow, fast   float64 // m/s, at LaminarLimit and TurbulentLimit
	smooth       float64 // m/s, Colebrook's second term times the velocity
	linear       float64 // laminar f V: 64 ν/D
	rough        float64 // Colebrook's first term
	f4000        float64
	pitch, lead  float64 // over the diameter
	head         float64 // at the fan, after the last march
	scale        float64 // wanted over found velocity, within closeEnough of 1, that finish applies
}

func (t PerforatedTube) marcher(s TubeSupply) marcher {
	nu := s.Air.Viscosity / s.Air.Density
	hole := float64(t.HolesPerRow) * math.Pi / 4 * t.HoleDiameter * t.HoleDiameter
	return marcher{
		regain: t.Regain,
		hole:   hole,
		gain:   t.Discharge * hole / (math.Pi / 4 * t.Diameter * t.Diameter),
		toRe:   t.Diameter / nu,
		slow:   LaminarLimit * nu / t.Diameter,
		fast:   TurbulentLimit * nu / t.Diameter,
		smooth: colebrookSmooth * nu / t.Diameter,
		linear: laminar * nu / t.Diameter,
		rough:  t.Roughness / t.Diameter / colebrookRough,
		f4000:  Colebrook(TurbulentLimit, t.Roughness/t.Diameter),
		pitch:  t.Pitch / t.Diameter,
		lead:   t.LeadIn / t.Diameter,
	}
}

// march goes from the closed end, where still air behind the last row has the
// head u², to the fan and returns the velocity there. It leaves head, row
// velocity and row flow (as a velocity in the tube) in dst, and 1/√f of each
// turbulent leg in Friction, 0 for others.
//
// The velocity of a leg decides its friction, and the friction the next leg's
// velocity: a logarithm in every link of one chain. So the march takes, for
// the friction of a turbulent leg, the tangent of Colebrook's root from the
// march before (the first time: from the leg before), and finds
// the exact root beside the chain, for the next march. stale is the largest relative
// difference between the two; it vanishes with the change of the velocities.
func (m *marcher) march(u float64, dst []TubePosition) (fan, stale float64) {
	head, v := u*u, 0.0
	x, at := 0.0, 0.0 // 1/√f and the velocity it belongs to
	for i := len(dst) - 1; i >= 0; i-- {
		p := &dst[i]
		q := m.gain * math.Sqrt(math.Abs(head))
		if head < 0 {
			q = -q // the house's air comes in
		}
		up := v + q
		p.Pressure, p.Flow = head, q
		if p.Friction > 0 {
			x, at = p.Friction, p.Velocity
		}
		p.Velocity, p.Friction = up, 0
		head -= m.regain * (up*up - v*v)
		v = up
		leg := m.pitch
		if i == 0 {
			leg = m.lead
		}
		switch speed := math.Abs(v); {
		case speed <= m.slow:
			head += m.linear * v * leg
		case speed < m.fast:
			head += between(speed*m.toRe, m.f4000) * leg * v * speed
		case x == 0:
			x, at = colebrookRoot(m.smooth/speed, m.rough), v
			p.Friction = x
			head += leg * v * speed / (x * x)
		default:
			// The first three lines wait for nothing of this march.
			inverse, f := 1/at, 1/(x*x)
			cb := colebrookC * m.smooth * math.Abs(inverse)
			tangent := cb / (m.rough + cb*(x*(1/colebrookC)+1)) * inverse
			change := (v - at) * tangent // of ln x along the tangent
			used := f - 2*f*change
			head += leg * (v * speed) * used
			near := x + x*change
			if math.Abs(change) > 1e-6 {
				near = colebrookNear(x, near, cb*(1/colebrookC), m.smooth/speed, m.rough)
			}
			if d := math.Abs(used*near*near - 1); d > stale {
				stale = d
			}
			x, at = near, v
			p.Friction = x
		}
	}
	m.head = head
	return v, stale
}

// colebrookNear returns the root for b from near, a good guess, and x, the
// root for the near value old: there ln(a + old x) = −x/c, so that a short
// series gives the logarithm for a third-order step. Where the two lie too far
// apart for it, fourth-order steps with the logarithm itself do.
func colebrookNear(x, near, old, b, a float64) float64 {
	y, yn := a+old*x, a+b*near
	z := (yn - y) / (yn + y)
	zz := z * z
	ln := 2 * z * (1 + zz*(1.0/3+zz*(1.0/5+zz*(1.0/7)))) // ln(yn/y)
	w := 1 / (yn + colebrookC*b)
	u := (near - x + colebrookC*ln) * yn * w // g/g'
	if math.Abs(z) < 0.03 && math.Abs(u) < 1e-3 {
		t := colebrookC * b * w                         // k/(1 + k)
		a2 := -0.5 / colebrookC * t * t * (1 + t*(1+t)) // g''/(2 g'), to t³
		return near - u*(1+a2*u)
	}
	near, step, _ := colebrookStep(near, b, a)
	if math.Abs(step) > 0.002 {
		near, _, _ = colebrookStep(near, b, a)
	}
	return near
}

// friction is the factor of a leg whose velocity is v and whose x = 1/√f the
// march has left, 0 where the leg is not turbulent.
func (m *marcher) friction(v, x float64) float64 {
	re := math.Abs(v) * m.toRe
	switch {
	case x > 0:
		return 1 / (x * x)
	case re == 0:
		return 0
	case re <= LaminarLimit:
		return laminar / re
	}
	return between(re, m.f4000)
}

// closeEnough is how near the last march comes to the wanted velocity, relative. The
// rest is scaled away: flows are so nearly proportional that what this leaves
// is some twenty times smaller.
const closeEnough = 5e-9

// endSpeed finds u, the square root of the end's head, at which the velocity
// at the fan is the wanted one. The velocity is nearly proportional to u and
// more nearly to a power of it, so the secant is drawn in logarithms, once the
// step is large against what the friction still lacks. Between steps a bracket
// is kept.
func (m *marcher) endSpeed(wanted float64, dst []TubePosition) (u float64, marches int, err error) {
	lo, hi := 0.0, math.Inf(1)
	// Equal rows, or Bernoulli's law without friction where it holds.
	beta := m.gain * float64(len(dst))
	u = wanted / beta
	if b := beta * math.Sqrt(m.regain); b > 0 && b < 1.2 {
		u = wanted * math.Sqrt(m.regain) / math.Sin(b)
	}
	for i := range dst {
		dst[i].Friction = 0
	}
	var lastLnU, lastLnV, lastStale float64
	power := 1.0
	for marches = 1; marches <= 200; marches++ {
		v, stale := m.march(u, dst)
		miss := math.Abs(v - wanted)
		if stale <= 1e-9 && miss <= closeEnough*wanted {
			m.scale = wanted / v
			return u * m.scale, marches, nil
		}
		if hi-lo <= 4e-16*u {
			// The rows' flows jump where a row turns from out to in; with holes far
			// larger together than the section, the jumps can step over the flow.
			return u, marches, fmt.Errorf("%w: at every end pressure the rows give more or less than the flow, by %.3g of it, with house air drawn in; the holes are too large for the tube", ErrNoSolution, miss/wanted)
		}
		// A velocity nearer than the friction is known says nothing of the side.
		if v < wanted*(1-stale) {
			lo = u
		} else if v > wanted*(1+stale) {
			hi = u
		}
		next := math.NaN()
		if v > 0 {
			lnU, lnV := math.Log(u), math.Log(v)
			if blur := stale + lastStale; marches > 1 && math.Abs(lnU-lastLnU) > blur+1e-9 {
				power = (lnV - lastLnV) / (lnU - lastLnU)
			}
			lastStale = stale
			next = u * math.Exp((math.Log(wanted)-lnV)/power)
			lastLnU, lastLnV = lnU, lnV
		}
		if !(next > lo && next < hi) {
			next = 2 * u
			if !math.IsInf(hi, 1) {
				next = 0.5 * (lo + hi)
			}
		}
		u = next
	}
	return u, marches, fmt.Errorf("%w: the tube's end pressure, last %.6g m/s of jet speed at the closed end", ErrNotConverged, u)
}
