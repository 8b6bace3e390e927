package main

// found is a map's figures in JSON.
type found struct {
	Height  float64 `json:"height_above_trays_m"`
	Rows    int     `json:"rows_count"`
	PerRow  int     `json:"per_row_count"`
	Mean    float64 `json:"mean_umol_m2_s"`
	Minimum float64 `json:"minimum_umol_m2_s"`
	Maximum float64 `json:"maximum_umol_m2_s"`
	Even    float64 `json:"minimum_over_mean_ratio"`
	Power   float64 `json:"power_w"`
	Enough  bool    `json:"enough"`
}

// designed is the layout that -design found.
type designed struct {
	Found    bool    `json:"found"`
	Why      string  `json:"why_not,omitempty"`
	Rows     int     `json:"rows_count"`
	PerRow   int     `json:"per_row_count"`
	Height   float64 `json:"height_above_trays_m"`
	SpacingX float64 `json:"spacing_along_m"`
	SpacingY float64 `json:"spacing_across_m"`
	Mean     float64 `json:"mean_umol_m2_s"`
	Least    float64 `json:"minimum_umol_m2_s"`
	Power    float64 `json:"power_w"`
}

// data is the answer in JSON.
func (r *result) data() any {
	of := func(v variant) found {
		return found{v.height, v.rows, v.perRow, v.stats.Mean, v.stats.Minimum, v.stats.Maximum, v.stats.U0, v.power, r.enough(v.stats)}
	}
	l := r.plan.Lights
	d := struct {
		Map       found     `json:"map"`
		Wanted    float64   `json:"wanted_umol_m2_s"` // 0: none
		Bed       float64   `json:"photons_on_bed_fraction"`
		Aisle     float64   `json:"photons_on_aisles_fraction"`
		Walls     float64   `json:"photons_on_walls_and_roof_fraction"`
		Reflected float64   `json:"reflected_adds_umol_m2_s"`
		DLI       float64   `json:"lamps_mol_m2_d"`
		Both      float64   `json:"with_daylight_mol_m2_d"`
		Along     int       `json:"map_points_along_count"`
		Across    int       `json:"map_points_across_count"`
		Points    []float64 `json:"map_umol_m2_s"` // rows along the bed, from its near left corner
		Heights   []found   `json:"other_heights"`
		Others    []found   `json:"other_rows"`
		Design    *designed `json:"design"` // null: not asked for
	}{Map: of(variant{l.HeightAboveTrays, l.Rows, l.PerRow, r.stats, r.light.Power}), Wanted: r.wanted(), Bed: r.shares.Bed, Aisle: r.shares.Aisle, Walls: r.shares.Walls,
		Reflected: r.bounces, DLI: r.light.DLI, Both: r.light.Both, Along: r.light.GridAlong, Across: r.light.GridAcross, Points: r.light.PPFD}
	for _, v := range r.heights {
		d.Heights = append(d.Heights, of(v))
	}
	for _, v := range r.others {
		d.Others = append(d.Others, of(v))
	}
	if x := r.design; x != nil {
		d.Design = &designed{x.none == "", x.none, x.Rows, x.Columns, x.Height, x.SpacingX, x.SpacingY, x.Harvest.Mean, x.Least, x.Power}
	}
	return d
}
