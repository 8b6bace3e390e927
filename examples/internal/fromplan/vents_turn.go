package fromplan

import (
	"fmt"

	"cloche.example/examples/internal/plan"
	"cloche.example/ventilation"
)

// High tells whether a place of a vent is ridge or roof.
func High(place string) bool {
	return place == "ridge" || place == "left roof" || place == "right roof"
}

// InTurn is how far high and low vents stand open where open of the area of all is
// open, fraction, in the order of the plan's rule.
func InTurn(p *plan.Plan, open float64) (high, low float64) {
	var area [2]float64 // of high and low vents
	for _, v := range p.Vents {
		if High(v.Place) {
			area[0] += FaceArea(v)
		} else {
			area[1] += FaceArea(v)
		}
	}
	first := 0
	switch {
	case p.VentControl.First == "together" || area[0] == 0 || area[1] == 0:
		return open, open
	case p.VentControl.First == "side":
		first = 1
	}
	wanted := open * (area[0] + area[1])
	var part [2]float64
	part[first] = min(1, wanted/area[first])
	part[1-first] = min(1, max(0, wanted-area[first])/area[1-first])
	return part[0], part[1]
}

// OpenedInTurn are the plan's vents with open of their area open, in the order of
// its rule and in a wind across the house; shut ones are left out.
func OpenedInTurn(p *plan.Plan, open float64) (list []ventilation.Opening, err error) {
	high, low := InTurn(p, open)
	for i, v := range p.Vents {
		part := low
		if High(v.Place) {
			part = high
		}
		if part <= 0 {
			continue
		}
		wide, err := VentOpenings(p, v, 1)
		if err != nil {
			return nil, fmt.Errorf("vents[%d]: %w", i, err)
		}
		for _, o := range wide {
			o.Area *= part
			o.Viscous /= part
			list = append(list, o)
		}
	}
	return list, nil
}

// OutwardFlow is what the plan's fans blow out, m³/s, at no pressure difference.
func OutwardFlow(p *plan.Plan) (flow float64) {
	for _, f := range p.VentFans {
		if f.Blows == "out" {
			flow += f.Flow
		}
	}
	return flow
}

// mostPad is the greatest efficiency that a house's balance takes (Setting.Pad).
const mostPad = 0.99

// PadWall is the plan's wall of pads.
func PadWall(p *plan.Plan) ventilation.PadWall {
	q := p.Pads
	return ventilation.PadWall{Area: q.Area, Efficiency: q.Efficiency, Speed: q.Speed, Cycles: q.Salt}
}

// PadEfficiency is that of the plan's pads at the flow of its fans, fraction of the
// way to the wet bulb of the summer noon.
func PadEfficiency(p *plan.Plan) (float64, error) {
	noon, err := Air(p, p.Site.SummerNoon.Temperature, p.Site.SummerNoon.RelativeHumidity)
	if err != nil {
		return 0, err
	}
	wet, err := PadWall(p).Cool(noon, OutwardFlow(p))
	if err != nil {
		return 0, fmt.Errorf("pads: %w", err)
	}
	return min(wet.Efficiency, mostPad), nil
}
