package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// Branch is one branch of a Tree: segments in series, that start at the fan or
// at the end of another branch.
type Branch struct {
	Name     string    // for messages
	Parent   int       // index of the branch it starts from, below its own; -1 for the one at the fan
	Segments []Segment // ducts in series; without a tee the losses at the branch's start stand in their Fittings
	Static   float64   // Pa, -1000 to 1000, pressure at the far end of a branch without children, above the house; only 0 in others
	Junction Junction  // how it leaves its parent: NoTee, StraightRun or SideBranch
	Angle    float64   // degree, 30 to 90, between a SideBranch and its parent; only 0 in others
}

// Tree is a tree of duct branches from one fan to many outlets, checked by
// NewTree. With all flows reversed it is an exhaust: flow and loss are the
// same, except at tees, whose losses are those of dividing flow. A Tree does
// not change: goroutines may share it.
type Tree struct {
	branches  []Branch
	systems   []System
	children  []int     // count of each branch's
	sideRatio []float64 // of the tee a branch leaves from: side branch's area over the duct's
}

// branchPressureRange is the range of Branch.Static.
var branchPressureRange = domain.Range{Min: -1000, Max: 1000, Unit: "Pa", Source: "pressure differences of rooms"}

// NewTree checks the branches; the first one is at the fan (Parent -1), and
// every other one names an earlier one as its Parent. The error lists every
// fault, each named as Branch[i].Field.
func NewTree(branches ...Branch) (Tree, error) {
	var faults []error
	if len(branches) == 0 {
		faults = append(faults, fmt.Errorf("%w: a tree needs at least one branch", ErrRange))
	}
	t := Tree{branches: append([]Branch(nil), branches...), children: make([]int, len(branches))}
	for i, b := range branches {
		parents := domain.Range{Min: 0, Max: float64(i - 1), Unit: "count", Source: "an earlier branch"}
		if i == 0 {
			parents = domain.Range{Min: -1, Max: -1, Unit: "count", Source: "the first branch is at the fan"}
		}
		if err := parents.Check(fmt.Sprintf("Branch[%d].Parent", i), float64(b.Parent)); err != nil {
			faults = append(faults, err)
		} else if i > 0 {
			t.children[b.Parent]++
		}
		s, err := NewSystem(b.Segments...)
		if err != nil {
			faults = append(faults, fmt.Errorf("Branch[%d]: %w", i, err))
		}
		faults = append(faults, branchPressureRange.Check(fmt.Sprintf("Branch[%d].Static", i), b.Static))
		t.systems = append(t.systems, s)
	}
	for i, b := range branches {
		if t.children[i] > 0 && b.Static != 0 {
			faults = append(faults, domain.Range{Unit: "Pa", Source: "only an outlet has a pressure of its own"}.Check(fmt.Sprintf("Branch[%d].Static", i), b.Static))
		}
	}
	if err := errors.Join(faults...); err != nil {
		return Tree{}, err
	}
	if err := t.checkTees(); err != nil {
		return Tree{}, err
	}
	t.sideRatio = make([]float64, len(branches))
	for i, b := range branches {
		if b.Junction != SideBranch {
			continue
		}
		for k := range branches { // the side branch and its straight run
			if k > 0 && branches[k].Parent == b.Parent {
				t.sideRatio[k] = t.teeRatio(i)
			}
		}
	}
	return t, nil
}

// BranchFlow is what one branch carries.
type BranchFlow struct {
	Flow float64 // m³/s, away from the fan; negative where a high Static drives it back
	Loss float64 // Pa, in the branch's own segments and at its tee
	Tee  float64 // Pa, the part of Loss at the tee it leaves from
	End  float64 // Pa, total pressure at its far end above the house
}

// TreeFlow is the balanced state of a Tree.
type TreeFlow struct {
	Branches []BranchFlow // in the tree's order
	Pressure float64      // Pa, that the fan must give
	Residual float64      // Pa, largest mismatch of pressure at a junction or outlet
}

