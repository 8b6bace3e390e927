package ventilation

import (
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/solve"
)

// dryFlow is the mass balance of the openings counted in dry air: what enters
// carries the water of the outside air with it, what leaves that of the inside
// air, so that the dry air that enters and leaves is the same while the moist
// air is not.
type dryFlow struct {
	paths           []path
	exchange        WindExchange
	opening         float64 // fraction of the openings' area
	outside, inside air     // moist densities
	dryOut, dryIn   float64 // kg of dry air per kg of moist air outside and inside
	dynamic         float64 // Pa
	buoyancy        float64 // Pa/m
}

// stands takes the area of e, if it is an opening, at the fraction at which the
// openings stand, and reports false for one that is shut.
func (s *dryFlow) stands(e *path) bool {
	if e.kind <= screenPath && s.opening != 1 {
		if s.opening == 0 {
			return false
		}
		e.flow *= s.opening
		e.slope /= s.opening
	}
	return true
}

// dryLook is what the elements pass at one inside pressure, in dry air.
type dryLook struct {
	in, out         float64 // kg/s
	rateIn, rateOut float64 // kg/(s Pa), by which in falls and out grows with the inside pressure
}

// net returns what enters less what leaves, kg/s. It falls strictly with the
// inside pressure.
func (l dryLook) net() float64 { return l.in - l.out }

// rate returns the rate at which net falls, kg/(s Pa).
func (l dryLook) rate() float64 { return l.rateIn + l.rateOut }

// flow returns the flow each way, kg/s, at the pressure where net is zero, near
// by: each side takes of the difference what its rate says.
func (l dryLook) flow() float64 { return l.in - l.net()*(l.rateIn/l.rate()) }

// look returns what the elements pass at the inside pressure p, Pa.
func (s *dryFlow) look(p float64) (l dryLook) {
	kIn, kOut := s.outside.root*s.dryOut, s.inside.root*s.dryIn
	for i := range s.paths {
		e := &s.paths[i]
		if e.kind == pointPath {
			k := e.flow * s.opening
			if k == 0 {
				continue
			}
			d := e.drive(e.bottom, s.dynamic, s.buoyancy, p)
			root := math.Sqrt(math.Abs(d))
			if d > 0 {
				k *= kIn
				l.in += k * root
				l.rateIn += 0.5 * k / root
			} else {
				k *= kOut
				l.out += k * root
				l.rateOut += 0.5 * k / root
			}
			continue
		}
		if t := *e; s.stands(&t) {
			bottom, top := t.drive(t.bottom, s.dynamic, s.buoyancy, p), t.drive(t.top, s.dynamic, s.buoyancy, p)
			o := s.through(&t, bottom, top)
			l.in += o.in
			l.out += o.out
			l.rateIn += o.rateIn
			l.rateOut += o.rateOut
		}
	}
	return l
}

// through returns what passes the element e that is no point, under the drives at
// its bottom and top, Pa.
func (s *dryFlow) through(e *path, bottom, top float64) dryLook {
	in, out, rate := e.flows(bottom, top, s.outside, s.inside)
	in *= s.dryOut
	out *= s.dryIn
	switch {
	case in > 0 && out > 0: // each way through its share of a height: 3/2 of flow over drive
		return dryLook{in, out, 1.5 * in / max(bottom, top), -1.5 * out / min(bottom, top)}
	case in > 0:
		return dryLook{in, out, rate * s.dryOut, 0}
	}
	return dryLook{in, out, 0, rate * s.dryIn}
}

// bracket returns inside pressures, Pa, between which the balance lies, and
// false when nothing but fans is open.
func (s *dryFlow) bracket() (low, high float64, open bool) {
	low, high = math.Inf(1), math.Inf(-1)
	fans := false
	for i := range s.paths {
		e := &s.paths[i]
		if e.kind == fanPath {
			fans = true
			continue
		}
		if e.kind <= screenPath && s.opening == 0 {
			continue
		}
		a, b := e.drive(e.bottom, s.dynamic, s.buoyancy, 0), e.drive(e.top, s.dynamic, s.buoyancy, 0)
		low = min(low, a, b)
		high = max(high, a, b)
		open = true
	}
	if !open || !fans {
		return low, high, open
	}
	for step := fanStep; step < mostFanStep; step *= fanGrowth {
		if l := s.look(low); l.net() >= 0 {
			break
		}
		low -= step
	}
	for step := fanStep; step < mostFanStep; step *= fanGrowth {
		if l := s.look(high); l.net() <= 0 {
			break
		}
		high += step
	}
	return low, high, open
}

