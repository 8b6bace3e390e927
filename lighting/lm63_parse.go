package lighting

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
)

// parser holds what has been read so far.
type parser struct {
	*lexer
	f    *LM63
	more []byte // [MORE] lines of the last label
}

func (p *parser) warn(line int, format string, a ...any) {
	const most = 50
	if len(p.f.Warnings) < most {
		p.f.Warnings = append(p.f.Warnings, fmt.Sprintf("line %d: %s", line, fmt.Sprintf(format, a...)))
	}
}

func parseLM63(data, tilt []byte, hasTilt bool) (*LM63, error) {
	p := &parser{lexer: newLexer(data, false), f: &LM63{}}
	if len(p.data) != len(data) {
		p.warn(1, "a byte order mark precedes the text")
	}
	where, line, err := p.labels()
	if err != nil {
		return nil, err
	}
	if err := p.lampTilt(where, line, tilt, hasTilt); err != nil {
		return nil, err
	}
	if err := p.numbersOfFile(); err != nil {
		return nil, err
	}
	return p.f, nil
}

// labels reads up to the line TILT= and returns what stands behind it.
func (p *parser) labels() (tilt string, line int, err error) {
	first := true
	for {
		raw, line, ok := p.nextLine()
		if !ok {
			return "", 0, p.fault(p.last(), "", "no line TILT=")
		}
		trimmed := bytes.Trim(raw, blanks)
		if first && len(trimmed) > 0 {
			first = false
			if p.edition(text(trimmed), line) {
				continue
			}
		}
		if value, found := tiltLine(text(trimmed)); found {
			p.checkRequired(line)
			return value, line, nil
		}
		if len(trimmed) == 0 {
			continue
		}
		p.label(text(trimmed), line)
	}
}

// edition reads the first line and reports whether it names an edition.
func (p *parser) edition(s string, line int) bool {
	e, named := editionOf(s)
	switch {
	case !named:
		p.warn(line, "no line names the edition: read as that of 1986")
	case e == LM63of1986:
		e = LM63of2019
		p.warn(line, "unknown edition %q, read as that of 2019", s)
	case s != editionLines[e]:
		p.warn(line, "the edition is written %q", s)
	}
	p.f.Edition = e
	return named
}

// editionOf returns the edition that a first line names, LM63of1986 where it
// names one that is unknown, and whether it names any.
func editionOf(s string) (e Edition, named bool) {
	upper := strings.ToUpper(strings.Join(strings.Fields(s), ""))
	for e := LM63of1991; int(e) < len(editionLines); e++ {
		if upper == editionLines[e] {
			return e, true
		}
	}
	return LM63of1986, strings.HasPrefix(upper, "IESNA") || strings.HasPrefix(upper, "IES:")
}

// tiltLine returns what stands behind TILT=, and whether a line says that.
func tiltLine(s string) (value string, found bool) {
	name, value, found := strings.Cut(s, "=")
	return strings.Trim(value, blanks), found && strings.EqualFold(strings.TrimSpace(name), "TILT")
}

// keywordLine returns the keyword of a line, in capitals, and its value; it is
// not found where the brackets are missing or empty.
func keywordLine(s string) (key, value string, found bool) {
	if !strings.HasPrefix(s, "[") {
		return "", s, false
	}
	key, value, found = strings.Cut(s[1:], "]")
	if key = strings.ToUpper(strings.Trim(key, blanks)); !found || key == "" {
		return "", s, false
	}
	return key, strings.Trim(value, blanks), true
}

// continued adds the [MORE] lines so far to the label that they continue.
func (p *parser) continued() {
	if n := len(p.f.Labels); n > 0 && len(p.more) > 0 {
		p.f.Labels[n-1].Value += string(p.more)
		p.more = p.more[:0]
	}
}

// label adds a label line or continues the one before it.
func (p *parser) label(s string, line int) {
	f := p.f
	key, value, found := keywordLine(s)
	if !found {
		if f.Edition != LM63of1986 {
			p.warn(line, "text without a keyword")
		}
		p.continued()
		f.Labels = append(f.Labels, Label{"", s})
		return
	}
	if key == "MORE" {
		if len(f.Labels) > 0 {
			p.more = append(append(p.more, '\n'), value...)
			return
		}
		p.warn(line, "[MORE] continues nothing")
	}
	if !strings.HasPrefix(key, "_") && !slices.Contains(keywords, key) {
		p.warn(line, "unknown keyword [%s]", key)
	}
	p.continued()
	f.Labels = append(f.Labels, Label{key, value})
}

// keywords are those of the standard [IesLM02]; others begin with a low line.
var keywords = strings.Fields("TEST TESTLAB TESTDATE ISSUEDATE MANUFAC LUMCAT LUMINAIRE LAMPCAT LAMP BALLAST BALLASTCAT " +
	"MAINTCAT DISTRIBUTION FLASHAREA COLORCONSTANT LAMPPOSITION NEARFIELD OTHER SEARCH MORE BLOCK ENDBLOCK DATE")

// required are the keywords that the editions from 2002 on ask for.
var required = []string{"TEST", "TESTLAB", "ISSUEDATE", "MANUFAC"}

func (p *parser) checkRequired(line int) {
	p.continued()
	if p.f.Edition < LM63of2002 {
		return
	}
	for _, k := range required {
		if _, ok := p.f.Label(k); !ok {
			p.warn(line, "no [%s]", k)
		}
	}
}

