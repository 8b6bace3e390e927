package envelope

// nearModes are the modes of the inner face whose iterates are kept.
const nearModes = faceFrost + 1

// nearPart holds the last iterates of one part of a cover, from which its next
// state is sought first. They change nothing but the count of steps: what the
// solver finds from them is taken only where the balances have one root.
type nearPart struct {
	have [nearModes]bool
	x    [nearModes][3*MaxLayers - 1]float64
}

// nearCover holds the iterates of a cover.
type nearCover struct {
	set            *layerSet // the cover that they are of
	apart, touched nearPart
}

// of empties the iterates unless they are those of c.
func (w *nearCover) of(c *layerSet) {
	if w.set != c {
		w.set = c
		w.apart.have, w.touched.have = [nearModes]bool{}, [nearModes]bool{}
	}
}

const (
	nearSteps = 6 // of Newton's method: more, and a start from afar is no slower

	// Fraction about the lower change of branch of an upright gap within which
	// nothing is taken from a near start: the Nusselt number falls there by a
	// half per cent, so that a balance may have a root on either side.
	nearBranch = 0.2
)

// resume solves the cover in the mode m from its last iterate and reports
// whether that gave the state; if not, the iterate is as it was.
func (s *solver) resume(m faceMode) bool {
	if s.near == nil || m >= nearModes || !s.near.have[m] {
		return false
	}
	old := s.x
	s.take(m)
	copy(s.x[:], s.near.x[m][:s.vars])
	if s.newton(nearSteps) && s.sole(m) {
		return true
	}
	s.x = old
	return false
}

// sole reports whether the state has no other beside it that a start from afar
// could find: vapour leaves no wet face, no upright gap is at its lower change
// of branch and none is held at a jump.
func (s *solver) sole(m faceMode) bool {
	if m != faceDry && !(s.vapour >= 0) {
		return false
	}
	for i := range s.n - 1 {
		g := &s.gaps[i]
		if g.upright && (g.locked || g.held > 0 || abs(g.ra/wrightLow-1) < nearBranch) {
			return false
		}
	}
	return true
}

// keep takes the state for the next start.
func (s *solver) keep(m faceMode) {
	if s.near == nil || m >= nearModes {
		return
	}
	s.near.have[m] = s.sole(m)
	copy(s.near.x[m][:], s.x[:s.vars])
}

// uptake returns by how much the vapour to the wet inner face, kg/(s m²), grows
// with the humidity ratio of the air, from the balances at the state. What a
// face at the freezing point or at the dew point draws warms it no further.
func (s *solver) uptake() float64 {
	frost := s.inner == faceFrost
	if s.inner != faceWater && !frost && s.inner != faceHeld {
		return 0
	}
	last := innerFace(s.n - 1)
	if s.inner == faceHeld {
		return s.closed * max(s.hIn, stillVapour) * s.room.wetAt(s.t[last]).perH
	}
	var j system
	s.evaluate(&j)
	w := s.water
	carry := s.closed * max(s.hIn, stillVapour) * w.perH
	n := s.vars
	for r := range n {
		j.matrix[r][n] = 0
	}
	j.matrix[last][n] = -carry * latentHeat(s.t[last], frost)
	if !j.eliminate(n) {
		return carry
	}
	rise := j.matrix[2*(s.n-1)][n] + s.resist[s.n-1]*j.matrix[2*(s.n-1)+1][n] // K
	grows := carry * (1 - w.slope*rise)
	if d := s.in - s.t[last]; s.hIn > stillVapour && abs(d) > 1e-9 {
		_, slope := s.film.coefficient(s.in, s.t[last])
		grows += s.vapour * (slope + s.hIn) / (d * s.hIn) * rise
	}
	return grows
}
