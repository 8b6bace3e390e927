package main

import "math"

// found is one cover in JSON.
type found struct {
	Name        string   `json:"name"`
	Loss        float64  `json:"loss_w"`
	Cover       float64  `json:"cover_w"`
	Sky         float64  `json:"to_sky_w"`
	CoverDry    float64  `json:"cover_dry_w"`
	Leakage     float64  `json:"leakage_w"`
	AirChanges  float64  `json:"air_changes_per_h"`
	U           float64  `json:"u_w_m2_k"`
	DripsAbove  *float64 `json:"drips_above_relative_humidity"` // null when it never drips
	Condensate  float64  `json:"condensate_l_h"`
	Light       *float64 `json:"light_fraction"` // null with a screen drawn and for the plan's own covers
	Temperature float64  `json:"coldest_face_c"`
}

// data is the answer in JSON.
func data(t table) any {
	d := struct {
		Sky  float64 `json:"sky_c"`
		Rows []found `json:"covers"`
	}{Sky: t.sky}
	for _, r := range t.rows {
		f := found{Name: r.name, Loss: r.loss.Total, Cover: r.loss.Cover, Sky: r.loss.CoverSky, CoverDry: r.dry.Cover, Leakage: r.loss.Leakage.Total,
			AirChanges: r.airChanges, U: r.uAir, Condensate: 3600 * r.loss.Condensate, Temperature: math.Inf(1)}
		for _, facet := range r.dry.Facets {
			f.Temperature = math.Min(f.Temperature, facet.InnerTemperature)
		}
		if r.drip < 1 {
			f.DripsAbove = &r.drip
		}
		if !math.IsNaN(r.light) {
			f.Light = &r.light
		}
		d.Rows = append(d.Rows, f)
	}
	return d
}
