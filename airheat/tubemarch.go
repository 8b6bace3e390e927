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
	head, grows  float64 // at the fan, after the last march, and its slope by ln u
	last         float64 // the small step in ln u that the last march lacks and finish adds
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

// While it is solved, a row keeps here what finish overwrites: the slopes of its
// head, flow and velocity by ln u, the velocity its friction was predicted for,
// and 1/√f there, 0 before the first.
func slopes(p *TubePosition) (head, flow, velocity, at, root *float64) {
	return &p.JetSpeed, &p.Heat, &p.Temperature, &p.Distance, &p.Friction
}

// march goes from the closed end, where still air behind the last row has the
// head u², to the fan and returns the velocity there and its slope by ln u. It
// leaves head, row velocity and row flow (as a velocity in the tube) in dst,
// with their slopes.
//
// The velocity of a leg decides its friction, and the friction the next leg's
// velocity: a logarithm in every link of one chain. So Colebrook's root is
// found beside the chain, for the velocity predicted from the march before and
// the step in ln u (the first time: for equal rows), and the chain takes its
// tangent to the true one. stale bounds the relative error of f that is left;
// bend is the square of the largest slope of a head by ln u, relative.
func (m *marcher) march(u, step float64, dst []TubePosition) (fan, slope, stale, bend float64) {
	head, dhead := u*u, 2*u*u
	v, dv := 0.0, 0.0
	x, at := 0.0, 0.0 // 1/√f and the velocity it belongs to
	ratio, slowly := math.Exp(step), math.Max(-0.2, math.Min(0.2, step))
	for i := len(dst) - 1; i >= 0; i-- {
		p := &dst[i]
		keepHead, keepFlow, keepVelocity, keepAt, keepRoot := slopes(p)
		predicted := m.gain * u * float64(len(dst)-i)
		if *keepRoot > 0 {
			x, at = *keepRoot, *keepAt
			predicted = ratio * math.Abs(p.Velocity+(*keepVelocity-p.Velocity)*slowly)
		}
		q := m.gain * math.Sqrt(math.Abs(head))
		if head < 0 {
			q = -q // the house's air comes in
		}
		relative := dhead / head
		dq := 0.5 * q * relative
		if relative *= relative; relative > bend {
			bend = relative
		}
		up, dup := v+q, dv+dq
		p.Pressure, p.Flow, p.Velocity = head, q, up
		*keepHead, *keepFlow, *keepVelocity, *keepRoot = dhead, dq, dup, 0
		head -= m.regain * (up*up - v*v)
		dhead -= 2 * m.regain * (up*dup - v*dv)
		v, dv = up, dup
		leg := m.pitch
		if i == 0 {
			leg = m.lead
		}
		speed := math.Abs(v)
		if speed < m.fast {
			f, df := 0.0, 0.0 // f |v| and its slope by |v|
			if speed <= m.slow {
				f = m.linear
			} else {
				f = between(speed*m.toRe, m.f4000) * speed
				df = f/speed + (m.f4000-laminar/LaminarLimit)/(m.fast-m.slow)*speed
			}
			head += f * v * leg
			dhead += (f + df*speed) * dv * leg
			continue
		}
		if !(predicted >= m.fast && math.Abs(speed-predicted) <= 0.3*predicted) {
			predicted = speed // the prediction is no help
		}
		x = m.root(x, at, predicted)
		at = predicted
		*keepAt, *keepRoot = at, x
		f, tangent, change := m.near(x, at, speed)
		head += leg * (v * speed) * (f - 2*f*tangent*change)
		dhead += 2 * leg * speed * dv * f * (1 - tangent)
		if change *= change; change > stale {
			stale = change
		}
	}
	m.head, m.grows = head, dhead
	return v, dv, 0.25 * stale, bend
}

// near returns the friction factor at the speed at, whose root is x, the slope of
// ln x by ln v there, and the distance from it to the speed, relative.
func (m *marcher) near(x, at, speed float64) (f, tangent, change float64) {
	inverse := 1 / at
	cb := colebrookC * m.smooth * inverse
	return 1 / (x * x), cb / (m.rough + cb*(x*(1/colebrookC)+1)), (speed - at) * inverse
}

