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
	slow, fast   float64 // m/s, at laminarLimit and turbulentLimit
	smooth       float64 // m/s, Colebrook's second term times the velocity, its b
	inverse      float64 // s/m, one over it
	linear       float64 // laminar f V: 64 ν/D
	rough        float64 // Colebrook's first term
	f4000        float64
	pitch, lead  float64 // over the diameter
	head, grows  float64 // at the fan, after the last march, and its slope by ln u
	last         float64 // the small step in ln u that the last march lacks and finish adds
}

func (t PerforatedTube) marcher(s TubeSupply) marcher {
	nu := s.Properties.Viscosity / s.Properties.Density
	hole := float64(t.HolesPerRow) * math.Pi / 4 * t.HoleDiameter * t.HoleDiameter
	return marcher{
		regain: t.Regain,
		hole:   hole,
		gain:   t.Discharge * hole / (math.Pi / 4 * t.Diameter * t.Diameter),
		toRe:   t.Diameter / nu,
		slow:   laminarLimit * nu / t.Diameter,
		fast:   turbulentLimit * nu / t.Diameter,
		smooth: colebrookSmooth * nu / t.Diameter, inverse: t.Diameter / (colebrookSmooth * nu),
		linear: laminar * nu / t.Diameter,
		rough:  t.Roughness / t.Diameter / colebrookRough,
		f4000:  Colebrook(turbulentLimit, t.Roughness/t.Diameter),
		pitch:  t.Pitch / t.Diameter,
		lead:   t.LeadIn / t.Diameter,
	}
}

// While it is solved, a row keeps here what finish overwrites: the slopes of its
// head and velocity by ln u, and Colebrook's root for the predicted velocity: the
// root 1/√f, 0 where none is, its b, and c/(a + b x + c b), which times b is the
// slope of ln x.
func kept(p *TubePosition) (head, velocity, root, b, tangent *float64) {
	return &p.JetSpeed, &p.Temperature, &p.Friction, &p.Distance, &p.Heat
}

// The velocity of a leg decides its friction, and the friction the next leg's
// velocity: a logarithm in every link of one chain. So predict finds Colebrook's
// root beside the chain, for the velocity that the march before and the step in
// ln u lead to expect, and march takes its tangent to the true one.
//
// Bounds of a guess: a step in ln u is foreseen for no more than its factor of
// slowSteps, and a tangent serves while the speed is within tangentReach of the one
// it was taken at; careful does the rest.
const (
	slowSteps    = 0.2
	tangentReach = 0.3
)

// predict is for the first march if first is true: there the rows are expected to
// be equal, and a root needs no more digits than the tangent or a Newton step
// from that of the row before gives.
func (m *marcher) predict(first bool, u, step float64, dst []TubePosition) {
	ratio, slowly := math.Exp(step), math.Max(-slowSteps, math.Min(slowSteps, step))
	row := m.gain * u
	equal := 0.0
	var x, before, along float64 // root, its b and tangent of the row before
	for i := len(dst) - 1; i >= 0; i-- {
		p := &dst[i]
		_, slope, root, keepB, tangent := kept(p)
		equal += row
		next := equal
		if !first {
			next = ratio * math.Abs(p.Velocity+(*slope-p.Velocity)*slowly)
		}
		if !(next >= m.fast) {
			*root = 0
			continue
		}
		b := m.smooth / next
		switch {
		case first && i&3 != 0 && equal > 16*row && x > 0:
			x += x * (before - b) * along
		case first && x > 0:
			x = colebrookStart(x, b, m.rough)
		case first || *root == 0:
			x, _ = colebrookRoot(b, m.rough)
		default:
			x, _ = colebrookFrom(*root+*root*(*keepB-b)**tangent, b, m.rough)
		}
		before, along = b, colebrookC/(m.rough+b*(x+colebrookC))
		*root, *keepB, *tangent = x, before, along
	}
}

