package main

import (
	"errors"
	"math"

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
	Rise    float64  `json:"rise_k"`
	Inside  float64  `json:"inside_c"`
	Flow    float64  `json:"flow_m3_s"`
	Changes float64  `json:"air_changes_per_h"`
	Neutral *float64 `json:"neutral_level_above_grade_m"`
}

var shelters = map[string]ventilation.Shelter{"exposed": ventilation.Exposed, "semi-sheltered": ventilation.SemiSheltered, "sheltered": ventilation.Sheltered}

// roofFace is the kind of roof in the table of pressure coefficients.
func roofFace(h house) ventilation.WindFace {
	switch pitch := math.Atan2(h.RidgeHeight-h.EaveHeight, h.Span/2) * 180 / math.Pi; {
	case pitch < 10:
		return ventilation.WindFaceLowRoof
	case pitch <= 30:
		return ventilation.WindFaceMidRoof
	}
	return ventilation.WindFaceSteepRoof
}

func summerOf(p plan, d design) (summerNoon, error) {
	var r summerNoon
	s := p.Summer
	vent := func(name string, z, area, cp float64) ventilation.Opening {
		return ventilation.Opening{Name: name, Height: z, Area: area, Discharge: s.Discharge, PressureCoefficient: cp}
	}
	tall := func(o ventilation.Opening) ventilation.Opening {
		o.Vertical = s.SideHeight // air passes a side vent both ways where nothing else is open
		return o
	}
	// Wind across the house; the ridge vent opens to the lee.
	shelter := shelters[s.Shelter]
	windward, lee, ridge := shelter.Coefficient(ventilation.WindFaceWall, 0), shelter.Coefficient(ventilation.WindFaceWall, 180), shelter.Coefficient(roofFace(p.House), 180)
	side := s.SideLength * s.SideHeight / 2
	var openings []ventilation.Opening
	if side > 0 {
		openings = append(openings, tall(vent("windward side vent", s.SideLevel, side, windward)), tall(vent("lee side vent", s.SideLevel, side, lee)))
	}
	if a := s.RidgeLength * s.RidgeWidth; a > 0 {
		openings = append(openings, vent("ridge vent", p.House.RidgeHeight, a, ridge))
	}
	for _, o := range openings {
		r.Have += o.Area
	}
	n, err := ventilation.NewNetwork(openings, nil, nil)
	if err != nil {
		return r, err
	}
	load := ventilation.Load{Solar: d.Sun.Gain * s.Sun * d.Shape.Floor, Transpired: s.Transpiration, Loss: d.Loss.linear.Air()}
	state := func(wind float64) (noon, error) {
		states, err := n.SteadyStates(load, ventilation.Outdoors{Temperature: s.Outside, Pressure: d.Air.Pressure, Wind: wind})
		if err != nil {
			return noon{}, err
		}
		c := states[0]
		n := noon{Rise: c.Rise, Inside: c.Temperature, Flow: c.Air.Volume, Changes: ventilation.AirChanges(c.Air.Volume, d.Shape.Volume)}
		if !math.IsNaN(c.Air.Neutral) {
			n.Neutral = &c.Air.Neutral
		}
		return n, nil
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
