package main

import (
	"fmt"

	"cloche.example/internal/report"
	"cloche.example/ventilation"
)

// answer says how far the vents may open at the coldest outside, and which
// order is the better.
func (d *draught) answer() []string {
	if len(d.orders) == 0 {
		return d.shutHouse()
	}
	var all []string
	best, most := 0, -1.0
	cold := d.cold()
	for i, o := range d.orders {
		r := d.rows[i][cold]
		air := 3600 * r.widest.Air.Volume
		if air > most {
			best, most = i, air
		}
		all = append(all, d.widest(o, r))
	}
	if len(d.orders) > 1 {
		all = append(all, fmt.Sprintf("Of the two orders %s lets in the more air without harm.", d.orders[best].name))
	}
	if text := d.verdict(best, cold); text != "" {
		all = append(all, text)
	}
	return all
}

// widest says how far the vents of an order may open.
func (d *draught) widest(o order, r row) string {
	text := fmt.Sprintf("At %s °C outside, %s: ", report.Number(r.outside, 0), o.name)
	limit := report.Number(d.vents.Limit, 1)
	if first, _ := d.share(o, r.widest); first < 0.005 {
		return text + fmt.Sprintf("keep them shut, since any gap lets air colder than %s °C fall on the crop.", limit)
	}
	return text + fmt.Sprintf("open to %s at most, so that no air colder than %s °C falls on the crop; %s m³/h enter then, cracks included.", d.openings(o, r.widest), limit, report.Number(3600*r.widest.Air.Volume, 0))
}

// cold is the row of the coldest outside air.
func (d *draught) cold() int {
	at := 0
	for i, t := range d.outside {
		if t < d.outside[at] {
			at = i
		}
	}
	return at
}

// verdict says what the air wanted does to the crop in the better order.
func (d *draught) verdict(order, cold int) string {
	if d.air <= 0 {
		return ""
	}
	text := fmt.Sprintf("The %s m³/h wanted, %s: ", report.Number(d.air, 0), d.orders[order].name)
	mildest := ""
	for _, r := range d.rows[order] {
		if !r.small && !r.wanted.Chill && (mildest == "" || r.outside < d.outside[cold]) {
			mildest = report.Number(r.outside, 0)
			break
		}
	}
	switch r := d.rows[order][cold]; {
	case r.small:
		return text + "the vents are too small."
	case d.shut(order, r.wanted):
		return text + "the cracks let them in, and no vent need be opened in that cold."
	case !r.wanted.Chill:
		return text + "they do no harm at any of these temperatures."
	case mildest == "":
		return text + fmt.Sprintf("they chill the crop at all of these temperatures; %s °C reach it at %s °C outside. Warm the air first, or vent less for longer.", report.Number(r.wanted.Coldest, 1), report.Number(r.outside, 0))
	default:
		return text + fmt.Sprintf("they do no harm from %s °C outside on; at %s °C they bring %s °C to the crop.", mildest, report.Number(r.outside, 0), report.Number(r.wanted.Coldest, 1))
	}
}

// shut tells whether the cracks alone let the air in.
func (d *draught) shut(order int, a ventilation.ColdAir) bool {
	first, _ := d.share(d.orders[order], a)
	return first == 0
}

func (d *draught) warnings() (all []string) {
	if len(d.orders) == 0 {
		return nil
	}
	for i, r := range d.rows[0] {
		if r.small {
			all = append(all, fmt.Sprintf("At %s °C outside all vents wide open do not let in the %s m³/h wanted.", report.Number(d.outside[i], 0), report.Number(d.air, 0)))
		}
	}
	return all
}

