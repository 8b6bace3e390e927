package ventilation

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/internal/domain"
)

// OpeningRule moves the vents by the inside temperature, in proportion, within
// what wind and rain allow.
type OpeningRule struct {
	Start    float64 // °C, -60 to 80, inside temperature at which the vents begin to open
	Band     float64 // K, 0.1 to 30, above Start over which they open from Least to Most: the proportional band
	DeadBand float64 // fraction, 0 to 1, of the opening; smaller moves are not made
	Step     float64 // fraction, 0 to 1; the drive stops at multiples of it, 0 for anywhere
	Least    float64 // fraction, 0 to 1, kept open below Start
	Most     float64 // fraction, Least to 1, open at Start plus Band and above
	WindLow  float64 // m/s, 0 to 45, above which the wind lowers the vents
	WindHigh float64 // m/s, WindLow to 45, at which and above no more than WindMost is open
	WindMost float64 // fraction, 0 to 1, in wind of WindHigh and more
	RainMost float64 // fraction, 0 to 1, most opening in rain
}

// DefaultOpeningRule returns vents that begin to open at 20 °C and stand wide
// open 5 K above, move in steps of a twentieth and more, and close to a
// twentieth between 8 and 14 m/s of wind and to a fifth in rain (common
// practice, no source). What the structure bears decides about the wind.
func DefaultOpeningRule() OpeningRule {
	return OpeningRule{Start: 20, Band: 5, DeadBand: 0.05, Most: 1, WindLow: 8, WindHigh: 14, WindMost: 0.05, RainMost: 0.2}
}

// Cause says what set how far the vents open.
type Cause uint8

// The causes.
const (
	ByTemperature Cause = iota // the rule's demand
	ByDeadBand                 // the demand was too near the last opening
	ByWind                     // the wind's limit
	ByRain                     // the rain's limit
	ByHand                     // a schedule
)

var causeNames = []string{"temperature", "dead band", "wind", "rain", "hand"}

// String names the cause in a word or two.
func (c Cause) String() string { return enumName("Cause", causeNames, uint8(c)) }

// VentOpening is how far the vents stand open, and why.
type VentOpening struct {
	Demand  float64 // fraction, what the temperature asks for
	Limit   float64 // fraction, what wind and rain allow
	Opening float64 // fraction, 0 to 1, how far they stand open
	By      Cause   // what set Opening
}

// bandRange limits a proportional band.
var bandRange = domain.Range{Min: 0.1, Max: 30, Unit: "K", Source: "below, vents hunt; a rule in K, not in per cent"}

// Check joins every fault of r, by field.
func (r OpeningRule) Check() error {
	most, high := shareRange, windRange
	if shareRange.Contains(r.Least) && r.Most >= 0 {
		most = domain.Range{Min: r.Least, Max: 1, Unit: "fraction", Source: "Least"}
	}
	if windRange.Contains(r.WindLow) {
		high = domain.Range{Min: r.WindLow, Max: windRange.Max, Unit: "m/s", Source: "WindLow"}
	}
	return errors.Join(
		temperatureRange.Check("Start", r.Start),
		bandRange.Check("Band", r.Band),
		shareRange.Check("DeadBand", r.DeadBand),
		shareRange.Check("Step", r.Step),
		shareRange.Check("Least", r.Least),
		most.Check("Most", r.Most),
		windRange.Check("WindLow", r.WindLow),
		high.Check("WindHigh", r.WindHigh),
		shareRange.Check("WindMost", r.WindMost),
		shareRange.Check("RainMost", r.RainMost),
	)
}

// demand returns the opening, fraction, that the inside temperature, °C, asks
// for: Least + (Most - Least) (inside - Start)/Band between Start and
// Start + Band, Least below and Most above.
func (r OpeningRule) demand(inside float64) float64 {
	return r.Least + (r.Most-r.Least)*math.Max(0, math.Min(1, (inside-r.Start)/r.Band))
}

// limit returns the opening that wind, m/s, and rain allow, and which of them
// sets it.
func (r OpeningRule) limit(wind float64, rain bool) (float64, Cause) {
	limit, by := 1.0, ByTemperature
	switch {
	case wind >= r.WindHigh && r.WindMost < limit:
		limit, by = r.WindMost, ByWind
	case wind > r.WindLow && r.WindMost < limit:
		limit, by = 1-(1-r.WindMost)*(wind-r.WindLow)/(r.WindHigh-r.WindLow), ByWind
	}
	if rain && r.RainMost < limit {
		limit, by = r.RainMost, ByRain
	}
	return limit, by
}

// Next returns where the rule puts the vents that stand at last, fraction,
// for the inside temperature, °C, the wind, m/s, and rain. Wind and rain act
// at once, whatever the dead band and Least say. A rule that Check refuses
// gives a meaningless opening; NaN goes in and out.
func (r OpeningRule) Next(inside, wind float64, rain bool, last float64) VentOpening {
	p := VentOpening{Demand: r.demand(inside)}
	var by Cause
	p.Limit, by = r.limit(wind, rain)
	p.Opening = p.Demand
	held := math.Min(last, p.Limit)
	switch {
	case p.Demand != last && math.Abs(p.Demand-last) < r.DeadBand && last <= p.Limit:
		p.Opening, p.By = held, ByDeadBand
	case p.Demand > p.Limit:
		p.Opening, p.By = p.Limit, by
	}
	if p.By != ByDeadBand {
		p.Opening = r.stop(p.Opening, p.Limit)
	}
	return p
}

// stop returns the place nearest to opening where the drive can stop, not
// above limit.
func (r OpeningRule) stop(opening, limit float64) float64 {
	if r.Step == 0 {
		return opening
	}
	n := math.Round(opening / r.Step)
	if n*r.Step > limit*(1+slack) {
		n = math.Floor(limit / r.Step * (1 + slack))
	}
	return math.Min(limit, n*r.Step)
}

// Move is a vent set by hand.
type Move struct {
	At      time.Duration // since midnight, below 24 h
	Opening float64       // fraction, 0 to 1, from then on
}

// Schedule is the vents' day by hand, in order of time: twice a day are two
// moves. Before the first move stands what the last one left the day before.
type Schedule []Move

// check joins every fault of s, by field.
func (s Schedule) check() error {
	var faults []error
	if len(s) == 0 {
		faults = append(faults, &RangeError{Field: "number of moves", Value: 0, Min: 1, Max: math.Inf(1), Unit: "count"})
	}
	for i, m := range s {
		where := fmt.Sprintf("moves[%d]", i)
		first := time.Duration(0)
		if i > 0 {
			first = s[i-1].At
		}
		if m.At < first || m.At >= 24*time.Hour {
			faults = append(faults, &RangeError{Field: where + ".At", Value: m.At.Hours(), Min: first.Hours(), Max: 24, Unit: "h", Source: "hours of one day in order"})
		}
		faults = append(faults, shareRange.Check(where+".Opening", m.Opening))
	}
	return errors.Join(faults...)
}

// opening returns where the vents stand, fraction, at the time since
// midnight of any day. NaN without a move.
func (s Schedule) opening(at time.Duration) float64 {
	if len(s) == 0 {
		return math.NaN()
	}
	at %= 24 * time.Hour
	if at < 0 {
		at += 24 * time.Hour
	}
	opening := s[len(s)-1].Opening
	for _, m := range s {
		if m.At > at {
			break
		}
		opening = m.Opening
	}
	return opening
}
