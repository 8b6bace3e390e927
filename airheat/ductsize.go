package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
)

// flowAt solves loss(q) = pressure for a loss that rises with the flow.
func flowAt(loss func(float64) (float64, float64), pressure float64) (float64, error) {
	if pressure == 0 {
		return 0, nil
	}
	hi := 1.0
	for range 40 {
		if l, _ := loss(hi); l >= pressure {
			return solve.Newton(func(q float64) (float64, float64) {
				l, ds := loss(q)
				return l - pressure, ds
			}, 0, hi, 0.5*hi, 0)
		}
		hi *= 2
	}
	return math.NaN(), fmt.Errorf("%w: the loss stays below %g Pa up to %g m³/s", ErrNoSolution, pressure, hi)
}

// RoundFor returns the inside diameter, m, of the round duct of the given
// length (m) and wall roughness (m) that loses just the given pressure (Pa) by
// friction at the flow (m³/s) of the air. With a length of 1 m, pressure is
// the friction rate of the equal-friction rule. The error lists every fault,
// or is ErrNoSolution when no diameter of DuctSizeRange does it.
func RoundFor(flow, pressure, length, roughness float64, air Air) (float64, error) {
	if err := errors.Join(
		positive(ductFlowRange).Check("flow", flow),
		positive(ductPressureRange).Check("pressure", pressure),
		positive(ductLengthRange).Check("length", length),
		ductRoughnessRange.Check("roughness", roughness),
		air.check("Air."),
	); err != nil {
		return math.NaN(), err
	}
	lo := math.Max(ductSizeRange.Min, roughness/relativeRoughnessRange.Max)
	// In the logarithm of both, the loss is close to a straight line.
	ln, err := solve.Root(func(ln float64) float64 {
		g := Segment{Section: Round(math.Exp(ln)), Length: length, Roughness: roughness}.ready()
		l, _ := g.loss(flow, air.Viscosity/air.Density)
		return math.Log(l * air.Density / 2 / pressure)
	}, math.Log(lo), math.Log(ductSizeRange.Max), 1e-14)
	if err != nil {
		return math.NaN(), fmt.Errorf("diameter for %g Pa: %w", pressure, err)
	}
	return math.Exp(ln), nil
}

// smallest stands for "more than nothing" in a range.
const smallest = 1e-9

// positive is the range r without its zero.
func positive(r domain.Range) domain.Range {
	if r.Min <= 0 {
		r.Min = smallest
	}
	return r
}
