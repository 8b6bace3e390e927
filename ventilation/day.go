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
	Temperature float64 // °C, inside, above which hours and degree-hours count
	DeficitLow  float64 // Pa, vapour pressure deficit below which the air counts as humid
	DeficitHigh float64 // Pa, above which it counts as dry
}

// DefaultDayLimits returns 30 °C and 300 to 1200 Pa (common practice, no
// source).
func DefaultDayLimits() DayLimits {
	return DayLimits{Temperature: 30, DeficitLow: 300, DeficitHigh: 1200}
}

// DayPoint is one step of a course.
type DayPoint struct {
	Time     time.Duration // from the first midnight to the start of the step
	Position Position      // of the vents
	State    ClimateState  // of the house
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

// Vents says how far the openings stand over a day: an OpeningRule or a
// Schedule.
type Vents interface {
	Check() error
	stand(c *Climate, step DayStep, at time.Duration, last float64) (Position, ClimateState, error)
}

// DayStepRange limits the length of a step.
var dayStepRange = domain.Range{Min: 1.0 / 60, Max: 24, Unit: "h", Source: "a minute to a day"}

// Day returns the course of the house over steps of one interval each, the
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
	for i, step := range steps {
		at := time.Duration(i) * interval
		p, state, err := vents.stand(c, step, at, last)
		if err != nil {
			return DayCourse{}, fmt.Errorf("at %s: %w", clock(at), err)
		}
		if way := math.Abs(p.Opening - last); way > 1e-9 {
			d.Moves++
			d.Travel += way
		}
		last = p.Opening
		d.Points = append(d.Points, DayPoint{Time: at, Position: p, State: state})
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
	faults = append(faults, dayStepRange.Check("interval", interval.Hours()))
	if vents == nil {
		faults = append(faults, fmt.Errorf("vents: %w: give an OpeningRule or a Schedule", ErrRange))
	} else {
		faults = append(faults, vents.Check())
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

func (s Schedule) stand(c *Climate, step DayStep, at time.Duration, _ float64) (Position, ClimateState, error) {
	opening := s.Opening(at)
	step.Setting.Opening = opening
	state, err := c.Solve(step.Weather, step.Setting)
	return Position{Demand: opening, Limit: 1, Opening: opening, By: ByHand}, state, err
}

// openingTolerance is how near the vents' place of rest is sought, fraction.
const openingTolerance = 1e-9

func (r OpeningRule) stand(c *Climate, step DayStep, _ time.Duration, last float64) (Position, ClimateState, error) {
	var fault error
	at := func(opening float64) ClimateState {
		step.Setting.Opening = opening
		state, err := c.Solve(step.Weather, step.Setting)
		if errors.Is(err, ErrNoSolution) {
			return ClimateState{Temperature: math.Inf(1)} // hotter than any: open more
		}
		fault = errors.Join(fault, err)
		return state
	}
	limit, _ := r.limit(step.Weather.Wind, step.Rain)
	held := math.Min(last, limit)
	state := at(held)
	p := r.Position(state.Temperature, step.Weather.Wind, step.Rain, held)
	if fault != nil {
		return Position{}, ClimateState{}, fault
	}
	if (p.By == ByDeadBand || p.Opening == held) && !math.IsInf(state.Temperature, 1) {
		return p, state, nil
	}
	low, high := math.Min(r.Least, limit), math.Min(r.Most, limit)
	rest, err := comeToRest(func(opening float64) float64 {
		return math.Min(r.demand(at(opening).Temperature), limit) - opening
	}, low, high, held)
	fault = errors.Join(fault, err)
	if fault != nil {
		return Position{}, ClimateState{}, fault
	}
	p = Position{Limit: limit, Opening: r.stop(rest, limit)}
	step.Setting.Opening = p.Opening
	state, err = c.Solve(step.Weather, step.Setting)
	if err != nil {
		return Position{}, ClimateState{}, err
	}
	p.Demand = r.demand(state.Temperature)
	if rest == limit && p.Demand > limit {
		_, p.By = r.limit(step.Weather.Wind, step.Rain)
	}
	return p, state, nil
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
