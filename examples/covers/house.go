package main

import (
	"fmt"

	"cloche.example/envelope"
	"cloche.example/internal/demo"
)

// Parts of the demo house that are the same under every cover.
const (
	frame    = 0.04 // fraction that bars and profiles add to the loss of roof and walls
	doorArea = 1.8  // m²
	doorU    = 3.0  // W/(m² K)
)

// candidate is a way to cover the house.
type candidate struct {
	name        string
	roof, walls envelope.NamedCover // walls are side and end walls
	screened    bool                // aluminised screen drawn below roof and walls
	leaks       string
}

// candidates are the ready-made covers, then combinations.
func candidates() []candidate {
	leaks := map[string]string{
		"single film": "film, new", "single infrared film": "film, new",
		"double film": "double film, new", "double film, infrared inside": "double film, new",
		"single glass": "glass, new, laps sealed", "double glass": "glass, new, laps sealed",
	}
	var list []candidate
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

// demoShape is the demo house's geometry.
func demoShape() (envelope.Shape, error) {
	f := envelope.DefaultForm()
	f.Span, f.Length, f.Azimuth, f.Depth = demo.Span, demo.Length, demo.Azimuth, demo.Depth
	f.Eave, f.Ridge = demo.EaveHeight, demo.RidgeHeight
	return envelope.NewShape(f)
}

// build puts the candidate on the shape; airChanges are those of its class.
func build(shape envelope.Shape, c candidate) (house *envelope.House, airChanges float64, err error) {
	on := func(roof, walls envelope.Cover) map[envelope.FacetKind]envelope.Cover {
		return map[envelope.FacetKind]envelope.Cover{envelope.Roof: roof, envelope.SideWall: walls, envelope.EndWall: walls}
	}
	p := envelope.HousePlan{
		Shape:          shape,
		Covers:         on(c.roof.Cover, c.walls.Cover),
		FrameAllowance: frame,
		Ground:         envelope.DefaultGround(envelope.ClaySoil()),
		Climate:        envelope.DefaultGroundClimate(),
		Leakage:        envelope.DefaultLeakage(),
	}
	for i, f := range shape.Facets {
		if f.Kind == envelope.EndWall {
			p.Doors = []envelope.Door{{Name: "door", Facet: i, Area: doorArea, U: doorU}}
			break
		}
	}
	if c.screened {
		roof, err := envelope.WithScreen(c.roof.Cover, envelope.AluminisedScreen())
		if err != nil {
			return house, 0, err
		}
		walls, err := envelope.WithScreen(c.walls.Cover, envelope.AluminisedScreen())
		if err != nil {
			return house, 0, err
		}
		p.Screened = on(roof, walls)
	}
	class, ok := envelope.FindLeakageClass(c.leaks)
	if !ok {
		return house, 0, fmt.Errorf("%s: no air changes known for %q", c.name, c.leaks)
	}
	p.Leakage.AirChanges = class.Typical
	house, err = envelope.NewHouse(p)
	return house, class.Typical, err
}
