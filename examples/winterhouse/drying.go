package main

import (
	"errors"
	"math"
	"time"

	"cloche.example/airheat"
	"cloche.example/internal/report"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

type dryingMorning struct {
	Possible  bool     `json:"outside_air_can_dry"`
	InsideW   float64  `json:"wanted_humidity_ratio_kg_kg"`
	OutsideW  float64  `json:"outside_humidity_ratio_kg_kg"`
	Condensed float64  `json:"condenses_on_cover_kg_h"`
	ToAir     float64  `json:"left_to_air_kg_h"`
	Flow      float64  `json:"flow_needed_m3_s"`
	Changes   float64  `json:"flow_needed_per_h"`
	Leakage   float64  `json:"leakage_m3_s"`
	Vent      float64  `json:"by_opening_m3_s"`
	Sensible  float64  `json:"sensible_w"`
	Latent    float64  `json:"latent_w"`
	Saved     float64  `json:"heat_recovery_would_save_w"`
	Heat      float64  `json:"heat_over_the_time_kwh"`
	Fuel      *float64 `json:"fuel_over_the_time_kg"`
	Cost      *float64 `json:"cost_over_the_time"`
}

// dryingOf holds the wanted humidity on a winter morning by outside air. What
// the cold cover takes comes first.
func dryingOf(p plan, d design) (dryingMorning, error) {
	q := p.Drying
	wanted, e1 := psychro.FromRelativeHumidity(p.Inside.Temperature, q.Wanted, d.Air.Pressure)
	outside, e2 := psychro.FromRelativeHumidity(q.Outside, q.OutsideRH, d.Air.Pressure)
	if err := errors.Join(e1, e2); err != nil {
		return dryingMorning{}, err
	}
	r := dryingMorning{InsideW: wanted.HumidityRatio(), OutsideW: outside.HumidityRatio()}
	night, err := d.usualNight(p, outside, p.Inside.Temperature, q.Wanted)
	if err != nil {
		return r, err
	}
	c := ventilation.DryingCase{Wanted: wanted, Outside: outside, Release: q.Released / 3600, Recovery: q.Recovery}
	for _, f := range night.Facets {
		c.Surfaces = append(c.Surfaces, ventilation.ColdSurface{Name: f.Name, Temperature: f.InnerTemperature, Area: f.Area, Film: f.Solution.InsideCoefficient})
	}
	a, err := c.Flow()
	if errors.Is(err, ventilation.ErrNoSolution) {
		return r, nil
	} else if err != nil {
		return r, err
	}
	r.Possible = true
	r.Condensed, r.ToAir = 3600*a.Condensed, 3600*a.Excess
	r.Flow, r.Changes = a.Exhaust, ventilation.AirChanges(a.Exhaust, d.Shape.Volume)
	r.Leakage = night.Leakage.Volume
	r.Vent = math.Max(0, r.Flow-r.Leakage)
	r.Sensible, r.Latent, r.Saved = a.Sensible, a.Latent, a.Heat.Saved
	over := a.Over(time.Duration(q.Hours * float64(time.Hour)))
	r.Heat = (over.Sensible + over.Latent) / 3.6e6
	fuel, _ := airheat.FindFuel(p.Heater.Fuel)
	b := airheat.Burner{Rated: p.Heater.Power, Efficiency: p.Heater.Efficiency, Fuel: fuel}
	if a.Total <= b.Rated {
		fuel := b.FuelPower(a.Total) / b.Fuel.Lower * 3600 * q.Hours
		cost := fuel * p.Heater.FuelPrice
		r.Fuel, r.Cost = &fuel, &cost
	}
	return r, nil
}

func (d *design) dryingText(r *report.Report, p plan) {
	q, a := p.Drying, d.Drying
	r.Section("Winter drying by venting")
	r.Value("outside air", q.Outside, 1, "°C")
	r.Value("  humidity ratio", 1000*a.OutsideW, 2, "g/kg dry air")
	r.Value("inside, wanted relative humidity", 100*q.Wanted, 0, "%")
	r.Value("  humidity ratio", 1000*a.InsideW, 2, "g/kg dry air")
	r.Value("vapour from crop and soil", q.Released, 2, "kg/h")
	if !a.Possible {
		r.Note("This outside air cannot hold the wanted humidity: heat the house or allow more.")
		return
	}
	r.Value("  condenses on the cover first", a.Condensed, 2, "kg/h")
	r.Value("  left to the air", a.ToAir, 2, "kg/h")
	r.Value("flow needed", a.Flow, 3, "m³/s")
	r.Value("  air changes", a.Changes, 2, "per h")
	r.Value("  the house leaks", a.Leakage, 3, "m³/s")
	r.Value("  by opening vents", a.Vent, 3, "m³/s")
	r.Value("heat it takes, sensible", a.Sensible, 0, "W")
	r.Value("  latent", a.Latent, 0, "W")
	r.Value("  heat recovery would save", a.Saved, 0, "W")
	r.Value("over "+report.Number(q.Hours, 1)+" h", a.Heat, 1, "kWh")
	r.Text("  fuel", numberOr(a.Fuel, 2, "beyond the heater"), "kg")
	r.Text("  cost", numberOr(a.Cost, 2, "-"), p.Lighting.Currency)
	r.Note("Under the season's wind and cloud. Open the ridge first and a little: cold air falls.")
}
