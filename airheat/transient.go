package airheat

import (
	"errors"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/internal/domain"
	"cloche.example/internal/transient"
)

// Forever is the longest time.Duration, about 292 years; as a result it means
// never.
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
// Times before the start are answered too, as long as the exponentials stay
// finite. NaN where start or d is out of its ranges, and for the zero
// Transient.
func (h Transient) After(start Temperatures, d envelope.Drive, after time.Duration) Temperatures {
	if !h.s.Made() || d.Check() != nil || !start.inRange() {
		return noTemperatures()
	}
	return h.after(start, d, after)
}

func (t *Temperatures) inRange() bool {
	return roomRange.Contains(t.Air) && roomRange.Contains(t.Structure) && roomRange.Contains(t.Soil)
}

func noTemperatures() Temperatures { return Temperatures{math.NaN(), math.NaN(), math.NaN()} }

func (h *Transient) after(start Temperatures, d envelope.Drive, after time.Duration) Temperatures {
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

// reachFrom finds the first time at which node n reaches level, °C, when the house starts at start and stands under d, looking as
// far as limit; names are the caller's for the two. The crossing is found on the exact solution: the curve is cut at
// its turning points, of which there are at most three, so that no crossing is
// missed, and the first piece that changes sides is searched in a bracket to a
// microsecond or better than a part in 1e12. A level that is met at the start
// gives time zero, and so does met.
func (h *Transient) reachFrom(start Temperatures, d envelope.Drive, n node, names [2]string, level float64, met bool, limit time.Duration) (Event, error) {
	if err := errors.Join(h.made(), d.Check(), checkStart(start), roomRange.Check(names[0], level), checkLimit(names[1], limit)); err != nil {
		return Event{}, err
	}
	c := h.course(start, d)
	return reach(&c, n, start.of(n), level, met, limit.Seconds())
}

func checkStart(t Temperatures) error {
	return errors.Join(roomRange.Check("air in the steady state before", t.Air), roomRange.Check("structure in the steady state before", t.Structure), roomRange.Check("soil in the steady state before", t.Soil))
}

func checkLimit(field string, limit time.Duration) error {
	if limit <= 0 {
		return &RangeError{Field: field, Value: limit.Seconds(), Min: domain.MoreThan(0), Max: Forever.Seconds(), Unit: "s"}
	}
	return nil
}

// reach finds the first crossing of level by node n, which starts at t0 °C; met
// says that the level counts as reached there.
func reach(c *transient.Course, n node, t0, level float64, met bool, limit float64) (Event, error) {
	i := int(n)
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
	state, rate := c.AtWithRate(i, x.Time)
	e.State, e.Rate = temperatures(state), rate
	return e, nil
}
