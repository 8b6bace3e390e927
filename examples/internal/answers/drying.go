package answers

import (
	"errors"
	"math"

	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/ventilation"
)

// Drying is damp air vented out on a winter morning.
type Drying struct {
	Possible  bool     `json:"outside_air_can_dry"`
	Wanted    float64  `json:"wanted_relative_humidity"`
	InsideW   float64  `json:"wanted_humidity_ratio_kg_kg"`
	OutsideW  float64  `json:"outside_humidity_ratio_kg_kg"`
	Released  float64  `json:"set_free_kg_h"`
	Condensed float64  `json:"condenses_on_cover_kg_h"`
	ToAir     float64  `json:"left_to_air_kg_h"`
	Flow      float64  `json:"flow_needed_m3_s"`
	Changes   float64  `json:"flow_needed_per_h"`
	Leakage   float64  `json:"leakage_m3_s"`
	Vent      float64  `json:"by_opening_m3_s"`
	Sensible  float64  `json:"sensible_w"`
	Latent    float64  `json:"latent_w"`
	Saved     float64  `json:"heat_recovery_would_save_w"`
	Hours     float64  `json:"lasts_h"`
	Heat      float64  `json:"heat_over_the_time_kwh"`
	Fuel      *float64 `json:"energy_over_the_time_kwh"` // null: beyond the heater
	Cost      *float64 `json:"cost_over_the_time_currency"`
}

// largest is the area of one cold surface, m².
const largest = 1e5

// Drying holds the crop's humidity on a winter morning by outside air. What the
// cold cover takes comes first.
func (h *House) Drying() (Drying, error) {
	p := h.Plan
	q := p.Site.WinterMorning
	t := p.SetPoints.Day.Temperature
	wanted, e1 := fromplan.Air(p, t, p.SetPoints.Limits.RelativeHumidity)
	outside, e2 := fromplan.Air(p, q.Temperature, q.RelativeHumidity)
	if err := errors.Join(e1, e2); err != nil {
		return Drying{}, err
	}
	r := Drying{Wanted: p.SetPoints.Limits.RelativeHumidity, InsideW: wanted.HumidityRatio(), OutsideW: outside.HumidityRatio(), Released: p.WinterDrying.Vapour, Hours: p.WinterDrying.Lasts}
	air := envelope.HouseAir{Inside: wanted, Outside: outside, Wind: p.Site.HeatingSeason.Wind, Cloud: p.Site.HeatingSeason.Cloud}
	loss, err := h.loss(air, float64(p.Site.WinterNight.Month), false)
	if err != nil {
		return r, err
	}
	c := ventilation.DryingCase{Wanted: wanted, Outside: outside, Release: p.WinterDrying.Vapour / 3600, Recovery: p.WinterDrying.HeatRecovery}
	for _, f := range loss.Facets {
		if f.Area > 0 {
			for left := f.Area; left > 0; left -= largest {
				c.Surfaces = append(c.Surfaces, ventilation.ColdSurface{Name: f.Name, Temperature: f.InnerTemperature, Area: min(left, largest), Film: f.Solution.InsideCoefficient})
			}
		}
	}
	a, err := c.Flow()
	if errors.Is(err, ventilation.ErrNoSolution) {
		return r, nil
	} else if err != nil {
		return r, err
	}
	r.Possible = true
	r.Condensed, r.ToAir = 3600*a.Condensed, 3600*a.Excess
	r.Flow, r.Changes = a.Exhaust, ventilation.AirChanges(a.Exhaust, h.Shape.Volume)
	r.Leakage = loss.Leakage.Volume
	r.Vent = math.Max(0, r.Flow-r.Leakage)
	r.Sensible, r.Latent, r.Saved = a.Sensible, a.Latent, a.Heat.Saved
	over := a.Over(hours(r.Hours))
	heat := over.Sensible + over.Latent
	r.Heat = heat / 3.6e6
	source, err := fromplan.HeatSource(p)
	if err != nil {
		return r, err
	}
	if a.Total <= source.Burner.Rated {
		energy := source.Energy(heat, 3600*r.Hours)
		r.Fuel, r.Cost = some(energy/3.6e6), some(energy*source.Price)
	}
	return r, nil
}
