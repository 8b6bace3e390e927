package main

import (
	"fmt"

	"cloche.example/envelope"
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
)

// candidate is a way to cover the house.
type candidate struct {
	name        string
	roof, walls envelope.NamedCover // walls are side and end walls
	screened    bool                // aluminised screen drawn below roof and walls
	leaks       string              // leakage class; empty for the plan as it stands
}

// candidates are the plan as it stands, the ready-made covers, then
// combinations.
func candidates() []candidate {
	leaks := map[string]string{
		"single film": "film, new", "single infrared film": "film, new",
		"double film": "double film, new", "double film, infrared inside": "double film, new",
		"single glass": "glass, new, laps sealed", "double glass": "glass, new, laps sealed",
	}
	list := []candidate{{name: "as planned"}}
	by := map[string]envelope.NamedCover{}
	for _, c := range envelope.Covers() {
		by[c.Name] = c
		construction, known := leaks[c.Name]
		if !known {
			construction = "structured sheets, new"
		}
		list = append(list, candidate{name: c.Name, roof: c, walls: c, leaks: construction})
	}
	add := func(name, roof, walls string, screened bool, leaks string) {
		list = append(list, candidate{name, by[roof], by[walls], screened, leaks})
	}
	add("double film, twin-wall 10 mm walls", "double film, infrared inside", "twin-wall sheet 10 mm", false, "double film, new")
	add("single glass, twin-wall 10 mm walls", "single glass", "twin-wall sheet 10 mm", false, "glass, new, laps sealed")
	add("single film, screen drawn", "single film", "single film", true, "film, new")
	add("double film, screen drawn", "double film, infrared inside", "double film, infrared inside", true, "double film, new")
	add("single glass, screen drawn", "single glass", "single glass", true, "glass, new, laps sealed")
	return list
}

// build puts the candidate on the house of the plan; airChanges are those of
// its class. A candidate without a class is the plan's own, as it leaks.
func build(p *plan.Plan, c candidate) (house *envelope.House, airChanges float64, err error) {
	h, err := fromplan.HousePlan(p, answers.MeanSetPoint(p))
	if err != nil {
		return nil, 0, err
	}
	if c.leaks == "" {
		house, err = envelope.NewHouse(h)
		return house, h.Leakage.AirChanges, err
	}
	h.Screened = nil
	roof, walls := c.roof.Cover, c.walls.Cover
	for kind, cover := range map[envelope.FacetKind]envelope.Cover{envelope.Roof: roof, envelope.Gutter: roof, envelope.SideWall: walls, envelope.EndWall: walls} {
		h.Covers[kind] = cover
	}
	if c.screened {
		h.Screened = map[envelope.FacetKind]envelope.Cover{}
		for _, kind := range []envelope.FacetKind{envelope.Roof, envelope.SideWall, envelope.EndWall} {
			if h.Screened[kind], err = envelope.WithScreen(h.Covers[kind], envelope.AluminisedScreen()); err != nil {
				return nil, 0, err
			}
		}
	}
	class, ok := envelope.FindLeakageClass(c.leaks)
	if !ok {
		return nil, 0, fmt.Errorf("%s: no air changes known for %q", c.name, c.leaks)
	}
	h.Leakage.Model, h.Leakage.AirChanges = envelope.LeakageGiven, class.Typical
	house, err = envelope.NewHouse(h)
	return house, class.Typical, err
}
