package main

import (
	"fmt"
	"math"

	"cloche.example/internal/report"
	"cloche.example/lighting"
)

// unit is that of light on the trays.
const unit = "µmol/(m² s)"

func (r *result) write() *report.Report {
	p, l := new(report.Report), r.plan.Lights
	p.Title("Light on a bed of trays: %s", r.plan.Name)
	p.Note("%s", r.plan.Note)
	p.Section("Answer")
	if r.assumed {
		p.Note("The plan has no lamps; those of its defaults stand for them.")
	}
	for _, s := range r.answer() {
		p.Note("%s", s)
	}
	p.Section("Lamps")
	p.Text("lamps", fmt.Sprintf("%d x %d", l.Rows, l.PerRow), "rows x in a row")
	p.Value("photon flux of all, at harvest", r.layout.PPF(), 0, "µmol/s")
	if beam, ok := r.beam(); ok {
		p.Value("beam, full angle at half intensity", l.Beam, 0, "degree")
		p.Value("cosine exponent", beam.Exponent(), 3, "")
	} else {
		p.Text("photometric file", "", l.PhotometricFile)
		p.Text("photons of 400 to 700 nm in its lumens", r.perLumen(), "µmol/(s lm)")
	}
	p.Value("height above the trays", l.HeightAboveTrays, 2, "m")
	for _, g := range l.Groups {
		p.Value("rows "+numbers(g.Rows)+" of "+g.Name+" at", 100*g.Level, 0, "%")
	}
	r.theMap(p)
	r.spots(p)
	r.day(p)
	r.variants(p)
	p.Section("Power, heat, cost")
	p.Value("power", r.light.Power, 0, "W")
	p.Value("power per area of bed", r.light.PowerDensity, 1, "W/m²")
	p.Value("efficacy on the first day", r.layout.PPF()*float64(l.Tiers)/l.Maintenance/r.light.Power, 2, "µmol/J")
	p.Value("heat into the house", r.light.Heat, 0, "W")
	p.Value("electricity a day", r.light.Power*l.Photoperiod/1000, 2, "kWh")
	p.Value("cost a day", r.light.CostPerDay, 2, r.plan.Currency)
	p.Section("Cautions")
	for _, c := range lighting.Cautions(r.layout, r.bed) {
		p.Note("%s", c)
	}
	return p
}

// theMap prints the map and what it says.
func (r *result) theMap(p *report.Report) {
	p.Section("Map, %s, at harvest, direct light", unit)
	p.Table(r.table())
	p.Note("Means of the map's cells in each part of the bed, x along it in m, y across it in m; grid of %d by %d points.", r.light.GridAlong, r.light.GridAcross)
	s := r.stats
	p.Value("mean", s.Mean, 1, unit)
	p.Value("mean on the first day", s.Mean/r.plan.Lights.Maintenance, 1, unit)
	p.Value("minimum", s.Minimum, 1, unit)
	p.Value("maximum", s.Maximum, 1, unit)
	p.Text("minimum/mean, U0", report.Number(s.U0, 3), "wanted "+report.Number(r.plan.Lights.Evenness, 2))
	p.Value("deviation/mean, CV", s.CV, 3, "")
	p.Value("Christiansen coefficient", s.Christiansen, 3, "")
	p.Value("a tenth of the bed has less than", s.Percentile(0.1), 1, unit)
	p.Value("photons on the bed", 100*r.shares.Bed, 1, "%")
	p.Value("photons beside it, on aisles", 100*r.shares.Aisle, 1, "%")
	p.Value("photons on walls and roof", 100*r.shares.Walls, 1, "%")
	p.Value("reflected light adds, mean", r.bounces, 1, unit)
	p.Value("of that the first bounce, a lower bound", r.oneAlone, 1, unit)
	p.Note("Reflected light is of an empty box of %.3g by %.3g by %.3g m above the trays that reflects %.0f %% everywhere; it is not in the figures of map, spots and day.", r.room.Length, r.room.Width, r.room.Height, 100*r.plan.Lights.Reflectance)
}

