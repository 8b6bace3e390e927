package main

import (
	"math"

	"cloche.example/examples/internal/fromplan"
)

// found is a step of the day in JSON.
type found struct {
	Hour       float64  `json:"hour_h"` // start of the step
	Sun        float64  `json:"sun_w_m2"`
	Outside    float64  `json:"outside_c"`
	Wind       float64  `json:"wind_m_s"`
	Opening    float64  `json:"opening_fraction"`
	High       float64  `json:"high_vents_fraction"`
	Low        float64  `json:"low_vents_fraction"`
	Inside     float64  `json:"inside_c"`
	Humidity   float64  `json:"relative_humidity"`
	Deficit    float64  `json:"deficit_pa"`
	Leaves     *float64 `json:"leaves_c"` // null without a crop
	AirChanges float64  `json:"air_changes_per_h"`
	By         string   `json:"set_by"`
}

// way is one way to run the vents in JSON.
type way struct {
	Name        string  `json:"name"`
	Mean        float64 `json:"mean_c"`
	High        float64 `json:"hottest_c"`
	HighAt      float64 `json:"hottest_at_h"`
	Low         float64 `json:"coolest_c"`
	Above       float64 `json:"above_limit_h"`
	DegreeHours float64 `json:"above_limit_k_h"`
	Humid       float64 `json:"humid_h"`
	Dry         float64 `json:"dry_h"`
	Transpired  float64 `json:"transpired_kg"`
	Water       float64 `json:"fog_and_pads_evaporated_kg"`
	Moves       int     `json:"moves_count"`
	Steps       []found `json:"steps"`
}

// data is the answer in JSON.
func (d *day) data() any {
	out := struct {
		OpenBy *float64 `json:"shut_house_asks_for_air_from_h"` // null: it does not
		Limit  float64  `json:"limit_c"`
		Ways   []way    `json:"ways"`
	}{OpenBy: some(d.openBy), Limit: d.plan.SetPoints.Limits.Hot}
	for _, c := range d.courses {
		w := way{Name: c.name, Mean: c.Mean, High: c.High, HighAt: c.HighAt.Hours(), Low: c.Low, Above: c.Above.Hours(), DegreeHours: c.DegreeHours,
			Humid: c.Humid.Hours(), Dry: c.Dry.Hours(), Transpired: c.Transpired, Water: c.Water, Moves: c.Moves}
		for i, p := range c.Points {
			at := d.steps[i].Weather
			high, low := fromplan.InTurn(d.plan, p.Vents.Opening)
			w.Steps = append(w.Steps, found{p.Time.Hours(), at.Sun, at.Air.Temperature(), at.Wind, p.Vents.Opening, high, low, p.State.Temperature, p.State.RelativeHumidity, p.State.Deficit,
				some(p.State.CanopyTemperature), p.State.AirChanges, p.Vents.By.String()})
		}
		out.Ways = append(out.Ways, w)
	}
	return out
}

func some(v float64) *float64 {
	if math.IsNaN(v) {
		return nil
	}
	return &v
}
