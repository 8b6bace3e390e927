package answers

import (
	"slices"

	"cloche.example/airheat"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/ventilation"
)

// Power is the electricity that the house draws with everything on.
type Power struct {
	Loads   []Load  `json:"loads"`
	Total   float64 `json:"total_w"`
	Current float64 `json:"current_per_live_wire_a"`
	Fuse    float64 `json:"next_common_fuse_a"` // 0: beyond the common row
	Phases  int     `json:"phases_count"`
	Voltage float64 `json:"voltage_v"`
}

// Load is one consumer of electricity.
type Load struct {
	Name  string  `json:"name"`
	Power float64 `json:"power_w"`
}

// fuses is the common row of rated currents, A; from memory, after IEC 60898 and
// IEC 60269.
var fuses = []float64{6, 10, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400}

// Power adds the loads, and spreads them evenly over the phases.
func (h *House) Power(light *Light, fan float64) Power {
	p := h.Plan
	r := Power{Phases: p.Site.Mains.Phases, Voltage: p.Site.Mains.Voltage}
	add := func(name string, w float64) {
		if w > 0 {
			r.Loads = append(r.Loads, Load{name, w})
			r.Total += w
		}
	}
	if light != nil {
		add("lamps", light.Power)
	}
	add("heater fan", fan)
	add("burner, controls, pumps", p.Heater.Electric)
	switch p.Heater.Kind {
	case "electric":
		add("electric heat", p.Heater.Power)
	case "heat pump":
		add("heat pump", p.Heater.Power/p.Heater.SeasonPerformance)
	}
	for _, f := range p.VentFans {
		add(f.Name, f.Power)
	}
	if p.SoilStore != nil {
		s := fromplan.SoilStore(p)
		one := airheat.Segment{Section: airheat.Round(s.Diameter), Length: s.Length, Roughness: s.Roughness, Fittings: s.Fittings}
		loss := one.Loss(p.SoilStore.Flow/float64(s.Tubes), airheat.DryAir(p.SetPoints.Day.Temperature, h.Pressure))
		add("fan of the soil store", loss.Total*p.SoilStore.Flow/s.FanEfficiency)
	}
	if e := p.EmergencyHeat; e != nil && e.NeedsMains {
		add("emergency heat", e.Power)
	}
	r.Current = r.Total / r.Voltage / float64(r.Phases)
	if i := slices.IndexFunc(fuses, func(f float64) bool { return f >= r.Current }); i >= 0 {
		r.Fuse = fuses[i]
	}
	return r
}

// Water is what a summer's day takes.
type Water struct {
	Month      int     `json:"month"`
	Crop       float64 `json:"crop_l_d"`
	Night      float64 `json:"of_it_at_night_l_d"`
	Given      float64 `json:"irrigation_l_d"`
	PerFloor   float64 `json:"irrigation_l_m2_d"`
	Drained    float64 `json:"drained_l_d"`
	Tank       float64 `json:"tank_l"`
	TankDays   float64 `json:"tank_lasts_d"`
	CostPerDay float64 `json:"cost_per_day_currency"`
}

// evaporating is the heat that a litre of water takes, J, at 25 °C; 2.442 MJ/kg,
// as psychro has it.
const evaporating = 2.442e6

// Water is that of the sunniest month: the share of the sun kept in the house that
// evaporates water by day, times the crop factor, and what crop and soil set
// free in its nights.
func (h *House) Water(sun Sun) Water {
	p := h.Plan
	i := 0
	for k, mj := range p.Site.Months.Sun {
		if mj > p.Site.Months.Sun[i] {
			i = k
		}
	}
	w := Water{Month: i + 1, Tank: 1000 * p.Irrigation.Tank}
	kept := sun.Gain * p.Site.Months.Sun[i] * 1e6 * h.Shape.FloorArea
	dark := 24 - dayLength(p.Site.Latitude, i+1)
	w.Night = p.Crop.Vapour * dark
	w.Crop = p.Irrigation.Crop*kept*p.Crop.TranspiredSun/evaporating + w.Night
	q := p.Irrigation
	w.Given = w.Crop / q.Efficiency / (1 - q.Leaching)
	w.Drained = w.Given - w.Crop
	w.PerFloor = w.Given / h.Shape.FloorArea
	if w.Given > 0 {
		w.TankDays = min(w.Tank/w.Given, 9999)
	} else {
		w.TankDays = 9999
	}
	w.CostPerDay = w.Given / 1000 * p.Prices.WaterPerM3
	return w
}

// Carbon is the carbon dioxide that leaks away while the vents are shut.
type Carbon struct {
	Level  float64 `json:"level_umol_mol"`
	Lost   float64 `json:"leaks_away_kg_h"`
	PerDay float64 `json:"cost_per_day_currency"` // while the sun shines in the month of the design night
}

// Carbon is what holds the plan's level by day against the leakage, m³/s; nil
// where the plan doses none.
func (h *House) Carbon(leakage float64) *Carbon {
	c := h.Plan.CO2
	if c == nil {
		return nil
	}
	lost := 3600 * leakage * ventilation.CO2Density(1, h.Plan.SetPoints.Day.Temperature, h.Pressure) * (c.Level - c.Outside)
	r := &Carbon{Level: c.Level, Lost: lost}
	price := c.PricePerKg
	if b, err := fromplan.CarbonBurner(h.Plan); err == nil && c.Source == "burner" {
		price = b.Price
	}
	r.PerDay = lost * dayLength(h.Plan.Site.Latitude, h.Plan.Site.WinterNight.Month) * price
	return r
}
