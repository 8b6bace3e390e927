package solve_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
)

// hard are functions on which plain secant or Newton steps stall, diverge or
// cycle: a root of high order, a pole-like step, a flat tail, a staircase, and
// the kink of a square root through zero, as in flow through an opening.
var hard = []struct {
	name  string
	f     func(x float64) (y, dy float64)
	a, b  float64
	root  float64
	tol   float64
	calls int // most calls allowed to Root
}{
	{"cubic", func(x float64) (float64, float64) { return x*x*x - 2*x - 5, 3*x*x - 2 }, 2, 3, 2.0945514815423265, 1e-14, 12},
	{"ninth order", func(x float64) (float64, float64) { return math.Pow(x, 9), 9 * math.Pow(x, 8) }, -1, 4, 0, 1e-10, 140},
	{"flat tail", func(x float64) (float64, float64) { return 1 - 1/x, 1 / (x * x) }, 1e-3, 1e6, 1, 1e-12, 60},
	{"arctangent far", func(x float64) (float64, float64) { return math.Atan(x - 3), 1 / (1 + (x-3)*(x-3)) }, -1e4, 1e5, 3, 1e-12, 60},
	{"signed root", func(x float64) (float64, float64) {
		return math.Copysign(math.Sqrt(math.Abs(x-0.3)), x-0.3), 0.5 / math.Sqrt(math.Abs(x-0.3))
	}, -5, 7, 0.3, 1e-12, 100},
	{"step", func(x float64) (float64, float64) {
		if x < 0.7 {
			return -1, 0
		}
		return 1, 0
	}, 0, 1, 0.7, 1e-12, 100},
	{"exponential", func(x float64) (float64, float64) { return math.Exp(x) - 1e-8, math.Exp(x) }, -100, 100, math.Log(1e-8), 1e-12, 60},
	{"fourth power of temperature", func(x float64) (float64, float64) { return 308.1 - x - 1e-9*x*x*x*x, -1 - 4e-9*x*x*x }, 0, 1000, 300, 1e-10, 20},
}

func TestRootOnHardFunctions(t *testing.T) {
	for _, h := range hard {
		t.Run(h.name, func(t *testing.T) {
			n := 0
			f := func(x float64) float64 { n++; y, _ := h.f(x); return y }
			x, err := solve.Root(f, h.a, h.b, 1e-15)
			require.NoError(t, err)
			require.InDelta(t, h.root, x, h.tol)
			require.LessOrEqual(t, n, h.calls)
			back, err := solve.Root(f, h.b, h.a, 1e-15)
			require.NoError(t, err)
			require.InDelta(t, h.root, back, h.tol, "ends swapped")
		})
	}
}

func TestNewtonOnHardFunctions(t *testing.T) {
	for _, h := range hard {
		t.Run(h.name, func(t *testing.T) {
			for _, x0 := range []float64{h.a, h.b, 0.5 * (h.a + h.b), math.NaN(), h.b + 10} {
				x, err := solve.Newton(h.f, h.a, h.b, x0, 1e-15)
				require.NoError(t, err)
				require.InDelta(t, h.root, x, max(h.tol, 1e-9), "from %g", x0)
			}
		})
	}
}

// The search in the caller's hands finds what Newton finds, and with a slope
// that is wrong, infinite or NaN it still ends in the bracket.
func TestBracketWithAnySlope(t *testing.T) {
	for _, h := range hard {
		t.Run(h.name, func(t *testing.T) {
			y, _ := h.f(h.a)
			for _, wrong := range []float64{1, 0, -1, 1e-3, math.Inf(1), math.NaN()} {
				s := solve.NewBracket(h.a, h.b, y > 0)
				x, done := s.Start(math.NaN()), false
				for range solve.MaxIterations {
					y, dy := h.f(x)
					if x, done = s.Next(x, y, wrong*dy, 0); done {
						break
					}
				}
				require.True(t, done, "slope times %g", wrong)
				require.InDelta(t, h.root, x, max(h.tol, 1e-9), "slope times %g", wrong)
			}
		})
	}
}

func TestBracketAllocatesNothing(t *testing.T) {
	require.Zero(t, testing.AllocsPerRun(100, func() {
		s := solve.NewBracket(0, 2, false)
		x := s.Start(1)
		for range solve.MaxIterations {
			var done bool
			if x, done = s.Next(x, x*x-2, 2*x, 1e-8); done {
				break
			}
		}
	}))
}

func TestBothRefuseABracketWithoutAChangeOfSign(t *testing.T) {
	square := func(x float64) float64 { return x*x + 1 }
	_, err := solve.Root(square, -1, 2, 1e-12)
	require.ErrorIs(t, err, domain.ErrNoSolution)
	require.ErrorContains(t, err, "between -1 (residual 2) and 2 (residual 5)")
	_, err = solve.Newton(func(x float64) (float64, float64) { return x*x + 1, 2 * x }, -1, 2, 0, 1e-12)
	require.ErrorIs(t, err, domain.ErrNoSolution)
	nan := func(float64) float64 { return math.NaN() }
	_, err = solve.Root(nan, 0, 1, 1e-12)
	require.ErrorIs(t, err, domain.ErrNoSolution)
}

func TestBothRefuseNaNInside(t *testing.T) {
	f := func(x float64) (float64, float64) {
		if x > 0.2 && x < 0.8 {
			return math.NaN(), math.NaN()
		}
		return x - 0.5, 1
	}
	_, err := solve.Root(func(x float64) float64 { y, _ := f(x); return y }, 0, 1, 1e-12)
	require.ErrorIs(t, err, domain.ErrNoSolution)
	_, err = solve.Newton(f, 0, 1, 0.5, 1e-12)
	require.ErrorIs(t, err, domain.ErrNoSolution)
}

func TestARootAtAnEndIsReturned(t *testing.T) {
	f := func(x float64) (float64, float64) { return x * (x - 4), 2*x - 4 }
	for _, c := range []struct{ a, b, want float64 }{{0, 3, 0}, {-3, 0, 0}, {4, 9, 4}} {
		x, err := solve.Root(func(x float64) float64 { y, _ := f(x); return y }, c.a, c.b, 0)
		require.NoError(t, err)
		require.Equal(t, c.want, x)
		x, err = solve.Newton(f, c.a, c.b, c.a, 0)
		require.NoError(t, err)
		require.Equal(t, c.want, x)
	}
}

func TestWidestBracketEndsWithinTheLimit(t *testing.T) {
	n := 0
	_, err := solve.Root(func(x float64) float64 {
		n++
		if x < 1e-300 {
			return -1
		}
		return 1
	}, -1e307, 1e307, 0)
	require.NoError(t, err)
	require.LessOrEqual(t, n, solve.MaxIterations+2)
}

func TestNoAllocations(t *testing.T) {
	k := 2.0
	require.Zero(t, testing.AllocsPerRun(100, func() {
		x, _ := solve.Root(func(x float64) float64 { return x*x - k }, 0, 3, 1e-12)
		y, _ := solve.Newton(func(x float64) (float64, float64) { return x*x - k, 2 * x }, 0, 3, 1, 1e-12)
		k = 2 + 1e-9*(x-y)
	}))
}
