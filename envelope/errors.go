package envelope

import "cloche.example/internal/domain"

// RangeError says which input was refused: Field, Value, Min, Max, Unit and
// Source. Use errors.As to read it; errors.Is(err, ErrRange) matches it.
type RangeError = domain.RangeError

// Range is a closed interval of accepted values with its unit and source.
type Range = domain.Range

// ErrRange is matched by errors.Is for every input outside its stated range.
var ErrRange = domain.ErrRange

// ErrNoSolution is matched by errors.Is when the equations have no solution
// for valid inputs.
var ErrNoSolution = domain.ErrNoSolution

// ErrNotConverged is matched by errors.Is when a solver used up its iteration
// limit.
var ErrNotConverged = domain.ErrNotConverged
