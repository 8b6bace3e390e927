package answers

import (
	"errors"
	"fmt"

	"cloche.example/airheat"
	"cloche.example/envelope"
)

// Ridge compares air drawn from low in the house with air from the ridge.
type Ridge struct {
	Measured   bool    `json:"measured"` // the difference is the plan's, not calculated
	Inside     float64 `json:"inside_c"`
	Outside    float64 `json:"outside_c"`
	UpperLow   float64 `json:"upper_layer_with_low_return_c"`
	UpperRidge float64 `json:"upper_layer_with_ridge_return_c"`
	AtCoil     float64 `json:"apparent_gain_at_coil_fraction"`
	Saving     float64 `json:"saving_of_house_fraction"`
	SavingHeat float64 `json:"saving_of_house_w"`
	Bound      float64 `json:"bound_fully_mixed_fraction"`
	Costs      bool    `json:"ridge_is_cooler"` // and drawing from it costs heat
}

// Ridge is the house in the given state, as that of the heated months' mean.
func (h *House) Ridge(loss envelope.HouseLoss, air envelope.HouseAir, inlet float64) (Ridge, error) {
	t := h.Layers(loss, air, inlet)
	r, err := t.RidgeReturn()
	err = h.LayersFault(t, err)
	return Ridge{h.Plan.Heater.RidgeReturn.KnownFrom == "measured", t.Lower, t.Outside, r.Floor.Upper, r.Ridge.Upper, r.CoilView, r.Saving, r.SavingHeat, r.Bound, r.Costs}, err
}

// fromRidge tells whether the heater draws its air from under the ridge.
func (h *House) fromRidge() bool { return h.Plan.Heater.TakesAirFrom == "the ridge" }

// drawnAir is the return on a night: what drawing from the ridge takes off its need,
// fraction, below zero where it costs, and the air that enters the heater, °C.
func (h *House) drawnAir(n Night, inlet float64) (saving, air float64, err error) {
	if !h.fromRidge() {
		return 0, n.air.Inside.Temperature(), nil
	}
	r, err := h.Ridge(n.loss, n.air, inlet)
	return r.Saving, r.UpperRidge, err
}

// Layers lays the roof's loss on the upper layer, all else on the lower one. With
// a measured difference the share of heat that rises is what gives it.
func (h *House) Layers(loss envelope.HouseLoss, air envelope.HouseAir, inlet float64) airheat.TwoLayers {
	inside, outside := air.Inside.Temperature(), air.Outside.Temperature()
	upper := 0.0
	for _, f := range loss.Facets {
		if f.Kind == envelope.Roof {
			upper += (f.AirDriven + f.SkyDriven) / (inside - outside)
		}
	}
	q := h.Plan.Heater.RidgeReturn
	upper = min(max(upper, 1e-6), loss.Coefficient)
	t := airheat.TwoLayers{
		LowerLoss: loss.Coefficient - upper, UpperLoss: upper, Lower: inside, Outside: outside,
		RisingShare: q.Rising, Mixing: q.Mixing, HeaterFlow: inlet, HeatCapacity: air.Inside.HeatCapacity() / air.Inside.SpecificVolume(),
	}
	if q.KnownFrom == "measured" {
		t.RisingShare = rising(t, q.Measured)
	}
	return t
}

// LayersFault says by the plan's keys why the layers have no balance.
func (h *House) LayersFault(t airheat.TwoLayers, err error) error {
	q := h.Plan.Heater.RidgeReturn
	switch {
	case err == nil:
		return nil
	case q.KnownFrom == "measured" && errors.Is(err, airheat.ErrNoSolution):
		return fmt.Errorf("heater.ridge_return.measured_k is %g K: no share of the heat that rises gives that", q.Measured)
	case errors.Is(err, airheat.ErrNoSolution), t.RisingShare == 1 && t.Mixing == 0:
		return fmt.Errorf("heater.ridge_return.rising_fraction is %.4g and mixing_m3_s is %.4g m³/s: so little heat comes down that the ridge would be hotter than any house", t.RisingShare, t.Mixing)
	}
	return fmt.Errorf("heater.ridge_return: %w", err)
}

// rising is the share of the heat that rises when the upper layer is warmer by
// rise, K, with the return from below: from the balances of both layers.
func rising(t airheat.TwoLayers, rise float64) float64 {
	up := t.UpperLoss * (t.Lower + rise - t.Outside)
	q := t.LowerLoss*(t.Lower-t.Outside) + up
	return min(1, max(0, (up+t.HeatCapacity*t.Mixing*rise)/q))
}
