package main

import "cloche.example/ventilation"

// ridge is the layer of warm air under the ridge, as package airheat has its two
// layers: what drawing from it saves grows with the rise over outside, whatever
// gives the heat. The heater's fan runs all through an hour in which it heats.
type ridge struct {
	on  bool    // the heater draws from it
	per float64 // W/K of the rise, at the mean of the heated months
}

func (h *house) newRidge() ridge {
	r := h.steady.Ridge
	return ridge{h.plan.Heater.TakesAirFrom == "the ridge", r.SavingHeat / (r.Inside - r.Outside)}
}

// drawn is what drawing from the ridge saves in the hour x, W; what it would save
// where the heater draws from low in the house.
func (h *house) drawn(x *ventilation.ClimateState, outside float64) float64 {
	return min(h.heater(x), h.ridge.per*max(0, x.Temperature-outside))
}
