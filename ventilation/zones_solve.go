package ventilation

import (
	"fmt"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/solve"
)

// Solve returns the pressures and flows under c. The imbalances are the slopes
// of a convex function of the pressures, so there is one solution. Newton
// steps with an exact search along each reach it; where a step leads nowhere,
// since drives vanish, each zone is balanced in turn. The error joins the
// conditions outside their ranges, or is ErrNotConverged.
func (z *Zones) Solve(c ZoneConditions) (ZoneBalance, error) {
	if z.count == 0 {
		return ZoneBalance{}, fmt.Errorf("Zones: %w: the zero Zones is invalid, NewZones makes one", ErrRange)
	}
	if err := z.checkConditions(c); err != nil {
		return ZoneBalance{}, err
	}
	s := zoneSolver{
		z: z, c: c, dynamic: 0.5 * c.OutsideDensity * c.Wind * c.Wind,
		p: make([]float64, z.count), net: make([]float64, z.count), step: make([]float64, z.count), trial: make([]float64, z.count),
		rates: make([]float64, z.count*z.count), ground: make([]float64, z.count),
	}
	for i := range z.links { // columns of air, which drives are differences of
		s.scale = math.Max(s.scale, c.OutsideDensity*constant.Gravity*math.Max(math.Abs(z.links[i].bottom), math.Abs(z.links[i].top)))
	}
	best, idle := math.Inf(1), 0
	for k := 1; k <= maxSteps; k++ {
		size := s.flow(s.p, s.net, true)
		w := worst(s.net)
		if w <= zoneRounding*size {
			return s.balance(k), nil
		}
		idle++
		if w < 0.5*best {
			best, idle = w, 0
		}
		// A zone behind a tiny gap keeps swaying by what the rounding of large
		// flows elsewhere leaves of its own: that is the end too.
		small := zoneRounding * s.scale
		if idle > idleSteps {
			small = swayRounding * s.scale
		}
		if s.newton() <= small && s.sweep() <= small {
			return s.balance(k), nil
		}
	}
	return ZoneBalance{}, fmt.Errorf("zones: %w after %d steps: residuals up to %g kg/s", ErrNotConverged, maxSteps, worst(s.net))
}

const (
	zoneRounding = 1e-14 // what counts as nothing of a sum of flows or of a pressure
	swayRounding = 1e-9  // the same of a pressure once the imbalance no longer falls
	idleSteps    = 20    // steps without halving it that show this
)

type zoneSolver struct {
	z       *Zones
	c       ZoneConditions
	dynamic float64   // Pa
	scale   float64   // Pa, largest pressure, drive and column of air met
	p       []float64 // Pa, of each zone
	net     []float64 // kg/s, into each zone
	step    []float64 // Pa
	trial   []float64 // Pa
	rates   []float64 // kg/(s Pa), rate of the flow between two zones with their difference of pressure, row by row
	ground  []float64 // kg/(s Pa), of each zone's flow to the outdoors
}

func worst(v []float64) (w float64) {
	for _, x := range v {
		w = math.Max(w, math.Abs(x))
	}
	return w
}

// balance returns the answer at the present pressures.
func (s *zoneSolver) balance(steps int) ZoneBalance {
	b := ZoneBalance{Pressure: s.p, Steps: steps, Residual: s.net, Links: make([]PathFlow, len(s.z.links))}
	s.flow(s.p, s.net, false)
	for i := range s.z.links {
		l := &s.z.links[i]
		bottom, top := s.drives(l, s.p)
		in, out, _ := l.flows(bottom, top, s.air(l.a), s.air(l.b))
		b.Links[i] = PathFlow{Drive: 0.5 * (bottom + top), In: in, Out: out}
	}
	return b
}

func (s *zoneSolver) air(zone int) air {
	if zone == OutsideZone {
		return newAir(s.c.OutsideDensity)
	}
	return newAir(s.c.ZoneDensities[zone])
}

// drives returns the pressure of A over that of B at the ends of l, Pa.
func (s *zoneSolver) drives(l *zoneLink, p []float64) (bottom, top float64) {
	side := func(zone int, height float64) float64 {
		if zone == OutsideZone {
			return l.wind*s.dynamic - s.c.OutsideDensity*constant.Gravity*height
		}
		return p[zone] - s.c.ZoneDensities[zone]*constant.Gravity*height
	}
	return side(l.a, l.bottom) - side(l.b, l.bottom), side(l.a, l.top) - side(l.b, l.top)
}

