package ventilation

import (
	"fmt"
	"math"
)

// States returns every steady state of the house in the weather w under the
// setting s, that with the strongest flow first, which is the coolest as a rule.
// Mostly there is one. Wind that opposes the stack can give three: a cool one
// with wind through the house, a hot one with the stack reversed, and an
// unstable one between; so can, in calm air, mist and moist crops that cool the
// air and make it lighter at once. Which of the stable ones a house takes
// depends on what went before. Two states whose flows differ by less than a
// hundredth may be missed, as those of one house with leaves hot or cool. Errors
// are those of Solve.
func (c *Climate) States(w Weather, s Setting) ([]ClimateState, error) {
	var k climateCase
	if err := c.prepare(&k, &w, &s); err != nil {
		return nil, err
	}
	states := make([]ClimateState, 1)
	var first climateNodes
	err := k.meet(func() (err error) {
		var stable bool
		if first, stable, err = k.solve(); err == nil {
			k.state(&states[0], &first, stable)
		}
		return err
	}, nil)
	if err != nil {
		return nil, err
	}
	add := func(x climateNodes, stable bool) error {
		var s ClimateState
		err := k.nearby(&s, x, stable)
		states = append(states, s)
		return err
	}
	// Weaker flows, in steps that narrow towards none.
	top := k.lastFlow
	x := first
	const steps = 240
	a, fa := top, 0.0
	for i := steps - 1; i >= 0 && top > 0; i-- {
		u := float64(i) / steps
		b := top * u * u * u
		y := x
		fb, err := k.excess(b, &y)
		if err != nil {
			break // hotter than can be
		}
		if fb != 0 && fa != 0 && (fa < 0) != (fb < 0) || fb == 0 && i == 0 && fa < 0 {
			z, stable, err := k.between(b, a, x)
			if err != nil {
				return nil, err
			}
			if err = add(z, stable); err != nil {
				return nil, err
			}
		}
		a, fa, x = b, fb, y
	}
	return states, nil
}

// nearby writes to out the state near x, which covers as straight as at the
// strongest flow have: the real ones are met from there, and left as they were.
func (k *climateCase) nearby(out *ClimateState, x climateNodes, stable bool) error {
	if k.skin == nil {
		k.state(out, &x, stable)
		return nil
	}
	kept := *k.skin
	defer func() {
		kept.covers = k.skin.covers
		*k.skin = kept
	}()
	return k.meet(func() error {
		stable, ok := k.newton(&x, true)
		if !ok {
			return fmt.Errorf("balance of heat and water: %w: near %g °C inside", ErrNotConverged, x.air)
		}
		k.state(out, &x, stable)
		return nil
	}, nil)
}

// PathsTo writes to dst the flow of moist air through each element of the
// network in the state of the weather w and the setting s, and returns dst: openings,
// then leaks, then fans. A nil dst allocates; otherwise dst must have the
// network's length. What enters and what leaves differ by the water that the
// air gains.
func (c *Climate) PathsTo(dst []PathFlow, w Weather, s Setting, state ClimateState) ([]PathFlow, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	n := c.house.Air
	if s.Air != nil {
		n = s.Air
	}
	if dst == nil {
		dst = make([]PathFlow, len(n.paths))
	}
	if len(dst) != len(n.paths) {
		panic("ventilation: dst does not have the network's length")
	}
	var k climateCase
	if err := c.prepare(&k, &w, &s); err != nil {
		return nil, err
	}
	f := k.flow(state.Temperature, state.VapourPressure)
	all := f.turbulence()
	mixed := 0.0 // kg/s of dry air, of the flow, that wind exchanges
	if all > 0 {
		driven, _ := f.driven(state.Pressure)
		mixed = f.exchange.more(driven, all)
	}
	for i := range dst {
		dst[i] = PathFlow{}
		e := f.paths[i]
		if !f.stands(&e) || math.IsNaN(state.Pressure) {
			continue
		}
		bottom := e.drive(e.bottom, f.dynamic, f.buoyancy, state.Pressure)
		top := e.drive(e.top, f.dynamic, f.buoyancy, state.Pressure)
		in, out, _ := e.flows(bottom, top, f.outside, f.inside)
		dst[i] = PathFlow{Drive: 0.5 * (bottom + top), In: in, Out: out}
		if mixed > 0 {
			m := mixed / all * e.turbulence(f.exchange.Coefficient*f.dynamic, 1, f.outside)
			dst[i].In += m
			dst[i].Out += m * f.dryOut / f.dryIn
		}
	}
	return dst, nil
}
