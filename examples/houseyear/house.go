package main

import (
	"errors"
	"fmt"

	"cloche.example/envelope"
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
	"cloche.example/ventilation"
)

// house is a plan's house made ready for the hours of a weather.
type house struct {
	plan    *plan.Plan
	weather *weather.Series
	steady  answers.Result // what the plan's house does on its design days
	climate *ventilation.Climate
	glazing envelope.Glazing
	soil    ventilation.FloorStore
	mass    ventilation.StructureStore
	source  fromplan.Source
	lamps   lamps
	fan     float64 // W, electricity of the heater's fan
}

// newHouse makes the house of the plan, which stands where the weather was.
func newHouse(p *plan.Plan, s *weather.Series) (*house, error) {
	h := &house{plan: p, weather: s}
	var err error
	if h.steady, err = answers.Of(p, false); err != nil {
		return nil, err
	}
	if h.steady.Ducts != nil {
		h.fan = h.steady.Ducts.Electric
	}
	shape := h.steady.House.Shape
	var e1, e2, e3 error
	h.glazing, e1 = fromplan.Glazing(p, shape)
	h.source, e2 = fromplan.HeatSource(p)
	h.lamps, e3 = newLamps(p, h.steady.Light)
	if err = errors.Join(e1, e2, e3); err != nil {
		return nil, err
	}
	real := ventilation.DefaultRealCover(h.steady.House.Envelope)
	if real.Conditions, _, err = fromplan.Conditions(p, h.steady.House.Night, 1, false); err != nil {
		return nil, err
	}
	var air *ventilation.Network
	openings, err := fromplan.Openings(p, 1)
	if err == nil && len(openings) > 0 {
		air, err = ventilation.NewNetwork(openings, nil, nil)
	}
	if err != nil {
		return nil, fmt.Errorf("vents: %w", err)
	}
	c := ventilation.ClimateHouse{FloorArea: shape.FloorArea, Volume: shape.Volume, Real: real, Floor: fromplan.FloorSurface(p), Crop: fromplan.Canopy(p), Air: air}
	h.stores(shape)
	h.climate, err = ventilation.NewClimate(c)
	return h, err
}

// floorFilm is the resistance from the air to a floor that the coefficient of
// the ground contains, m² K/W: [Iso13370], from memory.
const floorFilm = 0.17

// stores sets the ground and what stands in the house. Below the soil that
// follows within a night, the ground takes what the house's steady coefficient
// leaves, towards the mean of the outside air.
func (h *house) stores(shape envelope.Shape) {
	p := h.plan
	at := answers.MeanSetPoint(p)
	mean := 0.0
	for _, t := range p.Site.Months.Temperature {
		mean += t / 12
	}
	h.soil = ventilation.FloorStore{Capacity: fromplan.Soil(p).HeatCapacity * p.HeatStorage.SoilDepth, Ground: mean, Start: at}
	if !p.Assumptions.NoGroundLoss {
		through := shape.FloorArea/h.steady.House.Envelope.Ground().Total - floorFilm
		if g := p.Floor.Conductance; g > 0 {
			through -= 1 / g
		}
		h.soil.Deep = min(100, 1/max(through, 0.01))
	}
	n := fromplan.Stores(p, shape)
	h.mass = ventilation.DefaultStructureStore()
	h.mass.Capacity, h.mass.Exchange, h.mass.Start = n.Structure, n.AirStructure, at
}

// leftOut tells what of the plan a year of hours does not count.
func leftOut(p *plan.Plan) (list []string) {
	if len(p.VentFans) > 0 {
		list = append(list, "The plan's fans in walls and roof stand still in this year: vents alone move the air.")
	}
	if p.Pads != nil {
		list = append(list, "The plan's wet pads are dry in this year.")
	}
	if p.SoilStore != nil {
		list = append(list, "The plan's air tubes in the soil stand still in this year.")
	}
	if p.CO2 != nil {
		list = append(list, "Carbon dioxide is not followed: the stomata see the plan's level in every hour.")
	}
	if p.Heater.TakesAirFrom == "the ridge" {
		list = append(list, "The heater's air is taken as that of the whole house: what the ridge saves is not counted.")
	}
	return list
}
