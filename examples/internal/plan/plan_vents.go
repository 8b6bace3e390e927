package plan

// Vent is one of the list vents: openings for air.
type Vent struct {
	Name                  string   `json:"name"`                            // what reports call it
	Place                 string   `json:"place"`                           // left side, right side, near end, far end, ridge, left roof or right roof; where it is
	Kind                  string   `json:"kind"`                            // plain opening, roll-up, hinged flap or louvre; how it opens
	MovedBy               string   `json:"moved_by"`                        // hand, motor or wax cylinder; what moves it
	Length                float64  `json:"length_m"`                        // m, 0.05 to 400; along the wall or ridge
	Height                float64  `json:"height_m"`                        // m, 0.02 to 8; of the opening; of a flap from its hinge to the free edge
	Centre                float64  `json:"centre_above_ground_m"`           // m, -4 to 20; middle of the opening above the ground outside
	Hinge                 string   `json:"hinge"`                           // top, bottom or side; of a flap
	Angle                 float64  `json:"angle_deg"`                       // degree, 0 to 90; of a flap or of slats, wide open
	Slats                 int      `json:"slats_count"`                     // count, 1 to 200; of a louvre
	SlatThickness         float64  `json:"slat_thickness_m"`                // m, 0 to 0.1; of a louvre
	Discharge             float64  `json:"discharge_factor"`                // factor, 0.05 to 1; of the free opening
	PressureCoefficient   *float64 `json:"pressure_coefficient"`            // ratio, -3 to 2, nil when not given; of the wind; without it by the exposure
	WellArea              *float64 `json:"well_area_m2"`                    // m², 0.01 to 100, nil when not given; narrowest section of the well that leads air to a vent below ground
	InsectScreenPorosity  *float64 `json:"insect_screen_porosity_fraction"` // fraction, 0.05 to 0.95, nil when not given; open share of an insect screen; without it there is none
	InsectScreenThickness float64  `json:"insect_screen_thickness_m"`       // m, 1e-5 to 0.01; of its cloth
}

// VentControl is the section vent_control: who moves the vents, and when.
type VentControl struct {
	By        string  `json:"by"`                 // hand or temperature; by hand twice a day, or by the inside temperature
	First     string  `json:"first"`              // ridge, side or together; which vents open first
	Band      float64 `json:"band_k"`             // K, 0.1 to 30; above the set-point over which they open
	DeadBand  float64 `json:"dead_band_fraction"` // fraction, 0 to 1; smaller moves are not made
	Step      float64 `json:"step_fraction"`      // fraction, 0 to 1; the drive stops at multiples of it; 0 anywhere
	Least     float64 `json:"least_fraction"`     // fraction, 0 to 1; always open
	Most      float64 `json:"most_fraction"`      // fraction, 0 to 1; at most open
	WindLow   float64 `json:"wind_low_m_s"`       // m/s, 0 to 45; above which they are lowered
	WindHigh  float64 `json:"wind_high_m_s"`      // m/s, 0 to 45; from which they stand at the next figure
	InWind    float64 `json:"in_wind_fraction"`   // fraction, 0 to 1; at most open in high wind
	InRain    float64 `json:"in_rain_fraction"`   // fraction, 0 to 1; at most open in rain
	HandFrom  float64 `json:"hand_from_h"`        // h, 0 to 24; opened by hand
	HandUntil float64 `json:"hand_until_h"`       // h, 0 to 24; shut by hand
	Hand      float64 `json:"hand_fraction"`      // fraction, 0 to 1; as far as that
}

// VentFan is one of the list vent_fans: fans that blow air in or out.
type VentFan struct {
	Name   string  `json:"name"`                  // what reports call it
	Blows  string  `json:"blows"`                 // out or in; which way
	Place  string  `json:"place"`                 // left side, right side, near end, far end or ridge; where it is
	Flow   float64 `json:"flow_m3_s"`             // m³/s, 0.005 to 200; at no pressure difference
	Slope  float64 `json:"slope_m3_s_pa"`         // m³/(s Pa), 0 to 10; flow lost for each Pa
	Power  float64 `json:"power_w"`               // W, 0 to 50000; electricity
	Centre float64 `json:"centre_above_ground_m"` // m, -4 to 20; above the ground outside
}

// Shade is the optional section shade: against the summer sun.
type Shade struct {
	Place         string  `json:"place"`                  // outside screen, whitewash or inside screen; where it lies
	Drawn         float64 `json:"drawn_fraction"`         // fraction, 0 to 1; of the cover that it shades
	Transmittance float64 `json:"transmittance_fraction"` // fraction, 0 to 1; of the sun
	Reflectance   float64 `json:"reflectance_fraction"`   // fraction, 0 to 1; of the sun
	AboveSun      float64 `json:"above_sun_w_m2"`         // W/m², 0 to 1300; it is drawn above this sun outside
}

