package lighting

import "cloche.example/internal/domain"

// RangeError says which input was refused: Field is the input's name as the
// user wrote it, Value what was given, Min and Max the accepted interval, Unit
// the unit of the three, and Source where the interval comes from.
type RangeError = domain.RangeError

// Range is a closed interval of accepted values with its unit and source.
type Range = domain.Range

// The errors that errors.Is matches.
var (
	ErrRange        = domain.ErrRange        // an input outside its stated range
	ErrNoSolution   = domain.ErrNoSolution   // no solution for valid inputs
	ErrNotConverged = domain.ErrNotConverged // a solver used up its iteration limit
)
