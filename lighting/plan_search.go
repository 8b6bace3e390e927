package lighting

import (
	"math"

	"gonum.org/v1/gonum/optimize"
)

// stretch is the longer of the even spacings of columns by rows fixtures over
// the shorter.
func (n Need) stretch(columns, rows int) float64 {
	ratio := n.Bed.Length / float64(columns) / (n.Bed.Width / float64(rows))
	return math.Max(ratio, 1/ratio)
}

// sensible keeps rows and columns to spacings within a factor of four.
func (n Need) sensible(columns, rows int) bool {
	return n.stretch(columns, rows) <= 4 || columns == 1 || rows == 1
}

// Bounds of the search. With and without them 30 random needs of up to 60
// fixtures gave plans of the same counts.
const (
	evenStretch = 1.5  // of spacings that are near to even
	hopeless    = 0.2  // lack of the best of the coarse tries from which nothing more is tried
	doubtful    = 0.05 // the same after the simplex search on the coarse grid
	coarseShare = 0.5  // spacing of the coarse grid as a share of the clearance
)

// tune sets height and the two spacings of columns by rows fixtures; lack is
// how far mean and evenness fall short, 0 or less when both are reached.
func (n Need) tune(columns, rows int, shared *tables) (best Plan, miss float64, err error) {
	lack := func(x []float64, share float64) float64 {
		p, err := n.place(columns, rows, x)
		if err != nil {
			return math.Inf(1)
		}
		mean, least, err := n.sample(&p, share, shared)
		if err != nil {
			return math.Inf(1)
		}
		k := n.Maintenance.Factor()
		return n.lack(k*mean, k*least)
	}
	x, miss := []float64{0, 0, 0}, math.Inf(1)
	try := func(to ...float64) {
		if l := lack(to, coarseShare); l < miss {
			x, miss = to, l
		}
	}
	if n.symmetric() {
		// Low and close together most photons fall on the bed.
		if try(lowest, lowest, lowest); miss > hopeless && n.short(columns, rows, shared) {
			best, err = n.place(columns, rows, x)
			return best, miss, err
		}
	}
	for _, h := range firstHeights {
		for _, sx := range spread(columns) {
			for _, sy := range spread(rows) {
				try(h, sx, sy)
			}
		}
	}
	for _, stage := range [2]struct{ share, enough float64 }{{coarseShare, hopeless}, {spacingShare, doubtful}} {
		if miss > stage.enough {
			break
		}
		settings := &optimize.Settings{FuncEvaluations: simplexMost, Converger: &optimize.FunctionConverge{Absolute: simplexSettled, Iterations: 15}}
		problem := optimize.Problem{Func: func(x []float64) float64 { return lack(x, stage.share) }}
		result, err := optimize.Minimize(problem, x, settings, &optimize.NelderMead{SimplexSize: simplexSize})
		if result == nil || err != nil && result.X == nil {
			continue
		}
		x, miss = result.X, result.F
	}
	if best, err = n.place(columns, rows, x); err != nil || miss > 0 {
		return best, miss, err
	}
	err = n.judge(&best, shared, false)
	return best, n.lack(best.Harvest.Mean, best.Least), err
}

// The simplex search: unknowns run free and stand for a height and spacings
// through the logistic function. What a plan reaches is judged apart.
const (
	simplexMost    = 90    // evaluations of a search
	simplexSettled = 1e-4  // of the lack, that 15 steps no longer gain
	simplexSize    = 0.3   // of the first simplex, in unknowns
	lowest         = -50.0 // an unknown at the least of its range
)

// firstHeights are the heights to begin with, as unknowns, from low to high.
var firstHeights = [...]float64{-2.5, -1, 0.5, 2}

// short tells that even low and close together the photons on the bed do not
// reach the mean.
func (n Need) short(columns, rows int, shared *tables) bool {
	p, err := n.place(columns, rows, []float64{lowest, lowest, lowest})
	if err != nil {
		return false
	}
	mean, _, err := n.sample(&p, spacingShare, shared)
	return err == nil && mean*n.Maintenance.Factor() < n.PPFD
}

// spread lists the spacings to begin with, as unknowns of the search, of a count
// of fixtures.
func spread(count int) []float64 {
	if count == 1 {
		return []float64{0}
	}
	return []float64{-0.5, 0.3, 0.9}
}
