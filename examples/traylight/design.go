package main

import (
	"context"
	"errors"
	"fmt"
	"math"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/internal/program"
	"cloche.example/lighting"
)

// design is the layout with the fewest lamps that reaches target and evenness.
type design struct {
	lighting.Plan
	none string // why there is none
}

// mostLamps is how many lamps a design may have, besides twice what the photons
// demand.
const mostLamps = 400

// search looks for the design. An interrupt ends it at once.
func search(ctx context.Context, r *result, meter *program.Meter) (*design, error) {
	l, h := r.plan.Lights, r.plan.House
	target := r.wanted()
	if target < 1 {
		return &design{none: "the daylight of the design month suffices: give -target"}, nil
	}
	lamp, err := fromplan.Lamp(r.plan, 1)
	if err != nil {
		return nil, err
	}
	fewest := int(math.Ceil(target * l.BedLength * l.BedWidth / (lamp.Light.Flux() * l.Maintenance)))
	if fewest > mostLamps {
		return &design{none: fmt.Sprintf("it takes %d lamps and more, and no design of more than %d is looked for", fewest, mostLamps)}, nil
	}
	top := h.RidgeHeight + h.Depth - l.TraysAboveFloor
	if l.Tiers > 1 {
		top = l.TierRise
	}
	bed := fromplan.Bed(r.plan)
	bed.Z = 0
	need := lighting.Need{
		PPFD: target, U0: l.Evenness, Maintenance: lighting.Maintenance{Flux: l.Maintenance, Survival: 1, Luminaire: 1, Surfaces: 1},
		Fixture: lamp, Bed: bed, MinHeight: math.Min(0.2, l.HeightAboveTrays), MaxHeight: 0.9 * top, MaxCount: min(mostLamps, 2*fewest+10),
	}
	var found lighting.Plan
	err = program.Wait(ctx, meter, func() (err error) {
		found, err = need.Solve()
		return err
	})
	if errors.Is(err, lighting.ErrNoSolution) {
		return &design{none: err.Error()}, nil
	}
	return &design{Plan: found}, err
}
