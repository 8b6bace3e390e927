package plan

import (
	"fmt"
	"math"
)

// hottest is the rise of air in a heater beyond which power and flow cannot
// belong together, K; air kept at 1200 J/(m³ K).
const (
	hottest    = 120.0
	airByCubic = 1200.0
)

// heater looks at power, flow and fuel.
func (f *filler) heater(p *Plan) {
	h := p.Heater
	if h.Power/(airByCubic*h.Flow) > hottest {
		f.clash("so little air cannot take up so much heat: it would be warmed by more than 120 K", "heater.power_w", "heater.flow_m3_s")
	}
	u := h.Fuel
	given := []string{}
	for _, price := range []struct {
		key   string
		value *float64
	}{{"price_per_kg", u.PricePerKg}, {"price_per_m3", u.PricePerM3}, {"price_per_l", u.PricePerL}, {"price_per_kwh", u.PricePerKWh}} {
		if price.value != nil {
			given = append(given, "heater.fuel."+price.key)
		}
	}
	if len(given) > 1 {
		f.clash("fuel has one price", given...)
	}
	if u.PricePerM3 != nil && u.HeatingValuePerM3 == nil {
		f.clash("a price by volume wants the heating value by volume", "heater.fuel.price_per_m3", "heater.fuel.heating_value_mj_m3", "heater.fuel.name")
	}
	if u.PricePerL != nil && u.HeatingValuePerL == nil {
		f.clash("a price by the litre wants the heating value by the litre", "heater.fuel.price_per_l", "heater.fuel.heating_value_mj_l", "heater.fuel.name")
	}
	if u.Name == "own" && u.HeatingValuePerKg == nil {
		f.clash("own fuel has its heating value by mass", "heater.fuel.name", "heater.fuel.heating_value_mj_kg")
	}
	if wood := u.Name == "wood" || u.Name == "wood pellets" || u.Name == "straw"; u.Water != nil && !wood {
		f.clash("only wood and straw have a moisture", "heater.fuel.water_fraction", "heater.fuel.name")
	}
	if u.Water != nil && u.HeatingValuePerKg != nil {
		f.clash("a fuel has its moisture or its heating value, one follows from the other", "heater.fuel.water_fraction", "heater.fuel.heating_value_mj_kg")
	}
	if c := p.AirCircuit; c.Supply <= c.Return {
		f.clash("air must come back cooler than it left", "air_circuit.return_c", "air_circuit.supply_c")
	}
	if c := p.WaterCircuit; c.Supply <= c.Return {
		f.clash("water must come back cooler than it left", "water_circuit.return_c", "water_circuit.supply_c")
	}
}

// stores looks at what holds heat.
func (f *filler) stores(p *Plan) {
	s := p.SoilStore
	if s == nil {
		return
	}
	if s.Spacing <= s.Diameter {
		f.clash("tubes must lie beside each other", "soil_store.spacing_m", "soil_store.diameter_m")
	}
	if width := placeLength(p.House, "near end"); float64(s.Tubes)*s.Spacing > 2*width+s.Spacing {
		f.clash("the tubes must find room under the house, in two layers at most", "soil_store.tubes_count", "soil_store.spacing_m", "house.span_m")
	}
}

// ducts looks at branches, the fan and the perforated tube.
func (f *filler) ducts(p *Plan) {
	once(f, "ducts", p.Ducts, func(d Duct) string { return d.Name }, "fan")
	parent := map[string]bool{}
	atFan := ""
	for i, d := range p.Ducts {
		from := under("ducts", i, "from")
		if d.From == "fan" && atFan != "" {
			f.clash("one branch starts at the fan; the others start from a branch", atFan, from)
		} else if d.From == "fan" {
			atFan = from
		}
		parent[d.From] = true
	}
	for i, d := range p.Ducts {
		at := func(key string) string { return under("ducts", i, key) }
		if round, square := d.Diameter != nil, d.Width != nil && d.Height != nil; round == square || round && (d.Width != nil || d.Height != nil) {
			f.clash("a duct has a diameter, or a width and a height", at("diameter_m"), at("width_m"), at("height_m"))
		}
		if d.EndsIn != "house" && parent[d.Name] {
			f.clash("a branch that others start from does not end", at("ends_in"), at("name"))
		}
		if d.EndsIn == "perforated tube" && p.PerforatedTube == nil {
			f.clash("the plan has no perforated tube", at("ends_in"), "perforated_tube")
		}
		if d.EndsIn == "soil store" && p.SoilStore == nil {
			f.clash("the plan has no soil store", at("ends_in"), "soil_store")
		}
	}
	if p.HeaterFan != nil {
		f.fan(p.HeaterFan)
	}
	if t := p.PerforatedTube; t != nil {
		if t.LeadIn+float64(t.Rows-1)*t.Pitch > p.House.Length+2 {
			f.clash("the tube must find room in the house", "perforated_tube.rows_count", "perforated_tube.pitch_m", "perforated_tube.lead_in_m", "house.length_m")
		}
		if d := t.HoleDiameter; d != nil && float64(t.HolesPerRow)**d >= math.Pi*t.Diameter {
			f.clash("the holes of a row must find room on the tube", "perforated_tube.hole_diameter_m", "perforated_tube.holes_per_row_count", "perforated_tube.diameter_m")
		}
		if d := t.HoleDiameter; d != nil && *d >= t.Pitch {
			f.clash("rows must lie further apart than a hole is wide", "perforated_tube.hole_diameter_m", "perforated_tube.pitch_m")
		}
	}
}

// fan looks at its table or polynomial.
func (f *filler) fan(n *HeaterFan) {
	const flow, pressure = "heater_fan.flow_m3_s", "heater_fan.pressure_pa"
	if n.KnownFrom == "polynomial" {
		if len(n.Coefficients) == 0 {
			f.clash("the polynomial has its coefficients", "heater_fan.known_from", "heater_fan.coefficients_pa")
		}
		if n.FirstFlow >= n.LastFlow {
			f.clash("the least flow lies below the greatest", "heater_fan.first_flow_m3_s", "heater_fan.last_flow_m3_s")
		}
		return
	}
	if len(n.Flow) < 2 || len(n.Flow) != len(n.Pressure) {
		f.clash("a fan's table has two points or more, as many flows as pressures", flow, pressure)
		return
	}
	for i := 1; i < len(n.Flow); i++ {
		if n.Flow[i] <= n.Flow[i-1] {
			f.add(fmt.Errorf("%s must rise: entry %d is %g, after %g", flow, i+1, n.Flow[i], n.Flow[i-1]), flow)
			return
		}
	}
}
