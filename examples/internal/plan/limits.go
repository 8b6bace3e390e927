package plan

import (
	"math"
	"strconv"
	"strings"
)

// allowed words what a key accepts, to follow the words of a fault.
func (k Key) allowed() string {
	switch k.Kind {
	case Number, Whole, Numbers:
		return ", allowed " + k.limits()
	case Choice, Name:
		return ", one of: " + strings.Join(quoted(k.Choices), ", ")
	}
	return ""
}

// limits prints the range with its unit.
func (k Key) limits() string {
	return strings.TrimSpace(limit(k.Min) + " to " + limit(k.Max) + " " + unitWord(k.Unit))
}

// limit prints an end of a range as people write it.
func limit(v float64) string {
	if size := math.Abs(v); size >= 1e-4 && size < 1e7 {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	return strings.NewReplacer("e-0", "e-", "e+0", "e").Replace(strconv.FormatFloat(v, 'g', -1, 64))
}

// unitWord sets the words that stand where a unit would in brackets.
func unitWord(unit string) string {
	switch unit {
	case "fraction", "ratio", "factor", "count", "number", "exponent":
		return "(" + unit + ")"
	}
	return unit
}