func (r *result) spots(p *report.Report) {
	beam, ok := r.beam()
	if !ok {
		return
	}
	l := r.plan.Lights
	d := beam.SpotDiameter(l.HeightAboveTrays, 0.5)
	p.Section("Spots")
	p.Value("diameter at half the peak", d, 2, "m")
	for _, s := range []struct {
		name    string
		spacing float64
		n       int
	}{{"along", r.light.Along, l.PerRow}, {"across", r.light.Across, l.Rows}} {
		if s.n < 2 {
			continue
		}
		p.Value("spacing "+s.name, s.spacing, 2, "m")
		meet := "spots do not meet"
		if s.spacing < d {
			meet = "spots meet"
		}
		p.Text("spots of neighbours "+s.name, report.Number(100*lighting.SpotOverlap(d, s.spacing)/(math.Pi/4*d*d), 1), "% shared: "+meet)
		p.Value("light midway of two alone, "+s.name, 100*beam.Midway(l.HeightAboveTrays, s.spacing), 0, "% of that under one")
	}
	p.Value("spacing of two for a flat middle", beam.FlatPair(l.HeightAboveTrays), 2, "m")
	p.Value("side of a square of four for a flat middle", beam.FlatSquare(l.HeightAboveTrays), 2, "m")
	p.Note("Spots that meet say little about evenness: the map counts all lamps, and the edge of the bed has neighbours on one side only.")
}

func (r *result) day(p *report.Report) {
	l := r.light
	p.Section("The day's photons at harvest: %s", l.Crop)
	p.Value("lamps alone, mean", l.DLI, 1, "mol/(m² d)")
	p.Value("  darkest place", l.DLI*r.stats.U0, 1, "mol/(m² d)")
	p.Value("daylight on the trays in the design month", l.Daylight, 1, "mol/(m² d)")
	p.Value("both, mean", l.Both, 1, "mol/(m² d)")
	for _, k := range []struct {
		name string
		v    *float64
	}{{"the crop needs", l.Least}, {"  wants", l.Wanted}, {"  can use", l.Most}} {
		if k.v != nil {
			p.Value(k.name, *k.v, 1, "mol/(m² d)")
		}
	}
	if l.HoursWanted != nil {
		p.Value("lamps for that", *l.HoursWanted, 1, "h a day")
	}
}

// variants prints other heights and other rows.
func (r *result) variants(p *report.Report) {
	mark := func(v variant) string {
		if r.enough(v.stats) {
			return "+"
		}
		return ""
	}
	p.Section("Other heights")
	rows := [][]string{}
	for _, v := range r.heights {
		rows = append(rows, []string{report.Number(v.height, 2), report.Number(v.stats.Mean, 1), report.Number(v.stats.Minimum, 1), report.Number(v.stats.U0, 3), mark(v)})
	}
	p.Table([]string{"height, m", "mean", "minimum", "U0", "enough"}, rows)
	if len(r.others) > 0 {
		p.Section("Other rows")
		rows = rows[:0]
		for _, v := range r.others {
			rows = append(rows, []string{fmt.Sprintf("%d x %d", v.rows, v.perRow), report.Number(v.stats.Mean, 1), report.Number(v.stats.Minimum, 1), report.Number(v.stats.U0, 3), report.Number(v.power, 0), mark(v)})
		}
		p.Table([]string{"rows x in a row", "mean", "minimum", "U0", "W", "enough"}, rows)
	}
	p.Note("+: even enough, and with light enough where light is asked for.")
	if r.design == nil {
		return
	}
	p.Section("The fewest lamps that do")
	d := r.design
	if d.none != "" {
		p.Note("%s.", d.none)
		return
	}
	p.Text("lamps", fmt.Sprintf("%d x %d", d.Rows, d.Columns), "rows x in a row")
	p.Value("height above the trays", d.Height, 2, "m")
	p.Value("spacing along the bed", d.SpacingX, 2, "m")
	p.Value("spacing across it", d.SpacingY, 2, "m")
	p.Value("mean at harvest", d.Harvest.Mean, 1, unit)
	p.Value("least at harvest", d.Least, 1, unit)
	p.Value("power", d.Power, 0, "W")
	p.Note("Spacings are free, so that rows may hang beyond the edge of the bed.")
}
