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

// spread is the range of a rival over Colebrook, in per cent.
func spread(f func(re, rough float64) float64, most float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	grid(func(re, rough float64) {
		v := f(re, rough)
		if math.IsNaN(v) || rough > most {
			return
		}
		d := 100 * (v/Colebrook(re, rough) - 1)
		low, high = math.Min(low, d), math.Max(high, d)
	})
	return low, high
}

func TestRivalsStandWhereTheirCommentsSay(t *testing.T) {
	low, high := spread(SwameeJain, 1)
	t.Log("Swamee-Jain", low, high)
	require.InDelta(t, -0.6, low, 0.3)
	require.InDelta(t, 2.9, high, 0.3)
	low, high = spread(Haaland, 1)
	t.Log("Haaland", low, high)
	require.InDelta(t, 0, low, 1.5)
	require.InDelta(t, 0, high, 1.5)
	low, high = spread(AltshulTsal, 0.01)
	require.InDelta(t, -9.2, low, 0.3)
	require.InDelta(t, 2.6, high, 0.3)
}

// Computed by hand from the printed forms.
func TestRivalsByHand(t *testing.T) {
	require.InEpsilon(t, 0.25/math.Pow(math.Log10(1e-4/3.7+5.74/math.Exp(0.9*math.Log(2e5))), 2), SwameeJain(2e5, 1e-4), 1e-12)
	require.InDelta(t, 0.0190, AltshulTsal(1e5, 2.1e-4), 0.0002)
	require.InEpsilon(t, 0.85*0.11*math.Pow(1e-5+68e-6, 0.25)+0.0028, AltshulTsal(1e6, 1e-5), 1e-12)
	require.InEpsilon(t, math.Pow(-1.8*math.Log10(math.Pow(0.01/3.7, 1.11)+6.9/3e4), -2), Haaland(3e4, 0.01), 1e-12)
}

func TestFrictionJoinsItsThreeRegimes(t *testing.T) {
	require.Equal(t, 64.0/1000, Friction(1000, 0.01))
	require.Equal(t, 64.0/2300, Friction(2300, 0))
	for _, rough := range []float64{0, 1e-3, 0.05} {
		f := Colebrook(4000, rough)
		require.Equal(t, f, Friction(4000, rough))
		require.InEpsilon(t, (64.0/2300+f)/2, Friction(3150, rough), 1e-14)
		require.InEpsilon(t, f, Friction(math.Nextafter(4000, 0), rough), 1e-12)
	}
	for _, bad := range [][2]float64{{0, 0}, {-1, 0}, {2e9, 0}, {1e4, -1}, {1e4, 0.2}, {math.NaN(), 0}} {
		require.True(t, math.IsNaN(Friction(bad[0], bad[1])))
		require.True(t, math.IsNaN(Colebrook(bad[0], bad[1])))
		require.True(t, math.IsNaN(SwameeJain(bad[0], bad[1])))
		require.True(t, math.IsNaN(Haaland(bad[0], bad[1])))
		require.True(t, math.IsNaN(AltshulTsal(bad[0], bad[1])))
	}
	require.True(t, math.IsNaN(Colebrook(3000, 0)))
}

// Prandtl's smooth law 1/√f = 2 log10(Re √f) − 0.8 and von Kármán's rough one
// 1/√f = 1.14 − 2 log10 ε are Colebrook's limits.
func TestColebrookHasItsTwoLimits(t *testing.T) {
	x := 1 / math.Sqrt(Colebrook(1e6, 0))
	require.InDelta(t, 2*math.Log10(1e6/x)-0.8, x, 0.002)
	x = 1 / math.Sqrt(Colebrook(1e9, 0.01))
	require.InDelta(t, 1.14-2*math.Log10(0.01), x, 0.005)
}

func TestLogarithmsAreAsGoodAsStated(t *testing.T) {
	for v := 1e-12; v < 10; v *= 1.013 {
		require.InDelta(t, math.Log(v), crudeLog(v), 7e-5)
		full := fullLog(parts(v))
		require.InDelta(t, math.Log(v), full, 4e-15*math.Max(1, math.Abs(math.Log(v))))
	}
	// At the ends of the mantissa every coefficient shows.
	for _, v := range []float64{0.70711, 0.708, 0.72, 1.36, 1.4, 1.4142} {
		full := fullLog(parts(v))
		require.InDelta(t, math.Log(v), full, 2e-16)
	}
}

// The stated ends of each rival: the last value taken and the first refused.
func TestRivalsEndWhereTheySay(t *testing.T) {
	out := func(v float64) float64 { return v * (1 + 1e-12) }
	in := func(v float64) float64 { return v * (1 - 1e-12) }
	for name, c := range map[string]struct {
		f                                func(re, rough float64) float64
		reMin, reMax, roughMin, roughMax float64
	}{
		"Swamee-Jain":  {SwameeJain, 5e3, 1e8, 1e-6, 1e-2},
		"Haaland":      {Haaland, 4e3, 1e8, 0, 0.05},
		"Altshul-Tsal": {AltshulTsal, 4e3, 1e8, 0, 0.05},
	} {
		for _, good := range [][2]float64{{c.reMin, 1e-3}, {c.reMax, 1e-3}, {1e5, c.roughMin}, {1e5, c.roughMax}} {
			require.False(t, math.IsNaN(c.f(good[0], good[1])), name)
		}
		for _, bad := range [][2]float64{{in(c.reMin), 1e-3}, {out(c.reMax), 1e-3}, {1e5, in(c.roughMin) - 1e-300}, {1e5, out(c.roughMax)}} {
			require.True(t, math.IsNaN(c.f(bad[0], bad[1])), name)
		}
	}
}

// The switch of AltshulTsal lies at a raw factor of 0.018, where the two forms
// differ by 0.6 %.
func TestAltshulTsalSwitches(t *testing.T) {
	at := func(raw float64) float64 { return AltshulTsal(1e5, math.Pow(raw/0.11, 4)-68e-5) }
	require.InEpsilon(t, 0.01805, at(0.01805), 1e-12)
	require.InEpsilon(t, 0.85*0.01795+0.0028, at(0.01795), 1e-12)
}
