package airheat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// grid runs f over Reynolds numbers and roughnesses of the whole range.
func grid(f func(re, rough float64)) {
	for re := 4000.0; re <= 1e9; re *= 1.37 {
		for _, rough := range []float64{0, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 0.01, 0.03, 0.05, 0.1} {
			f(re, rough)
		}
	}
}

// Bisection on Colebrook's own equation, without any step of the solver.
func colebrookByBisection(re, rough float64) float64 {
	g := func(x float64) float64 { return x + 2*math.Log10(rough/3.7+2.51*x/re) }
	lo, hi := 0.1, 30.0
	for range 200 {
		mid := 0.5 * (lo + hi)
		if g(mid) < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return 1 / (lo * lo)
}

func TestColebrookIsTheRootOfItsEquation(t *testing.T) {
	worst := 0.0
	grid(func(re, rough float64) {
		want := colebrookByBisection(re, rough)
		got := Colebrook(re, rough)
		worst = math.Max(worst, math.Abs(got/want-1))
	})
	t.Logf("largest relative difference from bisection %.2g", worst)
	require.Less(t, worst, 2e-15)
}
