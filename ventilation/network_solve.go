package ventilation

import (
	"fmt"
	"math"

	"cloche.example/internal/solve"
)

// solver holds what one solution needs; it lives on the stack.
type solver struct {
	paths           []path
	outside, inside air
	dynamic         float64 // Pa, rho_o U²/2
	buoyancy        float64 // Pa/m
}

func (n *Network) solver(c FlowConditions) solver {
	return solver{
		paths:    n.paths,
		outside:  newAir(c.OutsideDensity),
		inside:   newAir(c.InsideDensity),
		dynamic:  0.5 * c.OutsideDensity * c.Wind * c.Wind,
		buoyancy: buoyancy(c),
	}
}

// net returns the net inflow, kg/s, at the inside pressure p, Pa, the rate at
// which it falls with p, kg/(s Pa), and the sum of all flows, kg/s.
func (s *solver) net(p float64) (net, rate, size float64) {
	kIn, kOut := s.outside.root, s.inside.root
	for i := range s.paths {
		e := &s.paths[i]
		d := e.drive(e.bottom, s.dynamic, s.buoyancy, p)
		if e.kind == pointPath {
			k := kIn
			if d < 0 {
				k = kOut
			}
			a := math.Abs(d)
			m := k * e.flow * math.Sqrt(a)
			size += m
			rate += 0.5 * m / a
			net += math.Copysign(m, d)
			continue
		}
		top := e.drive(e.top, s.dynamic, s.buoyancy, p)
		in, out, r := e.flows(d, top, s.outside, s.inside)
		net += in - out
		size += in + out
		rate += r
	}
	return net, rate, size
}

// collect writes the elements' flows to dst, unless it is nil, and returns
// their sums, kg/s, and the flow of the house. The pressure is known to its last
// digit only, so that the flow of a vast opening, whose drive all but vanishes,
// is not: each side takes of the imbalance what its rates say, and the side that
// reacts least decides.
func (s *solver) collect(dst []PathFlow, p float64) (in, out, flow float64) {
	rateIn, rateOut := 0.0, 0.0
	for i := range s.paths {
		e := &s.paths[i]
		bottom := e.drive(e.bottom, s.dynamic, s.buoyancy, p)
		top := e.drive(e.top, s.dynamic, s.buoyancy, p)
		a, b, rate := e.flows(bottom, top, s.outside, s.inside)
		in += a
		out += b
		if a > b {
			rateIn += rate
		} else if b > a {
			rateOut += rate
		}
		if dst != nil {
			dst[i] = PathFlow{Drive: 0.5 * (bottom + top), In: a, Out: b}
		}
	}
	share := 0.5
	if all := rateIn + rateOut; all > 0 && !math.IsInf(all, 0) {
		share = rateIn / all
	}
	return in, out, in - share*(in-out)
}

// mix adds what the wind exchanges to the flow of b, and to each opening its
// share.
func (s *solver) mix(b *Balance, x WindExchange) {
	all := x.turbulence(s.paths, 1, s.outside, s.dynamic)
	if all == 0 {
		return
	}
	b.Exchange = x.more(b.Flow, all)
	b.Flow += b.Exchange
	for i := range b.Paths {
		m := b.Exchange * s.paths[i].turbulence(x.Coefficient*s.dynamic, 1, s.outside) / all
		b.Paths[i].In += m
		b.Paths[i].Out += m
	}
}

// Fans widen a bracket by fanStep, Pa, at first, fanGrowth times as much each time,
// up to mostFanStep: beyond any pressure that a fan can be given.
const (
	fanStep     = 1.0
	fanGrowth   = 4.0
	mostFanStep = 1e12
)

// bracket returns inside pressures, Pa, between which the balance lies: at
// low nothing leaves through an opening or leak, at high nothing enters. Fans
// widen it.
func (s *solver) bracket() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	fans := false
	for i := range s.paths {
		e := &s.paths[i]
		if e.kind == fanPath {
			fans = true
			continue
		}
		a, b := e.drive(e.bottom, s.dynamic, s.buoyancy, 0), e.drive(e.top, s.dynamic, s.buoyancy, 0)
		low = min(low, a, b)
		high = max(high, a, b)
	}
	if fans {
		for step := fanStep; ; step *= fanGrowth {
			if f, _, _ := s.net(low); f >= 0 || math.IsInf(low, 0) {
				break
			}
			low -= step
		}
		for step := fanStep; ; step *= fanGrowth {
			if f, _, _ := s.net(high); f <= 0 || math.IsInf(high, 0) {
				break
			}
			high += step
		}
	}
	return low, high
}

// maxSteps is far beyond what halving a bracket of float64 needs.
const maxSteps = 1000

// rounding is what float64 leaves uncertain of a flow or a pressure.
const rounding = 2.3e-16

// pressure solves the mass balance for the inside pressure at the datum. The
// net inflow falls strictly with that pressure, so the root is single. A drive
// of zero makes the slope infinite: the bracket is then halved.
func (s *solver) pressure() (float64, error) {
	low, high := s.bracket()
	if !(low < high) {
		return low, nil
	}
	way := solve.NewBracket(low, high, true)
	p := 0.5 * (low + high)
	for range solve.MaxIterations {
		f, rate, size := s.net(p)
		if math.Abs(f) <= rounding*size {
			return p, nil
		}
		next, done := way.Next(p, f, -rate, 0)
		if done {
			return next, nil
		}
		p = next
	}
	f, _, _ := s.net(p)
	return math.NaN(), fmt.Errorf("mass balance: %w: inside pressure between %g and %g Pa, residual %g kg/s", ErrNotConverged, way.Low, way.High, f)
}
