package main

import (
	"fmt"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/internal/report"
)

// answer says what one state of the plan's noon needs.
func (t *table) answer(n need) string {
	text := fmt.Sprintf("At the summer noon, %g W/m² of sun and %g °C outside, ", n.sun, t.plan.Site.SummerNoon.Temperature)
	if n.wind > 0 {
		text += fmt.Sprintf("in %g m/s of wind, ", n.wind)
	} else {
		text += "in calm air, "
	}
	rise := report.Number(t.plan.SetPoints.Limits.SummerRise, 1)
	switch {
	case !n.possible:
		return text + "no area of such vents keeps the rise within " + rise + " K: they lie too close to one level, or the air is not driven. Add vents high up, shade or fans."
	case t.assumed:
		return text + fmt.Sprintf("%s m² of vent keep the rise within %s K.", report.Number(n.area, 1), rise)
	case t.enough(n):
		return text + fmt.Sprintf("%s m² of vent keep the rise within %s K; the plan's %s m² are enough.", report.Number(n.area, 1), rise, report.Number(t.have, 1))
	}
	return text + fmt.Sprintf("it takes %s m² of vent to keep the rise within %s K; the plan's %s m² are not enough.", report.Number(n.area, 1), rise, report.Number(t.have, 1))
}

func (t *table) warnings() (all []string) {
	for _, n := range []need{t.calm, t.windy} {
		if !t.assumed && !t.enough(n) {
			all = append(all, t.answer(n))
		}
	}
	return all
}

func (t *table) write() *report.Report {
	r, p := &report.Report{}, t.plan
	rise := p.SetPoints.Limits.SummerRise
	r.Title("Vent area for an allowed rise of %s K: %s", report.Number(rise, 1), p.Name)
	r.Note("%s", p.Note)
	r.Section("Answer")
	r.Note("%s", t.answer(t.calm))
	if p.Site.SummerNoon.Wind > 0 {
		r.Note("%s", t.answer(t.windy))
	}
	r.Section("The house")
	r.Value("floor area", t.floor, 1, "m²")
	if t.assumed {
		r.Text("vents of the plan", "none", "half along the sides and half along the ridge stand for them")
	} else {
		r.Value("vents of the plan", t.have, 1, "m², the hole in wall and roof")
	}
	r.Value("outside air", p.Site.SummerNoon.Temperature, 1, "°C")
	r.Value("air pressure", fromplan.Pressure(p), 0, "Pa")
	r.Value("sun kept in the house at the noon", t.load.Solar, 0, "W")
	r.Value("of it evaporating water", t.load.Transpired, 2, "fraction")
	r.Value("cover and doors carry off", t.load.Loss*rise, 0, "W at the allowed rise")
	header := []string{"sun W/m²"}
	for _, u := range t.winds {
		header = append(header, fmt.Sprintf("%g m/s", u))
	}
	var area, share [][]string
	for i, row := range t.rows {
		a, s := []string{fmt.Sprintf("%g", t.suns[i])}, []string{fmt.Sprintf("%g", t.suns[i])}
		changes := "-"
		for _, n := range row {
			if !n.possible {
				a, s = append(a, "no area"), append(s, "no area")
				continue
			}
			mark := ""
			if !n.stable {
				mark = " !"
			} else if t.enough(n) {
				mark = " +"
			}
			a = append(a, report.Number(n.area, 1)+mark)
			s = append(s, report.Number(100*n.area/t.floor, 1)+mark)
			changes = report.Number(n.changes, 1)
		}
		area, share = append(area, append(a, changes)), append(share, s)
	}
	r.Section("Vent area needed, m²")
	r.Table(append(header, "air changes 1/h"), area)
	r.Section("The same in per cent of the floor")
	r.Table(header, share)
	r.Note("+: the plan's vents are as large. !: wind opposes the warm air there and the house would leave that state.")
	r.Section("Notes")
	r.Note("All vents grow together. Air balance on true densities, temperature and flow solved together; air dry, the share of the sun that evaporates water fixed. Shade is drawn where the plan has it for that sun.")
	r.Note("An insect screen halves or quarters what a vent passes; those of the plan count with theirs.")
	r.Note("Pressure and discharge coefficients are uncertain by 20 %% and more.")
	r.Section("Cautions")
	r.Note("A closed house in the sun overheats people and plants within minutes: leave a vent that opens without power, and watch for heat stroke. Vents must close in storm; structure and drives follow local codes and licensed practice.")
	return r
}

// found is one need in JSON.
type found struct {
	Sun     float64  `json:"sun_w_m2"`
	Wind    float64  `json:"wind_m_s"`
	Area    *float64 `json:"area_needed_m2"` // null: no area does
	Stable  bool     `json:"stable"`
	Changes float64  `json:"air_changes_per_h"`
	Enough  bool     `json:"vents_of_plan_suffice"`
}

func (t *table) data() any {
	of := func(n need) found {
		f := found{Sun: n.sun, Wind: n.wind, Stable: n.stable, Changes: n.changes, Enough: t.enough(n)}
		if n.possible {
			f.Area = &n.area
		}
		return f
	}
	d := struct {
		Have    float64 `json:"vents_of_plan_m2"`
		Assumed bool    `json:"vents_assumed"`
		Calm    found   `json:"noon_in_calm"`
		Windy   found   `json:"noon_in_wind"`
		Rows    []found `json:"rows"`
	}{Have: t.have, Assumed: t.assumed, Calm: of(t.calm), Windy: of(t.windy)}
	if t.assumed {
		d.Have = 0
	}
	for _, row := range t.rows {
		for _, n := range row {
			d.Rows = append(d.Rows, of(n))
		}
	}
	return d
}
