package answers

import (
	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/ventilation"
)

// Fresh is the least ventilation: the outside air that a closed house wants in
// winter.
type Fresh struct {
	Rule       float64 `json:"rule_of_practice_m3_s"`
	Damp       float64 `json:"against_damp_m3_s"`         // on the design night, at the humidity limit, leaks included
	OutsideDry bool    `json:"outside_air_can_carry_off"` // false: the night's air is as damp as the house may be
	Leakage    float64 `json:"leakage_m3_s"`              // on the design night
	Vent       float64 `json:"by_opening_m3_s"`           // what damp asks beyond the leakage
	Warming    float64 `json:"warming_it_w"`              // on the design night, without the vapour it carries off
	Carbon     float64 `json:"for_carbon_dioxide_m3_s"`   // by day in the month of the design night; 0 without leaves or light
	Kept       float64 `json:"carbon_dioxide_umol_mol"`   // at which that keeps the air
	PAR        float64 `json:"light_on_crop_umol_m2_s"`   // that it goes by
	DayWarming float64 `json:"warming_carbon_dioxide_w"`  // beyond the leakage, in the month's mean air
}

// spared is the share of the outside air's carbon dioxide that the least ventilation
// leaves; common practice, no source.
const spared = 0.85

// outdoorCO2 is that of outside air where the plan gives none, µmol/mol.
const outdoorCO2 = 420

// Fresh is the least ventilation by three measures: the rule of practice for fans,
// what keeps the design night's humidity at its limit, and what keeps carbon
// dioxide for the crop in the light of that month.
func (h *House) Fresh(leakage float64, sun Sun, light *Light) (Fresh, error) {
	p := h.Plan
	in, out := h.Night.Inside, h.Night.Outside
	f := Fresh{Leakage: leakage}
	rates := ventilation.DefaultFanRates(h.Shape.FloorArea)
	rates.Altitude, rates.Cold = p.Site.Altitude, min(60, max(0.5, in.Temperature()-out.Temperature()))
	rule, err := rates.Solve()
	if err != nil {
		return f, err
	}
	f.Rule = rule.Winter
	if err = h.damp(&f); err != nil {
		return f, err
	}
	h.carbonAir(&f, sun, light)
	f.Vent = max(0, f.Damp-leakage)
	f.Warming = f.Vent / in.SpecificVolume() * out.HeatCapacity() * (in.Temperature() - out.Temperature())
	day := p.SetPoints.Day.Temperature - p.Site.Months.Temperature[p.Site.WinterNight.Month-1]
	f.DayWarming = max(0, f.Carbon-leakage) / in.SpecificVolume() * out.HeatCapacity() * max(0, day)
	return f, nil
}

// damp is the air that carries off what crop and soil set free beyond what
// condenses, with the house at the humidity limit on the design night.
func (h *House) damp(f *Fresh) error {
	p, n := h.Plan, h.Plan.Site.WinterNight
	limit, err := fromplan.Air(p, h.Night.Inside.Temperature(), p.SetPoints.Limits.RelativeHumidity)
	if err != nil {
		return err
	}
	drier := limit.HumidityRatio() - h.Night.Outside.HumidityRatio()
	if f.OutsideDry = drier > 0; !f.OutsideDry {
		return nil
	}
	air := envelope.HouseAir{Inside: limit, Outside: h.Night.Outside, Wind: n.Wind, Cloud: n.Cloud}
	r, err := h.loss(air, float64(n.Month), h.drawn())
	if err != nil {
		return err
	}
	f.Damp = max(0, p.Crop.Vapour/3600-r.Condensate) / drier * limit.SpecificVolume()
	return nil
}

// carbonAir is the air that brings what the leaves take up in the light of a day
// in the month of the design night.
func (h *House) carbonAir(f *Fresh, sun Sun, light *Light) {
	p := h.Plan
	day := dayLength(p.Site.Latitude, p.Site.WinterNight.Month)
	if day > 0 {
		f.PAR = sun.Daylight * 1e6 / 3600 / day
	}
	if light != nil {
		f.PAR += light.Mean
	}
	outside := float64(outdoorCO2)
	if p.CO2 != nil {
		outside = p.CO2.Outside
	}
	f.Kept = spared * outside
	t := p.SetPoints.Day.Temperature
	taken := fromplan.Canopy(p).Uptake(min(f.PAR, 3000), f.Kept, t) * h.Shape.FloorArea // kg/s
	brought := ventilation.CO2Density(outside, t, h.Pressure) - ventilation.CO2Density(f.Kept, t, h.Pressure)
	if v := taken / brought; v > 0 { // not NaN
		f.Carbon = v
	}
}