func (p *parser) lampTilt(where string, line int, tilt []byte, hasTilt bool) (err error) {
	switch {
	case strings.EqualFold(where, "NONE"):
		return nil
	case strings.EqualFold(where, "INCLUDE"):
		p.f.Tilt, err = p.tiltBlock()
		return err
	case where == "":
		return p.fault(line, "TILT=", "says neither NONE nor INCLUDE")
	case !hasTilt:
		return p.fault(line, where, "the tilt data are in another file: pass its text")
	}
	if p.f.Edition == LM63of2019 {
		p.warn(line, "the edition of 2019 no longer allows a separate tilt file")
	}
	p.f.Tilt, err = newLexer(tilt, true).tiltBlock()
	return err
}

func (x *lexer) tiltBlock() (*LampTilt, error) {
	g, err := x.count("lamp geometry", 1, false)
	if err != nil {
		return nil, err
	}
	if g > 3 {
		return nil, x.fault(x.line, fmt.Sprint(g), "the lamp geometry is 1, 2 or 3")
	}
	n, err := x.count("number of tilt angles", 1, true)
	if err != nil {
		return nil, err
	}
	t := &LampTilt{Geometry: g}
	if t.Angles, _, err = x.numbers("tilt angle", n, increasing(0, 180)); err != nil {
		return nil, err
	}
	t.Factors, _, err = x.numbers("tilt factor", n, notNegative)
	return t, err
}

// leastStep is the least distance of two angles, degree, that a table can tell
// apart wherever they lie.
const leastStep = 1e-12

func increasing(low, high float64) func(v, last float64, first bool) string {
	return func(v, last float64, first bool) string {
		switch {
		case !(v >= low && v <= high):
			return fmt.Sprintf("allowed %g to %g degree", low, high)
		case !first && !(v > last+leastStep):
			return fmt.Sprintf("not increasing after %g", last)
		}
		return ""
	}
}

func notNegative(v, _ float64, _ bool) string {
	switch {
	case v < 0:
		return "negative"
	case v > greatestLM63:
		return fmt.Sprintf("above %g", greatestLM63)
	}
	return ""
}

// numbersOfFile reads everything behind the tilt.
func (p *parser) numbersOfFile() (err error) {
	f := p.f
	if f.Lamps, err = p.count("number of lamps", 1, false); err != nil {
		return err
	}
	if f.LumensPerLamp, err = p.value("lumens per lamp", -greatestLM63); err != nil {
		return err
	}
	if f.LumensPerLamp < 0 && f.LumensPerLamp != -1 {
		p.warn(p.line, "lumens per lamp %g, read as -1, absolute photometry", f.LumensPerLamp)
	}
	if f.Multiplier, err = p.value("candela multiplier", math.SmallestNonzeroFloat64); err != nil {
		return err
	}
	nV, err := p.count("number of vertical angles", 2, true)
	if err != nil {
		return err
	}
	nH, err := p.count("number of horizontal angles", 1, true)
	if err != nil {
		return err
	}
	if nH > p.room()/nV {
		return p.fault(p.line, fmt.Sprint(nH), "%d by %d candela are more than the rest of the file can hold", nV, nH)
	}
	if err := p.header(); err != nil {
		return err
	}
	if err := p.angles(nV, nH); err != nil {
		return err
	}
	if err := p.candela(nV, nH); err != nil {
		return err
	}
	return p.end()
}

// greatestLM63 is the largest size of any number before the angles, in the
// file's unit: far above any fixture's.
const greatestLM63 = 1e9

// value reads a number from least to greatestLM63.
func (p *parser) value(what string, least float64) (float64, error) {
	n, err := p.number(what)
	switch {
	case err != nil:
		return 0, err
	case n.v > greatestLM63:
		return 0, p.fault(n.line, string(n.word), "the %s must be at most %g", what, greatestLM63)
	case n.v >= least:
		return n.v, nil
	case least > 0:
		return 0, p.fault(n.line, string(n.word), "the %s must be above 0", what)
	}
	return 0, p.fault(n.line, string(n.word), "the %s must be at least %g", what, least)
}

// metrePerFoot is exact.
const metrePerFoot = 0.3048

func (p *parser) header() error {
	f := p.f
	typ, err := p.choice("photometric type", 3)
	if err != nil {
		return err
	}
	f.Web.Coordinates = [...]Coordinates{TypeC, TypeB, TypeA}[typ-1]
	unit, err := p.choice("unit of length", 2)
	if err != nil {
		return err
	}
	metre := [...]float64{metrePerFoot, 1}[unit-1]
	for _, d := range []struct {
		name string
		to   *float64
	}{{"width", &f.Width}, {"length", &f.Length}, {"height", &f.Height}} {
		v, err := p.value(d.name, -greatestLM63)
		if err != nil {
			return err
		}
		*d.to = v * metre
	}
	if f.BallastFactor, err = p.value("ballast factor", math.SmallestNonzeroFloat64); err != nil {
		return err
	}
	least := -greatestLM63
	if f.Edition.factor12() {
		least = math.SmallestNonzeroFloat64
	}
	if f.Field12, err = p.value("twelfth number", least); err != nil {
		return err
	}
	if f.InputPower, err = p.value("input power", 0); err != nil {
		return err
	}
	if f.InputPower == 0 {
		p.warn(p.line, "the input power is 0 W")
	}
	return nil
}

// choice reads a whole number from 1 to most.
func (p *parser) choice(what string, most int) (int, error) {
	n, err := p.number(what)
	if err != nil {
		return 0, err
	}
	if n.v != math.Trunc(n.v) || n.v < 1 || n.v > float64(most) {
		return 0, p.fault(n.line, string(n.word), "the %s is a number from 1 to %d", what, most)
	}
	return int(n.v), nil
}
