package envelope

// nearModes are the modes of the inner face whose iterates are kept.
const nearModes = faceHeld + 1

// stage says how a face whose state the dew point decides is judged in a house
// whose facets see each other: see HouseLoss.judge.
type stage uint8

const (
	stageAuto   stage = iota // wet where it can be
	stageSoaked              // under water, which neither condenses nor dries off where the face is above the dew point
	stageFree                // dry where it can be
)

// nearPart holds the last iterates of one part of a cover, from which its next
// state is sought first, and how the last of them moves. They change nothing but
// the count of steps: what the solver finds from them is taken only where the
// balances have one root.
type nearPart struct {
	have [nearModes]bool
	x    [nearModes][nearVars]float64

	last            faceMode          // mode that the slopes are of
	seen, ratio     float64           // W/m², kg/kg, of the last iterate
	bySeen, byRatio [nearVars]float64 // change of its unknowns
	dripAt          float64           // °C, the dry inner face

	film innerFilmCalc          // of the conditions that the cover was last prepared for
	gaps [MaxLayers - 1]gapCalc // the same

	stage   stage
	dries   bool    // soaked, and above the dew point
	above   float64 // K, by which it is then
	shed    float64 // K, of inside air and dew point against each other, to where it could be under water as well; +Inf where it could not
	hanging float64 // fraction of the face under drops before; 0 where that is not followed
}

// nearVars is the number of unknowns of a state that is kept.
const nearVars = 3 * MaxLayers

// nearCover holds the iterates of a cover.
type nearCover struct {
	set            *layerSet // the cover that they are of
	apart, touched nearPart
	space          *system // for the balances
}

// of empties the iterates unless they are those of c.
func (w *nearCover) of(c *layerSet) {
	if w.set != c {
		w.set = c
		w.apart.empty()
		w.touched.empty()
	}
}

func (w *nearPart) empty() { *w = nearPart{stage: w.stage, dries: w.dries, dripAt: nan} }

const (
	nearSteps = 6 // of Newton's method: more, and a start from afar is no slower

	// Fraction about the lower change of branch of an upright gap within which
	// nothing is taken from a near start: the Nusselt number falls there by a
	// half per cent, so that a balance may have a root on either side.
	nearBranch = 0.2

	// W/m², to which balances are closed on the way: one more step of Newton's
	// method, which flow takes, leaves its square over some hundred.
	roughClosure = 0.1
)

// resume solves the cover in the mode m from its last iterate and reports
// whether that gave the state; if not, the iterate is as it was.
func (s *solver) resume(m faceMode) bool {
	if s.near == nil || m >= nearModes || !s.near.have[m] {
		return false
	}
	old := s.x
	s.take(m)
	w := s.near
	copy(s.x[:s.vars], w.x[m][:])
	if m == w.last {
		seen, ratio := s.eIn-w.seen, s.room.ratio-w.ratio
		for r := range s.vars {
			s.x[r] += seen*w.bySeen[r] + ratio*w.byRatio[r]
		}
	}
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
	if (m == faceWater || m == faceFrost) && !(s.vapour >= 0) {
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
	if m == s.near.last {
		s.near.seen, s.near.ratio = s.eIn, s.room.ratio
	}
}
