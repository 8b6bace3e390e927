package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
)

// sizeFound is how near the logarithm of a diameter is sought.
const sizeFound = 1e-14

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

// RoundSizing asks for the round duct that loses just a given pressure.
type RoundSizing struct {
	Flow       float64       // m³/s, 1e-9 to 1000
	Pressure   float64       // Pa, 1e-9 to 1e6, lost by friction; with a Length of 1 m, the friction rate of the equal-friction rule
	Length     float64       // m, 1e-9 to 10000
	Roughness  float64       // m, 0 to 0.02, of the wall
	Properties AirProperties // that flows
}

// RoundFor returns the inside diameter, m, of the round duct that s asks for.
// The error lists every fault, or is ErrNoSolution when no diameter of 0.01 to
// 10 m does it.
func RoundFor(s RoundSizing) (float64, error) {
	if err := errors.Join(
		notZero(ductFlowRange).Check("Flow", s.Flow),
		notZero(ductPressureRange).Check("Pressure", s.Pressure),
		notZero(ductLengthRange).Check("Length", s.Length),
		ductRoughnessRange.Check("Roughness", s.Roughness),
		domain.Within("Properties", s.Properties.check()),
	); err != nil {
		return math.NaN(), err
	}
	flow, pressure, length, roughness, air := s.Flow, s.Pressure, s.Length, s.Roughness, s.Properties
	lo := math.Max(ductSizeRange.Min, roughness/relativeRoughnessRange.Max)
	// In the logarithm of both, the loss is close to a straight line.
	ln, err := solve.Root(func(ln float64) float64 {
		g := Segment{Section: Round(math.Exp(ln)), Length: length, Roughness: roughness}.ready()
		l, _ := g.loss(flow, air.Viscosity/air.Density)
		return math.Log(l * air.Density / 2 / pressure)
	}, math.Log(lo), math.Log(ductSizeRange.Max), sizeFound)
	if err != nil {
		return math.NaN(), fmt.Errorf("diameter for %g Pa: %w", pressure, err)
	}
	return math.Exp(ln), nil
}

// smallest stands for "more than nothing" in a range.
const smallest = 1e-9

// notZero is the range r without its zero.
func notZero(r domain.Range) domain.Range {
	if r.Min <= 0 {
		r.Min = smallest
	}
	return r
}
