package answers

import (
	"fmt"

	"cloche.example/airheat"
	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
)

// Year is the heat, light and money of a year, by the monthly method.
type Year struct {
	SetPoint   float64   `json:"mean_set_point_c"`
	Loss       float64   `json:"loss_w_k"`                      // the mean of the hours that are colder than the set-point, with the water that the crop sets free
	Doors      float64   `json:"door_passages_w_k"`             // part of the loss
	Ridge      float64   `json:"air_from_ridge_saves_fraction"` // of the loss, taken off it; below zero it costs; 0 where the heater draws low
	Outside    float64   `json:"heated_months_outside_c"`       // each month by its loss
	Humidity   float64   `json:"inside_relative_humidity"`      // that settles there
	Vented     float64   `json:"vented_against_damp_m3_s"`      // by night, so that the humidity stays at its limit
	Unmet      float64   `json:"beyond_the_heater_kwh"`
	Heat       float64   `json:"heat_kwh"`
	Gains      float64   `json:"gains_used_kwh"`
	LampHeat   float64   `json:"lamp_heat_in_heated_months_kwh"`
	Energy     float64   `json:"heater_energy_kwh"` // fuel by its lower heating value, or electricity
	Amount     float64   `json:"heater_energy_amount"`
	Unit       string    `json:"heater_energy_unit"`
	Emission   float64   `json:"carbon_dioxide_kg"`
	LampHours  float64   `json:"lamps_h"`
	LampEnergy float64   `json:"lamps_kwh"`
	FanEnergy  float64   `json:"fan_and_controls_kwh"`
	HeatCost   float64   `json:"heating_currency"`
	LampCost   float64   `json:"lamps_currency"`
	FanCost    float64   `json:"fan_and_controls_currency"`
	Total      float64   `json:"total_currency"`
	Months     []MonthOf `json:"months"`

	passages []Door
	air      envelope.HouseAir  // the mean of the heated months
	loss     envelope.HouseLoss // there
}

// MonthOf is a month of the year.
type MonthOf struct {
	Month    int     `json:"month"`
	Outside  float64 `json:"outside_c"`
	Loss     float64 `json:"loss_kwh"`
	Sun      float64 `json:"sun_kept_kwh"`
	Lamps    float64 `json:"lamp_heat_kwh"`
	Heat     float64 `json:"heat_kwh"`
	HeatCost float64 `json:"heating_currency"`
	LampCost float64 `json:"lamps_currency"`
}

// Year is the monthly method on the plan's means: each month's loss in its hours
// that are colder than the set-point, less what the sun and the lamps give and the
// crop does not turn into vapour.
func (h *House) Year(sun Sun, light *Light, fan float64) (Year, error) {
	p := h.Plan
	y := Year{SetPoint: MeanSetPoint(p)}
	losses, err := h.seasonLoss(&y)
	if err != nil {
		return y, err
	}
	if y.passages, err = h.Doors(y.air); err != nil {
		return y, err
	}
	for _, d := range y.passages {
		y.Doors += d.Daily * 1000 / 24 / (y.SetPoint - y.Outside)
	}
	if h.fromRidge() {
		r, err := h.Ridge(y.loss, y.air, h.statedInlet())
		if err != nil {
			return y, err
		}
		y.Ridge = r.Saving
	}
	m := airheat.Months{Hours: fromplan.Hours()}
	lost, kelvins := 0.0, 0.0
	for i, t := range p.Site.Months.Temperature {
		colder := max(1e-9, monthHours{t}.below(y.SetPoint))
		m.Outside[i] = y.SetPoint - colder
		m.Loss[i] = (losses[i] + y.Doors) * (1 - y.Ridge)
		lost, kelvins = lost+m.Loss[i]*colder*m.Hours[i], kelvins+colder*m.Hours[i]
	}
	y.Loss = lost / kelvins
	source, err := fromplan.HeatSource(p)
	if err != nil {
		return y, err
	}
	burning := lampHours(p, sun, light)
	plants := airheat.Plants{Area: sun.Gain * h.Shape.FloorArea, Evaporated: p.Crop.TranspiredSun}
	for i, mj := range p.Site.Months.Sun {
		m.Sun[i] = mj * 1e6 / 86400
		if light != nil {
			m.Lamps[i] = light.Heat * burning[i] / 24
			plants.LampRadiant = light.photons
		}
	}
	stores := fromplan.Stores(p, h.Shape)
	capacity := (stores.Structure + fromplan.Soil(p).HeatCapacity*stores.SoilDepth) * h.Shape.FloorArea
	s, heat, err := airheat.MonthlyHouse{
		SetPoint: y.SetPoint, Aperture: sun.Gain * h.Shape.FloorArea, Plants: plants,
		Storage: min(capacity/y.Loss/3600, 10000), Burner: source.Burner,
	}.Solve(m)
	if err != nil {
		return y, fmt.Errorf("the year: %w", err)
	}
	y.Heat, y.Unmet, y.Gains = s.Heat/joulesPerKWh, s.Unmet/joulesPerKWh, s.Gains/joulesPerKWh
	energy := s.Fuel / source.Ratio
	y.Energy, y.Amount, y.Unit, y.Emission, y.HeatCost = energy/joulesPerKWh, energy*source.PerJ, source.Unit, s.Emission, energy*source.Price
	y.FanEnergy = s.Heat / p.Heater.Power * (fan + p.Heater.Electric) / joulesPerKWh
	price := p.Prices.ElectricityPerKWh
	y.FanCost = y.FanEnergy * price
	for i, of := range p.Site.Months.Temperature {
		month := MonthOf{Month: i + 1, Outside: of, Sun: m.Sun[i] * sun.Gain * h.Shape.FloorArea * m.Hours[i] / 1000, Lamps: m.Lamps[i] * m.Hours[i] / 1000, Heat: min(heat[i], p.Heater.Power*m.Hours[i]*3600) / joulesPerKWh}
		month.Loss = m.Loss[i] * (y.SetPoint - m.Outside[i]) * m.Hours[i] / 1000
		if s.Heat > 0 {
			month.HeatCost = y.HeatCost * month.Heat / y.Heat
		}
		month.LampCost = month.Lamps * price
		if of < y.SetPoint {
			y.LampHeat += month.Lamps
		}
		y.LampHours += burning[i] * m.Hours[i] / 24
		y.LampEnergy += month.Lamps
		y.Months = append(y.Months, month)
	}
	y.LampCost = y.LampEnergy * price
	y.Total = y.HeatCost + y.LampCost + y.FanCost
	return y, nil
}

const joulesPerKWh = 3.6e6

// lampHours are the hours a day that lamps burn in each month: what the daylight
// leaves of the light that the crop is planned for, no longer than the
// photoperiod.
func lampHours(p *plan.Plan, sun Sun, l *Light) (h [12]float64) {
	if l == nil || l.Mean <= 0 {
		return h
	}
	for i := range h {
		h[i] = p.Lights.Photoperiod
		if asked := l.asked(); asked > 0 {
			h[i] = min(h[i], max(0, asked-sun.months[i])*1e6/l.Mean/3600)
		}
	}
	return h
}
