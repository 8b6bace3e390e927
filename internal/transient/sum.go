package transient

import (
	"math"

	"cloche.example/internal/solve"
)

// turnFound is how near a turning point is sought, s: a thousandth of what a time is
// promised to.
const turnFound = 1e-9

// expSum is base + slope t + the sum of n terms c[k] exp(-mu[k] t), with
// falling mu[k] >= 0.
type expSum struct {
	n           int
	c, mu       [3]float64
	base, slope float64
}

func (f *expSum) at(t float64) float64 {
	v := f.base + f.slope*t
	for k := range f.n {
		v += f.c[k] * math.Exp(-f.mu[k]*t)
	}
	return v
}

// turns writes the turning points of f in (0, limit) to out, rising, and
// returns their number, at most n. The slope is itself such a sum without a
// linear part, and has a zero only where its coefficients change sign.
func (f *expSum) turns(limit float64, out *[4]float64) int {
	g := expSum{n: f.n, mu: f.mu, base: f.slope}
	for k := range f.n {
		g.c[k] = -f.mu[k] * f.c[k]
	}
	return g.zeros(limit, out)
}

// zeros writes the zeros at which g, whose slope field is 0, changes sign in
// (0, limit) to out, rising, and returns their number. By Rolle: between two
// of them lies a zero of the derivative, after division by the slowest decay
// that derivative is a sum of one term less, and so on down to one term.
func (g *expSum) zeros(limit float64, out *[4]float64) int {
	h := *g
	if h.base == 0 { // divide by the slowest decay, which becomes the constant
		if h.n == 0 {
			return 0
		}
		h.n--
		slow := h.mu[h.n]
		h.base = h.c[h.n]
		for k := range h.n {
			h.mu[k] -= slow
		}
	}
	if h.n == 0 || h.oneSigned() {
		return 0
	}
	// The zeros of the derivative bracket those of h.
	d := expSum{n: h.n, mu: h.mu}
	for k := range h.n {
		d.c[k] = -h.mu[k] * h.c[k]
	}
	var cuts [4]float64
	count := d.zeros(limit, &cuts)
	cuts[count] = limit
	found, from := 0, 0.0
	vFrom := h.at(0)
	for k := 0; k <= count; k++ {
		to := cuts[k]
		vTo := h.at(to)
		if vFrom < 0 && vTo > 0 || vFrom > 0 && vTo < 0 {
			if t, err := solve.Root(h.at, from, to, turnFound); err == nil {
				out[found] = t
				found++
			}
		}
		from, vFrom = to, vTo
	}
	return found
}

// oneSigned reports whether all coefficients have one sign or are zero.
func (g *expSum) oneSigned() bool {
	var pos, neg bool
	for _, v := range g.c[:g.n] {
		pos, neg = pos || v > 0, neg || v < 0
	}
	return !(pos || g.base > 0) || !(neg || g.base < 0)
}

// shorten moves the right end of the bracket [from, to] towards from, trying
// ever longer steps from half the slowest time constant on, so that the search
// does not start from centuries.
func (f *expSum) shorten(from, to, side float64) float64 {
	for step := 0.5 / f.mu[f.n-1]; from+step < to; step *= 4 {
		if f.at(from+step)*side > 0 {
			return from + step
		}
	}
	return to
}
