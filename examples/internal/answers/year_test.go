package answers

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
	real "cloche.example/examples/internal/weather"
)

// everyPlan are the demo house and the plans beside it.
func everyPlan(t *testing.T) map[string]plan.Filled {
	t.Helper()
	list := map[string]plan.Filled{"demo": plan.Demo()}
	for _, name := range []string{"arch", "leanto", "mountain"} {
		f, err := os.Open(filepath.Join("..", "..", "plans", name+".json"))
		require.NoError(t, err)
		list[name], err = plan.Read(f)
		require.NoError(t, f.Close())
		require.NoError(t, err)
	}
	return list
}

// Covers turn wet in some hours of a year and not in all at once, so that its heat
// follows humidity limit and set-points without a jump: no step is larger than one
// and a half times its neighbours' mean and a two hundredth of the heat, which is
// what the curve's points leave open. Points apart by 0.05 K make steps of at most
// 1.1 times their neighbours'.
func TestYearHasNoSteps(t *testing.T) {
	for name, base := range everyPlan(t) {
		apart := base.SetPoints.Day.Temperature - base.SetPoints.Night.Temperature
		for what, sweep := range map[string]struct {
			from, to, by float64
			change       func(x float64) string
		}{
			"humidity limit": {0.55, 0.85, 0.005, func(x float64) string { return fmt.Sprintf(`{"set_points":{"limits":{"relative_humidity":%g}}}`, x) }},
			"set-point": {8, 20, 0.5, func(x float64) string {
				return fmt.Sprintf(`{"set_points":{"day":{"temperature_c":%g},"night":{"temperature_c":%g},"limits":{"chill_c":3}}}`, x+apart, x)
			}},
		} {
			var heat, at []float64
			for x := sweep.from; x < sweep.to+sweep.by/2; x += sweep.by {
				p, err := base.Change([]byte(sweep.change(x)))
				if err != nil {
					continue // vents below the set-point
				}
				r, err := Of(&p.Plan, false)
				require.NoError(t, err)
				heat, at = append(heat, r.Year.Heat), append(at, x)
			}
			require.Greater(t, len(heat), 18)
			for i := 2; i+1 < len(heat); i++ {
				step := math.Abs(heat[i] - heat[i-1])
				beside := (math.Abs(heat[i-1]-heat[i-2]) + math.Abs(heat[i+1]-heat[i])) / 2
				require.LessOrEqual(t, step, 1.5*beside+heat[i]/200, "%s, %s of %g: %.0f kWh after %.0f", name, what, at[i], heat[i], heat[i-1])
			}
		}
	}
}

// A month's hours by the normal law lie as far below a set-point as those of a real
// year.
func TestMonthHours(t *testing.T) {
	s, err := real.Greensboro()
	require.NoError(t, err)
	var n, mean, square, colder [12]float64
	for i, at := range s.Time {
		m := at.Month() - 1
		n[m]++
		mean[m] += s.Temperature[i]
		square[m] += s.Temperature[i] * s.Temperature[i]
		colder[m] += max(0, 13-s.Temperature[i])
	}
	all := 0.0
	for m := range n {
		mean[m] /= n[m]
		own := math.Sqrt(square[m]/n[m] - mean[m]*mean[m])
		require.InDelta(t, 6.1, own, 2.55)
		all += own / 12
		// Hours of that spread, moved and stretched to Deviation.
		if m <= 4 || m >= 9 {
			law := monthHours{13 - (13-mean[m])*Deviation/own}.below(13) * own / Deviation
			require.InDelta(t, colder[m]/n[m], law, 0.05*colder[m]/n[m]+0.01, "month %d", m+1)
		}
	}
	require.InDelta(t, Deviation, all, 0.2)
}

// The integrals over a month's hours are those of sums over many.
func TestOverHours(t *testing.T) {
	list := []stretch{
		{deepest, -2, line{9800, -100}, line{50, 0}},
		{-2, 3, line{1000, -70}, line{50, 4}},
		{3, 12, line{900, -60}, line{70, -1}},
	}
	for _, mean := range []float64{-8, 2.5, 11, 30} {
		h := monthHours{mean}
		heat, vapour, below := 0.0, 0.0, 0.0
		const by = 1e-3
		for x := mean - 8*Deviation; x < 12; x += by {
			mid := x + by/2
			part := by * math.Exp(-0.5*math.Pow((mid-mean)/Deviation, 2)) / (Deviation * math.Sqrt(2*math.Pi))
			below += part * (12 - mid)
			for _, s := range list {
				if mid >= s.from && mid < s.to {
					heat += part * (s.heat.value + s.heat.slope*(mid-s.from))
					vapour += part * (s.vapour.value + s.vapour.slope*(mid-s.from))
				}
			}
		}
		got, damp := h.over(list, deepest, 12)
		require.InDelta(t, heat, got, 1e-4*heat+1e-4)
		require.InDelta(t, vapour, damp, 1e-4*vapour+1e-4)
		require.InDelta(t, below, h.below(12), 1e-4*below+1e-4)
		a, _ := h.over(list, deepest, 1)
		b, _ := h.over(list, 1, 12)
		require.InDelta(t, got, a+b, 1e-9*got)
	}
}
