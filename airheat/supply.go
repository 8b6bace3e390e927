package airheat

import (
	"fmt"

	"cloche.example/psychro"
)

// SupplyCaution is to be printed wherever a supply temperature is shown.
const SupplyCaution = "Hot supply air softens film, scorches leaves and burns skin. Keep outlets clear of film, crop and people; follow the maker's limits, local codes and licensed practice."

// SupplyLimits are the temperatures above which supply air does harm where it
// strikes.
type SupplyLimits struct {
	Film   float64 // °C, of air that strikes the film for long
	Plant  float64 // °C, of air that strikes leaves
	Person float64 // °C, of air that strikes people
}

// DefaultSupplyLimits are round figures from memory: polyethylene film 60 °C,
// leaves 40 °C, people 50 °C. The makers' and the grower's own go before.
func DefaultSupplyLimits() SupplyLimits { return SupplyLimits{Film: 60, Plant: 40, Person: 50} }

// Warnings returns a line for each limit that air of the temperature supply,
// °C, exceeds where it leaves the outlet; a jet is cooler further on. Nil
// when there is none.
func (l SupplyLimits) Warnings(supply float64) []string {
	var w []string
	for _, k := range [...]struct {
		what  string
		limit float64
	}{{"film", l.Film}, {"plants", l.Plant}, {"people", l.Person}} {
		if supply > k.limit {
			w = append(w, fmt.Sprintf("supply air of %.0f °C is above the limit of %.0f °C for %s at the outlet", supply, k.limit, k.what))
		}
	}
	return w
}

// Intake is what a heater draws in.
type Intake struct {
	Air         psychro.State // mixed air
	OutsideHeat float64       // J/kg of dry intake air, what warming the outside share to the inside state's temperature asks
	Fog         bool          // the two airs met in fog; the state is then the saturated air of the mixture
}

// MixedIntake returns the intake of a heater that draws the given share of
// outside air, a fraction of the dry air from 0 (recirculated) to 1 (all from
// outside), the rest from inside; both states at one pressure. What leaves
// through the cover for the outside share is the house's leakage and is not
// counted here.
func MixedIntake(inside, outside psychro.State, share float64) (Intake, error) {
	if err := shareRange.Check("share", share); err != nil {
		return Intake{}, err
	}
	warm := share * outside.HeatCapacity() * (inside.Temperature() - outside.Temperature())
	switch share {
	case 0:
		return Intake{Air: inside}, nil
	case 1:
		return Intake{Air: outside, OutsideHeat: warm}, nil
	}
	m, err := psychro.Mix(psychro.Stream{State: inside, DryAir: 1 - share}, psychro.Stream{State: outside, DryAir: share})
	if err != nil {
		return Intake{}, err
	}
	return Intake{Air: m.Air.State, OutsideHeat: warm, Fog: m.FogLiquid+m.FogIce > 0}, nil
}
