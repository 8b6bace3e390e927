package plan

// Crop is the section crop: what grows, and the water it sets free.
type Crop struct {
	Name            string   `json:"name"`                    // lettuce, spinach, young, basil, cilantro, parsley, kale, radish, tomato, cucumber, pepper, zucchini, strawberry, fruiting vegetables, ornamentals, young plants, lavender, finished pot, African violet or own; its need of light is known by name, or given below
	LeastLight      *float64 `json:"least_light_mol_m2_d"`    // mol/(m² d), 0.5 to 60, nil when not given; light a day, in place of the crop's own figure
	WantedLight     *float64 `json:"wanted_light_mol_m2_d"`   // mol/(m² d), 0.5 to 60, nil when not given; light a day to plan for
	MostLight       *float64 `json:"most_light_mol_m2_d"`     // mol/(m² d), 0.5 to 60, nil when not given; light a day above which more brings nothing
	LeafArea        float64  `json:"leaf_area_ratio"`         // ratio, 0 to 12; leaf area over floor area; 0 for no crop
	Height          float64  `json:"height_m"`                // m, 0.02 to 6; top of the crop above the floor
	LeafWidth       float64  `json:"leaf_width_m"`            // m, 0.002 to 1; mean width of a leaf
	AirSpeed        float64  `json:"air_speed_m_s"`           // m/s, 0.01 to 5; among the leaves
	LightExtinction float64  `json:"light_extinction_ratio"`  // ratio, 0.1 to 1.2; of the sun per unit of leaf area
	SunReflected    float64  `json:"sun_reflected_fraction"`  // fraction, 0 to 0.6; by the leaves
	Stomata         string   `json:"stomata"`                 // tomato or grass; published behaviour that stands for the leaf pores
	Vapour          float64  `json:"vapour_kg_h"`             // kg/h, 0 to 5000; set free at night by crop and soil together
	TranspiredSun   float64  `json:"transpired_sun_fraction"` // fraction, 0 to 0.95; of the sun in the house at noon that evaporates water
}

// Irrigation is the section irrigation: water for the crop.
type Irrigation struct {
	Efficiency float64 `json:"efficiency_fraction"` // fraction, 0.2 to 1; of the water given that the roots can take
	Leaching   float64 `json:"leaching_fraction"`   // fraction, 0 to 0.8; drained off to carry salt away
	Crop       float64 `json:"crop_factor"`         // factor, 0.1 to 2; of the crop over reference grass
	Tank       float64 `json:"tank_m3"`             // m³, 0 to 10000; tank
}

// CO2 is the optional section co2: carbon dioxide given to the crop.
type CO2 struct {
	Source          string  `json:"source"`             // bottle or burner; where it comes from
	Level           float64 `json:"level_umol_mol"`     // µmol/mol, 300 to 2000; kept while the vents are shut
	Outside         float64 `json:"outside_umol_mol"`   // µmol/mol, 300 to 600; outside
	PricePerKg      float64 `json:"price_per_kg"`       // currency per kg, 0 to 100; of bottled gas
	BurnerFuel      string  `json:"burner_fuel"`        // propane or natural gas; what the burner burns, without a flue
	FuelPricePerKWh float64 `json:"fuel_price_per_kwh"` // currency per kWh, 0 to 100; of the burner's fuel, lower heating value
}