// root is Colebrook's 1/√f at the speed v, from its value x at the speed at, or
// afresh where x is 0. From a near one the root's tangent is the guess, and as
// ln(a + old x) = −x/c there, a short series gives the logarithm for a
// third-order step. Where the two lie too far apart for it, it is found afresh.
func (m *marcher) root(x, at, v float64) float64 {
	b, a := m.smooth/v, m.rough
	if x == 0 {
		return colebrookRoot(b, a)
	}
	old := m.smooth / at
	y := a + old*x
	guess := x + x*colebrookC*(old-b)/(y+colebrookC*old)
	yn := a + b*guess
	z := (yn - y) / (yn + y)
	if z < 0.1 && z > -0.1 && yn > 0 {
		zz := z * z
		ln := 2 * z * (1 + zz*(1.0/3+zz*(1.0/5+zz*(1.0/7+zz*(1.0/9))))) // ln(yn/y)
		w := 1 / (yn + colebrookC*b)
		if u := (guess - x + colebrookC*ln) * yn * w; u < 2e-3 && u > -2e-3 { // g/g'
			t := colebrookC * b * w                         // k/(1 + k)
			a2 := -0.5 / colebrookC * t * t * (1 + t*(1+t)) // g''/(2 g'), to t³
			return guess - u*(1+a2*u)
		}
	}
	return colebrookRoot(b, a)
}

// friction is the factor of a leg whose velocity is v, for the root x that the
// march left at a speed next to it.
func (m *marcher) friction(v, at, x float64) float64 {
	speed := math.Abs(v)
	switch {
	case x > 0:
		f, tangent, change := m.near(x, at, speed)
		return f - 2*f*tangent*change
	case speed == 0:
		return 0
	case speed <= m.slow:
		return laminar / (speed * m.toRe)
	}
	return between(speed*m.toRe, m.f4000)
}

// closeEnough is the square of the largest relative change of a head that may be
// added along the slopes, and so of the order of what that leaves; staleEnough
// is how well the friction must be known.
const (
	closeEnough = 4e-9
	staleEnough = 1e-9
)

// endSpeed finds ln u, u the square root of the end's head, at which the
// velocity at the fan is the wanted one, and leaves the last march in dst. The
// velocity is nearly a power of u, so that Newton's steps are taken in
// logarithms, within a bracket.
func (m *marcher) endSpeed(wanted float64, dst []TubePosition) (marches int, err error) {
	lo, hi := 0.0, math.Inf(1)
	// Equal rows, or Bernoulli's law without friction where it holds.
	beta := m.gain * float64(len(dst))
	u := wanted / beta
	if b := beta * math.Sqrt(m.regain); b > 0 && b < 1.2 {
		u = wanted * math.Sqrt(m.regain) / math.Sin(b)
	}
	for i := range dst {
		dst[i].Friction = 0
	}
	step := 0.0
	for marches = 1; marches <= 200; marches++ {
		v, slope, stale, bend := m.march(u, step, dst)
		miss := wanted - v
		if m.last = miss / slope; stale <= staleEnough && m.last*m.last*bend <= closeEnough && slope > 0 {
			return marches, nil
		}
		if hi-lo <= 4e-16*u {
			// The rows' flows jump where a row turns from out to in; with holes far
			// larger together than the section, the jumps can step over the flow.
			return marches, fmt.Errorf("%w: at every end pressure the rows give more or less than the flow, by %.3g of it, with house air drawn in; the holes are too large for the tube", ErrNoSolution, math.Abs(miss)/wanted)
		}
		if u < 1e-25 {
			return marches, fmt.Errorf("%w: friction takes all pressure before the closed end: at any end pressure the near rows give more than the flow; the tube is too long or too thin for it", ErrNoSolution)
		}
		// A velocity nearer than the friction is known says nothing of the side.
		if v < wanted*(1-stale) {
			lo = u
		} else if v > wanted*(1+stale) {
			hi = u
		}
		next := math.NaN()
		if v > 0 && slope > 0 {
			next = u * math.Exp(math.Log(wanted/v)*v/slope)
		}
		if !(next > lo && next < hi) {
			next = 2 * u
			if !math.IsInf(hi, 1) {
				next = 0.5 * (lo + hi)
			}
		}
		step = math.Log(next / u)
		u = next
	}
	return marches, fmt.Errorf("%w: the tube's end pressure, last %.6g m/s of jet speed at the closed end", ErrNotConverged, u)
}
