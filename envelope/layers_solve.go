package envelope

import (
	"fmt"
	"math"
)

// noPivot is what a pivot of a system without a solution is below.
const noPivot = 1e-280

// eliminate solves the first n rows for each of the given number of
// right-hand sides that stand behind the matrix, by Gaussian elimination with
// row pivoting, in place. It returns false for a singular matrix.
func (j *system) eliminate(n, sides int) bool {
	for p := range n {
		best := p
		for r := p + 1; r < n; r++ {
			if math.Abs(j.matrix[r][p]) > math.Abs(j.matrix[best][p]) {
				best = r
			}
		}
		if best != p {
			for q := p; q < n+sides; q++ {
				j.matrix[p][q], j.matrix[best][q] = j.matrix[best][q], j.matrix[p][q]
			}
		}
		pivot := j.matrix[p][p]
		if !(math.Abs(pivot) > noPivot) {
			return false
		}
		top := j.matrix[p][p : n+sides]
		for r := p + 1; r < n; r++ {
			low := j.matrix[r][p : n+sides]
			if low[0] == 0 {
				continue
			}
			m := low[0] / pivot
			for q := 1; q < len(top); q++ {
				low[q] -= m * top[q]
			}
		}
	}
	for p := n - 1; p >= 0; p-- {
		row := &j.matrix[p]
		for d := n; d < n+sides; d++ {
			v := row[d]
			for q := p + 1; q < n; q++ {
				v -= row[q] * j.matrix[q][d]
			}
			row[d] = v / row[p]
		}
	}
	return true
}

// solve finds the state. The balances are smooth but for kinks, and two jumps
// of the correlation for upright gaps. Newton's method with the branch of each
// gap following its Rayleigh number comes first. Should it not close, the
// branches are held while Newton's method runs, then steps of time, and changed
// between runs; a gap that asks for branch 2 from branch 1 and for branch 1
// from branch 2 has no exact root on either side of the upward jump, and is
// held at the jump, its Nusselt number being found between the two values.
// Relaxation is left for what is still open, about one cover in a hundred
// thousand over the whole domain.
func (s *solver) solve() error {
	if s.newton(16) {
		return nil
	}
	aim := s.aim
	s.aim = closure
	defer func() { s.aim = aim }()
	for i := range s.n - 1 {
		s.gaps[i].locked = s.gaps[i].upright
	}
	var tries [MaxLayers - 1]int
	for range 24 {
		if !s.newton(40) {
			s.march(300)
		}
		if !s.rebranch(&tries) {
			break
		}
	}
	if s.biggest <= closureLimit {
		return nil
	}
	s.relax()
	if s.biggest <= closureLimit {
		return nil
	}
	return s.open()
}

// open is the error for a cover that does not close.
func (s *solver) open() error {
	return fmt.Errorf("%w: cover of %d layers, a face balance stays open by %g W/m² after %d steps", ErrNotConverged, s.n, s.biggest, s.steps)
}

// How relax moves the held Nusselt numbers: they begin at firstHeld, go firstShare of
// the way in a round, and after shareFalls rounds shareLater of the share before, so
// that what sways about a jump comes to rest. heldAgrees is the difference, as a
// fraction, from which a gap counts as not at its correlation, heldSettled what is
// rounding.
const (
	firstHeld   = 1.5
	firstShare  = 0.5
	relaxRounds = 400
	shareFalls  = 60
	shareLater  = 0.95
	heldAgrees  = 1e-9
	heldSettled = 1e-13
)

// relax is the last resort: Newton's method with the Nusselt numbers of all
// gaps held, which leaves a monotone system, then the Nusselt numbers moved
// part of the way to the correlation, again and again. A gap that still moves
// at the end sits at a jump or kink; its balance closes with the number held.
func (s *solver) relax() {
	s.vars = s.base()
	s.start()
	for i := range s.n - 1 {
		s.gaps[i].held, s.gaps[i].locked, s.gaps[i].pinned = firstHeld, false, false
	}
	share := firstShare
	for round := range relaxRounds {
		s.newton(60)
		moved := 0.0
		for i := range s.n - 1 {
			g := &s.gaps[i]
			want, _ := g.flow[g.side].nusselt(g.ra, g.lnAspect, branchOf(g.ra))
			off := math.Abs(want-g.held) / want
			g.unsettled = off > heldAgrees
			moved = max(moved, off)
			if round < relaxRounds-1 {
				g.held += share * (want - g.held)
			}
		}
		if moved < heldSettled {
			break
		}
		if round > shareFalls {
			share *= shareLater
		}
	}
	s.newton(60)
}

