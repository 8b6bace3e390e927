package main

import (
	"fmt"
	"strconv"
	"strings"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/internal/report"
	"cloche.example/lighting"
)

// answer says whether the light is enough and even, and what would mend it.
func (r *result) answer() []string {
	return []string{r.amount(), r.even()}
}

// amount says whether the light reaches what is asked.
func (r *result) amount() string {
	l := r.light
	if l.Targeted {
		return fmt.Sprintf("For %g %s it takes %d lamps, %d rows of %d: the mean at harvest is %s, for %s W.", r.plan.Lights.Target, unit, l.Rows*l.PerRow, l.Rows, l.PerRow, report.Number(l.Mean, 0), report.Number(l.Power, 0))
	}
	text := fmt.Sprintf("The lamps give %s %s in the mean at harvest, %s mol/(m² d) in %g h", report.Number(l.Mean, 0), unit, report.Number(l.DLI, 1), r.plan.Lights.Photoperiod)
	text += fmt.Sprintf(", with daylight in the design month %s", report.Number(l.Both, 1))
	asked := l.Wanted
	if asked == nil {
		asked = l.Least
	}
	switch {
	case asked == nil:
		return text + "."
	case l.Both >= *asked:
		return text + fmt.Sprintf(": enough for %s, which wants %s.", l.Crop, report.Number(*asked, 1))
	case l.HoursWanted != nil:
		return text + fmt.Sprintf(": %s wants %s, which takes %s h of lamps, if the crop bears it, or %s %s.", l.Crop, report.Number(*asked, 1), report.Number(*l.HoursWanted, 1), report.Number(r.wanted(), 0), unit)
	}
	return text + fmt.Sprintf(": %s wants %s, which takes %s %s.", l.Crop, report.Number(*asked, 1), report.Number(r.wanted(), 0), unit)
}

// even says whether the light is even, and which of the variants is.
func (r *result) even() string {
	want := r.plan.Lights.Evenness
	text := fmt.Sprintf("The darkest place has %s %% of the mean; %s %% are wanted.", report.Number(100*r.stats.U0, 0), report.Number(100*want, 0))
	if r.stats.U0 >= want {
		return text + " That is even enough."
	}
	var best variant
	for _, v := range append(append([]variant(nil), r.heights...), r.others...) {
		if v.stats.U0 > best.stats.U0 {
			best = v
		}
	}
	where := fmt.Sprintf("%d rows of %d, %s m above the trays", best.rows, best.perRow, report.Number(best.height, 2))
	switch {
	case best.stats.U0 >= want:
		text += fmt.Sprintf(" %s would be even enough.", where)
	case best.stats.U0 > r.stats.U0+0.005:
		text += fmt.Sprintf(" Of the heights and rows tried %s comes nearest, with %s %%.", where, report.Number(100*best.stats.U0, 0))
	}
	if r.design == nil {
		text += " -design looks for the fewest lamps that do."
	}
	return text
}

func (r *result) warnings() []string {
	var all []string
	if r.stats.U0 < r.plan.Lights.Evenness {
		all = append(all, r.even())
	}
	if a := r.light.Wanted; a != nil && r.light.Both < *a && !r.light.Targeted {
		all = append(all, r.amount())
	}
	return all
}

// beam is the lamps' beam; false for a photometric file.
func (r *result) beam() (lighting.CosinePower, bool) {
	b, ok := r.layout[0].Light.(lighting.CosinePower)
	return b, ok
}

// perLumen prints the conversion of the photometric file.
func (r *result) perLumen() string {
	v, err := fromplan.PhotonsPerLumen(r.plan)
	if err != nil {
		return "-"
	}
	return report.Number(v, 5)
}

func numbers(list []float64) string {
	var words []string
	for _, v := range list {
		words = append(words, strconv.FormatFloat(v, 'g', -1, 64))
	}
	return strings.Join(words, ", ")
}

// table condenses the map to at most eight columns and four rows.
func (r *result) table() (header []string, rows [][]string) {
	nx, ny := r.light.GridAlong, r.light.GridAcross
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
					sum += r.light.PPFD[y*nx+x]
				}
			}
			row = append(row, report.Number(sum/float64((x1-x0)*(y1-y0)), 0))
		}
		rows = append(rows, row)
	}
	return header, rows
}
