package airheat

import (
	"math"

	"cloche.example/internal/solve"
)

// Intersection is one point at which the fan gives just the pressure that the
// duct system takes.
type Intersection struct {
	Flow     float64 // m³/s, at the fan inlet
	Pressure float64 // Pa
	Stable   bool    // the system's curve crosses the fan's from below: a small change of flow dies out
	Stall    bool    // it lies left of the fan's last peak
}

// finder looks for the roots of fan minus system. Flows are those of the
// tested fan curve; the system rises with flow everywhere.
type finder struct {
	fan     *Fan
	system  func(q float64) (loss, slope float64) // in the fan's own scale: Pa at the tested speed and density
	corners []float64                             // flows at which the system's slope jumps, rising
	smooth  bool                                  // the system is convex between corners
	dst     []Intersection
	last    float64 // flow of the root found last
}

// search visits the knots lo to hi of the fan, whose system losses are slo and
// shi. The system only rises, so that its ends bound it: a range in which the
// fan stays above or below is left out without another evaluation.
func (s *finder) search(lo, hi int, slo, shi float64) {
	f := s.fan
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range f.pressure[lo : hi+1] {
		low, high = math.Min(low, p), math.Max(high, p)
	}
	if low > shi || high < slo {
		return
	}
	if hi-lo > 1 {
		mid := (lo + hi) / 2
		smid, _ := s.system(f.flow[mid])
		s.search(lo, mid, slo, smid)
		s.search(mid, hi, smid, shi)
		return
	}
	a, b := f.flow[lo], f.flow[hi]
	ga, gb := f.pressure[lo]-slo, f.pressure[hi]-shi
	if f.pressure[hi] <= f.pressure[lo] {
		// A falling fan against a rising system: one crossing or none.
		s.cross(lo, a, b, ga, gb)
		return
	}
	s.rising(lo, a, b, ga, gb)
}

// cells is into how many parts a rising piece is cut where the curvature of
// fan minus system has no known sign.
const cells = 32

// rising looks on a piece where fan and system both rise. Between corners of
// the system a straight or downward fan curve makes the difference concave, so
// that its ends and slopes tell all; elsewhere the piece is cut fine first.
func (s *finder) rising(piece int, a, b, ga, gb float64) {
	if !s.smooth || s.fan.convex[piece] {
		x, gx := a, ga
		for i := 1; i < cells; i++ {
			y := a + (b-a)*float64(i)/cells
			gy, _ := s.gap(piece, y)
			s.concave(piece, x, y, gx, gy)
			x, gx = y, gy
		}
		s.concave(piece, x, b, gx, gb)
		return
	}
	x, gx := a, ga
	for _, y := range s.corners {
		if y <= a || y >= b {
			continue
		}
		gy, _ := s.gap(piece, y)
		s.concave(piece, x, y, gx, gy)
		x, gx = y, gy
	}
	s.concave(piece, x, b, gx, gb)
}

// concave finds the roots between a and b of a difference that turns at most
// once there.
func (s *finder) concave(piece int, a, b, ga, gb float64) {
	_, da := s.gap(piece, math.Nextafter(a, b))
	_, db := s.gap(piece, math.Nextafter(b, a))
	top := da > 0 && db < 0 && ga <= 0 && gb <= 0
	bottom := da < 0 && db > 0 && ga >= 0 && gb >= 0
	if !top && !bottom {
		s.cross(piece, a, b, ga, gb)
		return
	}
	turn, err := solve.Root(func(q float64) float64 { _, d := s.gap(piece, q); return d }, math.Nextafter(a, b), math.Nextafter(b, a), 0)
	if err != nil {
		return
	}
	g, _ := s.gap(piece, turn)
	// A touch is one root, found to the rounding of the two pressures.
	p, _ := s.fan.piece(piece, turn)
	if math.Abs(g) <= 1e-14*math.Abs(p) {
		s.add(piece, turn)
		return
	}
	s.cross(piece, a, turn, ga, g)
	s.cross(piece, turn, b, g, gb)
}

// cross finds the one crossing between a and b if the ends differ in sign.
func (s *finder) cross(piece int, a, b, ga, gb float64) {
	switch {
	case ga == 0:
		s.add(piece, a)
	case gb == 0:
		s.add(piece, b)
	case ga < 0 != (gb < 0):
		s.add(piece, s.newton(piece, a, b, ga, gb))
	}
}

// newton is a bracketed Newton search whose end values are known.
func (s *finder) newton(piece int, a, b, ga, gb float64) float64 {
	// Where the system is quadratic in flow, this is the crossing itself for a
	// straight fan, and a close start for others.
	x := a + (b-a)*ga/(ga-gb)
	for range solve.MaxIterations {
		g, d := s.gap(piece, x)
		if g == 0 {
			return x
		}
		if g < 0 == (ga < 0) {
			a, ga = x, g
		} else {
			b = x
		}
		next := x - g/d
		if !(next > math.Min(a, b) && next < math.Max(a, b)) {
			next = 0.5 * (a + b)
		}
		if math.Abs(next-x) <= 1e-9*math.Abs(x) && next != 0.5*(a+b) || math.Abs(b-a) <= 4e-16*math.Abs(x) {
			// Newton doubles the digits: the step just taken leaves rounding.
			return next
		}
		x = next
	}
	return math.NaN()
}

// gap is fan minus system and its slope, on one piece of the fan.
func (s *finder) gap(piece int, q float64) (gap, slope float64) {
	p, dp := s.fan.piece(piece, q)
	l, dl := s.system(q)
	return p - l, dp - dl
}

// add notes a root once: a knot belongs to two pieces.
func (s *finder) add(piece int, q float64) {
	if q-s.last <= 1e-13*q {
		return
	}
	s.last = q
	p, dp := s.fan.piece(piece, q)
	_, dl := s.system(q)
	s.dst = append(s.dst, Intersection{
		Flow: q, Pressure: p,
		Stable: dp < dl,
		Stall:  q < s.fan.flow[s.fan.peak],
	})
}
