package main

import (
	"fmt"
	"math"
	"time"

	"cloche.example/internal/demo"
	"cloche.example/internal/report"
	"cloche.example/lighting"
)

// crops are those of lighting.CropLights that the table shows.
var crops = [...]string{"lettuce", "basil", "cilantro", "tomato", "cucumber"}

func write(in input, r result) *report.Report {
	p := new(report.Report)
	p.Title("Light on a bed of trays")
	p.Note("%s", demo.Note)
	p.Section("Fixtures")
	p.Text("fixtures", fmt.Sprintf("%d x %d", in.rows, in.perRow), "rows x in a row")
	p.Value("photon flux of all", r.layout.PPF(), 0, "µmol/s")
	p.Value("beam angle, full, at half intensity", in.beam, 0, "degree")
	p.Value("cosine exponent", r.light.Exponent(), 3, "")
	p.Value("height above the trays", in.height, 2, "m")

	p.Section("Map, µmol/(m² s), first day, direct light")
	p.Table(table(r))
	p.Note("Means of the map's cells in each part of the bed, x along it in m, y across it in m; grid of %d points, at most a fifth of the height apart.", r.points.Len())
	s := r.stats
	p.Value("mean", s.Mean, 1, "µmol/(m² s)")
	p.Value("mean at harvest", s.Mean*in.maintenance, 1, "µmol/(m² s)")
	p.Value("minimum", s.Minimum, 1, "µmol/(m² s)")
	p.Value("maximum", s.Maximum, 1, "µmol/(m² s)")
	p.Value("minimum/mean, U0", s.U0, 3, "")
	p.Value("deviation/mean, CV", s.CV, 3, "")
	p.Value("Christiansen coefficient", s.Christiansen, 3, "")
	p.Value("a tenth of the bed has less than", s.Percentile(0.1), 1, "µmol/(m² s)")
	p.Value("photons on the bed", 100*r.shares.Bed, 1, "%")
	p.Value("photons beside it, on aisles", 100*r.shares.Aisle, 1, "%")
	p.Value("photons on walls", 100*r.shares.Walls, 1, "%")
	p.Value("reflected light adds, mean", r.bounces, 1, "µmol/(m² s)")
	p.Value("of that the first bounce, a lower bound", r.oneAlone, 1, "µmol/(m² s)")
	p.Note("Reflected light is of an empty box of %.3g by %.3g by %.3g m above the trays that reflects %.0f %% everywhere; it is not in the figures below.", in.roomLength, in.roomWidth, in.roomHeight, 100*in.reflectance)

	spots(p, in, r)
	day(p, in, r)

	p.Section("Other heights")
	rows := [][]string{}
	for _, h := range r.sweep {
		rows = append(rows, []string{report.Number(h.z, 2), report.Number(h.stats.Mean, 1), report.Number(h.stats.Minimum, 1), report.Number(h.stats.U0, 3), report.Number(100*h.onBed, 1)})
	}
	p.Table([]string{"height, m", "mean", "minimum", "U0", "on the bed, %"}, rows)

	p.Section("Power, heat, cost")
	p.Value("power", r.energy.Power, 0, "W")
	p.Value("power per area of bed", r.energy.Power/r.bed.Area(), 1, "W/m²")
	p.Value("efficacy", r.layout.PPF()/r.energy.Power, 2, "µmol/J")
	p.Value("heat into the house", r.energy.HeatInside, 0, "W")
	p.Value("electricity a day", r.energy.Electricity/3.6e6, 2, "kWh")
	p.Value("cost a day", r.energy.Cost, 2, "currency")

	p.Section("Cautions")
	for _, c := range lighting.Cautions(r.layout, r.bed) {
		p.Note("%s", c)
	}
	return p
}

func spots(p *report.Report, in input, r result) {
	d := r.light.SpotDiameter(in.height, 0.5)
	p.Section("Spots")
	p.Value("diameter at half the peak", d, 2, "m")
	for _, s := range []struct {
		name    string
		spacing float64
		n       int
	}{{"along", in.length / float64(in.perRow), in.perRow}, {"across", in.width / float64(in.rows), in.rows}} {
		if s.n < 2 {
			continue
		}
		p.Value("spacing "+s.name, s.spacing, 2, "m")
		meet := "spots do not meet"
		if s.spacing < d {
			meet = "spots meet"
		}
		p.Text("spots of neighbours "+s.name, report.Number(100*lighting.SpotOverlap(d, s.spacing)/(math.Pi/4*d*d), 1), "% shared: "+meet)
		p.Value("light midway of two alone, "+s.name, 100*r.light.Midway(in.height, s.spacing), 0, "% of that under one")
	}
	p.Value("spacing of two for a flat middle", r.light.FlatPair(in.height), 2, "m")
	p.Value("side of a square of four for a flat middle", r.light.FlatSquare(in.height), 2, "m")
	p.Note("Spots that meet say little about evenness: the map counts all fixtures, and the edge of the bed has neighbours on one side only.")
}

func day(p *report.Report, in input, r result) {
	p.Section("The day's photons, lamps alone, at harvest")
	dli := func(ppfd float64) float64 {
		return lighting.DLI(ppfd*in.maintenance, time.Duration(in.hours*float64(time.Hour)))
	}
	p.Value("mean", dli(r.stats.Mean), 2, "mol/(m² d)")
	p.Value("darkest point", dli(r.stats.Minimum), 2, "mol/(m² d)")
	rows := [][]string{}
	for _, name := range crops {
		c, _ := lighting.FindCropLight(name)
		rows = append(rows, []string{c.Name, report.Number(c.Least, 0) + " to " + report.Number(c.Most, 0), report.Number(100*dli(r.stats.Mean)/c.Least, 0), report.Number(math.Max(0, c.Least-dli(r.stats.Mean)), 1)})
	}
	p.Table([]string{"crop", "wants, mol/(m² d)", "% of the least", "daylight must add"}, rows)
	p.Note("Wants: the table of crops of package lighting, which names its sources; most were quoted second-hand.")
}

// table condenses the map to at most eight columns and four rows.
func table(r result) (header []string, rows [][]string) {
	nx := r.points.Columns()
	ny := len(r.ppfd) / nx
	across, down := min(8, nx), min(4, ny)
	part := func(i, n, of int) (int, int) { return i * n / of, (i + 1) * n / of }
	header = []string{"y \\ x"}
	for c := range across {
		header = append(header, report.Number(r.bed.Length*(float64(c)+0.5)/float64(across), 1))
	}
	for d := down - 1; d >= 0; d-- {
		row := []string{report.Number(r.bed.Width*(float64(d)+0.5)/float64(down), 1)}
		y0, y1 := part(d, ny, down)
		for c := range across {
			x0, x1 := part(c, nx, across)
			sum := 0.0
			for y := y0; y < y1; y++ {
				for x := x0; x < x1; x++ {
					sum += r.ppfd[y*nx+x]
				}
			}
			row = append(row, report.Number(sum/float64((x1-x0)*(y1-y0)), 0))
		}
		rows = append(rows, row)
	}
	return header, rows
}
