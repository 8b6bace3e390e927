package plan

// Lights is the optional section lights: lamps over one bed of trays.
type Lights struct {
	KnownFrom        string       `json:"known_from"`                  // count or target; whether rows are given, or found for the target
	BedLength        float64      `json:"bed_length_m"`                // m, 0.3 to 400; of the bed, along the ridge
	BedWidth         float64      `json:"bed_width_m"`                 // m, 0.2 to 60; of the bed, across the house
	Rows             int          `json:"rows_count"`                  // count, 1 to 50; along the bed
	PerRow           int          `json:"per_row_count"`               // count, 1 to 500; lamps in a row
	Target           float64      `json:"target_umol_m2_s"`            // µmol/(m² s), 1 to 2000; mean at harvest on the trays
	Evenness         float64      `json:"evenness_fraction"`           // fraction, 0.1 to 0.99; wanted, least over mean
	PPF              float64      `json:"ppf_umol_s"`                  // µmol/s, 1 to 10000; photons of one lamp
	Power            float64      `json:"power_w"`                     // W, 1 to 5000; of one lamp with its driver
	Idle             float64      `json:"idle_w"`                      // W, 0 to 500; drawn by a driver however far it is dimmed
	Beam             float64      `json:"beam_deg"`                    // degree, 5 to 170; full angle at half intensity
	LampLength       float64      `json:"lamp_length_m"`               // m, 0 to 10; of a lamp, along its row; 0 for a point
	PhotometricFile  string       `json:"photometric_file"`            // photometric file of LM-63, in place of the beam
	TiltFile         string       `json:"tilt_file"`                   // file of the lamp's tilt data, when the photometric file asks for one
	SpectrumFile     string       `json:"spectrum_file"`               // file of nm and W/nm, a pair a line, in place of the figure below
	PhotonsPerLumen  *float64     `json:"photons_per_lumen_umol_s_lm"` // µmol/(s lm), 0.003 to 0.1, nil when not given; with a photometric file, in place of a spectrum
	PhotonsOfLamp    float64      `json:"photons_of_lamp_umol_j"`      // µmol/J, 3 to 7; photons in a joule of a lamp's light
	TraysAboveFloor  float64      `json:"trays_above_floor_m"`         // m, 0 to 5; of the lowest trays
	HeightAboveTrays float64      `json:"height_above_trays_m"`        // m, 0.05 to 10; of the lamps
	Tiers            int          `json:"tiers_count"`                 // count, 1 to 20; beds above one another, each with its lamps
	TierRise         float64      `json:"tier_rise_m"`                 // m, 0.2 to 5; from tier to tier
	Photoperiod      float64      `json:"photoperiod_h"`               // h, 0 to 24; time lit in a day
	From             float64      `json:"from_h"`                      // h, 0 to 24; time of day from which lamps may burn
	OffAbove         float64      `json:"off_above_umol_m2_s"`         // µmol/(m² s), 0 to 5000; daylight on the trays above which they are off
	Maintenance      float64      `json:"maintenance_factor"`          // factor, 0.3 to 1; light left at harvest
	Reflectance      float64      `json:"reflectance_fraction"`        // fraction, 0 to 0.9; of walls, roof and floor
	Groups           []LightGroup `json:"groups"`                      // rows that are dimmed together; without them all burn fully
}

// LightGroup is one of the list lights.groups: rows that are dimmed together; without them all burn fully.
type LightGroup struct {
	Name  string    `json:"name"`           // what reports call it
	Rows  []float64 `json:"rows"`           // number, 1 to 50; rows in it, counted from 1
	Level float64   `json:"level_fraction"` // fraction, 0 to 1; of full output
}
