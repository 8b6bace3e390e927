package ventilation

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/internal/domain"
	"cloche.example/internal/solve"
)

// DayStep is the weather of one step of a day and what is done to the house
// besides its vents.
type DayStep struct {
	Weather Weather // mean over the step
	Rain    bool    // true: it rains
	Setting Setting // its Opening is not used: the vents decide
}

// DayLimits are what a course of the day is judged by.
type DayLimits struct {
	Temperature float64 // °C, -60 to 80, inside, above which hours and degree-hours count
	DeficitLow  float64 // Pa, 0 to 20000, vapour pressure deficit below which the air counts as humid
	DeficitHigh float64 // Pa, above which it counts as dry
}

// DefaultDayLimits returns 30 °C and 300 to 1200 Pa (common practice, no
// source).
func DefaultDayLimits() DayLimits {
	return DayLimits{Temperature: 30, DeficitLow: 300, DeficitHigh: 1200}
}

// DayPoint is one step of a course.
type DayPoint struct {
	Time  time.Duration // from the first midnight to the start of the step
	Vents VentOpening   // how far they stand open, and why
	State ClimateState  // of the house
}

// DayCourse is a day, or several, with its summary.
type DayCourse struct {
	Points      []DayPoint    // in order of time
	Mean        float64       // °C, inside
	Low         float64       // °C, inside, of the coolest step
	High        float64       // °C, inside, of the hottest step
	HighAt      time.Duration // start of the hottest step
	Above       time.Duration // hotter than the limit
	DegreeHours float64       // K h, above the limit
	DeficitMean float64       // Pa
	DeficitLow  float64       // Pa, least
	DeficitHigh float64       // Pa, greatest
	Humid       time.Duration // below the limits of the deficit
	Dry         time.Duration // above them
	Water       float64       // kg, evaporated in pads and sprayed as mist
	Dripped     float64       // kg, out of saturated air as fog: mist and vapour that the air could not hold
	Transpired  float64       // kg, by the crop, dew on it taken off
	Moves       int           // count of moves of the vents
	Travel      float64       // sum of all moves, as a fraction of the whole way
}

// Vents decides where the openings stand in each step of a day. OpeningRule and
// Schedule do, and so may a controller of your own.
type Vents interface {
	// Opening returns where the vents stand in the step that m tells of. Day
	// refuses a VentOpening whose Opening is not a fraction.
	Opening(m VentMoment) (VentOpening, error)
}

// VentMoment is what the vents are moved by.
type VentMoment struct {
	Time   time.Duration // from the first midnight to the start of the step
	Step   DayStep       // weather of the step, and what is done to the house besides
	Last   float64       // fraction, where the vents stood before; NaN in the first step
	Before ClimateState  // the house in the step before, as a sensor has seen it; zero in the first step

	// At returns the house in this step with the vents at the given opening,
	// fraction: what the move will lead to.
	At func(opening float64) (ClimateState, error)
}

// dayStepRange limits the length of a step.
var dayStepRange = domain.Range{Min: 1, Max: 1440, Unit: "min", Source: "a minute to a day"}

