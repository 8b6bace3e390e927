// Package domain holds the errors and validity ranges that all of Cloche's
// packages share. Each public package gives the errors its own name by an
// alias, so that errors.As and errors.Is work across packages; ranges are
// unexported data of the package that checks them.
package domain

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// ErrRange is matched by errors.Is for every input outside its stated range.
var ErrRange = errors.New("value out of range")

// ErrNoSolution is matched by errors.Is when the equations have no solution
// for valid inputs.
var ErrNoSolution = errors.New("no solution")

// ErrNotConverged is matched by errors.Is when a solver used up its iteration
// limit.
var ErrNotConverged = errors.New("not converged")

// RangeError says which input was refused and what would have been accepted.
type RangeError struct {
	Field  string  // the input's name as the user wrote it
	Value  float64 // the value given, in Unit
	Min    float64 // the smallest accepted value, in Unit; -Inf if there is none
	Max    float64 // the largest accepted value, in Unit; +Inf if there is none
	Unit   string  // the unit of Value, Min and Max
	Source string  // where the range comes from, may be empty
}

// Error names the field, the value, and the allowed range with its unit: "Span
// is 75, allowed 0.5 to 60 m".
func (e *RangeError) Error() string {
	s := fmt.Sprintf("%s is %s, allowed %s", e.Field, distinct(e.Value, e.Min, e.Max), e.allowed())
	if e.Source != "" {
		s += "; " + e.Source
	}
	return s
}

// Is reports whether target is ErrRange.
func (e *RangeError) Is(target error) bool { return target == ErrRange }

// allowed words the range: both ends, one end, or a single value.
func (e *RangeError) allowed() string {
	low, high := !math.IsInf(e.Min, -1), !math.IsInf(e.Max, 1)
	above, overLow := openAbove(e.Min)
	below, underHigh := openBelow(e.Max)
	lowEnd, highEnd := number(e.Min), number(e.Max)
	if overLow {
		lowEnd = "more than " + number(above)
	}
	if underHigh {
		highEnd = "less than " + number(below)
	}
	var s string
	switch {
	case low && high && e.Min == e.Max:
		s = "only " + number(e.Min)
	case low && high && !overLow && !underHigh:
		s = lowEnd + " to " + highEnd
	case low && high && !overLow:
		s = "from " + lowEnd + " to " + highEnd
	case low && high && !underHigh:
		s = lowEnd + ", at most " + highEnd
	case low && high:
		s = lowEnd + " and " + highEnd
	case low && overLow:
		s = lowEnd
	case low:
		s = "at least " + lowEnd
	case high && underHigh:
		s = highEnd
	case high:
		s = "at most " + highEnd
	default:
		s = "any finite number"
	}
	switch {
	case e.Unit == "":
		return s
	case kinds[e.Unit]:
		return s + " (" + e.Unit + ")"
	}
	return s + " " + e.Unit
}

// kinds are words that stand where a unit would for a number without one.
var kinds = map[string]bool{"fraction": true, "ratio": true, "factor": true, "count": true, "number": true, "exponent": true}

// openAbove reports whether limit is the float64 next above a plainer number,
// which MoreThan makes of a limit that is itself refused, and that number.
func openAbove(limit float64) (float64, bool) {
	return plainer(limit, math.Nextafter(limit, math.Inf(-1)))
}

// openBelow is openAbove for the upper end, which LessThan makes.
func openBelow(limit float64) (float64, bool) {
	return plainer(limit, math.Nextafter(limit, math.Inf(1)))
}

func plainer(limit, next float64) (float64, bool) {
	const digits = 8 // saved by the plainer number; far more than a limit that someone wrote has
	long := strconv.FormatFloat(limit, 'e', -1, 64)
	short := strconv.FormatFloat(next, 'e', -1, 64)
	return next, limit == math.SmallestNonzeroFloat64 || limit == -math.SmallestNonzeroFloat64 || len(long) >= len(short)+digits
}

// MoreThan returns the smallest float64 above v, as the Min of a range that
// leaves v itself out.
func MoreThan(v float64) float64 { return math.Nextafter(v, math.Inf(1)) }

// LessThan returns the largest float64 below v, as the Max of a range that
// leaves v itself out.
func LessThan(v float64) float64 { return math.Nextafter(v, math.Inf(-1)) }

func number(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }

// distinct prints v with six digits, or with as many as it takes to differ
// from the printed ends of the range.
func distinct(v float64, ends ...float64) string {
	digits := 6
	for _, end := range ends {
		for digits < 17 && v != end && strconv.FormatFloat(v, 'g', digits, 64) == strconv.FormatFloat(end, 'g', digits, 64) {
			digits++
		}
	}
	return strconv.FormatFloat(v, 'g', digits, 64)
}

// Range is a closed interval of accepted values with its unit and source. It
// is the one place where a limit stands: the check reads it, and a test holds
// the documentation to it.
type Range struct {
	Min    float64 // smallest accepted value, in Unit
	Max    float64 // largest accepted value, in Unit
	Unit   string  // unit of Min and Max
	Source string  // where the limit comes from
}

// Contains reports whether v, in the range's own unit, lies within it. NaN
// never does.
func (r Range) Contains(v float64) bool { return v >= r.Min && v <= r.Max }

// Check returns nil when v, in the range's own unit, lies within the range,
// and otherwise a *RangeError that names field. NaN and infinities are
// refused, also by a range without an end.
func (r Range) Check(field string, v float64) error {
	if r.Contains(v) && !math.IsInf(v, 0) {
		return nil
	}
	return &RangeError{Field: field, Value: v, Min: r.Min, Max: r.Max, Unit: r.Unit, Source: r.Source}
}

// Within returns err with where and a dot before the field of each *RangeError
// in it, and where and a colon before every other error; joined errors are
// named one by one. It returns nil for nil.
func Within(where string, err error) error {
	switch e := err.(type) {
	case nil:
		return nil
	case *RangeError:
		named := *e
		named.Field = where + "." + strings.TrimPrefix(e.Field, ".")
		return &named
	case interface{ Unwrap() []error }:
		joined := make([]error, 0, 4)
		for _, one := range e.Unwrap() {
			joined = append(joined, Within(where, one))
		}
		return errors.Join(joined...)
	}
	return fmt.Errorf("%s: %w", where, err)
}
