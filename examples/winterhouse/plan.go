package main

// A plan is what the program reads: every key carries its unit, every number
// its allowed range. All keys must be given.
type plan struct {
	Name     string  `json:"name"`
	Note     string  `json:"note"`
	Site     site    `json:"site"`
	House    house   `json:"house"`
	Cover    cover   `json:"cover"`
	Ground   ground  `json:"ground"`
	Inside   inside  `json:"inside"`
	Heater   heater  `json:"heater"`
	Ridge    ridge   `json:"ridge_return"`
	Storage  storage `json:"heat_storage"`
	Lighting lamps   `json:"lighting"`
	Summer   summer  `json:"summer"`
	Drying   drying  `json:"winter_drying"`
}

type site struct {
	Altitude    float64     `json:"altitude_m" range:"-400 4000"`
	Outside     float64     `json:"outside_design_c" range:"-50 20"`
	OutsideRH   float64     `json:"outside_design_rh" range:"0.05 1"`
	Wind        float64     `json:"wind_at_cover_m_s" range:"0 40"`
	Cloud       float64     `json:"cloud_fraction" range:"0 1"`
	SeasonWind  float64     `json:"season_wind_at_cover_m_s" range:"0 40"`
	SeasonCloud float64     `json:"season_cloud_fraction" range:"0 1"`
	DesignMonth int         `json:"design_month" range:"1 12"`
	MonthlySun  [12]float64 `json:"monthly_sun_mj_m2_d" range:"0 38"`
	MonthlyMean [12]float64 `json:"monthly_mean_c" range:"-50 45"`
}

type house struct {
	Shape       string  `json:"shape" one:"gable|round arch"`
	Span        float64 `json:"span_m" range:"2 30"`
	Length      float64 `json:"length_m" range:"2 200"`
	EaveHeight  float64 `json:"eave_height_m" range:"0 8"`
	RidgeHeight float64 `json:"ridge_height_m" range:"0.5 15"`
	Depth       float64 `json:"depth_m" range:"0 3"`
	Azimuth     float64 `json:"ridge_azimuth_deg" range:"0 360"`
}

type cover struct {
	Roof       string  `json:"roof" one:"single film|infrared film|double film|single glass|twin-wall sheet"`
	SideWalls  string  `json:"side_walls" one:"single film|infrared film|double film|single glass|twin-wall sheet"`
	EndWalls   string  `json:"end_walls" one:"single film|infrared film|double film|single glass|twin-wall sheet"`
	AirChanges float64 `json:"air_changes_per_h" range:"0.05 20"`
	LightLeft  float64 `json:"light_left_by_dirt_drops_and_frame_fraction" range:"0.2 1"`
	DoorArea   float64 `json:"door_area_m2" range:"0 50"`
	DoorU      float64 `json:"door_u_w_m2_k" range:"0.1 10"`
}

type ground struct {
	Soil           string  `json:"soil" one:"clay or silt|sand or gravel|rock"`
	WallThickness  float64 `json:"buried_wall_thickness_m" range:"0.05 1"`
	WallResistance float64 `json:"buried_wall_resistance_m2_k_w" range:"0 10"`
}

type inside struct {
	Temperature float64 `json:"temperature_c" range:"1 35"`
	RH          float64 `json:"relative_humidity" range:"0.1 0.99"`
}

type heater struct {
	Power        float64 `json:"power_w" range:"500 2e6"`
	Flow         float64 `json:"flow_m3_s" range:"0.02 100"`
	Efficiency   float64 `json:"efficiency_lower_heating_value" range:"0.3 1.08"`
	Fuel         string  `json:"fuel" one:"wood pellets|wood|natural gas|propane|light oil"`
	FuelPrice    float64 `json:"fuel_price_per_kg" range:"0 100"`
	SeasonInside float64 `json:"season_temperature_c" range:"1 35"`
	FlowBasis    string  `json:"flow_basis" one:"fan inlet|standard air|outlet"`
}

type ridge struct {
	Rising float64 `json:"heat_rising_past_crop_fraction" range:"0 1"`
	Mixing float64 `json:"mixing_flow_m3_s" range:"0 50"`
}

type storage struct {
	Structure      float64 `json:"structure_kj_k" range:"1 1e6"`
	SoilDepth      float64 `json:"soil_depth_m" range:"0.02 1"`
	AirToStructure float64 `json:"air_to_structure_w_m2_k" range:"0.5 20"`
	AirToSoil      float64 `json:"air_to_soil_w_m2_k" range:"0.5 20"`
}

type lamps struct {
	Rows        int     `json:"rows" range:"1 50"`
	PerRow      int     `json:"fixtures_per_row" range:"1 500"`
	PPF         float64 `json:"ppf_umol_s" range:"1 5000"`
	Power       float64 `json:"power_w" range:"1 2000"`
	Beam        float64 `json:"beam_full_angle_deg" range:"5 160"`
	Height      float64 `json:"height_above_trays_m" range:"0.1 10"`
	BedLength   float64 `json:"bed_length_m" range:"0.3 200"`
	BedWidth    float64 `json:"bed_width_m" range:"0.3 30"`
	Photoperiod float64 `json:"photoperiod_h" range:"0 24"`
	Maintenance float64 `json:"maintenance_factor" range:"0.3 1"`
	Price       float64 `json:"electricity_price_per_kwh" range:"0 10"`
	Currency    string  `json:"currency"`
}

type summer struct {
	Outside       float64 `json:"outside_c" range:"0 50"`
	Sun           float64 `json:"sun_w_m2" range:"0 1200"`
	Wind          float64 `json:"wind_m_s" range:"0 20"`
	Transpiration float64 `json:"transpiration_fraction" range:"0 0.95"`
	AllowedRise   float64 `json:"allowed_rise_k" range:"0.5 20"`
	SideLength    float64 `json:"side_vent_length_m" range:"0 400"`
	SideHeight    float64 `json:"side_vent_height_m" range:"0 4"`
	SideLevel     float64 `json:"side_vent_centre_above_grade_m" range:"0 8"`
	RidgeLength   float64 `json:"ridge_vent_length_m" range:"0 400"`
	RidgeWidth    float64 `json:"ridge_vent_opening_m" range:"0 4"`
	Discharge     float64 `json:"discharge_coefficient" range:"0.05 1"`
	Shelter       string  `json:"shelter" one:"exposed|semi-sheltered|sheltered"`
}

type drying struct {
	Outside   float64 `json:"outside_c" range:"-30 25"`
	OutsideRH float64 `json:"outside_relative_humidity" range:"0.05 1"`
	Released  float64 `json:"vapour_released_kg_h" range:"0 2000"`
	Wanted    float64 `json:"wanted_relative_humidity" range:"0.1 0.99"`
	Hours     float64 `json:"duration_h" range:"0.1 24"`
	Recovery  float64 `json:"heat_recovery_effectiveness" range:"0 0.95"`
}
