package airheat

import (
	"errors"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/internal/transient"
)

// Forever is the longest time span; events that would come later are never.
const Forever = time.Duration(math.MaxInt64)

// course solves the equations from start under d. Temperatures counted from
// d.Outside keep their digits.
func (h *Transient) course(start Temperatures, d envelope.Drive) transient.Course {
	n := &h.n
	return h.s.Course(
		[3]float64{start.Air, start.Structure, start.Soil}, d.Outside,
		[3]float64{d.Heat - n.CoverSky*d.SkyDrop, d.StructureHeat, d.SoilHeat + n.SoilDeep*(d.Deep-d.Outside)},
		[3]float64{(n.Cover + n.Leakage + n.CoverSky) * d.Ramp, n.StructureOutside * d.Ramp, 0},
	)
}

func temperatures(t [3]float64) Temperatures { return Temperatures{t[0], t[1], t[2]} }

// After returns the temperatures a time after the house stood at start, under
// d, °C. The solution is exact: rounding alone limits it, to about 1e-10 K.
// Times before the start are answered too, as far as the exponentials bear it.
func (h *Transient) After(start Temperatures, d envelope.Drive, after time.Duration) Temperatures {
	c := h.course(start, d)
	return temperatures(c.At(after.Seconds()))
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

// Reach finds the first time at which node reaches level, °C, when the house
// starts at start and stands under d, looking as far as limit. The crossing is
// found on the exact solution: the curve is cut at its turning points, of
// which there are at most three, so that no crossing is missed, and the first
// piece that changes sides is searched in a bracket to a microsecond or better
// than a part in 1e12. A level that is met at the start gives time zero.
func (h *Transient) Reach(start Temperatures, d envelope.Drive, node Node, level float64, limit time.Duration) (Event, error) {
	return h.reachFrom(start, d, node, level, false, limit)
}

// reachFrom is Reach for a level that counts as met at the start, where met
// says so.
func (h *Transient) reachFrom(start Temperatures, d envelope.Drive, node Node, level float64, met bool, limit time.Duration) (Event, error) {
	if err := h.made("Transient"); err != nil {
		return Event{}, err
	}
	if err := errors.Join(d.Check(), checkStart(start), checkNode(node), roomRange.Check("level", level), checkLimit(limit)); err != nil {
		return Event{}, err
	}
	c := h.course(start, d)
	return reach(&c, node, start.Of(node), level, met, limit.Seconds())
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

// reach finds the first crossing of level by node, which starts at t0 °C; met
// says that the level counts as reached there.
func reach(c *transient.Course, node Node, t0, level float64, met bool, limit float64) (Event, error) {
	i := int(node)
	e := Event{Limiting: c.Base[i]}
	if c.Slope[i] != 0 {
		e.Limiting = math.Copysign(math.Inf(1), c.Slope[i])
	}
	x := transient.Crossing{Reached: true, Nearest: t0}
	if !met {
		var err error
		if x, err = c.First(i, t0, level, limit); err != nil {
			return Event{}, err
		}
	}
	e.Reached, e.Time, e.Nearest = x.Reached, duration(x.Time), x.Nearest
	e.State, e.Rate = temperatures(c.At(x.Time)), c.RateAt(i, x.Time)
	return e, nil
}
