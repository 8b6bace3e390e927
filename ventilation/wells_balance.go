package ventilation

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"cloche.example/internal/domain"
)

// WellCount is the count of wells that a DugIn may have: each may hold outdoor
// or house air, and every combination is looked at.
var wellCountRange = domain.Range{Min: 0, Max: 10, Unit: "count", Source: "1,024 combinations"}

// DugIn is a house whose lowest vents lie in wells below grade.
type DugIn struct {
	Openings []Opening  // vents above grade; may be nil
	Wells    []Well     // vents below grade with their wells; may be nil
	Leaks    []Leak     // leakage paths; may be nil
	Fans     []FixedFan // fans; may be nil
}

// DugInState is a balance of air in which each well holds the air that passes
// through it.
type DugInState struct {
	Air    Balance // Paths: Openings, then Wells, then Leaks, then Fans
	Filled []bool  // of each well: house air leaves through it and fills it, so that its vent acts at grade
}

// check joins every fault of d, by field.
func (d DugIn) check() error {
	faults := []error{wellCountRange.Check("number of Wells", float64(len(d.Wells)))}
	for i := range d.Openings {
		faults = append(faults, d.Openings[i].check(place("Openings", i, d.Openings[i].Name)))
	}
	for i := range d.Wells {
		if _, err := d.Wells[i].Opening(); err != nil {
			faults = append(faults, fmt.Errorf("%s: %w", place("Wells", i, d.Wells[i].Vent.Name), err))
		}
	}
	for i := range d.Leaks {
		faults = append(faults, d.Leaks[i].check(place("Leaks", i, d.Leaks[i].Name)))
	}
	for i := range d.Fans {
		faults = append(faults, d.Fans[i].check(place("Fans", i, d.Fans[i].Name)))
	}
	if len(d.Openings)+len(d.Wells)+len(d.Leaks) == 0 {
		faults = append(faults, noOpening())
	}
	return errors.Join(faults...)
}

// States returns every balance under c in which each well is full of the air
// that passes through it: where the net flow is inward, of outdoor air, and its
// vent acts at its own height; where it is outward, of house air, and its vent
// acts as a point at grade. One state is the rule, and in a warm house without
// wind there is one at least; wind against the stack can leave two, and what
// went before decides. The flows are those that pressures drive, without what
// gusts exchange. ErrNoSolution says that there is none, in a house colder than
// outdoors with wind that holds its air in the well: the flow then swings to
// and fro. Other errors join every fault by field.
func (d DugIn) States(c FlowConditions) ([]DugInState, error) {
	if err := errors.Join(d.check(), c.check()); err != nil {
		return nil, err
	}
	var states []DugInState
	openings := slices.Concat(d.Openings, make([]Opening, len(d.Wells)))
	vents := openings[len(d.Openings):]
	for code := range 1 << len(d.Wells) {
		filled := make([]bool, len(d.Wells))
		for i := range d.Wells {
			vents[i], _ = d.Wells[i].Opening()
			if filled[i] = code>>i&1 == 1; filled[i] {
				vents[i].Height, vents[i].Vertical = 0, 0
			}
		}
		n, err := NewNetwork(openings, d.Leaks, d.Fans)
		if err != nil {
			return nil, err
		}
		n.exchange = WindExchange{} // gusts do not reach down a well
		b, err := n.Solve(c)
		if err != nil {
			return nil, err
		}
		held := true
		for i, f := range b.Paths[len(d.Openings):][:len(d.Wells)] {
			least := slack * math.Max(f.In, f.Out)
			held = held && (filled[i] && f.net() < -least || !filled[i] && f.net() >= -least)
		}
		if held {
			states = append(states, DugInState{Air: b, Filled: filled})
		}
	}
	if len(states) == 0 {
		return nil, fmt.Errorf("wells: %w: full of outdoor air they let house air out, full of house air they let outdoor air in: no steady flow", ErrNoSolution)
	}
	return states, nil
}
