package plan

// Cover is the section cover: what the house is covered with: ready-made covers by name, or own ones.
type Cover struct {
	Roof      string     `json:"roof"`                // of the roof
	SideWalls string     `json:"side_walls"`          // of the walls along the ridge
	EndWalls  string     `json:"end_walls"`           // of the walls across the ridge
	FilmGap   float64    `json:"film_gap_m"`          // m, 0.005 to 0.5; between the two films of a ready-made double film
	Collapsed float64    `json:"collapsed_fraction"`  // fraction, 0 to 0.95; of a ready-made double film that lies film on film
	Frame     float64    `json:"frame_fraction"`      // fraction, 0 to 0.5; that bars and profiles add to the loss of roof and walls
	LightLeft float64    `json:"light_left_fraction"` // fraction, 0.2 to 1; of the light, after dirt, drops and frame
	SunKept   float64    `json:"sun_kept_fraction"`   // fraction, 0.1 to 1; of the sun let in that stays as heat or vapour
	Own       []OwnCover `json:"own"`                 // covers made up from data sheets, for the names above
}

// OwnCover is one of the list cover.own: covers made up from data sheets, for the names above.
type OwnCover struct {
	Name   string   `json:"name"`           // name that roof and walls may use
	Light  *float64 `json:"light_fraction"` // fraction, 0.01 to 1, nil when not given; light that the whole cover lets through, square on; without it calculated from the layers
	Layers []Layer  `json:"layers"`         // from the outside to the inside
}

// Layer is one of the list cover.own[].layers: from the outside to the inside.
type Layer struct {
	Name                  string  `json:"name"`                             // what it is
	Thickness             float64 `json:"thickness_m"`                      // m, 1e-6 to 0.1; of the layer
	Conductivity          float64 `json:"conductivity_w_m_k"`               // W/(m K), 0.001 to 400; of its material
	EmittanceOutward      float64 `json:"emittance_outward_fraction"`       // fraction, 0.01 to 1; of the outer face, for heat radiation
	EmittanceInward       float64 `json:"emittance_inward_fraction"`        // fraction, 0.01 to 1; of the inner face, for heat radiation
	LongWaveTransmittance float64 `json:"long_wave_transmittance_fraction"` // fraction, 0 to 0.98; heat radiation that passes
	LightTransmittance    float64 `json:"light_transmittance_fraction"`     // fraction, 0 to 1; light that passes, square on
	Refractive            float64 `json:"refractive_ratio"`                 // ratio, 1 to 2.5; refractive index
	Openness              float64 `json:"openness_fraction"`                // fraction, 0 to 0.95; holes that let radiation through, as in a screen
	AirLeakage            float64 `json:"air_leakage_m3_s_m2"`              // m³/(s m²), 0 to 0.5; air exchanged through it, as by a screen; none through the outermost
	Gap                   float64 `json:"gap_m"`                            // m, 1e-5 to 2; to the next layer inward; without effect in the last
	GapRibs               float64 `json:"gap_ribs_w_m2_k"`                  // W/(m² K), 0 to 500; of ribs across that gap
	GapCollapsed          float64 `json:"gap_collapsed_fraction"`           // fraction, 0 to 0.95; of the area where the gap has closed
}

// Leakage is the section leakage: air that finds its way when all is shut.
type Leakage struct {
	KnownFrom    string  `json:"known_from"`              // air changes or pressure test; which of the figures below counts
	AirChanges   float64 `json:"air_changes_per_h"`       // 1/h, 0 to 20; in any weather
	At50         float64 `json:"at_50_pa_per_h"`          // 1/h, 0 to 300; air changes in a pressure test at 50 Pa
	Flow         float64 `json:"flow_exponent"`           // exponent, 0.5 to 1; of flow over pressure
	RoofAndFloor float64 `json:"roof_and_floor_fraction"` // fraction, 0 to 1; of the leaks; the rest lies in the walls
}

// Screen is the optional section screen: a thermal screen under the cover.
type Screen struct {
	Name         string     `json:"name"`            // ready-made, or own for the figures below
	DrawnBelow   string     `json:"drawn_below"`     // roof or roof and walls; what it covers
	Drawn        string     `json:"drawn"`           // at night, always or in the cold; when it is closed
	SunBelow     float64    `json:"sun_below_w_m2"`  // W/m², 0 to 1000; it counts as night below this sun outside
	OutsideBelow float64    `json:"outside_below_c"` // °C, -40 to 40; it is drawn in the cold below this outside air
	Gap          float64    `json:"gap_m"`           // m, 0.01 to 2; between cover and screen
	Own          *OwnScreen `json:"own"`             // nil when the house has none
}

// OwnScreen is the optional section screen.own: figures of an own screen.
type OwnScreen struct {
	Thickness             float64 `json:"thickness_m"`                      // m, 1e-6 to 0.05; of the cloth
	Conductivity          float64 `json:"conductivity_w_m_k"`               // W/(m K), 0.01 to 5; of its material
	EmittanceOutward      float64 `json:"emittance_outward_fraction"`       // fraction, 0.01 to 1; of the upper face, for heat radiation
	EmittanceInward       float64 `json:"emittance_inward_fraction"`        // fraction, 0.01 to 1; of the lower face, for heat radiation
	LongWaveTransmittance float64 `json:"long_wave_transmittance_fraction"` // fraction, 0 to 0.98; heat radiation that passes
	Openness              float64 `json:"openness_fraction"`                // fraction, 0 to 0.95; holes that let radiation through
	AirLeakage            float64 `json:"air_leakage_m3_s_m2"`              // m³/(s m²), 0 to 0.5; air exchanged through it
	LightTransmittance    float64 `json:"light_transmittance_fraction"`     // fraction, 0 to 1; light that passes when it is drawn
}
