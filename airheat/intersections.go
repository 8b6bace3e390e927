package airheat

import (
	"math"

	"cloche.example/internal/solve"
)

// Where the crossings of a fan and a system are searched and what counts as found.
// Newton's method doubles the digits: after a last step of lastSteepStep the error is
// near 1e-13, of lastFallingStep 1e-14; where the fan rises the slopes may be alike,
// and lastRisingStep is asked.
const (
	leastSquare     = 0.1   // of the loss at the end, that the square of the flow has at least in the form of it that a start is found with
	lastSteepStep   = 3e-7  // of the flow
	lastFallingStep = 1e-7  // of the flow
	lastRisingStep  = 1e-10 // of the flow
	touching        = 1e-14 // of the pressure, by which rounding may part two curves that touch
	sameFlow        = 1e-13 // of the flow, within which two crossings are one that lies on a knot
)

// Intersection is one point at which the fan gives just the pressure that the
// duct system takes.
type Intersection struct {
	Flow     float64 // m³/s, at the fan inlet
	Pressure float64 // Pa
	Stable   bool    // the system's curve crosses the fan's from below: a small change of flow dies out
	Stall    bool    // it lies left of the fan's last peak
}

// maxCrossings bounds what is recorded; a curve with more is no fan's.
const maxCrossings = 16

// resistance is what a fan works against: the loss at a flow and its slope.
type resistance struct {
	ducts System        // a row of segments, or
	tree  *Tree         // branches
	air   AirProperties // in the ducts
	fan   float64       // kg/m³, air at the fan
	swell float64       // ratio of the ducts' flow to the fan's
}

// loss takes the flow at the fan.
func (r *resistance) loss(q float64) (loss, slope float64) {
	if r.tree != nil {
		loss, slope = r.tree.loss(q*r.swell, r.air)
	} else {
		loss, slope = r.ducts.loss(q*r.swell, r.air)
	}
	return loss, slope * r.swell
}

// finder looks for the roots of fan minus resistance, which rises with flow
// everywhere. Flows and pressures are those of the tested fan curve until the
// end.
type finder struct {
	fan     Fan
	against resistance
	speed   float64
	scale   float64 // of pressure, by the fan laws
	found   [maxCrossings]Intersection
	count   int // of crossings, may exceed maxCrossings
	last    float64
}

// system is the loss in the fan's own scale: at the tested speed and density.
func (s *finder) system(q float64) (loss, slope float64) {
	l, d := s.against.loss(s.speed * q)
	return l / s.scale, d * s.speed / s.scale
}

// pressure is the tested fan's at q.
func (s *finder) pressure(q float64) float64 {
	p, _ := s.fan.at(q)
	return p
}

// falling returns the one crossing right of the fan's last peak, 0 if there is
// none, for end and steep, the system's loss at the last flow and its slope.
// There the fan only falls and the system only rises, so Newton's method runs
// across the fan's knots.
func (s *finder) falling(end, steep float64) float64 {
	f := &s.fan
	n := len(f.flow) - 1
	a, b := f.flow[f.peak], f.flow[n]
	if g := f.pressure[n] - end; g > 0 || f.peak == n {
		return 0
	} else if g == 0 {
		return b
	}
	// The loss as a quadratic of the flow with its value and slope at the end gives
	// the piece, and on it a start near the crossing.
	square := (steep*b - end) / (b * b)
	if !(square*b*b > leastSquare*end) {
		square = end / (b * b)
	}
	line := end/b - square*b
	i := n - 1
	for i > f.peak && f.pressure[i] < (line+square*f.flow[i])*f.flow[i] {
		i--
	}
	m := (f.pressure[i+1] - f.pressure[i]) / (f.flow[i+1] - f.flow[i])
	x := (m - line + math.Sqrt((m-line)*(m-line)+4*square*(f.pressure[i]-m*f.flow[i]))) / (2 * square)
	if !(x > a && x < b) {
		x = 0.5 * (a + b)
	}
	search := solve.NewBracket(a, b, true)
	peak := false // whether the fan is known to lie above the system at its peak
	for range solve.MaxIterations {
		piece := f.pieceAt(x)
		g, d := s.gap(piece, x)
		if !peak && g < 0 && !(x-g/d > a) {
			if top, _ := s.gap(f.peak, a); top < 0 {
				return 0
			} else if top == 0 {
				return a
			}
			peak = true
		}
		peak = peak || g > 0
		next, done := search.Next(x, g, d, lastSteepStep*x)
		if done && (f.pieceAt(next) == piece || next == x) {
			return next
		}
		x = next
	}
	return 0
}

// search visits the knots lo to hi of the fan, whose system losses are slo and
// shi. The system only rises, so that its ends bound it: a range in which the
// fan stays above or below is left out without another evaluation.
func (s *finder) search(lo, hi int, slo, shi float64) {
	f := &s.fan
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
	if s.against.tree != nil || s.fan.convex[piece] {
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
	for {
		y := s.corner(x)
		if y >= b {
			s.concave(piece, x, b, gx, gb)
			return
		}
		gy, _ := s.gap(piece, y)
		s.concave(piece, x, y, gx, gy)
		x, gx = y, gy
	}
}

// corner returns the next flow above q at which the slope of the loss drops:
// where a segment turns fully turbulent. Between such corners the loss is
// convex (a test scans it).
func (s *finder) corner(q float64) float64 {
	next := math.Inf(1)
	nu := s.against.air.Viscosity / s.against.air.Density
	for i := range s.against.ducts.runs {
		r := &s.against.ducts.runs[i]
		y := turbulentLimit * nu / r.diameter * r.area / (s.speed * s.against.swell)
		if y > q && r.slender > 0 {
			next = math.Min(next, y)
		}
	}
	return next
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
	if math.Abs(g) <= touching*math.Abs(p) {
		s.add(piece, turn)
		return
	}
	s.cross(piece, a, turn, ga, g)
	s.cross(piece, turn, b, g, gb)
}

// gap is fan minus system and its slope, on one piece of the fan.
func (s *finder) gap(piece int, q float64) (gap, slope float64) {
	p, dp := s.fan.piece(piece, q)
	l, dl := s.system(q)
	return p - l, dp - dl
}

// add notes a root once: a knot belongs to two pieces.
func (s *finder) add(piece int, q float64) {
	if q-s.last <= sameFlow*q {
		return
	}
	s.last = q
	p, dp := s.fan.piece(piece, q)
	stable := dp < 0
	if !stable {
		_, dl := s.system(q)
		stable = dp < dl
	}
	if s.count < maxCrossings {
		s.found[s.count] = Intersection{
			Flow: q * s.speed, Pressure: p * s.scale,
			Stable: stable,
			Stall:  q < s.fan.flow[s.fan.peak],
		}
	}
	s.count++
}
