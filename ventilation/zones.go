package ventilation

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"cloche.example/internal/constant"
	"cloche.example/internal/solve"
)

// Outside stands for the outdoors as an end of a Link.
const Outside = -1

// Element is what a Link may be: an Opening, a Leak or a Fan.
type Element interface {
	check(where string) error
	path() path
}

// Link joins two zones, or a zone and the outdoors, by an element. Its flow
// inward is from A to B; a fan with positive flow blows from A to B. The wind
// pressure coefficient acts on the end that is Outside.
type Link struct {
	A, B    int     // zone index, or Outside
	Element Element // Opening, Leak or Fan
}

// Zones is a house of several air spaces, as lobby, plant room and house. It
// never changes after NewZones.
type Zones struct {
	count int
	links []zoneLink
}

type zoneLink struct {
	path
	a, b int
}

// ZoneConditions drive the flow between zones.
type ZoneConditions struct {
	Zones   []float64 // kg/m³, density of each zone's air, uniform
	Outside float64   // kg/m³, density of the outside air
	Wind    float64   // m/s, at the height to which the pressure coefficients refer
}

// ZoneBalance is the state in which the air of every zone balances.
type ZoneBalance struct {
	Pressure []float64  // Pa, of each zone at the datum over outside static pressure there
	Residual []float64  // kg/s, what the computed flows fail to balance in each zone
	Links    []PathFlow // flow of each link, In from A to B, Out from B to A
	Steps    int        // count of Newton steps
}

// NewZones returns the network of count zones and links. The error joins every
// fault by field: element values outside their ranges, ends that are no zone, a
// link from a zone to itself, and zones that no chain of openings and leaks
// joins to the outdoors.
func NewZones(count int, links []Link) (*Zones, error) {
	var faults []error
	if count < 1 || count > 100 {
		return nil, &RangeError{Field: "count", Value: float64(count), Min: 1, Max: 100, Unit: "count"}
	}
	z := &Zones{count: count}
	open := make([]bool, count) // joined to the outdoors
	for i, l := range links {
		where := fmt.Sprintf("links[%d]", i)
		for _, end := range []struct {
			name string
			zone int
		}{{".A", l.A}, {".B", l.B}} {
			if end.zone < Outside || end.zone >= count {
				faults = append(faults, &RangeError{Field: where + end.name, Value: float64(end.zone), Min: Outside, Max: float64(count - 1), Unit: "zone index"})
			}
		}
		if l.A == l.B {
			faults = append(faults, fmt.Errorf("%s: A and B are both %d: %w", where, l.A, ErrRange))
		}
		if l.Element == nil {
			faults = append(faults, fmt.Errorf("%s: no element: %w", where, ErrRange))
			continue
		}
		faults = append(faults, l.Element.check(where))
		z.links = append(z.links, zoneLink{l.Element.path(), l.A, l.B})
	}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	for range count {
		for i := range z.links {
			l := &z.links[i]
			if l.kind == fanPath {
				continue
			}
			if l.a == Outside || l.b != Outside && open[l.a] {
				open[l.b] = true
			}
			if l.b == Outside || open[l.b] && l.a != Outside {
				open[l.a] = true
			}
		}
	}
	for i, ok := range open {
		if !ok {
			faults = append(faults, fmt.Errorf("zone %d: %w: no opening or leak joins it to the outdoors, its pressure is not determined", i, ErrNoSolution))
		}
	}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	return z, nil
}