// Day returns the course of the house over steps of one interval, 1 to 1440 min, each, the
// first from midnight, under vents, judged by limits. The house is steady in
// each step, since its air follows within minutes: an OpeningRule is taken as
// come to rest, with the temperature that the vents leave and the vents that
// this temperature asks for solved together, the first such place that they
// meet from where they stood, so hunting of the drive and heat
// stored in soil and structure are not part of it. The vents of a rule stand at
// its Least before the first step. Fresh gusts are not part of a mean wind:
// set WindLow with a margin. The error joins the faults by field, or tells at
// which time the house has no state.
func (c *Climate) Day(steps []DayStep, interval time.Duration, vents Vents, limits DayLimits) (DayCourse, error) {
	if err := checkDay(steps, interval, vents, limits); err != nil {
		return DayCourse{}, err
	}
	d := DayCourse{Points: make([]DayPoint, 0, len(steps)), Low: math.Inf(1), High: math.Inf(-1), DeficitLow: math.Inf(1), DeficitHigh: math.Inf(-1)}
	last := math.NaN()
	if r, ok := vents.(OpeningRule); ok {
		last = r.Least
	}
	for i := range steps {
		m := ventStep{climate: c, step: &steps[i]}
		moment := VentMoment{Time: time.Duration(i) * interval, Step: steps[i], Last: last, At: m.at}
		if i > 0 {
			moment.Before = d.Points[i-1].State
		}
		p, state, err := m.stand(vents, moment)
		if err != nil {
			return DayCourse{}, fmt.Errorf("at %s: %w", clock(moment.Time), err)
		}
		if way := math.Abs(p.Opening - last); way > openingTolerance {
			d.Moves++
			d.Travel += way
		}
		last = p.Opening
		d.Points = append(d.Points, DayPoint{Time: moment.Time, Vents: p, State: state})
		d.count(&d.Points[i], interval, limits)
	}
	d.Mean /= float64(len(steps))
	d.DeficitMean /= float64(len(steps))
	return d, nil
}

// count adds one step to the sums.
func (d *DayCourse) count(p *DayPoint, interval time.Duration, limits DayLimits) {
	s := &p.State
	d.Mean += s.Temperature
	d.Low = math.Min(d.Low, s.Temperature)
	if s.Temperature > d.High {
		d.High, d.HighAt = s.Temperature, p.Time
	}
	if over := s.Temperature - limits.Temperature; over > 0 {
		d.Above += interval
		d.DegreeHours += over * interval.Hours()
	}
	d.DeficitMean += s.Deficit
	d.DeficitLow = math.Min(d.DeficitLow, s.Deficit)
	d.DeficitHigh = math.Max(d.DeficitHigh, s.Deficit)
	switch {
	case s.Deficit < limits.DeficitLow:
		d.Humid += interval
	case s.Deficit > limits.DeficitHigh:
		d.Dry += interval
	}
	d.Water += (s.FromPad + s.Mist) * interval.Seconds()
	d.Dripped += s.Drip * interval.Seconds()
	d.Transpired += s.Transpired * interval.Seconds()
}

func checkDay(steps []DayStep, interval time.Duration, vents Vents, limits DayLimits) error {
	var faults []error
	if len(steps) == 0 {
		faults = append(faults, &RangeError{Field: "number of steps", Value: 0, Min: 1, Max: math.Inf(1), Unit: "count"})
	}
	faults = append(faults, dayStepRange.Check("interval", interval.Minutes()))
	if vents == nil {
		faults = append(faults, fmt.Errorf("vents: %w: give an OpeningRule, a Schedule or a controller", ErrRange))
	} else if s, ok := vents.(Schedule); ok {
		faults = append(faults, s.check())
	} else if v, ok := vents.(interface{ Check() error }); ok {
		faults = append(faults, v.Check())
	}
	return errors.Join(append(faults,
		temperatureRange.Check("Temperature", limits.Temperature),
		domain.Range{Min: 0, Max: 20000, Unit: "Pa", Source: "air of these temperatures"}.Check("DeficitLow", limits.DeficitLow),
		domain.Range{Min: limits.DeficitLow, Max: 20000, Unit: "Pa", Source: "DeficitLow"}.Check("DeficitHigh", limits.DeficitHigh),
	)...)
}

// clock writes a time of the day.
func clock(at time.Duration) string {
	at = at.Round(time.Minute)
	return fmt.Sprintf("%02d:%02d", int(at.Hours()), int(at.Minutes())%60)
}

// ventStep solves the house for openings of the vents in one step, and keeps
// the last answer.
type ventStep struct {
	climate *Climate
	step    *DayStep
	known   bool
	opening float64
	state   ClimateState
}

