package answers

import (
	"fmt"
	"math"

	"cloche.example/airheat"
	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/psychro"
)

// Year is the heat, light and money of a year, by the monthly method.
type Year struct {
	SetPoint   float64   `json:"mean_set_point_c"`
	Loss       float64   `json:"loss_w_k"`          // at the mean of the heated months, with the water that the crop sets free
	Doors      float64   `json:"door_passages_w_k"` // part of the loss
	Outside    float64   `json:"heated_months_outside_c"`
	Humidity   float64   `json:"inside_relative_humidity"` // that settles there
	Vented     float64   `json:"vented_against_damp_m3_s"` // by night, so that the humidity stays at its limit
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

// Year is the monthly method on the plan's means: each month's loss less what
// the sun and the lamps give and the crop does not turn into vapour.
func (h *House) Year(sun Sun, light *Light, fan float64) (Year, error) {
	p := h.Plan
	y := Year{SetPoint: MeanSetPoint(p)}
	if err := h.seasonLoss(&y); err != nil {
		return y, err
	}
	var err error
	if y.passages, err = h.Doors(y.air); err != nil {
		return y, err
	}
	for _, d := range y.passages {
		y.Doors += d.Daily * 1000 / 24 / (y.SetPoint - y.Outside)
	}
	y.Loss += y.Doors
	source, err := fromplan.HeatSource(p)
	if err != nil {
		return y, err
	}
	m := airheat.Months{Hours: fromplan.Hours()}
	copy(m.Outside[:], p.Site.Months.Temperature)
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
		SetPoint: y.SetPoint, Loss: y.Loss, Aperture: sun.Gain * h.Shape.FloorArea, Plants: plants,
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
		month.Loss = max(0, y.Loss*(y.SetPoint-of)) * m.Hours[i] / 1000
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

// seasonLoss is the loss per kelvin at the mean of the heated months under the
// season's wind and cloud, with the screen drawn for its share of the time. The
// ground counts with its steady coefficient.
func (h *House) seasonLoss(y *Year) error {
	p := h.Plan
	mean, rh, night, cold, n := 0.0, 0.0, 0.0, 0.0, 0.0
	for i, t := range p.Site.Months.Temperature {
		if t < y.SetPoint {
			n++
			mean, rh = mean+t, rh+p.Site.Months.RelativeHumidity[i]
			night += 1 - dayLength(p.Site.Latitude, i+1)/24
			if p.Screen != nil && t < p.Screen.OutsideBelow {
				cold++
			}
		}
	}
	if n == 0 {
		mean, rh, night, n = p.Site.WinterNight.Temperature, p.Site.WinterNight.RelativeHumidity, 0.5, 1
	}
	y.Outside = min(mean/n, y.SetPoint-0.5)
	outside, err := fromplan.Air(p, y.Outside, rh/n)
	if err != nil {
		return err
	}
	drawn := 0.0
	if q := p.Screen; q != nil {
		drawn = map[string]float64{"at night": night / n, "always": 1, "in the cold": cold / n}[q.Drawn]
	}
	of := func(screen bool) (float64, error) { return h.meanLoss(y, outside, night/n, screen) }
	bare, screened := 0.0, 0.0
	if drawn > 0 {
		if screened, err = of(true); err != nil {
			return err
		}
	}
	if drawn < 1 {
		if bare, err = of(false); err != nil {
			return err
		}
	}
	y.Loss = math.Max(0.001, bare*(1-drawn)+screened*drawn)
	return nil
}

// meanLoss is the loss per kelvin in the mean of the heated months. The humidity is
// what the crop's water makes of it, no more than the plan's limit: outside air
// carries the rest away. Heat that evaporates water and warms that air is the
// heater's by night; by day it is the sun's, which loses it in what it gives.
func (h *House) meanLoss(y *Year, outside psychro.State, night float64, screen bool) (float64, error) {
	p := h.Plan
	rise := y.SetPoint - y.Outside
	w := weather{outside, p.Site.HeatingSeason.Wind, p.Site.HeatingSeason.Cloud, 1, screen}
	air, r, _, err := h.settled(w, y.SetPoint)
	if err != nil {
		return 0, fmt.Errorf("the year's loss: %w", err)
	}
	vented, drier := 0.0, 0.0
	if limit := p.SetPoints.Limits.RelativeHumidity; air.Inside.RelativeHumidity() > limit {
		held := air
		if held.Inside, err = fromplan.Air(p, y.SetPoint, limit); err != nil {
			return 0, err
		}
		at, err := h.loss(held, w.month, screen)
		if err != nil {
			return 0, fmt.Errorf("the year's loss: %w", err)
		}
		if drier = held.Inside.HumidityRatio() - outside.HumidityRatio(); drier > 0 {
			air, r = held, at
			vented = max(0, p.Crop.Vapour-Evaporation(&r, air)) / 3600 / drier
		}
	}
	y.Humidity, y.air, y.loss = air.Inside.RelativeHumidity(), air, r
	y.Vented = vented * air.Inside.SpecificVolume()
	latent := r.Latent + vented*drier*(2.501e6-2326*y.SetPoint)
	warmed := vented * (1006 + 1860*outside.HumidityRatio()) * rise
	ground := h.Envelope.Ground().Total
	if p.Assumptions.NoGroundLoss {
		ground = 0
	}
	return (r.Total-r.Latent-r.Ground.Total+night*(latent+warmed))/rise + ground, nil
}
