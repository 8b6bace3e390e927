package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// Junction says how a branch leaves its parent.
type Junction uint8

// The junctions. A tee divides a duct into one StraightRun and one SideBranch;
// for others the losses at a branch's start stand in its Fittings.
const (
	NoTee       Junction = iota // no tee: Fittings hold the loss
	StraightRun                 // goes on straight
	SideBranch                  // leaves at Branch.Angle
)

// String returns the name of the junction.
func (j Junction) String() string {
	switch j {
	case NoTee:
		return "no tee"
	case StraightRun:
		return "straight run"
	case SideBranch:
		return "side branch"
	}
	return fmt.Sprintf("Junction(%d)", uint8(j))
}

// The ranges of a tee.
var (
	teeAngleRange = domain.Range{Min: 30, Max: 90, Unit: "degree", Source: "Crane's tables of tees and wyes"}
	teeAreaRange  = domain.Range{Min: 0.01, Max: 1, Unit: "ratio", Source: "a side branch is at most as wide as its parent"}
)

// DividingRun returns the loss factor, dimensionless, of the straight run of a
// dividing tee, on the velocity pressure before it, for the share of the flow
// that leaves by the side (0 to 1, a fraction) and areaRatio, side branch over
// duct (0.01 to 1, a ratio). It is negative where the slower run regains
// pressure. NaN outside. [Crane09] ch. 2: M share².
func DividingRun(share, areaRatio float64) float64 {
	if !(share >= 0 && share <= 1) || !teeAreaRange.Contains(areaRatio) {
		return math.NaN()
	}
	m := 0.4
	switch {
	case areaRatio <= 0.4:
	case share <= 0.5:
		m = 2 * (2*share - 1)
	default:
		m = 0.3 * (2*share - 1)
	}
	return m * share * share
}

// teeUpright is halfway between the source's rows of 60 and 90 degrees.
const teeUpright = 75.0 // degree

// DividingBranch returns the loss factor, dimensionless, of the side branch of a
// dividing tee or wye, on the velocity pressure before it, for the share of the
// flow that it takes (0 to 1, a fraction), areaRatio, branch over duct (0.01 to
// 1, a ratio), and the angle it leaves at (30 to 90 degree). NaN outside.
// [Crane09] ch. 2: G (1 + H (share/areaRatio)² − J share/areaRatio cos angle).
// The source has a row for 0 to 60 degrees and one for 90: angles between take
// the nearer. Its G jumps by 4 % at shares of 0.4 and 0.6; here its falling line
// ends where it meets the constant.
func DividingBranch(share, areaRatio, angle float64) float64 {
	if !(share >= 0 && share <= 1) || !teeAreaRange.Contains(areaRatio) || !teeAngleRange.Contains(angle) {
		return math.NaN()
	}
	h, j := 1.0, 2.0
	if angle >= teeUpright && areaRatio > 4.0/9 { // diameters above 2/3
		h, j = 0.3, 0
	}
	g := 1.0
	switch {
	case angle < teeUpright && areaRatio <= 0.35:
		g = math.Max(1.1-0.7*share, 0.85)
	case angle < teeUpright:
		g = math.Max(1-0.6*share, 0.6)
	case areaRatio > 2.0/3:
		g = 1 + 0.3*share*share
	}
	x := share / areaRatio
	return g * (1 + h*x*x - j*x*math.Cos(angle*math.Pi/180))
}

// checkTees refuses junctions other than one straight run with one side branch
// no wider than their parent.
func (t *Tree) checkTees() error {
	var faults []error
	runs, sides := make([]int, len(t.branches)), make([]int, len(t.branches))
	for i := range t.branches {
		b := &t.branches[i]
		name := fmt.Sprintf("Branch[%d]", i)
		if b.Junction != SideBranch && b.Angle != 0 {
			faults = append(faults, domain.Range{Unit: "degree", Source: "only a SideBranch has one"}.Check(name+".Angle", b.Angle))
		}
		switch {
		case b.Junction == NoTee:
			continue
		case b.Junction > SideBranch || i == 0:
			faults = append(faults, &RangeError{Field: name + ".Junction", Value: float64(b.Junction), Min: float64(NoTee), Max: float64(SideBranch), Source: "NoTee, and beyond the first branch StraightRun and SideBranch"})
			continue
		case b.Junction == StraightRun:
			runs[b.Parent]++
			continue
		}
		sides[b.Parent]++
		faults = append(faults,
			teeAngleRange.Check(name+".Angle", b.Angle),
			teeAreaRange.Check(name+": its area over its parent's", t.teeRatio(i)))
	}
	for i := range t.branches {
		if n := runs[i] + sides[i]; n > 0 && (runs[i] != 1 || sides[i] != 1 || t.children[i] != 2) {
			faults = append(faults, fmt.Errorf("%w: a tee at the end of Branch[%d] has %d straight runs and %d side branches among %d, it takes one of each", ErrRange, i, runs[i], sides[i], t.children[i]))
		}
	}
	return errors.Join(faults...)
}

// teeRatio is the first area of branch i over the last of its parent.
func (t *Tree) teeRatio(i int) float64 {
	up := t.systems[t.branches[i].Parent].runs
	return t.systems[i].runs[0].area / up[len(up)-1].area
}

// tee is the loss at the start of branch i, Pa, and its slope by the branch's
// flow at the parent's flow, for the flows q. Shares outside 0 to 1, which the
// search may pass, count as the nearer end.
func (t *Tree) tee(i int, q []float64, air AirProperties) (loss, slope float64) {
	b := &t.branches[i]
	if b.Junction == NoTee || !(q[b.Parent] > 0) {
		return 0, 0
	}
	up := t.systems[b.Parent].runs
	v := q[b.Parent] / up[len(up)-1].area
	pressure := air.Density / 2 * v * v
	share, ratio := q[i]/q[b.Parent], t.sideRatio[i]
	factor := func(share float64) float64 {
		share = math.Max(0, math.Min(1, share))
		if b.Junction == StraightRun {
			return DividingRun(1-share, ratio)
		}
		return DividingBranch(share, ratio, b.Angle)
	}
	const step = 1e-6 // of the share; near its best for a central difference
	slope = pressure * (factor(share+step) - factor(share-step)) / (2 * step) / q[b.Parent]
	return pressure * factor(share), slope
}

// teeReversed is an error where the flow turns round at a tee, for which its
// formulas are not made.
func (t *Tree) teeReversed(q []float64) error {
	for i := range t.branches {
		if p := t.branches[i].Parent; t.branches[i].Junction != NoTee && !(q[i] >= 0 && q[p] > 0) {
			return fmt.Errorf("%w: in Branch[%d] (%s) the flow turns round at its tee, %.4g m³/s; the loss of a dividing tee does not hold there", ErrNoSolution, i, t.branches[i].Name, q[i])
		}
	}
	return nil
}

// share gives each outlet the same flow.
func (t Tree) share(flow float64) []float64 {
	outlets := 0.0
	for _, c := range t.children {
		if c == 0 {
			outlets++
		}
	}
	q := make([]float64, len(t.systems))
	for i := len(q) - 1; i >= 0; i-- {
		if t.children[i] == 0 {
			q[i] = flow / outlets
		}
		if i > 0 {
			q[t.branches[i].Parent] += q[i]
		}
	}
	return q
}
