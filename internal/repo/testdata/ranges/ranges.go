// Package ranges has comments that give the ranges of its checks, and comments
// that do not.
package ranges

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/internal/domain"
)

var (
	lengthRange = domain.Range{Min: 0.1, Max: 1e6, Unit: "m²"}
	flowRange   = domain.Range{Min: domain.MoreThan(0), Max: 5, Unit: "m³/s"}
	heatRange   = domain.Range{Min: 0, Max: math.Inf(1), Unit: "W"}
	shareRange  = domain.Range{Max: 1, Unit: "fraction"}
	sameRange   = domain.Range{Min: -40, Max: lengthRange.Max, Unit: "°C"}
	stepRange   = domain.Range{Min: 1, Max: 24, Unit: "h"}
)

// Box is a box.
type Box struct {
	Stated  float64       // m², 0.1 to 1e6
	Drifted float64       // m², 0.1 to 2e6
	Silent  float64       // m²
	NoUnit  float64       // 0.1 to 1e6
	Open    float64       // m³/s, more than 0, at most 5
	Shut    float64       // m³/s, 0 to 5
	Heat    float64       // W, at least 0
	List    []float64     // fraction, 0 to 1, of each part
	Parts   []Part        // at least one
	Minus   float64       // °C, −40 to 1,000,000
	Step    time.Duration // 1 to 24 h
	Depends float64       // m, at least Stated
	Kind    Kind          // of box
	More    float64       // fraction, more than 0, at most 1
	Least   float64       // fraction, 0 to 1
}

// Part is a part of a box.
type Part struct {
	Share float64 // fraction, 0 to 2
}

// Kind is a kind.
type Kind int

func (b Box) check() error {
	var faults []error
	check := func(r domain.Range, field string, v float64) {
		if err := r.Check(field, v); err != nil {
			faults = append(faults, err)
		}
	}
	check(lengthRange, "Stated", b.Stated)
	check(lengthRange, "Drifted", b.Drifted)
	check(flowRange, "Open", b.Open)
	for i, v := range b.List {
		faults = append(faults, shareRange.Check(fmt.Sprintf("List[%d]", i), v))
	}
	for _, p := range b.Parts {
		check(shareRange, "Share", p.Share)
	}
	moved := lengthRange
	moved.Min = b.Stated
	local := domain.Range{Min: b.Stated, Max: 5, Unit: "m"}
	return errors.Join(append(faults,
		lengthRange.Check("Silent", b.Silent), lengthRange.Check("NoUnit", b.NoUnit), both(flowRange, "Shut", b.Shut),
		heatRange.Check("Heat", b.Heat), sameRange.Check("Minus", b.Minus), stepRange.Check("Step", b.Step.Hours()),
		moved.Check("Depends", b.Depends), local.Check("Depends", b.Depends), shareRange.Check("Kind", float64(b.Kind)),
		positive(shareRange, "More", b.More), positive(shareRange, "Least", b.Least),
		shareRange.Check("sum", b.Stated+b.Open))...)
}

func positive(r domain.Range, field string, v float64) error {
	if v == 0 {
		return &domain.RangeError{Field: field}
	}
	return r.Check(field, v)
}

func both(r domain.Range, field string, v float64) error { return r.Check(field, v) }

// Speed is the speed, m/s, of a flow, m³/s, more than 0, at most 5, through an
// area, m², 0.2 to 1e6.
func Speed(flow, area float64) float64 {
	if !flowRange.Contains(flow) || (Box{}).check() != nil {
		return math.NaN()
	}
	return flow / checked(area)
}

func checked(a float64) float64 {
	if !lengthRange.Contains(a) {
		return math.NaN()
	}
	return a
}