// rebranch compares each held branch with its Rayleigh number and reports
// whether something changed.
func (s *solver) rebranch(tries *[MaxLayers - 1]int) bool {
	changed := false
	vars := s.base()
	for i := range s.n - 1 {
		g := &s.gaps[i]
		if !g.locked || g.pinned {
			continue
		}
		want := branchOf(g.ra)
		if want == g.branch {
			continue
		}
		changed = true
		tries[i]++
		if tries[i] > 2 && max(want, g.branch) == 2 && min(want, g.branch) == 1 {
			g.pinned = true
			continue
		}
		g.branch = want
	}
	// Give each pinned gap its place among the unknowns.
	for i := range s.n - 1 {
		if s.gaps[i].pinned {
			s.x[vars] = s.gaps[i].nu
			vars++
		}
	}
	s.vars = vars
	return changed
}

// newton runs up to limit steps and reports whether all balances are closed.
// A step that does not lessen the sum of squares is halved; where halving does
// not help, a few damped steps with frozen coefficients follow, which contract
// because every flux grows slower than its coefficient's share allows.
func (s *solver) newton(limit int) bool {
	j := s.system
	sum := s.evaluate(j)
	frozen, rest, damping := 0, firstRest, firstDamping
	for range limit {
		if s.biggest <= s.aim {
			return true
		}
		n := s.vars
		for r := range n {
			j.matrix[r][n] = -s.f[r]
		}
		if !j.eliminate(n, 1) {
			s.fresh = false
			return false
		}
		s.steps++
		var step [maxVars]float64
		scale := 1.0
		for r := range n {
			step[r] = j.matrix[r][n]
			if (r < 2*s.n && r%2 == 0) && math.Abs(step[r])*scale > stepLimit {
				scale = stepLimit / math.Abs(step[r])
			}
		}
		if frozen > 0 {
			frozen--
			s.plain = frozen > 0
			for r := range n {
				s.x[r] += damping * scale * step[r]
			}
			sum = s.evaluate(j)
			continue
		}
		old := s.x
		for try := 0; ; try++ {
			for r := range n {
				s.x[r] = old[r] + scale*step[r]
			}
			next := s.evaluate(j)
			if next < sum {
				sum = next
				break
			}
			if s.biggest <= closureLimit && try > 2 {
				return true
			}
			if try == 7 {
				frozen = rest
				rest, damping = 2*rest, max(leastDamping, nextDamping*damping)
				s.plain = true
				sum = s.evaluate(j)
				break
			}
			scale /= 2
		}
	}
	s.plain = false
	s.evaluate(nil)
	return s.biggest <= s.aim
}

// Where halving a step does not help, newton goes firstRest frozen steps by firstDamping
// of their length, then twice as many by nextDamping of that, leastDamping at least.
const (
	firstRest    = 6
	firstDamping = 0.5
	nextDamping  = 0.7
	leastDamping = 0.1
)

// march holds firstHeat, W/(m² K), over its first step of time: less, so a longer step,
// where the balances close, more where they open, up to mostHeat, beyond which the
// faces stand still.
const (
	firstHeat   = 30.0
	longerStep  = 0.6
	shorterStep = 3.0
	mostHeat    = 1e4
)

// march follows the faces to their steady state as if each held a little
// heat, in implicit steps of time that lengthen while the balances close: slow
// where Newton's method runs in circles, and as fast at the end.
func (s *solver) march(limit int) {
	j := s.system
	s.plain = false
	s.start()
	sum := s.evaluate(j)
	perStep := firstHeat
	for range limit {
		if s.biggest <= s.aim {
			return
		}
		n := s.vars
		for i := range s.n {
			o, f := outerFace(i), innerFace(i)
			j.matrix[o][o] -= perStep
			j.matrix[f][o] -= perStep
			j.matrix[f][f] -= perStep * s.resist[i]
		}
		if s.leaks {
			for i := range s.n - 1 {
				j.matrix[2*s.n+i][2*s.n+i] -= perStep
			}
		}
		for r := range n {
			j.matrix[r][n] = -s.f[r]
		}
		if !j.eliminate(n, 1) {
			return
		}
		s.steps++
		for r := range n {
			s.x[r] += j.matrix[r][n]
		}
		next := s.evaluate(j)
		if next < sum {
			perStep *= longerStep
		} else {
			perStep = min(perStep*shorterStep, mostHeat)
		}
		sum = next
	}
}
