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
	linear       float64 // laminar f V: 64 ν/D
	rough        float64 // Colebrook's first term
	f4000        float64
	pitch, lead  float64 // over the diameter
	head         float64 // at the fan, after the last march
}

func (t PerforatedTube) marcher(s TubeSupply) marcher {
	nu := s.Air.Viscosity / s.Air.Density
	hole := float64(t.HolesPerRow) * math.Pi / 4 * t.HoleDiameter * t.HoleDiameter
	return marcher{
		regain: t.Regain,
		hole:   hole,
		gain:   t.Discharge * hole / (math.Pi / 4 * t.Diameter * t.Diameter),
		toRe:   t.Diameter / nu,
		linear: laminar * nu / t.Diameter,
		rough:  t.Roughness / t.Diameter / colebrookRough,
		f4000:  Colebrook(TurbulentLimit, t.Roughness/t.Diameter),
		pitch:  t.Pitch / t.Diameter,
		lead:   t.LeadIn / t.Diameter,
	}
}

// march goes from the closed end, where still air behind the last row has the
// head u², to the fan and returns the velocity there. It leaves head, row
// velocity and row flow (as a velocity in the tube) in dst.
func (m *marcher) march(u float64, dst []TubePosition) float64 {
	head, v := u*u, 0.0
	// x is 1/√f of the leg before: the start for the next one's.
	x, b := 0.0, 0.0
	for i := len(dst) - 1; i >= 0; i-- {
		p := &dst[i]
		p.Pressure = head
		q := m.gain * math.Sqrt(math.Abs(head))
		if head < 0 {
			q = -q // the house's air comes in
		}
		up := v + q
		head -= m.regain * (up*up - v*v)
		v = up
		p.Flow, p.Velocity = q, v
		leg := m.pitch
		if i == 0 {
			leg = m.lead
		}
		speed := math.Abs(v)
		re := speed * m.toRe
		switch {
		case re <= LaminarLimit:
			head += m.linear * v * leg
		case re < TurbulentLimit:
			head += between(re, m.f4000) * leg * v * speed
		default:
			next := colebrookSmooth / re
			if x == 0 {
				x = colebrookRoot(next, m.rough)
			} else {
				x = colebrookNear(x, b, next, m.rough)
			}
			b = next
			head += leg * v * speed / (x * x)
		}
	}
	m.head = head
	return v
}

// colebrookNear returns the root for b from x, the root for the near value
// old: a straight prediction in b, then one fourth-order step, and another
// when that step was not small.
func colebrookNear(x, old, b, a float64) float64 {
	k := colebrookC * old / (a + old*x)
	near := x - x*k/(1+k)*((b-old)/old)
	near, step, _ := colebrookStep(near, b, a)
	if math.Abs(step) > 0.02 {
		near, _, _ = colebrookStep(near, b, a)
	}
	return near
}

// endSpeed finds u, the square root of the end's head, at which the velocity
// at the fan is the wanted one. The velocity is nearly proportional to u and
// more nearly to a power of it, so the secant is drawn in logarithms. Between
// steps a bracket is kept.
func (m *marcher) endSpeed(wanted float64, dst []TubePosition) (u float64, marches int, err error) {
	lo, hi := 0.0, math.Inf(1)
	// Bernoulli's law without friction where it holds, else equal rows.
	u = wanted / (m.gain * float64(len(dst)))
	if b := m.gain * float64(len(dst)) * m.regain; b < 1.2 {
		u = wanted / math.Sin(m.gain*float64(len(dst))) * 1
		if m.gain*float64(len(dst)) > 1.2 {
			u = wanted / (m.gain * float64(len(dst)))
		}
	}
	var lastLnU, lastLnV float64
	power := 1.0
	for marches = 1; marches <= 200; marches++ {
		v := m.march(u, dst)
		if math.Abs(v-wanted) <= 1e-12*wanted || hi-lo <= 4e-16*u {
			return u, marches, nil
		}
		if v < wanted {
			lo = u
		} else {
			hi = u
		}
		next := math.NaN()
		if v > 0 {
			lnU, lnV := math.Log(u), math.Log(v)
			if marches > 1 {
				power = (lnV - lastLnV) / (lnU - lastLnU)
			}
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