// Solve returns the pressures and flows under c. The imbalances are the slopes
// of a convex function of the pressures, so there is one solution, and Newton
// steps with an exact search along each always reach it. The error joins the
// conditions outside their ranges, or is ErrNotConverged.
func (z *Zones) Solve(c ZoneConditions) (ZoneBalance, error) {
	if err := z.checkConditions(c); err != nil {
		return ZoneBalance{}, err
	}
	s := zoneSolver{z: z, c: c, dynamic: 0.5 * c.Outside * c.Wind * c.Wind}
	p := make([]float64, z.count)
	net := make([]float64, z.count)
	step := make([]float64, z.count)
	trial := make([]float64, z.count)
	slope := mat.NewSymDense(z.count, nil)
	for k := 1; k <= maxSteps; k++ {
		size := s.net(net, p, slope)
		worst := 0.0
		for _, f := range net {
			worst = math.Max(worst, math.Abs(f))
		}
		last := worst <= 1e-14*size
		moved := 0.0
		if !last {
			var chol mat.Cholesky
			d := mat.NewVecDense(z.count, step)
			if !chol.Factorize(slope) || chol.SolveVecTo(d, mat.NewVecDense(z.count, net)) != nil {
				return ZoneBalance{}, fmt.Errorf("zones: %w: the slopes of the balance are singular", ErrNotConverged)
			}
			length := s.along(p, step, trial)
			for i := range p {
				p[i] += length * step[i]
				moved = math.Max(moved, math.Abs(length*step[i]))
			}
		}
		if last || moved <= 1e-14*s.scale {
			b := ZoneBalance{Pressure: p, Steps: k, Residual: net, Links: make([]PathFlow, len(z.links))}
			s.net(net, p, slope)
			for i := range z.links {
				bottom, top := s.drives(&z.links[i], p)
				in, out, _ := z.links[i].flows(bottom, top, s.air(z.links[i].a), s.air(z.links[i].b))
				b.Links[i] = PathFlow{Drive: 0.5 * (bottom + top), In: in, Out: out}
			}
			return b, nil
		}
	}
	return ZoneBalance{}, fmt.Errorf("zones: %w after %d steps: residuals %g kg/s", ErrNotConverged, maxSteps, slices.Max(net))
}

func (z *Zones) checkConditions(c ZoneConditions) error {
	faults := []error{DensityRange.Check("Outside", c.Outside), WindRange.Check("Wind", c.Wind)}
	if len(c.Zones) != z.count {
		faults = append(faults, &RangeError{Field: "number of Zones", Value: float64(len(c.Zones)), Min: float64(z.count), Max: float64(z.count), Unit: "count"})
	}
	for i, rho := range c.Zones {
		faults = append(faults, DensityRange.Check(fmt.Sprintf("Zones[%d]", i), rho))
	}
	return errors.Join(faults...)
}

type zoneSolver struct {
	z       *Zones
	c       ZoneConditions
	dynamic float64 // Pa
	scale   float64 // Pa, largest pressure and drive met
}

func (s *zoneSolver) air(zone int) air {
	if zone == Outside {
		return newAir(s.c.Outside)
	}
	return newAir(s.c.Zones[zone])
}

// drives returns the pressure of A over that of B at the ends of l, Pa.
func (s *zoneSolver) drives(l *zoneLink, p []float64) (bottom, top float64) {
	side := func(zone int, height float64) float64 {
		if zone == Outside {
			return l.wind*s.dynamic - s.c.Outside*constant.Gravity*height
		}
		return p[zone] - s.c.Zones[zone]*constant.Gravity*height
	}
	return side(l.a, l.bottom) - side(l.b, l.bottom), side(l.a, l.top) - side(l.b, l.top)
}

// steepest bounds the slope of a link whose drive vanishes, kg/(s Pa).
const steepest = 1e8

// net writes each zone's net inflow, kg/s, and, unless slope is nil, the
// rates at which they fall with the pressures. It returns the sum of the flows.
func (s *zoneSolver) net(net, p []float64, slope *mat.SymDense) (size float64) {
	clear(net)
	if slope != nil {
		slope.Zero()
	}
	for i := range s.z.links {
		l := &s.z.links[i]
		bottom, top := s.drives(l, p)
		s.scale = math.Max(s.scale, math.Max(math.Abs(bottom), math.Abs(top)))
		in, out, rate := l.flows(bottom, top, s.air(l.a), s.air(l.b))
		size += in + out
		rate = math.Min(rate, steepest)
		for _, end := range [2]struct {
			zone int
			sign float64
		}{{l.a, -1}, {l.b, 1}} {
			if end.zone == Outside {
				continue
			}
			net[end.zone] += end.sign * (in - out)
			if slope != nil {
				slope.SetSym(end.zone, end.zone, slope.At(end.zone, end.zone)+rate)
			}
		}
		if slope != nil && l.a != Outside && l.b != Outside {
			slope.SetSym(l.a, l.b, slope.At(l.a, l.b)-rate)
		}
	}
	for _, v := range p {
		s.scale = math.Max(s.scale, math.Abs(v))
	}
	return size
}

// along returns how far to go along step from p: where the imbalances have no
// part left along it.
func (s *zoneSolver) along(p, step, trial []float64) float64 {
	net := make([]float64, len(p))
	part := func(length float64) float64 {
		for i := range p {
			trial[i] = p[i] + length*step[i]
		}
		s.net(net, trial, nil)
		sum := 0.0
		for i := range net {
			sum += net[i] * step[i]
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
	length, err := solve.Root(part, 0, high, 1e-12)
	if err != nil {
		return 1
	}
	return length
}
