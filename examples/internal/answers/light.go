package answers

import (
	"fmt"
	"math"
	"time"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/lighting"
)

// Light is what the lamps give at harvest, and what the crop asks for.
type Light struct {
	Crop         string   `json:"crop"`
	Least        *float64 `json:"crop_least_mol_m2_d"`
	Wanted       *float64 `json:"crop_wanted_mol_m2_d"`
	Most         *float64 `json:"crop_most_mol_m2_d"`
	Lamps        int      `json:"lamps_count"` // of all tiers
	Targeted     bool     `json:"lamps_counted_for_target"`
	Rows         int      `json:"rows_count"`
	PerRow       int      `json:"per_row_count"`
	Minimum      float64  `json:"minimum_umol_m2_s"`
	Mean         float64  `json:"mean_umol_m2_s"`
	Maximum      float64  `json:"maximum_umol_m2_s"`
	Even         float64  `json:"minimum_over_mean_ratio"`
	EvenWanted   float64  `json:"minimum_over_mean_wanted_ratio"`
	GridAlong    int      `json:"map_points_along_count"`
	GridAcross   int      `json:"map_points_across_count"`
	Spot         *float64 `json:"spot_diameter_m"` // null: known only of a beam
	Along        float64  `json:"spacing_along_row_m"`
	Across       float64  `json:"spacing_between_rows_m"`
	DLI          float64  `json:"lamps_mol_m2_d"`
	Daylight     float64  `json:"daylight_mol_m2_d"`
	Both         float64  `json:"both_mol_m2_d"`
	Power        float64  `json:"electric_power_w"`
	Heat         float64  `json:"heat_into_house_w"`
	CostPerDay   float64  `json:"cost_per_day_currency"`
	HoursWanted  *float64 `json:"photoperiod_for_crop_h"` // null: more than a day has
	PowerDensity float64  `json:"electric_power_w_m2"`    // of bed

	PPFD    []float64 `json:"-"` // µmol/(m² s) at the map's points, rows along the bed, from its near left corner
	photons float64   // share of the electric power that is light on plants
	layout  lighting.Layout
	bed     lighting.Bed
}

// Light maps the direct light of the lamps on the lowest trays.
func (h *House) Light(sun Sun) (*Light, error) {
	p := h.Plan
	if p.Lights == nil {
		return nil, nil
	}
	targeted := p.Lights.KnownFrom == "target"
	p, m, err := Counted(p)
	if err != nil {
		return nil, fmt.Errorf("lights: %w", err)
	}
	q := p.Lights
	c := fromplan.Crop(p)
	s, layout := m.Statistics, m.Layout
	l := &Light{Crop: c.Name, Least: some(c.Least), Wanted: some(c.Target), Most: some(c.Most), Lamps: len(layout) * q.Tiers, layout: layout, bed: fromplan.Bed(p)}
	l.Targeted = targeted
	l.GridAlong, l.GridAcross, l.PPFD, l.EvenWanted = m.Along, m.Across, m.PPFD, q.Evenness
	l.Minimum, l.Mean, l.Maximum, l.Even = s.Minimum, s.Mean, s.Maximum, s.U0
	run := hours(q.Photoperiod)
	l.energy(p, run)
	if beam, ok := layout[0].Light.(lighting.CosinePower); ok {
		l.Spot = some(beam.SpotDiameter(q.HeightAboveTrays, 0.5))
	}
	l.Rows, l.PerRow = q.Rows, q.PerRow
	l.Along, l.Across = q.BedLength/float64(q.PerRow), q.BedWidth/float64(q.Rows)
	if l.DLI = lighting.DLI(l.Mean, run); math.IsNaN(l.DLI) {
		return nil, fmt.Errorf("lights: %.0f µmol/(m² s) for lights.photoperiod_h is more than any day's light", l.Mean)
	}
	l.Daylight, l.Both = sun.Daylight, l.DLI+sun.Daylight
	if t, err := lighting.LightingTime(max(0, l.asked()-l.Daylight), l.Mean); err == nil && t <= 24*time.Hour {
		l.HoursWanted = some(t.Hours())
	}
	return l, nil
}

// energy counts the power of all tiers, each lamp at its group's level and with
// what its driver draws idle.
func (l *Light) energy(p *plan.Plan, run time.Duration) {
	q := p.Lights
	levels := fromplan.Levels(p)
	var light float64
	for _, f := range l.layout {
		v := levels[f.Group]
		if v > 0 {
			l.Power += q.Idle + v*(q.Power-q.Idle)
		}
		light += v * f.Light.Flux() / q.Maintenance / q.PhotonsOfLamp
	}
	tiers := float64(q.Tiers)
	l.Power *= tiers
	l.Heat = l.Power // light that plants and floor take up ends as heat in the house
	if l.Power > 0 {
		l.photons = min(1, light*tiers/l.Power)
	}
	l.PowerDensity = l.Power / (tiers * q.BedLength * q.BedWidth)
	l.CostPerDay = l.Power / 1000 * run.Hours() * p.Prices.ElectricityPerKWh
}

// asked is the light that the crop is planned for, mol/(m² d).
func (l *Light) asked() float64 {
	switch {
	case l.Wanted != nil:
		return *l.Wanted
	case l.Least != nil:
		return *l.Least
	}
	return 0
}

func hours(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }

// Bed is the bed of the map.
func (l *Light) Bed() lighting.Bed { return l.bed }
