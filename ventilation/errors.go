package ventilation

import (
	"fmt"

	"cloche.example/internal/domain"
)

// RangeError is the error for an input outside its range. Its fields: Field,
// the input's name as the caller wrote it; Value, what was given; Min and Max,
// the smallest and largest value accepted, -Inf or +Inf where there is no such
// end; Unit, the unit of the three; Source, where the range comes from, may be
// empty. Its methods: Error words all of it, and Is makes errors.Is(err,
// ErrRange) true. Read it with errors.As; when several inputs are at fault,
// errors.Join holds one for each.
type RangeError = domain.RangeError

// Errors matched with errors.Is. All five packages share them.
var (
	ErrRange        = domain.ErrRange        // an input lies outside its range
	ErrNoSolution   = domain.ErrNoSolution   // valid inputs, but nothing solves the equations
	ErrNotConverged = domain.ErrNotConverged // a solver used up its iterations
)

// enumName returns the name of value v of an enum, or kind(v) for one that it
// does not have.
func enumName(kind string, names []string, v uint8) string {
	if int(v) < len(names) {
		return names[v]
	}
	return fmt.Sprintf("%s(%d)", kind, v)
}

// enumFault refuses a value of an enum that has no name.
func enumFault(field, kind string, names []string, v uint8) error {
	if int(v) < len(names) {
		return nil
	}
	return &RangeError{Field: field, Value: float64(v), Max: float64(len(names) - 1), Source: "the values of " + kind}
}

// errLevel is the fault of openings that no stack can work on.
var errLevel = fmt.Errorf("openings: %w: all at one height and no wind; air passes two ways only through a tall opening (Vertical above zero)", ErrNoSolution)
