package main

import (
	"context"
	"fmt"
	"math"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/ventilation"
)

// wider is by how much vents are made longer where no hour is hot, to see what they
// do for the humidity.
const wider = 1.5

// cooling are the changes that the house's own heat asks for: vents of the size that
// the hot hours want, and shade, fog, and fans with pads where no size does. A house
// without vents is looked at with one in the ridge.
func (r *trialYears) cooling(ctx context.Context, h *house, p plan.Filled) ([]answers.Change, error) {
	with, y, had := p, r.own, ventArea(h.plan)
	if had == 0 {
		var err error
		if with, err = p.Change([]byte(`{"vents": [{"name": "ridge", "place": "ridge"}]}`)); err != nil {
			return nil, err
		}
		vented, err := newHouse(&with.Plan, h.weather)
		if err != nil {
			return nil, err
		}
		if y, err = vented.solve(ctx); err != nil {
			return nil, err
		}
	}
	v, err := newHotVents(ctx, y)
	if err != nil {
		return nil, err
	}
	factor := wider
	switch {
	case v != nil && v.Factor > 1:
		factor = v.Factor
	case had == 0:
		factor = 1
	}
	r.vents = v
	vents := answers.Change{Code: "more_vents", Plan: *scaled(&with.Plan, factor)}
	area := ventArea(&vents.Plan)
	vents.Name, vents.Cost = fmt.Sprintf("%s m² of vents in place of %s", num(area, 1), num(had, 1)), (area-had)*h.plan.Prices.VentsPerM2
	list := []answers.Change{vents}
	if h.plan.VentControl.By == "hand" && v != nil && had > 0 {
		list = append(list, added(p, "vents_by_temperature", "vents moved by the temperature", `{"vent_control": {"by": "temperature"}}`, false, math.NaN()))
	}
	if v == nil || v.All {
		return list, nil
	}
	floor, q := h.steady.House.Shape.FloorArea, h.plan
	pads, err := h.pads(with)
	return append(list,
		added(with, "shade", "a shade in the sun", `{"shade": {}}`, q.Shade != nil, floor*q.Prices.ShadePerM2),
		added(with, "fog", "fog in the sun", `{"fog": {}}`, q.Fog != nil, floor*q.Prices.FogPerM2),
		pads), err
}

// Fans beside pads: their electricity, W for each m³/s, and the speed at the pads,
// m/s (common practice, no source).
const (
	fanPower = 120
	padSpeed = 1.25
)

// pads are wet pads with fans of the size of practice, or with the plan's own.
func (h *house) pads(p plan.Filled) (answers.Change, error) {
	rates := ventilation.DefaultFanRates(h.steady.House.Shape.FloorArea)
	rates.Altitude = p.Site.Altitude
	flows, err := rates.Solve()
	flow, cost, name, text := fromplan.OutwardFlow(&p.Plan), 0.0, "", ""
	if flow == 0 {
		flow = flows.Summer
		cost, name = flow*p.Prices.VentFansPerM3S, fmt.Sprintf("fans of %s m³/s and ", num(flow, 1))
		text = fmt.Sprintf(`"vent_fans": [{"name": "fans", "flow_m3_s": %.4g, "power_w": %.4g}], `, flow, fanPower*flow)
	}
	area := flow / padSpeed
	return added(p, "pads", fmt.Sprintf("%s%s m² of pads", name, num(area, 1)), fmt.Sprintf(`{%s"pads": {"area_m2": %.4g}}`, text, area),
		p.Pads != nil, cost+area*p.Prices.PadsPerM2), err
}

// added is a section put into a plan that has none.
func added(p plan.Filled, code, name, change string, has bool, cost float64) answers.Change {
	c := answers.Change{Code: code, Name: name, Cost: cost}
	if has {
		c.WhyNot = "there already"
		return c
	}
	other, err := p.Change([]byte(change))
	if err != nil {
		c.WhyNot = "it cannot be computed: " + err.Error()
	}
	c.Plan = other.Plan
	return c
}
