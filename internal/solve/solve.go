// Package solve holds Cloche's root finders: Root without a derivative, Newton
// with one, and Bracket, which is Newton in the caller's hands. All keep a
// bracket; Root and Newton refuse one without a change of sign and stop at an
// iteration limit.
//
// Sources:
//
//	Cha97  T. R. Chandrupatla, "A new hybrid quadratic/bisection algorithm for
//	       finding the zero of a nonlinear function without using derivatives",
//	       Advances in Engineering Software 28 (1997) 145-149.
package solve

import (
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// MaxIterations bounds both root finders. Halving narrows a bracket as wide as
// the whole range of float64 to the smallest number in about 2,100 steps, so
// no continuous function with a change of sign can reach it.
const MaxIterations = 2200

// Root returns x in [a, b] with f(x) = 0, to within xtol or the spacing of
// float64 at x, by Chandrupatla's method [Cha97]: inverse quadratic steps
// where they are safe, bisection elsewhere. a and b may come in either order.
// The error is ErrNoSolution when f(a) and f(b) have the same sign or are NaN,
// and ErrNotConverged after MaxIterations; both tell the bracket and the
// residuals.
func Root(f func(float64) float64, a, b, xtol float64) (float64, error) {
	fa, fb := f(a), f(b)
	if fa == 0 {
		return a, nil
	}
	if fb == 0 {
		return b, nil
	}
	if !opposite(fa, fb) {
		return math.NaN(), noBracket(a, b, fa, fb)
	}
	t := 0.5
	for range MaxIterations {
		x := a + t*(b-a)
		fx := f(x)
		if math.IsNaN(fx) {
			return math.NaN(), fmt.Errorf("%w: the function is NaN at %g inside [%g, %g]", domain.ErrNoSolution, x, a, b)
		}
		var c, fc float64
		if (fx < 0) == (fa < 0) {
			c, fc = a, fa
		} else {
			c, fc = b, fb
			b, fb = a, fa
		}
		a, fa = x, fx
		best := a
		if math.Abs(fb) < math.Abs(fa) {
			best = b
		}
		tol := 0.5*xtol + 2*epsilon*math.Abs(best)
		width := math.Abs(b - a)
		if fa == 0 || fb == 0 || width <= 2*tol {
			return best, nil
		}
		tl := tol / width
		// Inverse quadratic interpolation only where it is monotonic [Cha97].
		xi := (a - b) / (c - b)
		phi := (fa - fb) / (fc - fb)
		if phi*phi < xi && (1-phi)*(1-phi) < 1-xi {
			t = fa/(fb-fa)*fc/(fb-fc) + (c-a)/(b-a)*fa/(fc-fa)*fb/(fc-fb)
		} else {
			t = 0.5
		}
		if !(t >= tl) {
			t = tl
		}
		if t > 1-tl {
			t = 1 - tl
		}
	}
	return math.NaN(), notConverged(a, b, fa, fb)
}

// Newton returns x in [a, b] with f(x) = 0, to within xtol or the spacing of
// float64 at x, by the search of Bracket from x0. f returns the value and the
// derivative at x. The errors are those of Root.
func Newton(f func(float64) (value, slope float64), a, b, x0, xtol float64) (float64, error) {
	if a > b {
		a, b = b, a
	}
	fa, _ := f(a)
	fb, _ := f(b)
	if fa == 0 {
		return a, nil
	}
	if fb == 0 {
		return b, nil
	}
	if !opposite(fa, fb) {
		return math.NaN(), noBracket(a, b, fa, fb)
	}
	s := NewBracket(a, b, fa > 0)
	x := s.Start(x0)
	for range MaxIterations {
		y, dy := f(x)
		if math.IsNaN(y) {
			return math.NaN(), fmt.Errorf("%w: the function is NaN at %g inside [%g, %g]", domain.ErrNoSolution, x, s.Low, s.High)
		}
		next, done := s.Next(x, y, dy, xtol)
		if done {
			return next, nil
		}
		x = next
	}
	return math.NaN(), notConverged(s.Low, s.High, fa, fb)
}

// epsilon is half the relative spacing of float64.
const epsilon = 1.1102230246251565e-16

func opposite(fa, fb float64) bool {
	return fa < 0 && fb > 0 || fa > 0 && fb < 0
}

func noBracket(a, b, fa, fb float64) error {
	return fmt.Errorf("%w: no change of sign between %g (residual %g) and %g (residual %g)", domain.ErrNoSolution, a, fa, b, fb)
}

func notConverged(a, b, fa, fb float64) error {
	return fmt.Errorf("%w after %d steps: still between %g (residual %g) and %g (residual %g)", domain.ErrNotConverged, MaxIterations, a, fa, b, fb)
}
