package ventilation

import (
	"fmt"

	"cloche.example/internal/domain"
)

// RangeError says which input was refused: Field names it as the caller wrote
// it, Value is what was given, Min and Max what would have been accepted, Unit
// the unit of the three, Source where the limit comes from.
type RangeError = domain.RangeError

// Range is a closed interval of accepted values with its unit and source.
type Range = domain.Range

// Errors matched with errors.Is.
var (
	ErrRange        = domain.ErrRange        // an input lies outside its range
	ErrNoSolution   = domain.ErrNoSolution   // valid inputs, but nothing solves the equations
	ErrNotConverged = domain.ErrNotConverged // a solver used up its iterations
)

// errLevel is the fault of openings that no stack can work on.
var errLevel = fmt.Errorf("openings: %w: all at one height and no wind; air passes two ways only through a tall opening (Vertical above zero)", ErrNoSolution)
