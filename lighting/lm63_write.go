package lighting

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"cloche.example/internal/domain"
)

// Write writes the file in its edition: lengths in metres, the candela of the
// Web with every multiplier 1, the shortest digits that give the same numbers
// back. All faults are reported together, before anything is written.
func (f *LM63) Write(w io.Writer) error {
	if err := f.check(); err != nil {
		return err
	}
	b := bufio.NewWriter(w)
	line := func(s string) { b.WriteString(s + "\r\n") }
	if f.Edition != LM63of1986 {
		line(f.Edition.String())
	}
	for _, l := range f.Labels {
		for i, v := range strings.Split(l.Value, "\n") {
			switch {
			case l.Keyword == "":
				line(v)
			case i > 0:
				line("[MORE] " + v)
			default:
				line("[" + l.Keyword + "] " + v)
			}
		}
	}
	if f.Tilt == nil {
		line("TILT=NONE")
	} else {
		line("TILT=INCLUDE")
		line(strconv.Itoa(f.Tilt.Geometry))
		line(strconv.Itoa(len(f.Tilt.Angles)))
		writeNumbers(b, f.Tilt.Angles)
		writeNumbers(b, f.Tilt.Factors)
	}
	kind := map[Coordinates]float64{TypeC: 1, TypeB: 2, TypeA: 3}[f.Web.Coordinates]
	writeNumbers(b, []float64{float64(f.Lamps), f.LumensPerLamp, 1, float64(len(f.Web.Vertical)),
		float64(len(f.Web.Horizontal)), kind, 2, f.Width, f.Length, f.Height})
	twelfth := f.Field12
	if f.Edition.factor12() {
		twelfth = 1
	}
	writeNumbers(b, []float64{1, twelfth, f.InputPower})
	writeNumbers(b, f.Web.Vertical)
	writeNumbers(b, f.Web.Horizontal)
	for _, row := range f.Web.Candela {
		writeNumbers(b, row)
	}
	return b.Flush()
}

// writeNumbers breaks lines before 80 characters.
func writeNumbers(b *bufio.Writer, v []float64) {
	n := 0
	for i, x := range v {
		s := strconv.FormatFloat(x, 'g', -1, 64)
		switch {
		case i > 0 && n+1+len(s) > 80:
			b.WriteString("\r\n")
			n = 0
		case i > 0:
			b.WriteByte(' ')
			n++
		}
		b.WriteString(s)
		n += len(s)
	}
	b.WriteString("\r\n")
}

func (f *LM63) check() error {
	errs := []error{f.Web.web().check()}
	if errs[0] == nil {
		if _, why := f.Web.verticalFault(); why != "" {
			errs = append(errs, fmt.Errorf("%s: %w", why, ErrRange))
		}
		if _, why := f.Web.horizontalFault(); why != "" {
			errs = append(errs, fmt.Errorf("%s: %w", why, ErrRange))
		}
	}
	if int(f.Edition) >= len(editionLines) {
		errs = append(errs, fmt.Errorf("edition %d: %w", f.Edition, ErrRange))
	}
	finite := domain.Range{Min: -1e9, Max: 1e9, Unit: "(any unit)"}
	errs = append(errs,
		domain.Range{Min: 1, Max: 1e9, Unit: "(count)"}.Check("Lamps", float64(f.Lamps)),
		domain.Range{Min: 0, Max: 1e9, Unit: "W"}.Check("InputPower", f.InputPower),
		finite.Check("Multiplier", f.Multiplier), finite.Check("BallastFactor", f.BallastFactor),
		finite.Check("LumensPerLamp", f.LumensPerLamp), finite.Check("Field12", f.Field12),
		finite.Check("Width", f.Width), finite.Check("Length", f.Length), finite.Check("Height", f.Height))
	for i, l := range f.Labels {
		if why := l.fault(i == 0 && f.Edition == LM63of1986); why != "" {
			errs = append(errs, fmt.Errorf("label %d %s: %w", i+1, why, ErrRange))
		}
	}
	if t := f.Tilt; t != nil {
		if t.Geometry < 1 || t.Geometry > 3 || len(t.Angles) == 0 || len(t.Angles) != len(t.Factors) {
			errs = append(errs, fmt.Errorf("tilt geometry %d with %d angles and %d factors: %w", t.Geometry, len(t.Angles), len(t.Factors), ErrRange))
		}
		errs = append(errs, angles("tilt angle", t.Angles, 0, 180, 1)...)
		for i, v := range t.Factors {
			errs = append(errs, domain.Range{Min: 0, Max: 1e9, Unit: "(factor)"}.Check(fmt.Sprintf("tilt factor %d", i+1), v))
		}
	}
	return errors.Join(errs...)
}

// fault tells why a label could not be read back.
func (l Label) fault(first bool) string {
	if strings.ContainsAny(l.Keyword, "[]\r\n") || l.Keyword != strings.TrimSpace(l.Keyword) || strings.EqualFold(l.Keyword, "MORE") {
		return "has a keyword with brackets, blanks or line ends, or MORE"
	}
	if strings.Contains(l.Value, "\r") {
		return "has a carriage return in its value"
	}
	if l.Keyword == "" {
		for _, v := range strings.Split(l.Value, "\n") {
			name, _, found := strings.Cut(v, "=")
			if found && strings.EqualFold(strings.TrimSpace(name), "TILT") || strings.HasPrefix(strings.TrimSpace(v), "[") ||
				first && strings.HasPrefix(strings.ToUpper(strings.TrimSpace(v)), "IES") {
				return "is free text that reads as another line of the file"
			}
		}
	}
	return ""
}