// Fog is the optional section fog: water sprayed into the air.
type Fog struct {
	Spray      float64 `json:"spray_g_m2_h"`        // g/(m² h), 0 to 2000; on each m² of floor
	Evaporated float64 `json:"evaporated_fraction"` // fraction, 0 to 1; before it settles
	Water      float64 `json:"water_c"`             // °C, 1 to 60; of the water
	AboveSun   float64 `json:"above_sun_w_m2"`      // W/m², 0 to 1300; it sprays above this sun outside
}

// Pads is the optional section pads: wet pads that incoming air is drawn through.
type Pads struct {
	Area       float64 `json:"area_m2"`             // m², 0.05 to 1000; of their face
	Efficiency float64 `json:"efficiency_fraction"` // fraction, 0.1 to 0.99; of the way to the wet bulb
	Speed      float64 `json:"speed_m_s"`           // m/s, 0.1 to 3; at the face, where that was measured
	Salt       float64 `json:"salt_ratio"`          // ratio, 1.1 to 100; in the sump over the supply
}

// WinterDrying is the section winter_drying: damp air vented on a winter morning.
type WinterDrying struct {
	Vapour       float64 `json:"vapour_kg_h"`            // kg/h, 0 to 5000; set free by crop and soil on such a morning
	Lasts        float64 `json:"lasts_h"`                // h, 0.1 to 24; how long the venting lasts
	HeatRecovery float64 `json:"heat_recovery_fraction"` // fraction, 0 to 0.95; of a heat exchanger between the two airs
}

// Prices is the section prices: besides the heater's fuel.
type Prices struct {
	ElectricityPerKWh float64 `json:"electricity_per_kwh"`   // currency per kWh, 0 to 100; all year
	WaterPerM3        float64 `json:"water_per_m3"`          // currency per m³, 0 to 1000; with its drain
	SecondFilmPerM2   float64 `json:"second_film_per_m2"`    // currency per m², 0 to 10000; a second film, per m² of cover
	ScreenPerM2       float64 `json:"screen_per_m2"`         // currency per m², 0 to 10000; a screen with its drive, per m² of floor
	DiggingPerM3      float64 `json:"digging_per_m3"`        // currency per m³, 0 to 10000; digging and walls, per m³ below ground
	EdgeInsulationPer float64 `json:"edge_insulation_per_m"` // currency per m, 0 to 10000; per m of edge
	RidgeReturn       float64 `json:"ridge_return"`          // currency, 0 to 1000000; a duct from the ridge to the heater
	VentsPerM2        float64 `json:"vents_per_m2"`          // currency per m², 0 to 10000; more vents with their drives, per m² of opening
	ShadePerM2        float64 `json:"shade_per_m2"`          // currency per m², 0 to 10000; a shade with its drive, per m² of floor
	FogPerM2          float64 `json:"fog_per_m2"`            // currency per m², 0 to 10000; fog with its pump, per m² of floor
	VentFansPerM3S    float64 `json:"vent_fans_per_m3_s"`    // currency per m³/s, 0 to 100000; fans in a wall, per m³/s of their flow
	PadsPerM2         float64 `json:"pads_per_m2"`           // currency per m², 0 to 10000; wet pads with pump and gutter, per m² of their face
	Interest          float64 `json:"interest_fraction"`     // fraction, 0 to 0.5; a year, on money spent
}

// Assumptions is the section assumptions: switches for repeating a published example; leave them out for a real house.
type Assumptions struct {
	RoofU           *float64 `json:"roof_u_w_m2_k"`            // W/(m² K), 0.05 to 30, nil when not given; in place of the roof's own
	SideWallsU      *float64 `json:"side_walls_u_w_m2_k"`      // W/(m² K), 0.05 to 30, nil when not given; in place of the side walls' own
	EndWallsU       *float64 `json:"end_walls_u_w_m2_k"`       // W/(m² K), 0.05 to 30, nil when not given; in place of the end walls' own
	EdgeLoss        *float64 `json:"edge_loss_w_m_k"`          // W/(m K), 0 to 10, nil when not given; per m of perimeter, in place of the ground's own
	CoverArea       *float64 `json:"cover_area_m2"`            // m², 1 to 200000, nil when not given; of all that stands against the air, in place of the shape's own; each part is changed in proportion
	AirHeatCapacity *float64 `json:"air_heat_capacity_j_m3_k"` // J/(m³ K), 900 to 1500, nil when not given; of leaking air, in place of the real air's
	SkyAsColdAsAir  bool     `json:"sky_as_cold_as_air"`       // no extra loss to the sky
	DryCover        bool     `json:"dry_cover"`                // no water on the cover
	NoGroundLoss    bool     `json:"no_ground_loss"`           // nothing into the ground
	NoFrame         bool     `json:"no_frame"`                 // frame and doors lose as the cover does
}
