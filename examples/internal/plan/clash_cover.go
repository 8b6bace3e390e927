package plan

import "math"

// covers looks at own covers, the screen and the ground.
func (f *filler) covers(p *Plan) {
	once(f, "cover.own", p.Cover.Own, func(c OwnCover) string { return c.Name }, covers.fixed...)
	for i, c := range p.Cover.Own {
		list := under("cover.own", i, "layers")
		collapsed := -1
		for j, l := range c.Layers {
			at := func(key string) string { return under(list, j, key) }
			f.optics(at, l.EmittanceOutward, l.EmittanceInward, l.LongWaveTransmittance)
			if j == 0 && l.AirLeakage > 0 {
				f.clash("the outermost layer leaks no air of its own; leakage has the house's", at("air_leakage_m3_s_m2"), "leakage.air_changes_per_h")
			}
			if l.GapCollapsed > 0 && j < len(c.Layers)-1 {
				if collapsed >= 0 {
					f.clash("one gap of a cover may have closed in part", at("gap_collapsed_fraction"), under(list, collapsed, "gap_collapsed_fraction"))
				}
				collapsed = j
			}
		}
	}
	if s := p.Screen; s != nil {
		if (s.Name == "own") != (s.Own != nil) {
			f.clash("an own screen has its name and its figures", "screen.name", "screen.own")
		}
		if o := s.Own; o != nil {
			f.optics(func(key string) string { return "screen.own." + key }, o.EmittanceOutward, o.EmittanceInward, o.LongWaveTransmittance)
		}
	}
	g := p.Ground
	if g.Soil == "own" && (g.SoilConductivity == nil || g.SoilHeatCapacity == nil) {
		f.clash("own soil has its two figures", "ground.soil", "ground.soil_conductivity_w_m_k", "ground.soil_heat_capacity_mj_m3_k")
	}
	if g.EdgeInsulation.Lies != "none" && p.House.Depth > 0 {
		f.clash("edge insulation is that of a floor at ground level; a house that is dug in has ground.buried_wall_resistance_m2_k_w", "ground.edge_insulation.lies", "house.depth_m")
	}
}

// optics looks whether a face emits and lets through more than there is.
func (f *filler) optics(at func(string) string, outward, inward, through float64) {
	if outward+through > 1+1e-9 {
		f.clash("emittance and transmittance must not exceed 1 together", at("emittance_outward_fraction"), at("long_wave_transmittance_fraction"))
	}
	if inward+through > 1+1e-9 {
		f.clash("emittance and transmittance must not exceed 1 together", at("emittance_inward_fraction"), at("long_wave_transmittance_fraction"))
	}
}

// lights looks for lamps and beds that do not fit the house.
func (f *filler) lights(p *Plan) {
	l, h := p.Lights, p.House
	if l.BedLength > h.Length {
		f.clash("the bed must find room in the house", "lights.bed_length_m", "house.length_m")
	}
	if l.BedWidth > placeLength(h, "near end") {
		f.clash("the bed must find room in the house", "lights.bed_width_m", "house.span_m")
	}
	if l.TraysAboveFloor+float64(l.Tiers-1)*l.TierRise+l.HeightAboveTrays > h.RidgeHeight+h.Depth {
		f.clash("the lamps would hang above the roof", "lights.height_above_trays_m", "lights.trays_above_floor_m", "lights.tiers_count", "lights.tier_rise_m",
			"house.ridge_height_m", "house.depth_m")
	}
	if l.PPF > l.PhotonsOfLamp*l.Power && l.SpectrumFile == "" {
		f.clash("a lamp cannot give more photons than all of its power as light would", "lights.ppf_umol_s", "lights.power_w", "lights.photons_of_lamp_umol_j")
	}
	if l.Idle > l.Power {
		f.clash("a driver draws no more idle than at full output", "lights.idle_w", "lights.power_w")
	}
	if l.PhotonsPerLumen != nil && l.SpectrumFile != "" {
		f.clash("photons follow from a spectrum or from photons per lumen, not both", "lights.photons_per_lumen_umol_s_lm", "lights.spectrum_file")
	}
	once(f, "lights.groups", l.Groups, func(g LightGroup) string { return g.Name })
	in := map[float64]string{}
	for i, g := range l.Groups {
		rows := under("lights.groups", i, "rows")
		for _, r := range g.Rows {
			switch {
			case r != math.Trunc(r) || r > float64(l.Rows):
				f.clash("groups are made of rows that there are", rows, "lights.rows_count")
			case in[r] != "":
				f.clash("a row stands in one group", rows, in[r])
			}
			in[r] = rows
		}
	}
}

// crop looks at needs of light and water.
func (f *filler) crop(p *Plan) {
	c := p.Crop
	if c.Name == "own" && c.WantedLight == nil {
		f.clash("an own crop has the light that it wants", "crop.name", "crop.wanted_light_mol_m2_d")
	}
	least, wanted, most := c.LeastLight, c.WantedLight, c.MostLight
	if least != nil && wanted != nil && *least > *wanted {
		f.clash("a crop wants at least what it needs", "crop.least_light_mol_m2_d", "crop.wanted_light_mol_m2_d")
	}
	if wanted != nil && most != nil && *wanted > *most {
		f.clash("a crop wants no more than it can use", "crop.wanted_light_mol_m2_d", "crop.most_light_mol_m2_d")
	}
	if least != nil && most != nil && *least > *most {
		f.clash("a crop needs no more than it can use", "crop.least_light_mol_m2_d", "crop.most_light_mol_m2_d")
	}
	if c.Height > p.House.RidgeHeight+p.House.Depth {
		f.clash("the crop must stay below the ridge", "crop.height_m", "house.ridge_height_m", "house.depth_m")
	}
	if p.CO2 != nil && p.CO2.Level < p.CO2.Outside {
		f.clash("carbon dioxide is given to raise it above that outside", "co2.level_umol_mol", "co2.outside_umol_mol")
	}
}
