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

// element returns path i with its opening's area taken at the fraction, and
// false for one that is shut.
func (s *dryFlow) element(i int) (path, bool) {
	e := s.paths[i]
	if e.kind <= screenPath && s.opening != 1 {
		if s.opening == 0 {
			return e, false
		}
		e.flow *= s.opening
		e.slope /= s.opening
	}
	return e, true
}

// net returns the net inflow of dry air, kg/s, at the inside pressure p, Pa,
// the rate at which it falls with p, and the inflow alone and all flows
// together, kg/s.
func (s *dryFlow) net(p float64) (net, rate, inflow, size float64) {
	kIn, kOut := s.outside.root*s.dryOut, s.inside.root*s.dryIn
	for i := range s.paths {
		e := &s.paths[i]
		if e.kind == pointPath {
			d := e.drive(e.bottom, s.dynamic, s.buoyancy, p)
			k, a := e.flow*s.opening, math.Abs(d)
			if k == 0 {
				continue
			}
			m := k * math.Sqrt(a)
			if d > 0 {
				m *= kIn
				inflow += m
				net += m
			} else {
				m *= kOut
				net -= m
			}
			size += m
			rate += 0.5 * m / a
			continue
		}
		t, open := s.element(i)
		if !open {
			continue
		}
		bottom := t.drive(t.bottom, s.dynamic, s.buoyancy, p)
		top := t.drive(t.top, s.dynamic, s.buoyancy, p)
		in, out, r := t.flows(bottom, top, s.outside, s.inside)
		in *= s.dryOut
		out *= s.dryIn
		inflow += in
		net += in - out
		size += in + out
		rate += r * 0.5 * (s.dryIn + s.dryOut)
	}
	return net, rate, inflow, size
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
	for step := 1.0; step < 1e12; step *= 4 {
		if f, _, _, _ := s.net(low); f >= 0 {
			break
		}
		low -= step
	}
	for step := 1.0; step < 1e12; step *= 4 {
		if f, _, _, _ := s.net(high); f <= 0 {
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

// driven is solve for the pressures alone. The net inflow falls strictly with the
// pressure; the search is that of solver.pressure.
func (s *dryFlow) driven(near float64) (flow, pressure float64) {
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
		f, rate, in, size := s.net(p)
		if math.Abs(f) <= rounding*size {
			return in - 0.5*f, p
		}
		next, done := way.Next(p, f, -rate, 0)
		if done {
			f, _, in, _ = s.net(next)
			return in - 0.5*f, next
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
	out, in := k.density, moistDensity(t, e, k.pressure)
	return dryFlow{
		paths:    k.air.paths,
		exchange: k.air.exchange,
		opening:  k.opening,
		outside:  newAir(out),
		inside:   newAir(in),
		dryOut:   1 / (1 + k.outsideRatio),
		dryIn:    1 / (1 + vapourRatio*e/(k.pressure-e)),
		dynamic:  0.5 * out * k.wind * k.wind,
		buoyancy: (in - out) * constant.Gravity,
	}
}
