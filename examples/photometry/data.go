package main

import "math"

// plane is the light in one plane in JSON.
type plane struct {
	Plane string  `json:"plane"`
	Half  float64 `json:"full_angle_at_half_deg"`
	Tenth float64 `json:"full_angle_at_a_tenth_deg"`
}

// data is the answer in JSON. What the file does not tell is null.
func (d *reading) data() any {
	f := d.file
	out := struct {
		Invented  bool     `json:"invented"`
		Edition   string   `json:"edition"`
		Type      string   `json:"type"`
		Symmetry  string   `json:"symmetry"`
		Power     float64  `json:"input_power_w"`
		Lumens    float64  `json:"flux_lm"`
		Below     float64  `json:"flux_below_horizontal_lm"`
		OverLamps *float64 `json:"flux_over_lamp_lumens_ratio"`
		Top       float64  `json:"greatest_intensity_cd"`
		Planes    []plane  `json:"planes"`
		PerLumen  *float64 `json:"photons_per_lumen_umol_s_lm"`
		PPF       *float64 `json:"ppf_umol_s"`
		Efficacy  *float64 `json:"photon_efficacy_umol_j"`
		Departs   []string `json:"departs_from_standard"`
	}{Invented: d.demo, Edition: f.Edition.String(), Type: f.Web.Coordinates.String(), Symmetry: symmetry(f.Web), Power: f.InputPower,
		Lumens: d.table.Lumens(), Below: below(f.Web), OverLamps: some(d.table.Lumens() / f.LampLumens()), Top: d.top(),
		PerLumen: some(d.perLumen), PPF: some(d.ppf()), Departs: append([]string{}, f.Warnings...)}
	if f.InputPower > 0 {
		out.Efficacy = some(d.ppf() / f.InputPower)
	}
	for i, name := range []string{"0-180", "90-270"} {
		c := 90 * float64(i)
		out.Planes = append(out.Planes, plane{name, known(width(d.table, c, 0.5)), known(width(d.table, c, 0.1))})
	}
	return out
}

// known is 0 for no light.
func known(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}

func some(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}
