package answers

import (
	"fmt"

	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/psychro"
)

// weather is what a house stands in for a mean of many hours, or for a night.
type weather struct {
	outside psychro.State
	wind    float64 // m/s
	cloud   float64 // fraction
	month   float64
	drawn   bool // the screen
}

// settled is the air inside, at t, °C, in which as much water evaporates as
// condenses on the covers, leaks out and goes with the air that is vented, kg/s:
// what crop and soil set free. The loss is that of the house there without that
// air, its facets until the next call, and fog, kg/h, what even saturated air does
// not get rid of.
func (h *House) settled(w weather, t, vented float64) (air envelope.HouseAir, r envelope.HouseLoss, fog float64, err error) {
	air = envelope.HouseAir{Outside: w.outside, Wind: w.wind, Cloud: w.cloud}
	if air.Inside, err = psychro.FromRelativeHumidity(t, 0.5, h.Pressure); err != nil {
		return air, r, 0, err
	}
	k, _, err := fromplan.Conditions(h.Plan, air, w.month, w.drawn)
	if err != nil {
		return air, r, 0, err
	}
	b := &h.vapour
	if err := h.Envelope.SolveVapourTo(b, &k, envelope.VapourSources{Released: h.Plan.Crop.Vapour / 3600, Exchange: vented}); err != nil {
		return air, r, 0, fmt.Errorf("humidity inside: %w", err)
	}
	if air.Inside, err = psychro.FromRelativeHumidity(t, min(1, b.Humidity), h.Pressure); err != nil {
		return air, r, 0, err
	}
	r = b.Loss
	h.assume(&r, t-w.outside.Temperature())
	return air, r, 3600 * b.Fog, nil
}
