package ventilation

import (
	"errors"
	"fmt"

	"cloche.example/psychro"
)

// DryingHeat is the heat that it takes to carry a kilogram of water out of a house
// with outside air.
type DryingHeat struct {
	Total    float64 // J/kg of water, all that the air takes with it
	Sensible float64 // J/kg of water, of it to warm the outside air
	Air      float64 // kg of dry air for each kg of water
}

// HeatToDry returns that heat for air that enters as outside and leaves as inside:
//
//	Total = (hi - ho)/(Wi - Wo)    Sensible = (h(ti, Wo) - ho)/(Wi - Wo)
//
// Count the latent rest only where the heater, and not the sun, evaporated the
// water. DryingCase has the flow, what the cover takes and heat recovery besides.
// ErrNoSolution says that the outside air is no drier; other errors join the inputs
// outside their ranges.
func HeatToDry(inside, outside psychro.State) (DryingHeat, error) {
	if err := errors.Join(checkAir("inside", inside), checkAir("outside", outside)); err != nil {
		return DryingHeat{}, err
	}
	if err := sameAir("outside", outside, "inside", inside); err != nil {
		return DryingHeat{}, err
	}
	gain := inside.HumidityRatio() - outside.HumidityRatio()
	if !(gain > 0) {
		return DryingHeat{}, fmt.Errorf("heat to dry: %w: the outside air holds %.4g kg/kg, the inside air %.4g: it takes no water out", ErrNoSolution, outside.HumidityRatio(), inside.HumidityRatio())
	}
	part, err := exchange(inside, outside)
	if err != nil {
		return DryingHeat{}, err
	}
	moist := 1 + outside.HumidityRatio()
	return DryingHeat{
		Total:    (inside.Enthalpy() - outside.Enthalpy()) / gain,
		Sensible: part.sensible * moist / gain,
		Air:      1 / gain,
	}, nil
}