// march goes from the closed end, where still air behind the last row has the
// head u², to the fan and returns the velocity there and its slope by ln u. It
// leaves head, row velocity and row flow (as a velocity in the tube) in dst,
// with their slopes. stale bounds the relative error of a friction factor that
// its tangent leaves; bend is the square of the largest slope of a head by ln u,
// relative. Where a prediction is no help, ok is false and nothing else holds.
func (m *marcher) march(u float64, dst []TubePosition) (fan, slope, stale, bend float64, ok bool) {
	head, dhead := u*u, 2*u*u
	v, dv := 0.0, 0.0
	for i := len(dst) - 1; i >= 0; i-- {
		p := &dst[i]
		keepHead, keepVelocity, root, b, tangent := kept(p)
		// ln x rises by tangent b for each change of the speed, relative.
		f, rise, scale := 1/(*root**root), 2**tangent**b, *b*m.inverse
		q := m.gain * math.Sqrt(math.Abs(head))
		if head < 0 {
			q = -q // the house's air comes in
		}
		relative := dhead / head
		up, dup := v+q, dv+0.5*q*relative
		if relative *= relative; relative > bend {
			bend = relative
		}
		p.Pressure, p.Flow, p.Velocity = head, q, up
		*keepHead, *keepVelocity = dhead, dup
		head -= m.regain * (up*up - v*v)
		dhead -= 2 * m.regain * (up*dup - v*dv)
		v, dv = up, dup
		leg := m.pitch
		if i == 0 {
			leg = m.lead
		}
		speed := math.Abs(v)
		if speed < m.fast {
			*root = 0
			f, df := m.slowFriction(speed)
			head += f * v * leg
			dhead += (f + df*speed) * dv * leg
			continue
		}
		change := speed*scale - 1
		if !(*root > 0 && change < tangentReach && change > -tangentReach) {
			return 0, 0, 0, 0, false
		}
		head += leg * (v * speed) * (f - f*rise*change)
		dhead += leg * speed * dv * f * (2 - rise)
		if change *= change; change > stale {
			stale = change
		}
	}
	m.head, m.grows = head, dhead
	return v, dv, 0.25 * stale, bend, true // a tangent's error is at most a quarter of the change squared
}

// careful is march with each root found within the chain.
func (m *marcher) careful(u float64, dst []TubePosition) (fan, slope, stale, bend float64, ok bool) {
	head, dhead := u*u, 2*u*u
	v, dv := 0.0, 0.0
	for i := len(dst) - 1; i >= 0; i-- {
		p := &dst[i]
		keepHead, keepVelocity, root, b, tangent := kept(p)
		q := math.Copysign(m.gain*math.Sqrt(math.Abs(head)), head)
		relative := dhead / head
		bend = math.Max(bend, relative*relative)
		up, dup := v+q, dv+0.5*q*relative
		p.Pressure, p.Flow, p.Velocity = head, q, up
		*keepHead, *keepVelocity, *root = dhead, dup, 0
		head -= m.regain * (up*up - v*v)
		dhead -= 2 * m.regain * (up*dup - v*dv)
		v, dv = up, dup
		leg := m.pitch
		if i == 0 {
			leg = m.lead
		}
		speed := math.Abs(v)
		f, df := m.slowFriction(math.Min(speed, m.fast))
		if speed >= m.fast {
			*b = m.smooth / speed
			*root, _ = colebrookRoot(*b, m.rough)
			*tangent = colebrookC / (m.rough + *b*(*root+colebrookC))
			f = speed / (*root * *root)
			df = (1 - 2**tangent**b) * f / speed
		}
		head += f * v * leg
		dhead += (f + df*speed) * dv * leg
	}
	m.head, m.grows = head, dhead
	return v, dv, 0, bend, true
}

// slowFriction is f |v| and its slope by |v| up to turbulentLimit.
func (m *marcher) slowFriction(speed float64) (f, slope float64) {
	if speed <= m.slow {
		return m.linear, 0
	}
	factor := between(speed*m.toRe, m.f4000)
	return factor * speed, factor + (m.f4000-laminar/laminarLimit)/(m.fast-m.slow)*speed
}

// friction is the factor of a leg whose velocity is v, from the root that the
// march left for a speed next to it.
func (m *marcher) friction(v, x, b, tangent float64) float64 {
	speed := math.Abs(v)
	switch {
	case x > 0:
		return (1 - 2*tangent*b*(speed*b*m.inverse-1)) / (x * x)
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
	firstRoots  = 1e-6 // how well the first march knows its friction at best
)

// Bounds of the search for the end's speed.
const (
	mostMarches  = 200
	frictionless = 1.2   // holes over section, times discharge, up to which the sine of Bernoulli's law starts it
	noBracket    = 4e-16 // of the speed: rounding alone
	noSpeed      = 1e-25 // m/s, of a tube whose near rows take all
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
	if b := beta * math.Sqrt(m.regain); b > 0 && b < frictionless {
		u = wanted * math.Sqrt(m.regain) / math.Sin(b)
	}
	step := 0.0
	for marches = 1; marches <= mostMarches; marches++ {
		m.predict(marches == 1, u, step, dst)
		v, slope, stale, bend, ok := m.march(u, dst)
		if !ok {
			v, slope, stale, bend, _ = m.careful(u, dst)
		} else if marches == 1 && len(dst) > 1 && dst[0].Friction > 0 {
			stale = math.Max(stale, firstRoots)
		}
		miss := wanted - v
		if m.last = miss / slope; stale <= staleEnough && m.last*m.last*bend <= closeEnough && slope > 0 {
			return marches, nil
		}
		if hi-lo <= noBracket*u {
			// The rows' flows jump where a row turns from out to in; with holes far
			// larger together than the section, the jumps can step over the flow.
			return marches, fmt.Errorf("%w: at every end pressure the rows give more or less than the flow, by %.3g of it, with house air drawn in; the holes are too large for the tube", ErrNoSolution, math.Abs(miss)/wanted)
		}
		if u < noSpeed {
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
