package answers

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/ventilation"
)

// Summer is the house at the summer noon with its vents wide open.
type Summer struct {
	Outside    float64  `json:"outside_c"`
	Allowed    float64  `json:"allowed_rise_k"`
	Vents      float64  `json:"vent_area_m2"`
	SunKept    float64  `json:"sun_kept_w"`
	Calm       *Noon    `json:"calm"`
	Windy      *Noon    `json:"in_wind"`
	SidesAlone *Noon    `json:"sides_alone_in_calm"` // null: no side vents, or hotter than is computed for
	RidgeAlone *Noon    `json:"ridge_alone_in_calm"`
	Needed     *float64 `json:"area_needed_in_calm_m2"` // null: no area does
	NeededWind *float64 `json:"area_needed_in_wind_m2"`
	Wind       float64  `json:"wind_m_s"`
	Fog        *Fogged  `json:"with_fog_in_calm"` // null: no fog, or none under that sun
	FogWindy   *Fogged  `json:"with_fog_in_wind"`
	Pads       *Padded  `json:"with_pads"` // null: no pads, or air more than full of water behind them
}

// Noon is a steady state. Where wind works against warm air and two states are
// possible it is the hotter.
type Noon struct {
	Rise    float64  `json:"rise_k"`
	Inside  float64  `json:"inside_c"`
	Flow    float64  `json:"flow_m3_s"`
	Changes float64  `json:"air_changes_per_h"`
	Neutral *float64 `json:"neutral_level_above_ground_m"`
	States  int      `json:"possible_states_count"`
}

// Summer solves the vents, with shade in place where the sun asks for it.
func (h *House) Summer(sun Sun) (Summer, error) {
	p := h.Plan
	n := p.Site.SummerNoon
	s := Summer{Outside: n.Temperature, Allowed: p.SetPoints.Limits.SummerRise, Wind: n.Wind}
	load, err := h.NoonLoad(sun, n.Sun)
	if err != nil {
		return s, err
	}
	s.SunKept = load.Solar
	openings, err := fromplan.Openings(p, 1)
	if err != nil {
		return s, err
	}
	places := map[string]bool{}
	for _, v := range p.Vents {
		s.Vents += fromplan.FaceArea(v)
		places[kindOf(v.Place)] = true
	}
	if s.Pads, err = h.padded(load); err != nil {
		return s, err
	}
	fans := fromplan.VentFans(p)
	if len(openings) == 0 && len(fans) == 0 {
		return s, nil
	}
	all, err := ventilation.NewNetwork(openings, nil, fans)
	if err != nil {
		return s, fmt.Errorf("vents: %w", err)
	}
	if s.Calm, err = h.noon(all, load, 0); err != nil {
		return s, err
	}
	if s.Windy, err = h.noon(all, load, n.Wind); err != nil {
		return s, err
	}
	if s.Fog, err = h.fogged(all, load, 0); err != nil {
		return s, err
	}
	if s.FogWindy, err = h.fogged(all, load, n.Wind); err != nil {
		return s, err
	}
	if len(places) > 1 {
		for kind, to := range map[string]**Noon{"side": &s.SidesAlone, "ridge": &s.RidgeAlone} {
			if *to, err = h.alone(kind, load, fans); err != nil {
				return s, err
			}
		}
	}
	if s.Needed, err = h.needed(all, load, 0, s.Vents); err != nil {
		return s, err
	}
	s.NeededWind, err = h.needed(all, load, n.Wind, s.Vents)
	return s, err
}

// NoonLoad is the heat in the house at the summer noon under the sun outside,
// W/m² on level ground.
func (h *House) NoonLoad(s Sun, sun float64) (ventilation.Load, error) {
	p := h.Plan
	loss, err := h.summerLoss(p.SetPoints.Limits.SummerRise)
	return ventilation.Load{Solar: s.Gain * sun * h.Shape.FloorArea * fromplan.ShadeLeft(p, sun), Transpired: p.Crop.TranspiredSun, Loss: loss}, err
}

// summerLoss is what cover and doors take of the heat at that noon, W/K, dry and
// without the sky.
func (h *House) summerLoss(rise float64) (float64, error) {
	p := h.Plan
	n := p.Site.SummerNoon
	outside, e1 := fromplan.Air(p, n.Temperature, n.RelativeHumidity)
	if e1 != nil {
		return 0, e1
	}
	inside, err := h.dryInside(outside, n.Temperature+rise)
	if err != nil {
		return 0, err
	}
	r, err := h.loss(envelope.HouseAir{Inside: inside, Outside: outside, Wind: n.Wind}, 7, false)
	if err != nil {
		return 0, fmt.Errorf("summer noon: %w", err)
	}
	return max(0, r.Linear.CoverAir+r.Linear.Doors+r.Linear.Bridges), nil
}

// kindOf sorts the places of vents into side and ridge.
func kindOf(place string) string {
	if place == "ridge" || place == "left roof" || place == "right roof" {
		return "ridge"
	}
	return "side"
}

// alone is the noon with the vents of one kind.
func (h *House) alone(kind string, load ventilation.Load, fans []ventilation.FixedFan) (*Noon, error) {
	q := *h.Plan
	q.Vents = nil
	for _, v := range h.Plan.Vents {
		if kindOf(v.Place) == kind {
			q.Vents = append(q.Vents, v)
		}
	}
	o, err := fromplan.Openings(&q, 1)
	if err != nil || len(o) == 0 {
		return nil, err
	}
	n, err := ventilation.NewNetwork(o, nil, fans)
	if err != nil {
		return nil, fmt.Errorf("vents: %w", err)
	}
	return h.noon(n, load, 0)
}

func (h *House) noon(n *ventilation.Network, load ventilation.Load, wind float64) (*Noon, error) {
	states, err := n.SteadyStates(load, h.outdoors(wind))
	if errors.Is(err, ventilation.ErrNoSolution) {
		return nil, nil // past 80 °C
	} else if err != nil {
		return nil, fmt.Errorf("summer noon: %w", err)
	}
	hot := states[0]
	count := 0
	for _, s := range states {
		if s.Stable {
			hot = s
			count++
		}
	}
	if wind > 0 {
		hot.Air.Neutral = math.NaN() // wind moves it about, and out of the house
	}
	if g := h.Plan.House; hot.Air.Neutral > g.RidgeHeight || hot.Air.Neutral < -g.Depth {
		hot.Air.Neutral = math.NaN() // fans move it out of the house
	}
	return &Noon{Rise: hot.Rise, Inside: hot.Temperature, Flow: hot.Air.Volume, Changes: ventilation.AirChanges(hot.Air.Volume, h.Shape.Volume), Neutral: some(hot.Air.Neutral), States: max(1, count)}, nil
}

func (h *House) outdoors(wind float64) ventilation.Outdoors {
	return ventilation.Outdoors{Temperature: h.Plan.Site.SummerNoon.Temperature, Pressure: h.Pressure, Wind: wind}
}

// needed is the area, in the hole of wall and roof, that keeps the allowed rise.
func (h *House) needed(n *ventilation.Network, load ventilation.Load, wind, have float64) (*float64, error) {
	r, err := n.AreaForRise(load, h.outdoors(wind), h.Plan.SetPoints.Limits.SummerRise)
	if errors.Is(err, ventilation.ErrNoSolution) {
		return nil, nil
	} else if err != nil {
		return nil, fmt.Errorf("vent area: %w", err)
	}
	if math.IsNaN(r.Factor) {
		return nil, nil
	}
	return some(r.Factor * have), nil
}