// Solve returns the flows in all branches when the fan moves flow (m³/s, 1e-9
// to 1000) of the air: at each junction flows sum to zero, and every path from
// it to an outlet takes the same pressure. Newton's method on all branches at
// once. The error lists every fault, or is ErrNotConverged, or ErrNoSolution
// where the flow turns round at a tee.
func (t Tree) Solve(flow float64, air AirProperties) (TreeFlow, error) {
	if len(t.systems) == 0 {
		return TreeFlow{}, fmt.Errorf("%w: the tree is empty, make it with NewTree", ErrRange)
	}
	if err := errors.Join(notZero(ductFlowRange).Check("flow", flow), domain.Within("air", air.check())); err != nil {
		return TreeFlow{}, err
	}
	return t.solve(flow, air)
}

// Newton's method on the branches. At rest a loss has no slope, and a run's may
// fall as the share shifts: least slopes keep each line solvable, and move the
// steps, not the answer. What is left is of the order of rounding in flows and
// losses.
const (
	treeIterations = 200   // far more than rising losses take
	leastSlope     = 1e-9  // Pa/(m³/s)
	leastOfOwn     = 0.3   // of the slope of the branch's own segments
	flowSettled    = 1e-14 // of the whole flow, largest change of a step
	lossSettled    = 1e-10 // of the largest pressure in the tree
)

func (t Tree) solve(flow float64, air AirProperties) (TreeFlow, error) {
	n := len(t.systems)
	q := t.share(flow)
	// A branch seen from its near end is the line p = alpha + beta q; sums
	// gather its children's 1/beta and alpha/beta.
	alpha, beta := make([]float64, n), make([]float64, n)
	conductance, source := make([]float64, n), make([]float64, n)
	for range treeIterations {
		clear(conductance)
		clear(source)
		for i := n - 1; i >= 0; i-- {
			l, s := t.systems[i].loss(q[i], air)
			tee, ts := t.tee(i, q, air)
			l += tee
			s = math.Max(s+ts, leastOfOwn*s+leastSlope)
			alpha[i], beta[i] = l-s*q[i]+t.branches[i].Static, s
			if t.children[i] > 0 {
				alpha[i] += source[i] / conductance[i]
				beta[i] += 1 / conductance[i]
			}
			if i > 0 {
				conductance[t.branches[i].Parent] += 1 / beta[i]
				source[t.branches[i].Parent] += alpha[i] / beta[i]
			}
		}
		change := 0.0
		end := make([]float64, n)
		for i := range n {
			next := flow
			if i > 0 {
				next = (end[t.branches[i].Parent] - alpha[i]) / beta[i]
			}
			if t.children[i] > 0 {
				end[i] = (next + source[i]) / conductance[i]
			}
			change = math.Max(change, math.Abs(next-q[i]))
			q[i] = next
		}
		if change <= flowSettled*flow {
			break
		}
	}
	if err := t.teeReversed(q); err != nil {
		return TreeFlow{}, err
	}
	f := t.state(q, air)
	scale := math.Abs(f.Pressure) // of the terms, not of a sum that may vanish
	for _, b := range f.Branches {
		scale = math.Max(scale, math.Max(math.Abs(b.Loss), math.Abs(b.End)))
	}
	if f.Residual <= lossSettled*scale {
		return f, nil
	}
	return TreeFlow{}, fmt.Errorf("%w: the branches still differ by %g Pa", ErrNotConverged, f.Residual)
}

// state evaluates pressures from the outlets up. Where ways to a junction
// disagree, the first is taken and the difference is the residual.
func (t Tree) state(q []float64, air AirProperties) TreeFlow {
	f := TreeFlow{Branches: make([]BranchFlow, len(q))}
	seen := make([]bool, len(q))
	for i := len(q) - 1; i >= 0; i-- {
		b := &f.Branches[i]
		b.Flow = q[i]
		b.Loss, _ = t.systems[i].loss(q[i], air)
		b.Tee, _ = t.tee(i, q, air)
		b.Loss += b.Tee
		if t.children[i] == 0 {
			b.End = t.branches[i].Static
		}
		near := b.End + b.Loss
		if i == 0 {
			f.Pressure = near
			break
		}
		p := t.branches[i].Parent
		if seen[p] {
			f.Residual = math.Max(f.Residual, math.Abs(near-f.Branches[p].End))
		}
		f.Branches[p].End, seen[p] = near, true
	}
	return f
}

