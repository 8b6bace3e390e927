package plan

// Ground is the section ground: under and beside the house.
type Ground struct {
	Soil                 string         `json:"soil"`                          // clay or silt, sand or gravel, rock or own; what it stands in
	SoilConductivity     *float64       `json:"soil_conductivity_w_m_k"`       // W/(m K), 0.1 to 5, nil when not given; of own soil, or measured: 0.3 dry sand to 2.5 wet
	SoilHeatCapacity     *float64       `json:"soil_heat_capacity_mj_m3_k"`    // MJ/(m³ K), 0.3 to 5, nil when not given; of own soil, or measured
	FloorResistance      float64        `json:"floor_resistance_m2_k_w"`       // m² K/W, 0 to 20; of paving and insulation on the whole floor
	WallThickness        float64        `json:"wall_thickness_m"`              // m, 0 to 2; of the walls where they meet the ground
	BuriedWallResistance float64        `json:"buried_wall_resistance_m2_k_w"` // m² K/W, 0 to 20; of the walls below ground
	EdgeBridge           float64        `json:"edge_bridge_w_m_k"`             // W/(m K), -1 to 3; thermal bridge where floor and wall meet
	EdgeInsulation       EdgeInsulation `json:"edge_insulation"`               // of a floor that is not dug in
}

// EdgeInsulation is the section ground.edge_insulation: of a floor that is not dug in.
type EdgeInsulation struct {
	Lies         string  `json:"lies"`               // none, flat or upright; flat along the floor, or upright along the foundation
	Width        float64 `json:"width_m"`            // m, 0.05 to 5; how far it reaches
	Thickness    float64 `json:"thickness_m"`        // m, 0.005 to 0.5; of the board
	Conductivity float64 `json:"conductivity_w_m_k"` // W/(m K), 0.01 to 0.5; of the board
}

// Floor is the section floor: the floor that crop and air see.
type Floor struct {
	Wet         float64 `json:"wet_fraction"`         // fraction, 0 to 1; of the floor that evaporates
	Resistance  float64 `json:"resistance_s_m"`       // s/m, 0 to 100000; of the soil's top to vapour; 0 for free water
	Absorptance float64 `json:"absorptance_fraction"` // fraction, 0 to 1; of the sun that reaches it
	Conductance float64 `json:"conductance_w_m2_k"`   // W/(m² K), 0 to 100; from the surface to the ground
}

// SetPoints is the section set_points: what the grower asks for.
type SetPoints struct {
	DayFrom     float64   `json:"day_from_h"`   // h, 0 to 24; the day begins
	DayUntil    float64   `json:"day_until_h"`  // h, 0 to 24; the night begins
	WinterNight NightHeld `json:"winter_night"` // held inside on the night that the heater is sized for
	Day         DaySet    `json:"day"`          // from day_from_h to day_until_h
	Night       NightSet  `json:"night"`        // the rest of the day
	Limits      Limits    `json:"limits"`       // what the crop bears
}

// NightHeld is the section set_points.winter_night: held inside on the night that the heater is sized for.
type NightHeld struct {
	Temperature      float64 `json:"temperature_c"`     // °C, 1 to 35; inside air
	RelativeHumidity float64 `json:"relative_humidity"` // fraction, 0.1 to 0.99; inside, on a wet night
}

// DaySet is the section set_points.day: from day_from_h to day_until_h.
type DaySet struct {
	Temperature     float64 `json:"temperature_c"`      // °C, 1 to 40; the heater holds it
	VentTemperature float64 `json:"vent_temperature_c"` // °C, 2 to 45; the vents begin to open
}

// NightSet is the section set_points.night: the rest of the day.
type NightSet struct {
	Temperature     float64 `json:"temperature_c"`      // °C, 1 to 40; the heater holds it
	VentTemperature float64 `json:"vent_temperature_c"` // °C, 2 to 45; the vents begin to open
}

// Limits is the section set_points.limits: what the crop bears.
type Limits struct {
	RelativeHumidity float64 `json:"relative_humidity"` // fraction, 0.1 to 0.99; inside, for long
	Hot              float64 `json:"hot_c"`             // °C, 10 to 50; inside air above which hours count as too hot
	Chill            float64 `json:"chill_c"`           // °C, -5 to 30; coldest air that may fall on the crop
	Frost            float64 `json:"frost_c"`           // °C, -10 to 10; inside air that counts as frost
	SummerRise       float64 `json:"summer_rise_k"`     // K, 0.5 to 20; inside over outside at a summer noon
}
