package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
)

// HolesFor returns the tube with the largest HoleDiameter at which the smallest
// row flow still is the given share evenness (0.01 to 0.999, a ratio) of the
// largest, and all smaller holes do as well: the least fan pressure for that
// evenness. The tube's own HoleDiameter is not read. The error lists every
// fault; it is ErrNoSolution when even the smallest holes that are tried, 1 mm,
// are too uneven, as in tubes so long and thin that friction rules. When the
// largest holes that fit (0.5 m, as wide as the tube, side by side round it, or
// a row as open as it) are even enough, those are returned.
func (t PerforatedTube) HolesFor(evenness float64, supply TubeSupply) (PerforatedTube, TubeFlow, error) {
	t.HoleDiameter = holeDiameterRange.Min
	if err := errors.Join(
		domain.Range{Min: 0.01, Max: 0.999, Unit: "ratio", Source: "below exact evenness"}.Check("evenness", evenness),
		t.check(), supply.check(),
	); err != nil {
		return t, TubeFlow{}, err
	}
	rows := make([]TubePosition, t.Positions)
	var failed error
	excess := func(lnD float64) float64 {
		t.HoleDiameter = math.Exp(lnD)
		f, err := t.solveTo(rows, supply)
		if err != nil {
			failed = err
			return math.NaN()
		}
		return f.Evenness - evenness
	}
	lo := math.Log(holeDiameterRange.Min)
	n := float64(t.HolesPerRow)
	const inside = 0.999 // of what just fits, so that rounding does not refuse it
	widest := inside * t.Diameter * math.Min(1, math.Min(math.Pi/n, 1/math.Sqrt(t.Discharge*n)))
	hi := math.Log(math.Min(holeDiameterRange.Max, widest))
	spare := excess(lo)
	if spare < 0 {
		return t, TubeFlow{}, fmt.Errorf("%w: holes of %g m give an evenness of %.4g, %g is wanted", ErrNoSolution, t.HoleDiameter, spare+evenness, evenness)
	}
	// What is lacking to 1 grows with the fourth power of small holes' diameter, the
	// square of their area; steps suppose the sixth, not to pass a first crossing.
	const (
		step    = 0.05  // of the logarithm of the diameter, at the least
		power   = 6     // of the diameter
		least   = 1e-12 // lacking: rounding
		settled = 1e-12 // of the logarithm
	)
	for a := lo; a < hi && failed == nil; {
		lacking := math.Max(1-evenness-spare, least)
		b := math.Min(a+math.Max(step, math.Log((1-evenness)/lacking)/power), hi)
		if spare = excess(b); spare >= 0 {
			a = b
			continue
		}
		d, err := solve.Root(excess, a, b, settled)
		if err != nil {
			return t, TubeFlow{}, errors.Join(failed, err)
		}
		hi = d
		break
	}
	if failed != nil {
		return t, TubeFlow{}, failed
	}
	t.HoleDiameter = math.Exp(hi)
	f, err := t.SolveTo(rows, supply)
	return t, f, err
}
