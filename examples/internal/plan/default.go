package plan

import (
	"fmt"
	"strconv"
	"strings"
)

// Default is a value that a plan did not give.
type Default struct {
	Path  string // key
	Value any    // float64, int, string, bool or []float64; nil for a section that the house does not have, int 0 for an empty list
	Unit  string // of a number
}

// String prints the default as a report would: "house.depth_m 0 m".
func (d Default) String() string { return d.Path + " " + d.value() }

// value prints the value with its unit.
func (d Default) value() string {
	s := "none"
	switch v := d.Value.(type) {
	case float64:
		s = strconv.FormatFloat(v, 'g', -1, 64)
	case []float64:
		s = joinNumbers(v)
	case string:
		s = strconv.Quote(v)
	case int, bool:
		s = fmt.Sprint(v)
	}
	return strings.TrimSpace(s + " " + unitWord(d.Unit))
}

// Taken lists the defaults in few lines, one for each section that took any:
// "site.mains: voltage_v 230 V, phases_count 1 (count)".
func (f Filled) Taken() []string {
	var lines []string
	section := "-"
	for _, d := range f.Defaults {
		i := strings.LastIndexByte(d.Path, '.')
		here, key := d.Path[:max(i, 0)], d.Path[i+1:]
		switch {
		case here != section && here == "":
			lines = append(lines, d.String())
		case here != section:
			lines = append(lines, here+": "+key+" "+d.value())
		default:
			lines[len(lines)-1] += ", " + key + " " + d.value()
		}
		section = here
	}
	return lines
}

func joinNumbers(v []float64) string {
	words := make([]string, len(v))
	for i, x := range v {
		words[i] = strconv.FormatFloat(x, 'g', -1, 64)
	}
	return strings.Join(words, ", ")
}