// A tree's slope is taken over a small part of the flow, and of any flow at rest:
// rounding and bend then cost a slope a part in 1e5 each, and only its next steps.
const (
	slopeShare = 1e-5
	slopeLeast = 1e-9 // m³/s
)

// loss is the tree as one resistance, its slope by a small difference.
func (t *Tree) loss(q float64, air AirProperties) (loss, slope float64) {
	step := slopeShare*q + slopeLeast
	a, errA := t.solve(q, air)
	b, errB := t.solve(q+step, air)
	if errA != nil || errB != nil {
		return math.NaN(), math.NaN()
	}
	return a.Pressure, (b.Pressure - a.Pressure) / step
}

// OperatingPoint returns the rightmost crossing of fan, driven by drive, with the
// tree when air flows in it, and the flows in all branches there. The errors are
// those of System.OperatingPoint.
func (t Tree) OperatingPoint(fan Fan, drive FanDrive, air AirProperties) (OperatingPoint, TreeFlow, error) {
	var empty error
	if len(t.systems) == 0 {
		empty = fmt.Errorf("%w: the tree is empty, make it with NewTree", ErrRange)
	}
	if err := errors.Join(empty, checkFan(&fan), drive.check(), domain.Within("air", air.check())); err != nil {
		return OperatingPoint{}, TreeFlow{}, err
	}
	f := finder{against: against(drive, air)}
	f.against.tree = &t
	if err := f.run(&fan, drive); err != nil {
		return OperatingPoint{}, TreeFlow{}, err
	}
	p, err := f.point(drive)
	if err != nil {
		return OperatingPoint{}, TreeFlow{}, err
	}
	flows, err := t.solve(p.DuctFlow, air)
	return p, flows, err
}

// Dampers returns for each branch the loss factor K, dimensionless, that a
// damper at its far end must add, on its last segment's velocity pressure, so
// that the outlets get the wanted flows (m³/s, one for each branch; those of
// branches with children are not read), and the pressure (Pa) the fan must then
// give. The branches on the path of greatest loss need none. The error lists
// every fault.
func (t Tree) Dampers(wanted []float64, air AirProperties) (factors []float64, pressure float64, err error) {
	if len(t.systems) == 0 {
		return nil, math.NaN(), fmt.Errorf("%w: the tree is empty, make it with NewTree", ErrRange)
	}
	if len(wanted) != len(t.systems) {
		return nil, math.NaN(), fmt.Errorf("%w: %d wanted flows for %d branches", ErrRange, len(wanted), len(t.systems))
	}
	faults := []error{domain.Within("air", air.check())}
	q := make([]float64, len(wanted))
	for i := len(q) - 1; i >= 0; i-- {
		if t.children[i] == 0 {
			q[i] = wanted[i]
			faults = append(faults, notZero(ductFlowRange).Check(fmt.Sprintf("wanted[%d]", i), q[i]))
		}
		if i > 0 {
			q[t.branches[i].Parent] += q[i]
		}
	}
	if err := errors.Join(faults...); err != nil {
		return nil, math.NaN(), err
	}
	// need is the pressure at a branch's near end for its worst way out.
	need, end := make([]float64, len(q)), make([]float64, len(q))
	for i := range end {
		end[i] = math.Inf(-1)
	}
	for i := len(q) - 1; i >= 0; i-- {
		if t.children[i] == 0 {
			end[i] = t.branches[i].Static
		}
		l, _ := t.systems[i].loss(q[i], air)
		tee, _ := t.tee(i, q, air)
		need[i] = end[i] + l + tee
		if i > 0 {
			end[t.branches[i].Parent] = math.Max(end[t.branches[i].Parent], need[i])
		}
	}
	factors = make([]float64, len(q))
	for i := 1; i < len(q); i++ {
		last := t.systems[i].runs[len(t.systems[i].runs)-1]
		v := q[i] / last.area
		factors[i] = (end[t.branches[i].Parent] - need[i]) / (air.Density / 2 * v * v)
	}
	return factors, need[0], nil
}