// steepest bounds the slope of a link whose drive vanishes, as a multiple of
// its flow at 1 Pa: where the drive is no more than rounding.
const steepest = 1e8

// flow writes each zone's net inflow, kg/s, at the pressures p and, if asked,
// the rates of the flows. It returns the sum of all flows.
func (s *zoneSolver) flow(p, net []float64, rates bool) (size float64) {
	clear(net)
	if rates {
		clear(s.rates)
		clear(s.ground)
	}
	for i := range s.z.links {
		l := &s.z.links[i]
		bottom, top := s.drives(l, p)
		s.scale = math.Max(s.scale, math.Max(math.Abs(bottom), math.Abs(top)))
		a, b := s.air(l.a), s.air(l.b)
		in, out, rate := l.flows(bottom, top, a, b)
		size += in + out
		if l.a != OutsideZone {
			net[l.a] -= in - out
		}
		if l.b != OutsideZone {
			net[l.b] += in - out
		}
		if !rates {
			continue
		}
		if !(rate < steepest*(in+out)) {
			in, out, _ = l.flows(1, 1, a, b)
			rate = math.Min(rate, steepest*(in+out))
		}
		switch {
		case l.a == OutsideZone:
			s.ground[l.b] += rate
		case l.b == OutsideZone:
			s.ground[l.a] += rate
		default:
			s.rates[l.a*len(p)+l.b] += rate
			s.rates[l.b*len(p)+l.a] += rate
		}
	}
	s.scale = math.Max(s.scale, worst(p))
	return size
}

// newton moves all pressures by one step from the last flow with rates, and
// returns the largest move, Pa. The equations, sum of rates times differences
// of pressure equal to the net inflow, are solved by taking out one zone after
// the other, its rates going to its neighbours: nothing is subtracted, so rates
// of very unequal size keep their digits.
func (s *zoneSolver) newton() (moved float64) {
	n := len(s.p)
	copy(s.step, s.net)
	for k := n - 1; k >= 0; k-- {
		row := s.rates[k*n : k*n+n]
		sum := s.ground[k]
		for j := range k {
			sum += row[j]
		}
		if sum == 0 {
			return 0 // a zone that nothing moves, fans of constant flow aside
		}
		for i := range k {
			share := row[i] / sum
			s.step[i] += share * s.step[k]
			s.ground[i] += share * s.ground[k]
			for j := range k {
				if j != i {
					s.rates[i*n+j] += share * row[j]
				}
			}
		}
		s.trial[k] = sum
	}
	for k := range n {
		for j := range k {
			s.step[k] += s.rates[k*n+j] * s.step[j]
		}
		s.step[k] /= s.trial[k]
	}
	length := s.along()
	for i := range s.p {
		s.p[i] += length * s.step[i]
		moved = math.Max(moved, math.Abs(length*s.step[i]))
	}
	return moved
}

// along returns how far to go along the step: where the imbalances have no
// part left along it; zero where the step leads nowhere.
func (s *zoneSolver) along() float64 {
	part := func(length float64) float64 {
		for i := range s.p {
			s.trial[i] = s.p[i] + length*s.step[i]
		}
		s.flow(s.trial, s.net, false)
		sum := 0.0
		for i := range s.net {
			sum += s.net[i] * s.step[i]
		}
		return sum
	}
	high := 1.0
	for range 60 {
		if part(high) <= 0 {
			break
		}
		high *= 2
	}
	length, err := solve.Root(part, 0, high, shareFound)
	if err != nil {
		return 0
	}
	return length
}

// sweep balances each zone once by its own pressure, the others held, and
// returns the largest move, Pa.
func (s *zoneSolver) sweep() (moved float64) {
	for i := range s.p {
		start := s.p[i]
		net := func(p float64) float64 {
			s.p[i] = p
			s.flow(s.p, s.net, false)
			return s.net[i]
		}
		way := zoneRounding * s.scale
		if net(start) < 0 {
			way = -way
		}
		end := start
		for range 100 {
			end += way
			if v := net(end); v == 0 || v < 0 == (way > 0) {
				break
			}
			way *= 8
		}
		p, err := solve.Root(net, start, end, 0.1*zoneRounding*s.scale) // a tenth of what counts as nothing
		if err != nil {
			p = start
		}
		s.p[i] = p
		moved = math.Max(moved, math.Abs(p-start))
	}
	return moved
}
