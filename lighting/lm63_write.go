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
// back, a tilt file's data in the file itself. What ReadLM63 gives is written,
// and read back the same but for the multipliers and the warnings. All faults
// are reported together, before anything is written.
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
			case i > 0:
				line("[MORE] " + v)
			case l.Keyword == "":
				line(v)
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
	errs = append(errs, lampsRange.Check("Lamps", float64(f.Lamps)), filePowerRange.Check("InputPower", f.InputPower),
		fileFactorRange.Check("Multiplier", f.Multiplier), fileFactorRange.Check("BallastFactor", f.BallastFactor),
		fileLumenRange.Check("LumensPerLamp", f.LumensPerLamp), fileNumberRange.Check("Field12", f.Field12),
		fileLengthRange.Check("Width", f.Width), fileLengthRange.Check("Length", f.Length), fileLengthRange.Check("Height", f.Height))
	for i, l := range f.Labels {
		if why := l.fault(i == 0, i == 0 && f.Edition == LM63of1986); why != "" {
			errs = append(errs, fmt.Errorf("label %d %s: %w", i+1, why, ErrRange))
		}
	}
	if t := f.Tilt; t != nil {
		if t.Geometry < 1 || t.Geometry > 3 || len(t.Angles) == 0 || len(t.Angles) != len(t.Factors) {
			errs = append(errs, fmt.Errorf("tilt geometry %d with %d angles and %d factors: %w", t.Geometry, len(t.Angles), len(t.Factors), ErrRange))
		}
		errs = append(errs, angles("tilt angle", t.Angles, 0, 180, 1)...)
		for i, v := range t.Factors {
			errs = append(errs, tiltFactorRange.Check(fmt.Sprintf("tilt factor %d", i+1), v))
		}
	}
	return errors.Join(errs...)
}

// fault tells why a label could not be read back as it is; first is the first
// one of a file that no line names the edition of.
func (l Label) fault(first, bare bool) string {
	lines := strings.Split(l.Value, "\n")
	for _, v := range lines {
		if v != text([]byte(v)) || strings.Contains(v, "\r") {
			return "has a carriage return, blanks about a line, or bytes that are not UTF-8 in its value"
		}
	}
	if l.Keyword != "" {
		key, value, found := keywordLine("[" + l.Keyword + "] " + lines[0])
		if !found || key != l.Keyword || value != lines[0] || strings.ContainsAny(key, "\r\n") || key != text([]byte(key)) || key == "MORE" && !first {
			return "has a keyword with small letters, a closing bracket, blanks or line ends, or MORE"
		}
		return ""
	}
	_, _, keyword := keywordLine(lines[0])
	_, tilt := tiltLine(lines[0])
	_, edition := editionOf(lines[0])
	if keyword || tilt || edition && bare || lines[0] == "" {
		return "is free text that reads as another line of the file, or as none"
	}
	return ""
}

// Ranges of what a file holds; what ReadLM63 takes lies within them.
var (
	lampsRange      = domain.Range{Min: 1, Max: greatestLM63, Unit: "(count)"}
	filePowerRange  = domain.Range{Min: 0, Max: greatestLM63, Unit: "W"}
	fileFactorRange = domain.Range{Min: -greatestLM63, Max: greatestLM63, Unit: "(factor)"}
	fileLumenRange  = domain.Range{Min: -greatestLM63, Max: greatestLM63, Unit: "lm"}
	fileNumberRange = domain.Range{Min: -greatestLM63, Max: greatestLM63, Unit: "(any unit)"}
	fileLengthRange = domain.Range{Min: -greatestLM63, Max: greatestLM63, Unit: "m"}
	tiltFactorRange = domain.Range{Min: 0, Max: greatestLM63, Unit: "(factor)"}
)
