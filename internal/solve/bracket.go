package solve

import "math"

// Bracket is Newton's method kept inside a shrinking bracket, with the function
// in the caller's hands: no closure, nothing allocated. The caller evaluates
// value and slope where Next says until Next is done, MaxIterations at most:
//
//	s := solve.NewBracket(low, high, falling)
//	x := s.Start(guess)
//	for range solve.MaxIterations {
//		value, slope := ...
//		var done bool
//		if x, done = s.Next(x, value, slope, xtol); done {
//			break
//		}
//	}
//
// A step that would leave the bracket is replaced by a bisection, and so is
// every third one after which the value had not halved, so that either the
// value or the bracket keeps shrinking to the end.
type Bracket struct {
	Low, High float64 // the root lies between them

	falling bool    // the value is positive at Low
	last    float64 // size of the value before
	slow    int     // steps since a bisection that did not halve it
}

// NewBracket returns the search between low and high, low < high; falling says
// that the function is positive at low and negative at high.
func NewBracket(low, high float64, falling bool) Bracket {
	return Bracket{Low: low, High: high, falling: falling, last: math.Inf(1)}
}

// Start returns guess, or the middle when guess lies outside the bracket.
func (s *Bracket) Start(guess float64) float64 {
	if guess >= s.Low && guess <= s.High {
		return guess
	}
	return 0.5 * (s.Low + s.High)
}

// Next takes the function's value and slope at x and returns where to evaluate
// next. Done says that the answer is the x returned: the value is zero, the
// step of Newton's method is at most xtol, or the bracket has shrunk to the
// spacing of float64. Newton's steps double the digits near a simple root, so
// an xtol well above the error wanted will do there.
func (s *Bracket) Next(x, value, slope, xtol float64) (next float64, done bool) {
	switch {
	case value == 0:
		return x, true
	case value > 0 == s.falling:
		s.Low = x
	default:
		s.High = x
	}
	size := math.Abs(value)
	if !(size <= 0.5*s.last) {
		s.slow++
	}
	s.last = size
	next = x - value/slope
	if next > s.Low && next < s.High && s.slow < 3 {
		return next, math.Abs(next-x) <= xtol+2*epsilon*math.Abs(x)
	}
	if next == x && !math.IsInf(slope, 0) { // a step too small to show
		return x, true
	}
	s.slow = 0
	next = 0.5 * (s.Low + s.High)
	return next, s.High-s.Low <= 4*epsilon*math.Abs(next) || next == s.Low || next == s.High
}
