package fromplan

import (
	"errors"
	"fmt"

	"cloche.example/airheat"
	"cloche.example/examples/internal/plan"
)

var bases = map[string]airheat.FlowBasis{"fan inlet": airheat.FanInlet, "standard air": airheat.StandardAir, "outlet": airheat.Outlet}

// HeaterFlow is the flow of air that the plan states for the heater.
func HeaterFlow(p *plan.Plan) airheat.Flow {
	return airheat.Flow{Value: p.Heater.Flow, Basis: bases[p.Heater.FlowBasis]}
}

// Fuel is what the heater burns, with the plan's own figures. Electric heat and
// a heat pump have none: their Fuel stands for electricity, of 3.6 MJ for each
// "kilogram" that is a kilowatt-hour.
func Fuel(p *plan.Plan) (airheat.Fuel, error) {
	u := p.Heater.Fuel
	if p.Heater.Kind != "burner" {
		carbon := airheat.Composition{Carbon: 1}
		return airheat.NewFuel("electricity", carbon, joulesPerKWh)
	}
	f, found := airheat.FindFuel(u.Name)
	if !found { // own fuel: its make-up is unknown, and only its heating value is read
		return airheat.NewFuel("own fuel", airheat.Composition{Carbon: 1}, *u.HeatingValuePerKg*1e6)
	}
	if u.Water != nil {
		moist, err := f.MoistFuel(*u.Water)
		if err != nil {
			return f, fmt.Errorf("heater.fuel.water_fraction: %w", err)
		}
		return moist, nil
	}
	if u.HeatingValuePerKg != nil {
		f.Higher *= *u.HeatingValuePerKg * 1e6 / f.Lower
		f.Lower = *u.HeatingValuePerKg * 1e6
	}
	return f, nil
}

const joulesPerKWh = 3.6e6

// A Source is what heats the house, in energy and money.
type Source struct {
	Burner airheat.Burner // the heater at part load; for electricity its efficiency is 1
	Ratio  float64        // ratio, of heat over electricity in a season; 1 for a burner
	Price  float64        // currency per J of fuel, lower heating value, or of electricity
	Unit   string         // in which the fuel is sold: kg, m³, L or kWh
	PerJ   float64        // of that unit for each J
}

// HeatSource is the heater with its fuel and the price of that.
func HeatSource(p *plan.Plan) (Source, error) {
	h, u := p.Heater, p.Heater.Fuel
	f, err := Fuel(p)
	s := Source{Burner: airheat.Burner{Rated: h.Power, Efficiency: h.Efficiency, Standby: h.Standby, Ready: ready(p), Fuel: f}, Ratio: 1, Unit: "kg", PerJ: 1 / f.Lower}
	if err != nil {
		return s, err
	}
	kWh := func(price float64) { s.Price, s.Unit, s.PerJ = price/joulesPerKWh, "kWh", 1/joulesPerKWh }
	switch {
	case h.Kind != "burner":
		s.Burner.Efficiency, s.Burner.Standby = 1, 0
		if h.Kind == "heat pump" {
			s.Ratio = h.SeasonPerformance
		}
		kWh(p.Prices.ElectricityPerKWh)
	case u.PricePerKWh != nil:
		kWh(*u.PricePerKWh)
	case u.PricePerM3 != nil:
		s.Unit, s.PerJ = "m³", 1e-6 / *u.HeatingValuePerM3
		s.Price = *u.PricePerM3 * s.PerJ
	case u.PricePerL != nil:
		s.Unit, s.PerJ = "L", 1e-6 / *u.HeatingValuePerL
		s.Price = *u.PricePerL * s.PerJ
	case u.PricePerKg != nil:
		s.Price = *u.PricePerKg * s.PerJ
	default:
		return s, errors.New("heater.fuel has no price")
	}
	return s, s.Burner.Check()
}

// days of the months.
var days = [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// Hours of the months, h.
func Hours() (h [12]float64) {
	for i, d := range days {
		h[i] = 24 * d
	}
	return h
}

// ready is the time in a year that the heater stands ready: the months colder
// outside than the house is kept by day, h.
func ready(p *plan.Plan) float64 {
	sum := 1.0
	for i, t := range p.Site.Months.Temperature {
		if t < p.SetPoints.Day.Temperature {
			sum += 24 * days[i]
		}
	}
	return sum
}

// Energy is the fuel or electricity, J, that the heat takes over a time: heat
// in J, and the time in s that the heater stands ready.
func (s Source) Energy(heat, ready float64) float64 {
	if heat <= 0 {
		return 0
	}
	return s.Burner.FuelPower(min(heat/ready, s.Burner.Rated)) * ready / s.Ratio
}