// write prints the tables.
func (d *draught) write() *report.Report {
	r := &report.Report{}
	r.Title("Cold air on the crop, high or low vents first: %s", d.plan.Name)
	r.Note("%s", d.plan.Note)
	r.Section("Answer")
	for _, s := range d.answer() {
		r.Note("%s", s)
	}
	for _, s := range d.warnings() {
		r.Note("Warning: %s", s)
	}
	d.given(r)
	for i, o := range d.orders {
		r.Section("Coldest air at the crop, %s, °C", o.name)
		header := []string{"outside °C"}
		for _, p := range d.opened {
			header = append(header, fmt.Sprintf("%g %%", p))
		}
		if len(o.groups) > 1 {
			header = append(header, "all vents open")
		}
		var rows [][]string
		for _, x := range d.rows[i] {
			line := []string{report.Number(x.outside, 0)}
			for _, a := range x.opened {
				line = append(line, cell(a))
			}
			if len(o.groups) > 1 {
				line = append(line, cell(x.all))
			}
			rows = append(rows, line)
		}
		r.Table(header, rows)
	}
	if len(d.orders) > 0 {
		r.Note("A mark ! lies below the chill limit. A dash: the vents let no air in, it leaves by them and enters by cracks.")
		d.limits(r)
	}
	d.doorTable(r)
	if len(d.orders) > 0 {
		notes(r)
	}
	r.Section("Cautions")
	r.Note("Vents must close in storm and frost; drives, ropes and structure follow local codes and licensed practice.")
	return r
}

func notes(r *report.Report) {
	r.Section("Notes")
	r.Note("Air enters as a jet, level from walls and 45 degrees down from roof and ridge, and falls by its weight. Of the published band of the fall and of the rival laws of dilution the coldest answer is shown; a jet that falls steeply draws in more air than that answer knows, and the crop may see half the chill.")
	r.Note("Open the high vents first and little: the air has the more way to mix. Below 5 °C outside keep low vents shut (common practice, no source). The jets do not meet, and leaks, half of them low and half high, are spent before they reach the crop.")
}

func (d *draught) given(r *report.Report) {
	r.Section("The house")
	r.Value("house air", d.vents.Inside, 1, "°C")
	r.Value("chill limit of the crop", d.vents.Limit, 1, "°C")
	r.Value("wind at the ridge", d.wind, 1, "m/s")
	r.Value("top of the crop above the ground outside", d.vents.Crop, 2, "m")
	for _, v := range d.plan.Vents {
		r.Text(v.Name, report.Number(max(0, v.Centre-d.vents.Crop), 2), fmt.Sprintf("m above the crop; %s, %.1f by %.2f m", v.Place, v.Length, v.Height))
	}
}

// limits prints how far the vents may open, and what the air wanted costs.
func (d *draught) limits(r *report.Report) {
	widest, wanted := []string{"outside °C"}, []string{"outside °C"}
	for _, o := range d.orders {
		widest = append(widest, o.name, "m³/h", "1/h")
		wanted = append(wanted, o.name, "°C at the crop")
	}
	most, air := make([][]string, len(d.outside)), make([][]string, len(d.outside))
	for k, t := range d.outside {
		most[k], air[k] = []string{report.Number(t, 0)}, []string{report.Number(t, 0)}
		for i, o := range d.orders {
			x := d.rows[i][k]
			most[k] = append(most[k], d.openings(o, x.widest), report.Number(3600*x.widest.Air.Volume, 0), report.Number(ventilation.AirChanges(x.widest.Air.Volume, d.volume), 1))
			if x.small {
				air[k] = append(air[k], "too small", "-")
			} else if d.air > 0 {
				air[k] = append(air[k], d.openings(o, x.wanted), cell(x.wanted))
			}
		}
	}
	r.Section("How far they may open, and the air that then enters")
	r.Table(widest, most)
	if d.air <= 0 {
		r.Note("Air of the plan's winter morning cannot dry the house: give the air wanted by -air.")
		return
	}
	r.Section("To let in %s m³/h, cracks included", report.Number(d.air, 0))
	r.Table(wanted, air)
}

// openings says how far the first vents of an order are open, and the others.
func (d *draught) openings(o order, a ventilation.ColdAir) string {
	first, others := d.share(o, a)
	s := report.Number(100*first, 0) + " %"
	if others > 0 {
		s += " + " + report.Number(100*others, 0) + " %"
	}
	return s
}

func cell(a ventilation.ColdAir) string {
	switch {
	case a.By < 0:
		return "-"
	case a.Chill:
		return report.Number(a.Coldest, 1) + "!"
	}
	return report.Number(a.Coldest, 1)
}
