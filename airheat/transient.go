package airheat

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/internal/solve"
)

// Forever is the longest time span; events that would come later are never.
const Forever = time.Duration(math.MaxInt64)

// course is the exact solution from one start under one drive: node i is
// base[i] + slope t + sum over k of amp[i][k] exp(-lambda[k] t).
type course struct {
	lambda [3]float64
	base   [3]float64
	slope  [3]float64
	amp    [3][3]float64
}

// course solves the equations from start under d. In the eigenvectors each
// component obeys y' = -lambda y + g0 + g1 t, so that
// y = p0 + p1 t + (y0 - p0) exp(-lambda t), p1 = g1/lambda, p0 = (g0-p1)/lambda.
func (h *House) course(start Temperatures, d Drive) course {
	n := &h.n
	// Temperatures counted from d.Outside keep their digits.
	y0 := [3]float64{(start.Air - d.Outside) * h.scale[0], (start.Structure - d.Outside) * h.scale[1], (start.Soil - d.Outside) * h.scale[2]}
	f0 := [3]float64{(d.Heat - n.CoverSky*d.SkyDrop) / h.scale[0], d.StructureHeat / h.scale[1], (d.SoilHeat + n.SoilDeep*(d.Deep-d.Outside)) / h.scale[2]}
	f1 := [3]float64{(n.Cover + n.Leakage + n.CoverSky) * d.Ramp / h.scale[0], n.StructureOutside * d.Ramp / h.scale[1], 0}
	c := course{lambda: h.lambda, base: [3]float64{d.Outside, d.Outside, d.Outside}}
	for k := range 3 {
		var y, g0, g1 float64
		for i := range 3 {
			y += h.vec[i][k] * y0[i]
			g0 += h.vec[i][k] * f0[i]
			g1 += h.vec[i][k] * f1[i]
		}
		p1 := g1 / h.lambda[k]
		p0 := (g0 - p1) / h.lambda[k]
		for i := range 3 {
			v := h.vec[i][k] / h.scale[i]
			c.base[i] += v * p0
			c.slope[i] += v * p1
			c.amp[i][k] = v * (y - p0)
		}
	}
	return c
}

// at returns the temperatures after t seconds.
func (c *course) at(t float64) Temperatures {
	e0, e1, e2 := math.Exp(-c.lambda[0]*t), math.Exp(-c.lambda[1]*t), math.Exp(-c.lambda[2]*t)
	var out [3]float64
	for i := range out {
		out[i] = c.base[i] + c.slope[i]*t + c.amp[i][0]*e0 + c.amp[i][1]*e1 + c.amp[i][2]*e2
	}
	return Temperatures{out[0], out[1], out[2]}
}

// After returns the temperatures a time after the house stood at start, under
// d, °C. The solution is exact: rounding alone limits it, to about 1e-10 K.
// Times before the start are answered too, as far as the exponentials bear it.
func (h *House) After(start Temperatures, d Drive, after time.Duration) Temperatures {
	c := h.course(start, d)
	return c.at(after.Seconds())
}

// Event says when a node first reaches a temperature, and if it never does,
// how near it comes.
type Event struct {
	Reached  bool          // whether the level is reached within the limit
	Time     time.Duration // when; the limit if it is never reached
	State    Temperatures  // °C, the three nodes at Time
	Nearest  float64       // °C, the node's temperature nearest to the level up to Time
	Limiting float64       // °C, where the node would settle; ±Inf under a ramp
	Rate     float64       // K/s, how fast the node changes at Time
}

// settled is the distance in K within which a level that the house only
// creeps up to counts as never reached.
const settled = 1e-9

// Reach finds the first time at which node reaches level, °C, when the house
// starts at start and stands under d, looking as far as limit. The crossing is
// found on the exact solution: the curve is cut at its turning points, of
// which there are at most three, so that no crossing is missed, and the first
// piece that changes sides is searched in a bracket to a microsecond or better
// than a part in 1e12. A level that is met at the start gives time zero.
func (h *House) Reach(start Temperatures, d Drive, node Node, level float64, limit time.Duration) (Event, error) {
	return h.reachFrom(start, d, node, level, false, limit)
}

// reachFrom is Reach for a level that counts as met at the start, where met
// says so.
func (h *House) reachFrom(start Temperatures, d Drive, node Node, level float64, met bool, limit time.Duration) (Event, error) {
	if err := h.made("House"); err != nil {
		return Event{}, err
	}
	if err := errors.Join(d.check(), checkStart(start), checkNode(node), roomRange.Check("level", level), checkLimit(limit)); err != nil {
		return Event{}, err
	}
	c := h.course(start, d)
	return c.reach(int(node), start.Of(node), level, met, limit.Seconds())
}

func checkStart(t Temperatures) error {
	return errors.Join(roomRange.Check("start.Air", t.Air), roomRange.Check("start.Structure", t.Structure), roomRange.Check("start.Soil", t.Soil))
}

func checkNode(n Node) error {
	if n > SoilNode {
		return &RangeError{Field: "node", Value: float64(n), Min: float64(AirNode), Max: float64(SoilNode)}
	}
	return nil
}

func checkLimit(limit time.Duration) error {
	if limit <= 0 {
		return &RangeError{Field: "limit", Value: limit.Seconds(), Min: math.SmallestNonzeroFloat64, Max: Forever.Seconds(), Unit: "s"}
	}
	return nil
}

// reach finds the first crossing of level by node i, which starts at t0 °C; met
// says that the level counts as reached there.
func (c *course) reach(i int, t0, level float64, met bool, limit float64) (Event, error) {
	f := expSum{n: 3, c: c.amp[i], mu: c.lambda, base: c.base[i] - level, slope: c.slope[i]}
	side := level - t0 // positive: the level lies above the start
	e := Event{Limiting: c.base[i], Nearest: t0}
	if c.slope[i] != 0 {
		e.Limiting = math.Inf(1)
		if c.slope[i] < 0 {
			e.Limiting = math.Inf(-1)
		}
	}
	if side == 0 || met {
		e.Reached, e.State, e.Rate = true, c.at(0), f.slopeAt(0)
		return e, nil
	}
	var turns [4]float64
	count := f.turns(limit, &turns)
	turns[count] = limit
	from := 0.0
	for k := 0; k <= count; k++ {
		to := turns[k]
		v := f.at(to)
		if last := k == count; !last && v*side >= 0 || last && v*side > settled*math.Abs(side) {
			if last {
				to = f.shorten(from, to, side)
			}
			t := from
			if f.at(from)*side < 0 { // else the start lies at the level but for rounding
				var err error
				if t, err = solve.Root(f.at, from, to, 1e-6); err != nil {
					return Event{}, fmt.Errorf("time to %g °C: %w", level, err)
				}
			}
			e.Reached, e.Time, e.State, e.Nearest, e.Rate = true, duration(t), c.at(t), level, f.slopeAt(t)
			return e, nil
		}
		if math.Abs(v) < math.Abs(e.Nearest-level) {
			e.Nearest = v + level
		}
		from = to
	}
	e.Time, e.State, e.Rate = duration(limit), c.at(limit), f.slopeAt(limit)
	return e, nil
}

// shorten moves the right end of the bracket [from, to] towards from, trying
// ever longer steps from half the slowest time constant on, so that the search
// does not start from centuries.
func (f *expSum) shorten(from, to, side float64) float64 {
	for step := 0.5 / f.mu[f.n-1]; from+step < to; step *= 4 {
		if f.at(from+step)*side > 0 {
			return from + step
		}
	}
	return to
}
