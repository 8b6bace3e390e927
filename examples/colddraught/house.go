package main

import (
	"errors"
	"fmt"

	"cloche.example/internal/demo"
	"cloche.example/internal/domain"
	"cloche.example/ventilation"
)

// The vents of the demo house, invented with it.
const (
	sideHeight  = 0.8  // m above grade, middle
	ridgeHeight = 2.9  // m
	tall        = 0.4  // m, of both
	discharge   = 0.6  // dimensionless, on the free area
	windward    = 0.1  // dimensionless pressure coefficients
	lee         = -0.4 // dimensionless
	downward    = -45  // degree: the ridge flaps let the air in along the slope
)

// The openings by index, and the two orders.
const sideVents, ridgeVents = 0, 1

var orders = []struct {
	name  string
	first int
	order [][]int
}{
	{"ridge vents first", ridgeVents, [][]int{{ridgeVents}, {sideVents}}},
	{"side vents first", sideVents, [][]int{{sideVents}, {ridgeVents}}},
}

// house is the demo house with the cold at its vents.
type house struct {
	choice
	vents ventilation.ColdVents
}

// house checks what the user set, under the names of the flags.
func (c choice) house() (house, error) {
	area := domain.Range{Min: 0.01, Max: 60, Unit: "m²", Source: "vents of this house"}
	length := domain.Range{Min: 0.2, Max: demo.Length, Unit: "m", Source: "the length of the house"}
	crop := domain.Range{Min: -demo.Depth, Max: demo.RidgeHeight, Unit: "m", Source: "from the floor to the ridge"}
	leak := domain.Range{Min: 1e-4, Max: 1, Unit: "m³/s", Source: "houses"}
	faults := []error{
		(domain.Range{Min: -60, Max: 80, Unit: "°C", Source: "weather and houses; a kelvin value falls outside"}).Check("-inside", c.inside),
		domain.Range{Min: (domain.Range{Min: -60, Max: 80, Unit: "°C", Source: "weather and houses; a kelvin value falls outside"}).Min, Max: c.inside, Unit: "°C", Source: "below the house air"}.Check("-limit", c.limit),
		crop.Check("-crop", c.crop),
		(domain.Range{Min: 0, Max: 45, Unit: "m/s", Source: "a speed, not a component; hurricanes excluded"}).Check("-wind", c.wind),
		(domain.Range{Min: 60000, Max: 110000, Unit: "Pa", Source: "sites up to 4,000 m; a value in kPa or hPa falls outside"}).Check("-pressure", c.pressure),
		area.Check("-side", c.side), area.Check("-ridge", c.ridge),
		length.Check("-length", c.length), leak.Check("-leak", c.leak),
		domain.Range{Min: 1, Max: (domain.Range{Min: 0, Max: 1e6, Unit: "m³", Source: "houses up to some hectares"}).Max, Unit: "m³", Source: "houses"}.Check("-volume", c.volume),
		domain.Range{Min: 1, Max: 1e6, Unit: "m³/h", Source: "houses"}.Check("-air", c.air),
	}
	for _, v := range c.outside {
		faults = append(faults, domain.Range{Min: max((domain.Range{Min: -60, Max: 80, Unit: "°C", Source: "weather and houses; a kelvin value falls outside"}).Min, c.inside-80), Max: c.inside, Unit: "°C", Source: "below the house air"}.Check("-outside", v))
	}
	for _, v := range c.opened {
		faults = append(faults, domain.Range{Min: 1, Max: 100, Unit: "per cent", Source: "ajar to wide open"}.Check("-opened", v))
	}
	if err := errors.Join(faults...); err != nil {
		return house{}, err
	}
	n, err := ventilation.NewNetwork([]ventilation.Opening{
		sideVents:  {Name: "side", Height: sideHeight, Vertical: tall, Area: c.side, Discharge: discharge, PressureCoefficient: windward},
		ridgeVents: {Name: "ridge", Height: ridgeHeight, Vertical: tall, Area: c.ridge, Discharge: discharge, PressureCoefficient: lee},
	}, []ventilation.Leak{
		{Name: "low", Height: 0.2, Flow: c.leak, Exponent: 0.65, PressureCoefficient: windward},
		{Name: "high", Height: 2.8, Flow: c.leak, Exponent: 0.65, PressureCoefficient: lee},
	}, nil)
	if err != nil {
		return house{}, err
	}
	side := ventilation.DefaultInletJet(ventilation.SlotInlet)
	side.Length, side.Reach = c.length, demo.Span
	ridge := side
	ridge.Angle, ridge.Reach = downward, demo.Span/2
	return house{choice: c, vents: ventilation.ColdVents{
		Network: n, Jets: []ventilation.InletJet{sideVents: side, ridgeVents: ridge},
		Inside: c.inside, Pressure: c.pressure, Wind: c.wind, Crop: c.crop, Limit: c.limit,
	}}, nil
}

// at returns the air at the crop with the vents of an order opened so far.
func (h house) at(outside float64, order [][]int, opened float64) (ventilation.ColdAir, error) {
	h.vents.Outside = outside
	a, err := h.vents.Opened(order, opened)
	if err != nil {
		return a, fmt.Errorf("outside %g °C: %w", outside, err)
	}
	return a, nil
}
