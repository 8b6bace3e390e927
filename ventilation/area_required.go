package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/solve"
)

const kelvin = constant.ZeroCelsius

// RequiredArea is the answer to how far the openings must grow for an allowed
// temperature rise.
type RequiredArea struct {
	Factor   float64 // ratio of the area needed to the area given, the same for each opening
	Area     float64 // m², sum over the openings after the factor
	Flow     float64 // kg/s, air needed
	Volume   float64 // m³/s, air needed, at the outside density
	Sensible float64 // W, heat to carry off
	ByAir    float64 // W, of it by the air
	ByCover  float64 // W, of it through cover and ground
	Stable   bool    // false: the rise is held in balance but not kept: wind opposes the stack
	Air      Balance // the flow at that rise with the areas needed
}

// Between leastFactor, which is as good as no opening, and mostFactor, a thousand
// square kilometres for each one of a square metre, the factor is sought; riseStep
// is the fraction of the rise by which it is disturbed to see whether it stays.
const (
	leastFactor = 1e-9
	mostFactor  = 1e9
	riseStep    = 1e-5
)

// AreaForRise returns how much larger, or smaller, all openings must be for
// the house to stand rise, K, 0.01 to 80, above the outside air under load and
// out. Leaks and fans stay as they are. A Factor of zero says that cover, leaks
// and fans carry the heat without any opening. ErrNoSolution says that no area
// does, since at that rise nothing drives air through the openings; other
// errors join the inputs outside their ranges.
func (n *Network) AreaForRise(load Load, out Outdoors, rise float64) (RequiredArea, error) {
	if err := errors.Join(n.check(), checkHeat(load, out), riseRange.Check("rise", rise)); err != nil {
		return RequiredArea{}, err
	}
	if err := temperatureRange.Check("Temperature + rise", out.Temperature+rise); err != nil {
		return RequiredArea{}, err
	}
	h := heatBalance{n: n, sensible: load.Solar * (1 - load.Transpired), loss: load.Loss, out: out}
	need := RequiredArea{Sensible: h.sensible, ByCover: math.Min(h.sensible, h.loss*rise)}
	need.ByAir = h.sensible - need.ByCover
	need.Flow = need.ByAir / (heatCapacityAir * rise)
	c := h.conditions(rise)
	need.Volume = need.Flow / c.OutsideDensity
	factor, err := n.factorFor(need.Flow, c)
	if err != nil {
		return RequiredArea{}, err
	}
	need.Factor = factor
	for i := range n.openings {
		need.Area += factor * n.openings[i].Area
	}
	scaled := n.scaled(factor)
	if factor > 0 || len(n.paths) > len(n.openings) {
		if need.Air, err = scaled.Solve(c); err != nil {
			return RequiredArea{}, err
		}
	} else {
		need.Air.Paths = make([]PathFlow, len(n.paths))
		need.Air.Neutral, need.Air.Pressure = math.NaN(), math.NaN()
	}
	h.n = scaled
	step := riseStep * rise
	need.Stable = factor == 0 || h.surplus(rise+step) < h.surplus(rise-step)
	return need, nil
}

// factorFor returns the ratio by which the openings must grow for the flow,
// kg/s, under c.
func (n *Network) factorFor(flow float64, c FlowConditions) (float64, error) {
	if flow == 0 {
		return 0, nil
	}
	b, err := n.balance(nil, c)
	if err != nil {
		return 0, err
	}
	if len(n.paths) == len(n.openings) {
		if !(b.Flow > 0) {
			return 0, fmt.Errorf("area for rise: %w: nothing drives air through the openings", ErrNoSolution)
		}
		return flow / b.Flow, nil
	}
	lack := func(factor float64) float64 {
		b, err := n.scaled(factor).balance(nil, c)
		if err != nil {
			return math.NaN()
		}
		return b.Flow - flow
	}
	if lack(leastFactor) >= 0 {
		return 0, nil
	}
	high := 1.0
	for lack(high) < 0 {
		high *= 2
		if high > mostFactor {
			return 0, fmt.Errorf("area for rise: %w: openings of %g times the area pass too little", ErrNoSolution, mostFactor)
		}
	}
	return solve.Root(lack, leastFactor, high, flowFound)
}

// scaled returns the network with the area of each opening, and of its
// screen, times factor.
func (n *Network) scaled(factor float64) *Network {
	s := &Network{openings: n.Openings(), paths: append([]path(nil), n.paths...), exchange: n.exchange}
	for i := range s.openings {
		s.openings[i].Area *= factor
		s.openings[i].Viscous /= factor
		s.paths[i] = s.openings[i].path()
	}
	return s
}
