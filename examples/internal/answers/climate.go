package answers

import (
	"fmt"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/ventilation"
)

// Climate is the house for the balance of heat and water together, with its real
// covers, its crop and its vents; its fans run all the time, or stand still.
func (h *House) Climate(fans bool) (*ventilation.Climate, error) {
	p := h.Plan
	real := ventilation.DefaultRealCover(h.Envelope)
	var err error
	if real.Conditions, _, err = fromplan.Conditions(p, h.Night, 1, false); err != nil {
		return nil, err
	}
	openings, err := fromplan.Openings(p, 1)
	if err != nil {
		return nil, err
	}
	var blow []ventilation.FixedFan
	if fans {
		blow = fromplan.VentFans(p)
	}
	var air *ventilation.Network
	if len(openings)+len(blow) > 0 {
		if air, err = ventilation.NewNetwork(openings, nil, blow); err != nil {
			return nil, fmt.Errorf("vents: %w", err)
		}
	}
	return ventilation.NewClimate(ventilation.ClimateHouse{
		FloorArea: h.Shape.FloorArea, Volume: h.Shape.Volume, Real: real, Floor: fromplan.FloorSurface(p), Crop: fromplan.Canopy(p), Air: air,
	})
}