// solve returns the flow of dry air, kg/s, each way, and the inside pressure at
// the datum, Pa, starting from the pressure near: what the pressures drive, and
// what wind exchanges through each vent.
func (s *dryFlow) solve(near float64) (flow, pressure float64) {
	flow, pressure = s.driven(near)
	return flow + s.exchange.more(flow, s.turbulence()), pressure
}

// turbulence returns what the wind would exchange alone, kg/s of dry air.
func (s *dryFlow) turbulence() float64 {
	return s.dryOut * s.exchange.turbulence(s.paths, s.opening, s.outside, s.dynamic)
}

// nearly is the net inflow, as a fraction of what enters, from which one more
// step of Newton's method is told in advance: its error is that squared.
const nearly = 1e-8

// converging is the fraction of a miss that a step of Newton's method leaves at most
// where it converges; else the search between bounds is quicker.
const converging = 0.5

// driven is solve for the pressures alone. A few steps of Newton's method from near end as a rule; where they do not, the
// search is that of solver.pressure.
func (s *dryFlow) driven(near float64) (flow, pressure float64) {
	p, last := near, math.Inf(1)
	for range 8 {
		l := s.look(p)
		net, size := l.net(), l.in+l.out
		miss := math.Abs(net)
		if miss <= rounding*size {
			return l.in - 0.5*net, p
		}
		if !(miss <= converging*last) {
			break
		}
		// Newton's method squares the digits: the miss to come over this one is as
		// this over the last, or less.
		if share := miss / last; share > 0 && miss <= nearly*size && miss*share*share <= rounding*size {
			return l.flow(), p + net/l.rate()
		}
		p, last = p+net/l.rate(), miss
	}
	return s.search(near)
}

// search is driven between inside pressures that enclose the balance.
func (s *dryFlow) search(near float64) (flow, pressure float64) {
	low, high, open := s.bracket()
	if !open {
		return 0, math.NaN()
	}
	if !(low < high) {
		return 0, low // every opening a point of the same drive: none at all
	}
	way := solve.NewBracket(low, high, true)
	p := way.Start(near)
	for range solve.MaxIterations {
		l := s.look(p)
		net := l.net()
		if math.Abs(net) <= rounding*(l.in+l.out) {
			return l.in - 0.5*net, p
		}
		next, done := way.Next(p, net, -l.rate(), 0)
		if done {
			l = s.look(next)
			return l.in - 0.5*l.net(), next
		}
		p = next
	}
	return math.NaN(), math.NaN()
}

// at sets the density of the inside air, kg/m³, and leaves its humidity.
func (s *dryFlow) at(density float64) {
	s.inside = newAir(density)
	s.buoyancy = (density - s.outside.rho) * constant.Gravity
}

// moistDensity returns the density, kg/m³, of air of temperature t, °C, and
// vapour pressure e, Pa, at the pressure p, Pa: (p - e + eps e)/(R_da T), which
// is (1 + W)/v of [HoF17] ch. 1 eq. 26.
func moistDensity(t, e, p float64) float64 {
	return (p - (1-vapourRatio)*e) / (gasConstantDryAir * (t + kelvin))
}

// flow returns the balance of the openings for inside air of temperature t, °C,
// and vapour pressure e, Pa.
func (k *climateCase) flow(t, e float64) dryFlow {
	in := moistDensity(t, e, k.pressure)
	return dryFlow{
		paths:    k.air.paths,
		exchange: k.air.exchange,
		opening:  k.opening,
		outside:  k.outsideAir,
		inside:   newAir(in),
		dryOut:   k.dryOut,
		dryIn:    1 / (1 + vapourRatio*e/(k.pressure-e)),
		dynamic:  0.5 * k.outsideAir.rho * k.wind * k.wind,
		buoyancy: (in - k.outsideAir.rho) * constant.Gravity,
	}
}
