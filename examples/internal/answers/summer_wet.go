package answers

import (
	"fmt"
	"math"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Fogged is the summer noon with the plan's fog in the air, the vents wide open.
type Fogged struct {
	Noon       Noon    `json:"noon"`
	Water      float64 `json:"sprayed_kg_h"`
	Evaporated float64 `json:"evaporated_kg_h"`
	Humidity   float64 `json:"inside_relative_humidity"`
}

// Padded is the summer noon with the vents shut and the plan's fans drawing the air
// through its wet pads.
type Padded struct {
	Supply     float64 `json:"behind_pads_c"`
	Inside     float64 `json:"inside_c"`
	Rise       float64 `json:"rise_k"` // over the outside air
	Flow       float64 `json:"flow_m3_s"`
	Efficiency float64 `json:"efficiency_fraction"` // at the speed of that flow
	Water      float64 `json:"water_kg_h"`          // evaporated and bled
	Humidity   float64 `json:"inside_relative_humidity"`
}

// wettest is the relative humidity to which fog may bring the house.
const wettest = 0.98

// fogged is the noon with fog; nil where the plan has none, or its sun is too weak
// for it. As much evaporates as the plan says, and no more than the air takes or
// than would cool it below the air outside.
func (h *House) fogged(n *ventilation.Network, load ventilation.Load, wind float64) (*Fogged, error) {
	f, site := h.Plan.Fog, h.Plan.Site.SummerNoon
	if f == nil || site.Sun <= f.AboveSun || load.Solar <= 0 {
		return nil, nil
	}
	outside, err := fromplan.Air(h.Plan, site.Temperature, site.RelativeHumidity)
	if err != nil {
		return nil, err
	}
	sprayed := f.Spray / 3.6e6 * h.Shape.FloorArea // kg/s
	latent := psychro.LatentHeat(site.Temperature)
	most := min(sprayed*f.Evaporated, (1-load.Transpired)*load.Solar/latent)
	at := func(kg float64) (*Fogged, error) {
		wet := load
		wet.Transpired = min(1, load.Transpired+kg*latent/load.Solar)
		noon, err := h.noon(n, wet, wind)
		if err != nil || noon == nil {
			return nil, err
		}
		r := &Fogged{Noon: *noon, Water: 3600 * sprayed, Evaporated: 3600 * kg, Humidity: math.Inf(1)}
		w := outside.HumidityRatio() + wet.Transpired*wet.Solar/latent/max(1e-9, noon.Flow/outside.SpecificVolume())
		if s, err := psychro.FromHumidityRatio(noon.Inside, w, h.Pressure); err == nil {
			r.Humidity = s.RelativeHumidity()
		}
		return r, nil
	}
	r, err := at(most)
	if err != nil || r == nil || r.Humidity <= wettest {
		return r, err
	}
	low, high := 0.0, most
	for range 40 {
		mid := (low + high) / 2
		x, err := at(mid)
		if err != nil {
			return nil, err
		}
		if x != nil && x.Humidity <= wettest {
			low, r = mid, x
		} else {
			high = mid
		}
	}
	if math.IsInf(r.Humidity, 0) {
		return nil, nil // too damp without fog
	}
	return r, nil
}

// padded is the noon with pads; nil where the plan has none, or no fan that blows
// out to draw air through them.
func (h *House) padded(load ventilation.Load) (*Padded, error) {
	p := h.Plan
	flow := fromplan.OutwardFlow(p)
	if p.Pads == nil || flow <= 0 {
		return nil, nil
	}
	outside, err := fromplan.Air(p, p.Site.SummerNoon.Temperature, p.Site.SummerNoon.RelativeHumidity)
	if err != nil {
		return nil, err
	}
	cool, err := fromplan.PadWall(p).Cool(outside, flow)
	if err != nil {
		return nil, fmt.Errorf("pads: %w", err)
	}
	r := &Padded{Supply: cool.Supply.Temperature(), Flow: flow, Efficiency: cool.Efficiency, Water: 3600 * cool.Water}
	carried := cool.DryAir * cool.Supply.HeatCapacity() // W/K
	r.Inside = (load.Solar*(1-load.Transpired) + carried*r.Supply + load.Loss*outside.Temperature()) / (carried + load.Loss)
	r.Rise = r.Inside - outside.Temperature()
	w := cool.Supply.HumidityRatio() + load.Solar*load.Transpired/psychro.LatentHeat(r.Inside)/cool.DryAir
	s, err := psychro.FromHumidityRatio(r.Inside, w, h.Pressure)
	if err != nil {
		return nil, nil // it would rain inside: no state of air
	}
	r.Humidity = s.RelativeHumidity()
	return r, nil
}