func (m *ventStep) at(opening float64) (ClimateState, error) {
	if m.known && opening == m.opening {
		return m.state, nil
	}
	s := m.step.Setting
	s.Opening = opening
	state, err := m.climate.Solve(m.step.Weather, s)
	if m.known = err == nil; m.known {
		m.opening, m.state = opening, state
	}
	return state, err
}

// stand returns where vents stand at the moment, and the house then.
func (m *ventStep) stand(vents Vents, moment VentMoment) (VentOpening, ClimateState, error) {
	p, err := vents.Opening(moment)
	if err == nil {
		err = domain.Within("VentOpening", shareRange.Check("Opening", p.Opening))
	}
	if err != nil {
		return VentOpening{}, ClimateState{}, err
	}
	state, err := m.at(p.Opening)
	return p, state, err
}

// Opening returns the opening that the schedule has at the moment.
func (s Schedule) Opening(m VentMoment) (VentOpening, error) {
	opening := s.opening(m.Time)
	return VentOpening{Demand: opening, Limit: 1, Opening: opening, By: ByHand}, nil
}

// openingTolerance is how near the vents' place of rest is sought, fraction.
const openingTolerance = 1e-9

// Opening returns where the vents come to rest at the moment: the temperature that
// they leave asks for the place where they stand. In the first step they come
// from Least.
func (r OpeningRule) Opening(m VentMoment) (VentOpening, error) {
	last := m.Last
	if math.IsNaN(last) {
		last = r.Least
	}
	var fault error
	at := func(opening float64) ClimateState {
		state, err := m.At(opening)
		if errors.Is(err, ErrNoSolution) {
			return ClimateState{Temperature: math.Inf(1)} // hotter than any: open more
		}
		fault = errors.Join(fault, err)
		return state
	}
	limit, by := r.limit(m.Step.Weather.Wind, m.Step.Rain)
	held := math.Min(last, limit)
	state := at(held)
	p := r.Next(state.Temperature, m.Step.Weather.Wind, m.Step.Rain, held)
	if fault != nil {
		return VentOpening{}, fault
	}
	if (p.By == ByDeadBand || p.Opening == held) && !math.IsInf(state.Temperature, 1) {
		return p, nil
	}
	low, high := math.Min(r.Least, limit), math.Min(r.Most, limit)
	rest, err := comeToRest(func(opening float64) float64 {
		return math.Min(r.demand(at(opening).Temperature), limit) - opening
	}, low, high, held)
	if fault = errors.Join(fault, err); fault != nil {
		return VentOpening{}, fault
	}
	p = VentOpening{Limit: limit, Opening: r.stop(rest, limit)}
	if state, err = m.At(p.Opening); err != nil {
		return VentOpening{}, err
	}
	p.Demand = r.demand(state.Temperature)
	if rest == limit && p.Demand > limit {
		p.By = by
	}
	return p, nil
}

// restSteps is the count of steps between shut and wide open in which
// comeToRest walks.
const restSteps = 16

// comeToRest returns where vents that stand at held, fraction, come to rest
// between low and high: where ask, what the house they leave asks for less
// where they stand, is zero. They walk the way it asks from where they stand,
// so that of several such places, as on a clear evening when the shut house is
// colder than the air outside, they take the first that they meet.
func comeToRest(ask func(float64) float64, low, high, held float64) (float64, error) {
	a := math.Max(low, math.Min(high, held))
	fa := ask(a)
	end, step := high, 1.0/restSteps
	if fa < 0 {
		end, step = low, -step
	}
	for a != end && fa != 0 {
		b := a + step
		if (b-end)*step > 0 {
			b = end
		}
		fb := ask(b)
		if (fb < 0) != (fa < 0) || fb == 0 {
			return solve.Root(ask, math.Min(a, b), math.Max(a, b), openingTolerance)
		}
		a, fa = b, fb
	}
	return a, nil
}
