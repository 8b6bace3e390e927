package main

import "cloche.example/ventilation"

// found is one setting of the vents in JSON.
type found struct {
	First   float64  `json:"first_vents_fraction"`
	Others  float64  `json:"other_vents_fraction"`
	Coldest *float64 `json:"coldest_at_crop_c"` // null: the vents let no air in
	Chill   bool     `json:"below_limit"`
	Air     float64  `json:"air_in_m3_s"`
}

// line is one outside temperature in JSON.
type line struct {
	Outside float64 `json:"outside_c"`
	Opened  []found `json:"opened"`
	Widest  found   `json:"widest_without_harm"`
	Wanted  *found  `json:"for_air_wanted"` // null: the vents are too small, or no air is wanted
}

// way is one order of opening in JSON.
type way struct {
	Order string `json:"order"`
	Rows  []line `json:"rows"`
}

func (d *draught) data() any {
	out := struct {
		Inside float64   `json:"inside_c"`
		Limit  float64   `json:"limit_c"`
		Wind   float64   `json:"wind_m_s"`
		Wanted float64   `json:"air_wanted_m3_s"`
		Leaks  float64   `json:"cracks_on_the_winter_night_m3_s"`
		Orders []way     `json:"orders"` // none without vents
		Doors  []passage `json:"doors"`
	}{Inside: d.vents.Inside, Limit: d.vents.Limit, Wind: d.wind, Wanted: max(0, d.air/3600), Leaks: d.leaks, Orders: []way{}, Doors: append([]passage{}, d.passed...)}
	for i, o := range d.orders {
		of := func(a ventilation.ColdAir) found {
			f := found{Chill: a.Chill, Air: a.Air.Volume}
			f.First, f.Others = d.share(o, a)
			if a.By >= 0 {
				f.Coldest = &a.Coldest
			}
			return f
		}
		w := way{Order: o.name}
		for _, r := range d.rows[i] {
			l := line{Outside: r.outside, Widest: of(r.widest)}
			for _, a := range r.opened {
				l.Opened = append(l.Opened, of(a))
			}
			if d.air > 0 && !r.small {
				f := of(r.wanted)
				l.Wanted = &f
			}
			w.Rows = append(w.Rows, l)
		}
		out.Orders = append(out.Orders, w)
	}
	return out
}
