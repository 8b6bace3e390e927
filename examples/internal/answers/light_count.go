package answers

import (
	"math"

	"cloche.example/examples/internal/plan"
)

// Counted is the plan with as many lamps as its target asks, where it gives a
// target in place of their count, and their map: the mean of few lamps grows in
// proportion to their count, near enough to settle in some rounds. They hang in
// rows with spacings as equal as may be, and burn fully. Where those are less even
// than wanted, other rows are tried, with up to half as many lamps more, and the first
// that are even enough are taken.
func Counted(p *plan.Plan) (*plan.Plan, LampMap, error) {
	if p.Lights.KnownFrom != "target" {
		m, err := MapLamps(p)
		return p, m, err
	}
	of := rowsOf(p, p.Lights.Rows, p.Lights.PerRow)
	q := of.Lights
	q.KnownFrom, q.Groups = "count", nil
	most := 50 * 500
	var m LampMap
	for range 8 {
		var err error
		if m, err = MapLamps(of); err != nil {
			return nil, m, err
		}
		count := len(m.Layout)
		want := min(most, max(1, int(math.Ceil(float64(count)*q.Target/m.Mean-1e-9))))
		rows, perRow := spread(want, q.BedLength, q.BedWidth)
		if rows*perRow == count || m.Mean >= q.Target && rows*perRow > count {
			break
		}
		q.Rows, q.PerRow = rows, perRow
	}
	if m.U0 >= q.Evenness {
		return of, m, nil
	}
	return evener(of, m)
}

// rowsOf is the plan with so many rows of so many lamps.
func rowsOf(p *plan.Plan, rows, perRow int) *plan.Plan {
	of, q := *p, *p.Lights
	of.Lights = &q
	q.Rows, q.PerRow = rows, perRow
	return &of
}

// tried is how many other rows are mapped at the most.
const tried = 12

// evener tries other rows for the target and the evenness of p, which map m does
// not reach; p and m where none does.
func evener(p *plan.Plan, m LampMap) (*plan.Plan, LampMap, error) {
	l := p.Lights
	count := len(m.Layout)
	maps := 0
	for n := count; n <= count+count/2; n++ {
		for rows := 1; rows <= min(50, n); rows++ {
			perRow := n / rows
			along, across := l.BedLength/float64(perRow), l.BedWidth/float64(rows)
			if n%rows != 0 || perRow > 500 || along > 2*across || across > 2*along || rows == l.Rows && perRow == l.PerRow {
				continue
			}
			if maps++; maps > tried {
				return p, m, nil
			}
			of := rowsOf(p, rows, perRow)
			x, err := MapLamps(of)
			if err != nil {
				return nil, x, err
			}
			if x.Mean >= l.Target && x.U0 >= l.Evenness {
				return of, x, nil
			}
		}
	}
	return p, m, nil
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
