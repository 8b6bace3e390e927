package fromplan

import (
	"fmt"

	"cloche.example/airheat"
	"cloche.example/examples/internal/plan"
)

// CO2Burner is what each kg of carbon dioxide brings that a burner without a flue
// gives; zero where the plan has none.
type CO2Burner struct {
	Heat   float64 // J/kg, to the air: the fuel's lower heating value, all of which stays in the house
	Vapour float64 // kg/kg, set free
	Price  float64 // currency per kg
}

// CarbonBurner is the burner of the plan by the combustion of its fuel.
func CarbonBurner(p *plan.Plan) (b CO2Burner, err error) {
	q := p.CO2
	if q == nil || q.Source != "burner" {
		return b, nil
	}
	f, found := airheat.FindFuel(q.BurnerFuel)
	if !found {
		return b, fmt.Errorf("co2.burner_fuel %q is not known", q.BurnerFuel)
	}
	d, err := f.DirectFired(1000)
	if err != nil {
		return b, fmt.Errorf("co2.burner_fuel: %w", err)
	}
	b.Heat, b.Vapour = d.Sensible/d.CO2, d.Water/d.CO2
	b.Price = b.Heat / joulesPerKWh * q.FuelPricePerKWh
	return b, nil
}
