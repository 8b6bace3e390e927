package main

import (
	"errors"

	"cloche.example/ventilation"
)

type summerNoon struct {
	Calm       noon     `json:"calm"`
	Windy      noon     `json:"in_wind"`
	AreaFactor *float64 `json:"area_needed_calm_over_area"`
	Area       *float64 `json:"area_needed_calm_m2"`
	Have       float64  `json:"vent_area_m2"`
}

type noon struct {
	Rise    float64 `json:"rise_k"`
	Inside  float64 `json:"inside_c"`
	Flow    float64 `json:"flow_m3_s"`
	Changes float64 `json:"air_changes_per_h"`
	Neutral float64 `json:"neutral_level_above_grade_m"`
}

// Pressure coefficients at the windward side, the lee side and the ridge of a
// low house in the open, referred to the wind at the ridge; from memory.
const (
	cpWindward = 0.5
	cpLee      = -0.3
	cpRidge    = -0.5
)

// solarShare is the fraction of the sun on the floor that is absorbed inside,
// from memory.
const solarShare = 0.65

func summerOf(p plan, d design) (summerNoon, error) {
	var r summerNoon
	s := p.Summer
	vent := func(name string, z, area, cp float64) ventilation.Opening {
		return ventilation.Opening{Name: name, Height: z, Area: area, Discharge: s.Discharge, Coefficient: cp}
	}
	side := s.SideLength * s.SideHeight / 2
	var openings []ventilation.Opening
	if side > 0 {
		openings = append(openings, vent("windward side vent", s.SideLevel, side, cpWindward), vent("lee side vent", s.SideLevel, side, cpLee))
	}
	if a := s.RidgeLength * s.RidgeWidth; a > 0 {
		openings = append(openings, vent("ridge vent", p.House.RidgeHeight, a, cpRidge))
	}
	for _, o := range openings {
		r.Have += o.Area
	}
	n, err := ventilation.NewNetwork(openings, nil, nil)
	if err != nil {
		return r, err
	}
	load := ventilation.Load{Solar: solarShare * s.Sun * d.Shape.Floor, Transpired: s.Transpiration, Loss: d.Loss.linear.Air()}
	state := func(wind float64) (noon, error) {
		states, err := n.SteadyStates(load, ventilation.Outdoors{Temperature: s.Outside, Pressure: d.Air.Pressure, Wind: wind})
		if err != nil {
			return noon{}, err
		}
		c := states[0]
		return noon{c.Rise, c.Temperature, c.Air.Volume, ventilation.AirChanges(c.Air.Volume, d.Shape.Volume), c.Air.Neutral}, nil
	}
	var e1, e2 error
	r.Calm, e1 = state(0)
	r.Windy, e2 = state(s.Wind)
	need, e3 := n.AreaForRise(load, ventilation.Outdoors{Temperature: s.Outside, Pressure: d.Air.Pressure}, s.AllowedRise)
	if e3 == nil {
		r.AreaFactor, r.Area = &need.Factor, &need.Area
	} else if errors.Is(e3, ventilation.ErrNoSolution) {
		e3 = nil
	}
	return r, errors.Join(e1, e2, e3)
}
