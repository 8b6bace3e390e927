package plan

// House is the section house: shape and size; heights are above the ground outside.
type House struct {
	Shape        string    `json:"shape"`             // gable, uneven gable, round arch, pointed arch or lean-to; cross-section of a bay
	Span         float64   `json:"span_m"`            // m, 1 to 60; width of one bay, eave to eave, or eave to back wall
	Length       float64   `json:"length_m"`          // m, 1 to 400; along the ridge
	EaveHeight   float64   `json:"eave_height_m"`     // m, 0 to 10; where roof and side wall meet
	RidgeHeight  float64   `json:"ridge_height_m"`    // m, 0.5 to 20; top of the roof, or of a lean-to's back wall
	Depth        float64   `json:"depth_m"`           // m, 0 to 4; floor below the ground outside
	RidgeAzimuth float64   `json:"ridge_azimuth_deg"` // degree, 0 to 360; direction of the ridge, clockwise from north; left and right are seen along it, and a lean-to's back wall is on the left
	RidgeOffset  float64   `json:"ridge_offset_m"`    // m, 0.1 to 59.9; uneven gable: ridge from the left eave
	RidgeSlope   float64   `json:"ridge_slope_deg"`   // degree, 0 to 80; pointed arch: slope of the arcs where they meet
	ArchStrips   int       `json:"arch_strips_count"` // count, 1 to 30; arches: flat strips that stand for each half
	Bays         int       `json:"bays_count"`        // count, 1 to 200; side by side
	GutterWidth  float64   `json:"gutter_width_m"`    // m, 0 to 1; between two bays
	DwarfWall    DwarfWall `json:"dwarf_wall"`        // an opaque wall all round under the cover
	BackWall     BackWall  `json:"back_wall"`         // of a lean-to
	Annexes      []Annex   `json:"annexes"`           // rooms built on, as a lobby or a plant room
	Doors        []Door    `json:"doors"`             // doors and gates
}

// DwarfWall is the section house.dwarf_wall: an opaque wall all round under the cover.
type DwarfWall struct {
	Height       float64 `json:"height_m"`           // m, 0 to 5; 0 for none
	Thickness    float64 `json:"thickness_m"`        // m, 0.005 to 1; of the wall
	Conductivity float64 `json:"conductivity_w_m_k"` // W/(m K), 0.015 to 60; of the wall: 1.35 concrete, 0.13 softwood
}

// BackWall is the section house.back_wall: of a lean-to.
type BackWall struct {
	BehindIt     string  `json:"behind_it"`          // heated building or outside air; what the wall stands against
	Thickness    float64 `json:"thickness_m"`        // m, 0.005 to 1; of a wall against the outside air
	Conductivity float64 `json:"conductivity_w_m_k"` // W/(m K), 0.015 to 60; of it: 0.77 brick
}

// Annex is one of the list house.annexes: rooms built on, as a lobby or a plant room.
type Annex struct {
	Name             string   `json:"name"`               // what reports and doors call it
	Use              string   `json:"use"`                // lobby, plant room or store; what it is for
	Place            string   `json:"place"`              // near end, far end, right side or left side; wall that it stands at; the ridge points to the far end
	Width            float64  `json:"width_m"`            // m, 0.3 to 400; along that wall
	Reach            float64  `json:"reach_m"`            // m, 0.3 to 60; away from it
	High             float64  `json:"high_m"`             // m, 0.3 to 20; its roof at the house, above the ground outside
	Low              float64  `json:"low_m"`              // m, 0.3 to 20; its roof at the outer wall
	Depth            float64  `json:"depth_m"`            // m, 0 to 4; its floor below the ground outside
	Cover            string   `json:"cover"`              // of its roof and walls
	PartitionU       float64  `json:"partition_u_w_m2_k"` // W/(m² K), 0.1 to 10; of the wall shared with the house
	AirChanges       float64  `json:"air_changes_per_h"`  // 1/h, 0 to 30; with the outside
	RelativeHumidity float64  `json:"relative_humidity"`  // fraction, 0.05 to 1; in it
	HeatedTo         *float64 `json:"heated_to_c"`        // °C, -5 to 40, nil when not given; without it the annex is not heated
}

// Door is one of the list house.doors: doors and gates.
type Door struct {
	Name           string  `json:"name"`           // what reports call it
	Place          string  `json:"place"`          // near end, far end, right side or left side; wall that it is in
	Width          float64 `json:"width_m"`        // m, 0.4 to 8; of the opening
	Height         float64 `json:"height_m"`       // m, 0.4 to 8; of the opening
	Sill           float64 `json:"sill_m"`         // m, -4 to 5; lower edge above the ground outside, negative below
	U              float64 `json:"u_w_m2_k"`       // W/(m² K), 0.1 to 10; of the closed door
	OpeningsPerDay float64 `json:"openings_per_d"` // 1/d, 0 to 2000; passages in a day
	Open           float64 `json:"open_s"`         // s, 0 to 36000; time that it stands open at each
	Lobby          string  `json:"lobby"`          // name of the annex that it opens into
}
