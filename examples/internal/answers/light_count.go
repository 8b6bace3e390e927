package answers

import (
	"math"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/lighting"
)

// counted is the plan with as many lamps as its target asks, where it gives a
// target in place of their count: the mean of few lamps grows in proportion to
// their count, near enough to settle in some rounds. They hang in rows with
// spacings as equal as may be, and burn fully.
func counted(p *plan.Plan) (*plan.Plan, error) {
	if p.Lights.KnownFrom != "target" {
		return p, nil
	}
	of, q := *p, *p.Lights
	of.Lights, q.Groups = &q, nil
	q.KnownFrom = "count"
	most := 50 * 500
	for range 8 {
		layout, err := fromplan.Lamps(&of)
		if err != nil {
			return nil, err
		}
		bed := fromplan.Bed(&of)
		nx, ny := grid(bed, q.HeightAboveTrays, len(layout))
		points, err := bed.Grid(nx, ny)
		if err != nil {
			return nil, err
		}
		light, err := mapped(layout, points, fromplan.Levels(&of))
		if err != nil {
			return nil, err
		}
		s, err := lighting.Evenness(light)
		if err != nil {
			return nil, err
		}
		count := len(layout)
		want := min(most, max(1, int(math.Ceil(float64(count)*q.Target/s.Mean-1e-9))))
		rows, perRow := spread(want, q.BedLength, q.BedWidth)
		if rows*perRow == count || s.Mean >= q.Target && rows*perRow > count {
			break
		}
		q.Rows, q.PerRow = rows, perRow
	}
	return &of, nil
}

// spread is the count of rows and of lamps in a row, at least count in all, with
// the most equal spacings.
func spread(count int, length, width float64) (rows, perRow int) {
	best := math.Inf(1)
	for n := 1; n <= 50 && n <= count; n++ {
		m := (count + n - 1) / n
		if m > 500 {
			continue
		}
		along, across := length/float64(m), width/float64(n)
		// Unequal spacings and lamps over the count both cost.
		if cost := math.Abs(math.Log(along/across)) + 3*float64(n*m-count)/float64(count); cost < best {
			best, rows, perRow = cost, n, m
		}
	}
	return rows, perRow
}
