package lighting

import "math"

// fastTable is a Table laid out for maps. Each cell holds the four
// coefficients of its interpolant about its low corner; a frame of dark cells
// surrounds the table.
type fastTable struct {
	polar, azi ladder
	cells      [][4]float64 // [azimuth][polar]
	across     int          // cells in a row
	round      bool         // the same at all azimuths
}

// ladder counts angles in even steps and finds the interval of an ascending
// list in which one lies: 0 before the first, n after the last of n.
type ladder struct {
	zero      float64  // rad, a step before the first angle
	scale     float64  // steps in a radian
	start     []uint32 // for each step the interval in which it begins
	intervals []interval
}

// interval holds its ends in steps.
type interval struct{ from, to float64 }

// maxSteps bounds the list of starting intervals.
const maxSteps = 4096

// angleSlack is the rounding error, rad, allowed at the ends of a table.
const angleSlack = 1e-12

func newLadder(angle []float64) ladder {
	last := len(angle) - 1
	width := angle[last] - angle[0]
	least := width
	for i := 1; i <= last; i++ {
		if w := angle[i] - angle[i-1]; w > 0 {
			least = math.Min(least, w)
		}
	}
	count := math.Min(math.Round(width/least), maxSteps)
	scale := count / width
	l := ladder{zero: angle[0] - 1/scale, scale: scale}
	slack, from := angleSlack*scale, 0.0
	for i, a := range angle {
		to := (a - l.zero) * scale
		switch i {
		case 0:
			to -= slack
		case last:
			to += slack
		}
		l.intervals = append(l.intervals, interval{from, to})
		from = (a - l.zero) * scale
	}
	l.intervals = append(l.intervals, interval{from, math.Inf(1)})
	i := 0
	for k := 0.0; k <= count+1; k++ {
		for l.intervals[i].to <= k {
			i++
		}
		l.start = append(l.start, uint32(i))
	}
	return l
}

func newFastTable(t *Table) *fastTable {
	n := len(t.polar)
	f := &fastTable{polar: newLadder(t.polar), azi: newLadder(t.azi), across: n + 1,
		round: t.web.Coordinates == TypeC && len(t.web.Horizontal) == 1}
	f.cells = make([][4]float64, (len(t.azi)+1)*f.across)
	for j := range len(t.azi) - 1 {
		width := (t.azi[j+1] - t.azi[j]) * f.azi.scale
		if width == 0 {
			continue // the two rows of a seam: no angle lies between them
		}
		for i := range n - 1 {
			a, b := t.value[j*n+i], t.value[j*n+i+1]
			c, d := t.value[(j+1)*n+i], t.value[(j+1)*n+i+1]
			h := (t.polar[i+1] - t.polar[i]) * f.polar.scale
			f.cells[(j+1)*f.across+i+1] = [4]float64{a, (b - a) / h, (c - a) / width, (d - c - (b - a)) / (h * width)}
		}
	}
	return f
}

// tableSource is a point with a table. Its rows turn a world vector into the
// frame of the polar axis.
type tableSource struct {
	x, y, z float64
	u, v, w Vector
	table   *fastTable
	exact   *Table
}

func newTableSource(f Fixture, t *Table, fast *fastTable) tableSource {
	r := f.Aim.matrix()
	local := [3]Vector{{r[0][0], r[1][0], r[2][0]}, {r[0][1], r[1][1], r[2][1]}, {r[0][2], r[1][2], r[2][2]}}
	down := Vector{-local[2].X, -local[2].Y, -local[2].Z}
	s := tableSource{x: f.At.X, y: f.At.Y, z: f.At.Z, table: fast, exact: t, u: local[0], v: local[1], w: down}
	if t.web.Coordinates == TypeB {
		s.u, s.v, s.w = down, local[0], local[1]
	}
	return s
}
