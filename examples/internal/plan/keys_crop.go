package plan

// keysCrop are the keys of plan_crop.go, in their order.
var keysCrop = []Key{
	group("crop", "what grows, and the water it sets free"),
	one("crop.name", "lettuce|spinach, young|basil|cilantro|parsley|kale|radish|tomato|cucumber|pepper|zucchini|strawberry|fruiting vegetables|ornamentals|young plants|lavender, finished pot|African violet|own", "lettuce", "its need of light is known by name, or given below"),
	optional("crop.least_light_mol_m2_d", "mol/(m² d)", 0.5, 60, "light a day, in place of the crop's own figure"),
	optional("crop.wanted_light_mol_m2_d", "mol/(m² d)", 0.5, 60, "light a day to plan for"),
	optional("crop.most_light_mol_m2_d", "mol/(m² d)", 0.5, 60, "light a day above which more brings nothing"),
	num("crop.leaf_area_ratio", "ratio", 0, 12, 2.5, "leaf area over floor area; 0 for no crop"),
	derived("crop.height_m", "m", 0.02, 6, cropheightRule, "1 m, less in a low house", "top of the crop above the floor"),
	num("crop.leaf_width_m", "m", 0.002, 1, 0.05, "mean width of a leaf"),
	num("crop.air_speed_m_s", "m/s", 0.01, 5, 0.09, "among the leaves"),
	num("crop.light_extinction_ratio", "ratio", 0.1, 1.2, 0.48, "of the sun per unit of leaf area"),
	num("crop.sun_reflected_fraction", "fraction", 0, 0.6, 0.2, "by the leaves"),
	one("crop.stomata", "tomato|grass", "tomato", "published behaviour that stands for the leaf pores"),
	derived("crop.vapour_kg_h", "kg/h", 0, 5000, vapourRule, "0.02 kg/h for each m² of floor", "set free at night by crop and soil together"),
	num("crop.transpired_sun_fraction", "fraction", 0, 0.95, 0.45, "of the sun in the house at noon that evaporates water"),
	group("irrigation", "water for the crop"),
	num("irrigation.efficiency_fraction", "fraction", 0.2, 1, 0.85, "of the water given that the roots can take"),
	num("irrigation.leaching_fraction", "fraction", 0, 0.8, 0.15, "drained off to carry salt away"),
	num("irrigation.crop_factor", "factor", 0.1, 2, 1, "of the crop over reference grass"),
	num("irrigation.tank_m3", "m³", 0, 10000, 2, "tank"),
	maybe("co2", "carbon dioxide given to the crop"),
	one("co2.source", "bottle|burner", "bottle", "where it comes from"),
	num("co2.level_umol_mol", "µmol/mol", 300, 2000, 800, "kept while the vents are shut"),
	num("co2.outside_umol_mol", "µmol/mol", 300, 600, 420, "outside"),
	num("co2.price_per_kg", "currency per kg", 0, 100, 1.2, "of bottled gas"),
}
