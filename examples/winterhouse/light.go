package main

import (
	"fmt"
	"math"
	"time"

	"cloche.example/lighting"
)

type light struct {
	Minimum  float64 `json:"minimum_umol_m2_s"`
	Mean     float64 `json:"mean_umol_m2_s"`
	Maximum  float64 `json:"maximum_umol_m2_s"`
	U0       float64 `json:"minimum_over_mean"`
	Spot     float64 `json:"spot_diameter_m"`
	AlongRow float64 `json:"spacing_along_row_m"`
	Across   float64 `json:"spacing_between_rows_m"`
	Meet     bool    `json:"spots_meet"`
	DLI      float64 `json:"dli_lamps_mol_m2_d"`
	DLIAll   float64 `json:"dli_with_daylight_mol_m2_d"`
	Power    float64 `json:"electric_power_w"`
	Heat     float64 `json:"heat_into_house_w"`
	Cost     float64 `json:"cost_per_day"`
	cautions []string
}

// photonsPerJoule of a white LED spectrum in µmol/J, from memory.
const photonsPerJoule = 4.7

// lightOf maps the lamps; daylight on the trays is in mol/(m² d).
func lightOf(p plan, daylight float64) (light, error) {
	var l light
	q := p.Lighting
	beam, err := lighting.FromBeamAngle(q.PPF*q.Maintenance, q.Beam)
	if err != nil {
		return l, err
	}
	bed := lighting.Bed{Length: q.BedLength, Width: q.BedWidth}
	layout, err := lighting.Rows(lighting.Fixture{Light: beam, Power: q.Power}, bed, q.Height, q.PerRow, q.Rows)
	if err != nil {
		return l, err
	}
	lights, err := lighting.NewLights(layout...)
	if err != nil {
		return l, err
	}
	points, err := bed.GridFor(q.Height)
	if err != nil {
		return l, err
	}
	ppfd, err := lights.MapTo(nil, points)
	if err != nil {
		return l, err
	}
	s, err := lighting.Evenness(ppfd)
	if err != nil {
		return l, err
	}
	run := time.Duration(q.Photoperiod * float64(time.Hour))
	count := float64(q.Rows * q.PerRow)
	e, err := lighting.EnergyInput{Power: count * q.Power, PPF: count * q.PPF, PerJoule: photonsPerJoule, Level: 1, Run: run, Price: q.Price}.Solve()
	if err != nil {
		return l, err
	}
	l = light{Minimum: s.Minimum, Mean: s.Mean, Maximum: s.Maximum, U0: s.U0, Power: e.Power, Heat: e.HeatInside, Cost: e.Cost}
	l.Spot = beam.SpotDiameter(q.Height, 0.5)
	l.AlongRow, l.Across = q.BedLength/float64(q.PerRow), q.BedWidth/float64(q.Rows)
	l.Meet = l.Spot >= l.AlongRow && l.Spot >= l.Across
	l.DLI = lighting.DLI(s.Mean, run)
	if math.IsNaN(l.DLI) {
		return l, fmt.Errorf("the lamps give %.0f µmol/(m² s) for lighting.photoperiod_h, more than any day's light", s.Mean)
	}
	l.DLIAll = l.DLI + daylight
	l.cautions = lighting.Cautions(layout, bed)
	return l, nil
}
