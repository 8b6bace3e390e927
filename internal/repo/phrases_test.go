package repo

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// A statement is one range that a comment gives, and where it stands.
type statement struct {
	span
	start, end int
}

// number matches one as a comment writes it.
const number = `([-−+]?\d+(?:,\d{3})*(?:\.\d+)?(?:[eE][-+]?\d+)?)`

// wording lists the ways to state a range: both ends, both ends in words, one
// end.
var wording = []*regexp.Regexp{
	regexp.MustCompile(`(?i)(more than |above |over )?` + number + ` to (less than |below )?` + number),
	regexp.MustCompile(`(?i)(more than|above|over|at least) ` + number + `(?:,| and|, and|, but) (less than|below|at most|up to) ` + number),
	regexp.MustCompile(`(?i)(more than|above|over|at least|at most|less than|below|up to|only) ` + number),
}

// statements reads the ranges that a comment gives.
func statements(text string) []statement {
	var out []statement
	for i, w := range wording {
		for _, m := range w.FindAllStringSubmatchIndex(text, -1) {
			group := func(g int) string {
				if m[2*g] < 0 {
					return ""
				}
				return strings.ToLower(strings.TrimSpace(text[m[2*g]:m[2*g+1]]))
			}
			if m[0] > 0 && strings.ContainsRune("0123456789.-", rune(text[m[0]-1])) {
				continue
			}
			s := statement{start: m[0], end: m[1]}
			first := value(group(2))
			openLow := map[string]bool{"more than": true, "above": true, "over": true}
			openHigh := map[string]bool{"less than": true, "below": true}
			switch i {
			case 0, 1:
				s.low, s.high = limit{first, openLow[group(1)]}, limit{value(group(4)), openHigh[group(3)]}
			default:
				s.low, s.high = limit{value: math.Inf(-1)}, limit{value: math.Inf(1)}
				switch word := group(1); word {
				case "at most", "up to", "less than", "below":
					s.high = limit{first, openHigh[word]}
				case "only":
					s.low, s.high = limit{value: first}, limit{value: first}
				default:
					s.low = limit{first, openLow[word]}
				}
			}
			out = append(out, s)
		}
	}
	return out
}

func value(s string) float64 {
	v, err := strconv.ParseFloat(strings.NewReplacer("−", "-", ",", "").Replace(s), 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

func (l limit) equal(o limit) bool {
	return l.open == o.open && (l.value == o.value || !math.IsInf(l.value, 0) && math.Abs(l.value-o.value) <= 1e-9*math.Abs(l.value))
}

// kinds are units of numbers that have none: a comment need not repeat them.
var kinds = map[string]bool{"": true, "fraction": true, "dimensionless": true, "factor": true, "ratio": true, "number": true, "count": true, "exponent": true, "any unit": true}

// plain reports whether a unit is one of kinds, in brackets or not.
func plain(unit string) bool { return kinds[strings.Trim(unit, "()")] }

// states reports whether the comment gives the range with its unit.
func states(text string, s span) bool {
	if math.IsInf(s.low.value, -1) && math.IsInf(s.high.value, 1) {
		return true
	}
	if !plain(s.unit) && !strings.Contains(text, s.unit) {
		return false
	}
	for _, st := range statements(text) {
		if st.low.equal(s.low) && st.high.equal(s.high) {
			return true
		}
	}
	return false
}

// statesFor is states for one argument among others: the range must follow a
// mention of it, with no other range between.
func statesFor(text, argument string, s span) bool {
	if math.IsInf(s.low.value, -1) && math.IsInf(s.high.value, 1) {
		return true
	}
	if !plain(s.unit) && !strings.Contains(text, s.unit) {
		return false
	}
	mention := regexp.MustCompile(`\b` + regexp.QuoteMeta(argument) + `\b`)
	all := statements(text)
	for _, st := range all {
		if !st.low.equal(s.low) || !st.high.equal(s.high) {
			continue
		}
		from := 0
		for _, other := range all {
			if other.end <= st.start {
				from = max(from, other.end)
			}
		}
		if mention.MatchString(text[from:st.start]) {
			return true
		}
	}
	return false
}

// words gives the range as a comment should.
func (s span) words() string {
	n := func(v float64) string {
		return strings.NewReplacer("e+0", "e", "e+", "e", "e-0", "e-").Replace(strconv.FormatFloat(v, 'g', -1, 64))
	}
	low, high := !math.IsInf(s.low.value, -1), !math.IsInf(s.high.value, 1)
	end := "at most " + n(s.high.value)
	if s.high.open {
		end = "less than " + n(s.high.value)
	}
	switch {
	case low && high && s.low == s.high:
		return "only " + n(s.low.value)
	case low && high && s.low.open:
		return "more than " + n(s.low.value) + ", " + end
	case low && high && s.high.open:
		return n(s.low.value) + " to less than " + n(s.high.value)
	case low && high:
		return n(s.low.value) + " to " + n(s.high.value)
	case low && s.low.open:
		return "more than " + n(s.low.value)
	case low:
		return "at least " + n(s.low.value)
	case high:
		return end
	}
	return "any"
}

func (s span) String() string {
	if s.unit == "" {
		return s.words()
	}
	return s.unit + ", " + s.words()
}

// give reports whether the comments state the range of an input.
func (c *comments) give(in input) bool {
	if name, argument, found := strings.Cut(in.name, "("); found {
		return statesFor(oneLine(c.funcs[name]), strings.TrimSuffix(argument, ")"), in.allowed)
	}
	return states(c.fields[in.name], in.allowed)
}

// unstated names the inputs whose comment does not give their range.
func unstated(s *source, c *comments) []string {
	var out []string
	seen := map[string]bool{}
	for _, in := range inputs(s) {
		line := fmt.Sprintf("%s: %s", in.name, in.allowed)
		if !c.give(in) && !seen[line] {
			seen[line] = true
			out = append(out, line+" ("+in.place+")")
		}
	}
	return out
}

// excused takes from a list of unstated inputs those that have a reason in the
// record, and adds records that excuse nothing.
func excused(s *source, faults []string, reasons map[string]string) []string {
	used := map[string]bool{}
	var out []string
	for _, f := range faults {
		name, _, _ := strings.Cut(f, " (")
		if strings.TrimSpace(reasons[name]) == "" {
			out = append(out, f)
		}
		used[name] = true
	}
	for name := range reasons {
		if strings.HasPrefix(name, s.name+".") && !used[name] {
			out = append(out, name+": excused, and stated or gone")
		}
	}
	return out
}
