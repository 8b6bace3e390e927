package answers

import (
	"cloche.example/airheat"
	"cloche.example/examples/internal/plan"
	"cloche.example/lighting"
)

// cautions are those that the plan's house calls for.
func cautions(p *plan.Plan, r *Result) []string {
	list := []string{
		"Snow, wind, crop loads and anchors decide the structure, not these figures: have it checked against local codes by a licensed engineer.",
		"Electrical work is left to a licensed electrician: wet rooms ask for residual-current protection, splash-proof fittings and bonded metal.",
		airheat.SupplyCaution,
		airheat.FrostCaution,
	}
	burner := p.CO2 != nil && p.CO2.Source == "burner"
	if p.Heater.Kind == "burner" || burner {
		list = append(list, airheat.CombustionCaution)
	}
	if p.House.Depth > 0 {
		list = append(list, "A pit can cave in and fill with water: shore it, drain it, and keep a way out at both ends. Gases that are heavier than air gather in it.")
	}
	if p.Heater.Kind == "burner" && p.Heater.Fuel.Name == "propane" || burner && p.CO2.BurnerFuel == "propane" {
		text := "Propane is heavier than air and lies on the floor: no bottles and no unlit burners in or beside a low place, and a gas alarm at floor height."
		if p.House.Depth > 0 {
			text = "Propane is heavier than air and fills a dug-in house from the floor: many codes forbid it below ground."
		}
		list = append(list, text)
	}
	if p.HeaterFan != nil || len(p.VentFans) > 0 {
		list = append(list, "Fans start without warning: guard them, switch them off at an isolator and wait for standstill before reaching in.")
	}
	if p.CO2 != nil {
		list = append(list, "Carbon dioxide suffocates without warning, first in low places: fit an alarm and vent before entering.")
	}
	list = append(list, "A closed house in the sun overheats people and plants within minutes: leave a vent that opens without power, and watch for heat stroke.")
	if r.Light != nil {
		list = append(list, lighting.Cautions(r.Light.layout, r.Light.bed)...)
	}
	return list
}
