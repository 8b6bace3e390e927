package plan

// Heater is the section heater: the air heater.
type Heater struct {
	Kind              string      `json:"kind"`                     // burner, electric or heat pump; what makes the heat; electric heat and heat pump pay the price of electricity
	Power             float64     `json:"power_w"`                  // W, 100 to 5000000; useful heat at full load
	Flow              float64     `json:"flow_m3_s"`                // m³/s, 0.005 to 200; of air through the heater
	FlowBasis         string      `json:"flow_basis"`               // fan inlet, standard air or outlet; where the flow is measured
	Efficiency        float64     `json:"efficiency_fraction"`      // fraction, 0.3 to 1.08; useful heat over the fuel's lower heating value, at full load
	Standby           float64     `json:"standby_fraction"`         // fraction, 0 to 0.1; of the fuel power lost while ready and not firing
	SeasonPerformance float64     `json:"season_performance_ratio"` // ratio, 0.8 to 8; heat pump: heat over electricity in a season
	Electric          float64     `json:"electric_w"`               // W, 0 to 500000; burner, controls and pumps besides the fan
	TakesAirFrom      string      `json:"takes_air_from"`           // low in the house or the ridge; where the air goes in
	Fuel              Fuel        `json:"fuel"`                     // of a burner; give one price, and the heating value in the same measure where it is known
	RidgeReturn       RidgeReturn `json:"ridge_return"`             // warm air under the ridge
	MixingFans        MixingFans  `json:"mixing_fans"`              // fans that stir the house, for comparison
}

// Fuel is the section heater.fuel: of a burner; give one price, and the heating value in the same measure where it is known.
type Fuel struct {
	Name              string   `json:"name"`                // wood pellets, wood, straw, natural gas, propane, light oil, hard coal or own; what it burns
	Water             *float64 `json:"water_fraction"`      // fraction, 0 to 0.6, nil when not given; moisture of wood and straw, of the whole mass
	PricePerKg        *float64 `json:"price_per_kg"`        // currency per kg, 0 to 1000, nil when not given; price by mass
	PricePerM3        *float64 `json:"price_per_m3"`        // currency per m³, 0 to 10000, nil when not given; price of gas by volume
	PricePerL         *float64 `json:"price_per_l"`         // currency per L, 0 to 1000, nil when not given; price by litre
	PricePerKWh       *float64 `json:"price_per_kwh"`       // currency per kWh, 0 to 100, nil when not given; price by heat, lower heating value
	HeatingValuePerKg *float64 `json:"heating_value_mj_kg"` // MJ/kg, 1 to 125, nil when not given; lower; without it that of the fuel named
	HeatingValuePerM3 *float64 `json:"heating_value_mj_m3"` // MJ/m³, 1 to 150, nil when not given; lower, of gas at 0 °C and sea level
	HeatingValuePerL  *float64 `json:"heating_value_mj_l"`  // MJ/L, 1 to 60, nil when not given; lower, of the liquid
}

// RidgeReturn is the section heater.ridge_return: warm air under the ridge.
type RidgeReturn struct {
	KnownFrom string  `json:"known_from"`      // computed or measured; whether the difference is calculated or measured
	Rising    float64 `json:"rising_fraction"` // fraction, 0 to 1; of the heat that rises past the crop
	Mixing    float64 `json:"mixing_m3_s"`     // m³/s, 0 to 500; exchanged between the layers by itself
	Measured  float64 `json:"measured_k"`      // K, -20 to 20; ridge over crop, measured
}

// MixingFans is the section heater.mixing_fans: fans that stir the house, for comparison.
type MixingFans struct {
	Flow               float64 `json:"flow_m3_s"`                  // m³/s, 0 to 500; moved between the layers
	Power              float64 `json:"power_w"`                    // W, 0 to 50000; electricity
	Film               float64 `json:"film_factor"`                // factor, 1 to 2; by which moving air raises the upper layer's loss
	WorthOfElectricity float64 `json:"worth_of_electricity_ratio"` // ratio, 0.5 to 10; joules of heat that a joule of electricity is worth
}

// EmergencyHeat is the optional section emergency_heat: what bridges a failure.
type EmergencyHeat struct {
	Power      float64 `json:"power_w"`     // W, 0 to 1000000; useful heat
	NeedsMains bool    `json:"needs_mains"` // whether a power failure stops it
	Lasts      float64 `json:"lasts_h"`     // h, 0.1 to 240; how long its fuel lasts
}

// HeatStorage is the section heat_storage: what holds heat in the house.
type HeatStorage struct {
	Structure      float64      `json:"structure_kj_k"`          // kJ/K, 1 to 1000000; frame, benches, pots, plants
	AirToStructure float64      `json:"air_to_structure_w_m2_k"` // W/(m² K), 0.5 to 100; for each m² of floor, with the fan
	SoilDepth      float64      `json:"soil_depth_m"`            // m, 0.02 to 1; of the soil that follows within a night
	AirToSoil      float64      `json:"air_to_soil_w_m2_k"`      // W/(m² K), 0.5 to 20; for each m² of floor, with the fan
	StillAir       float64      `json:"still_air_fraction"`      // fraction, 0.05 to 1; of both exchanges, left when the fan stands still
	Water          []WaterStore `json:"water"`                   // tanks, barrels, walls of water in the house
}

// WaterStore is one of the list heat_storage.water: tanks, barrels, walls of water in the house.
type WaterStore struct {
	Name     string  `json:"name"`            // what reports call it
	Volume   float64 `json:"volume_m3"`       // m³, 0.001 to 1000; of the water
	Surface  float64 `json:"surface_m2"`      // m², 0.01 to 10000; between water and air
	Exchange float64 `json:"exchange_w_m2_k"` // W/(m² K), 0.5 to 100; from air to water
}

// SoilStore is the optional section soil_store: air tubes in the soil under the house.
type SoilStore struct {
	Diameter      float64 `json:"diameter_m"`              // m, 0.03 to 1; inside
	Length        float64 `json:"length_m"`                // m, 0.5 to 400; of a tube
	Spacing       float64 `json:"spacing_m"`               // m, 0.05 to 5; from axis to axis
	Tubes         int     `json:"tubes_count"`             // count, 1 to 500; in parallel
	Depth         float64 `json:"depth_m"`                 // m, 0.1 to 5; under the floor
	Flow          float64 `json:"flow_m3_s"`               // m³/s, 0.001 to 100; through all tubes
	FanEfficiency float64 `json:"fan_efficiency_fraction"` // fraction, 0.01 to 1; from electricity to air power
	Fittings      float64 `json:"fittings_factor"`         // factor, 0 to 50; sum of the loss factors of a tube
	Roughness     float64 `json:"roughness_m"`             // m, 0 to 0.02; of its wall
}
