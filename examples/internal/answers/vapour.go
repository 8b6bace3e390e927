package answers

import (
	"fmt"

	"cloche.example/envelope"
	"cloche.example/psychro"
)

// settled is the air at whose humidity inside as much water evaporates, vapour
// in kg/h, as condenses on the covers and leaks out, and the loss there. The house
// is at t, °C. What is more than saturated air can hold falls as fog, and the
// air is saturated.
func (h *House) settled(outside psychro.State, t, vapour, wind, cloud, month float64, drawn bool) (envelope.HouseAir, envelope.HouseLoss, error) {
	air := envelope.HouseAir{Outside: outside, Wind: wind, Cloud: cloud}
	at := func(rh float64) (float64, envelope.HouseLoss, error) {
		in, err := psychro.FromRelativeHumidity(t, rh, h.Pressure)
		if err != nil {
			return 0, envelope.HouseLoss{}, err
		}
		air.Inside = in
		r, err := h.loss(air, month, drawn)
		return Evaporation(&r, air) - vapour, r, err
	}
	dry, err := h.dryInside(outside, t)
	if err != nil {
		return air, envelope.HouseLoss{}, fmt.Errorf("humidity inside: %w", err)
	}
	low, high := min(dry.RelativeHumidity(), 1), 1.0
	over, r, err := at(high)
	if err != nil || over <= 0 {
		return air, r, err
	}
	under := -vapour
	for range 30 {
		mid := low + (high-low)*min(0.9, max(0.1, -under/(over-under)))
		value, loss, err := at(mid)
		if err != nil {
			return air, loss, err
		}
		r = loss
		if value > 0 {
			high, over = mid, value
		} else {
			low, under = mid, value
		}
		if high-low < 2e-3 || max(value, -value) < 1e-3*vapour {
			return air, r, nil
		}
	}
	return air, r, nil
}
