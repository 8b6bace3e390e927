// Package domain holds the errors and validity ranges that all of Cloche's
// packages share. Each public package gives them its own name by an alias, so
// that errors.As and errors.Is work across packages.
package domain

import (
	"errors"
	"fmt"
	"math"
	"strconv"
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

// Error names the field, the value, and the allowed range with its unit.
func (e *RangeError) Error() string {
	unit := e.Unit
	if unit != "" {
		unit = " " + unit
	}
	s := fmt.Sprintf("%s is %s%s, allowed %s to %s%s", e.Field, number(e.Value), unit, number(e.Min), number(e.Max), unit)
	if e.Source != "" {
		s += " (" + e.Source + ")"
	}
	return s
}

// Is reports whether target is ErrRange.
func (e *RangeError) Is(target error) bool { return target == ErrRange }

func number(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }

// Range is a closed interval of accepted values with its unit and source. It
// is the one place where a limit stands: the check, the documentation and the
// tests all read it.
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
