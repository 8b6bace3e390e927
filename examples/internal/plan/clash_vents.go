package plan

// vents looks for vents that the house has no room for.
func (f *filler) vents(p *Plan) {
	h := p.House
	once(f, "vents", p.Vents, func(v Vent) string { return v.Name })
	used := map[string]float64{}
	for i, v := range p.Vents {
		at := func(key string) string { return under("vents", i, key) }
		upright := v.Place != "ridge" && v.Place != "left roof" && v.Place != "right roof"
		long, high := placeLength(h, v.Place), placeHeight(h, v.Place)
		switch {
		case v.Length > long*(1+1e-9):
			f.clash("a vent must be no longer than its wall, roof or ridge", at("length_m"), at("place"), "house.length_m", "house.span_m", "house.bays_count")
		case !upright:
		case v.Centre+v.Height/2 > high+1e-9:
			f.clash("a vent must end below the top of its wall", at("centre_above_ground_m"), at("height_m"), at("place"), "house.eave_height_m", "house.ridge_height_m")
		case v.Centre-v.Height/2 < -h.Depth-1e-9:
			f.clash("a vent lies above the floor", at("centre_above_ground_m"), at("height_m"), "house.depth_m")
		default:
			if used[v.Place] += v.Length * v.Height; used[v.Place] > long*(high+h.Depth)*(1+1e-9) {
				f.clash("the vents of a wall must find room in it", at("length_m"), at("height_m"), at("place"), "house.length_m", "house.span_m")
			}
		}
		if inside := v.Centre-v.Height/2 >= -h.Depth-1e-9; upright && inside && v.Centre < 0 && v.WellArea == nil {
			f.clash("a vent below the ground outside has a well", at("centre_above_ground_m"), at("well_area_m2"))
		}
		if v.Place == "ridge" && v.Kind == "roll-up" {
			f.clash("a roll-up vent is in a wall or a roof", at("kind"), at("place"))
		}
	}
	c := p.VentControl
	if c.Least > c.Most {
		f.clash("vents are never shut further than their most", "vent_control.least_fraction", "vent_control.most_fraction")
	}
	if c.WindLow > c.WindHigh {
		f.clash("vents are lowered before they are nearly shut", "vent_control.wind_low_m_s", "vent_control.wind_high_m_s")
	}
	if c.HandFrom >= c.HandUntil {
		f.clash("vents are opened before they are shut", "vent_control.hand_from_h", "vent_control.hand_until_h")
	}
	once(f, "vent_fans", p.VentFans, func(v VentFan) string { return v.Name })
	for i, v := range p.VentFans {
		if v.Centre > h.RidgeHeight {
			f.clash("a fan must be below the ridge", under("vent_fans", i, "centre_above_ground_m"), "house.ridge_height_m")
		}
		if v.Centre < -h.Depth {
			f.clash("a fan must be above the floor", under("vent_fans", i, "centre_above_ground_m"), "house.depth_m")
		}
	}
	if q := p.Pads; q != nil {
		out := 0.0
		for _, v := range p.VentFans {
			if v.Blows == "out" {
				out += v.Flow
			}
		}
		if speed := out / q.Area; !(speed >= 0.1 && speed <= 3) {
			f.clash("fans that blow out must draw air through the pads at 0.1 to 3 m/s: give vent_fans or another area, or leave the pads out", "pads.area_m2", "vent_fans")
		}
	}
	if s := p.Shade; s != nil && s.Transmittance+s.Reflectance > 1+1e-9 {
		f.clash("a shade must not let through and turn back more than there is", "shade.transmittance_fraction", "shade.reflectance_fraction")
	}
}
