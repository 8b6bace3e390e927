// Package report prints the plain aligned text of the example programs: a
// title, sections, lines of label, value and unit, tables, and notes.
package report

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Report collects text and writes it in one piece, so that a failure half way
// prints nothing.
type Report struct{ buf bytes.Buffer }

const (
	labelWidth = 46
	valueWidth = 12
	textWidth  = 78
)

// Title starts the report.
func (r *Report) Title(format string, a ...any) {
	s := fmt.Sprintf(format, a...)
	fmt.Fprintf(&r.buf, "%s\n%s\n", s, strings.Repeat("=", utf8.RuneCountInString(s)))
}

// Section starts a section.
func (r *Report) Section(format string, a ...any) {
	s := fmt.Sprintf(format, a...)
	fmt.Fprintf(&r.buf, "\n%s\n%s\n", s, strings.Repeat("-", utf8.RuneCountInString(s)))
}

// Value prints a label, a number with the given count of decimals, and a unit.
func (r *Report) Value(label string, v float64, decimals int, unit string) {
	r.Text(label, Number(v, decimals), unit)
}

// Text prints a label, a word in place of a number, and a unit or remark.
func (r *Report) Text(label, value, unit string) {
	line := pad(label, labelWidth) + "  " + left(value, valueWidth) + "  " + unit
	r.buf.WriteString(strings.TrimRight(line, " ") + "\n")
}

// Note prints a paragraph, wrapped.
func (r *Report) Note(format string, a ...any) {
	line := ""
	for _, w := range strings.Fields(fmt.Sprintf(format, a...)) {
		if line != "" && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(w) > textWidth {
			r.buf.WriteString(line + "\n")
			line = ""
		}
		if line == "" {
			line = "  " + w
		} else {
			line += " " + w
		}
	}
	if line != "" {
		r.buf.WriteString(line + "\n")
	}
}

// Table prints rows under a header, the first column to the left and the
// others to the right, each as wide as it needs.
func (r *Report) Table(header []string, rows [][]string) {
	width := make([]int, len(header))
	all := append([][]string{header}, rows...)
	for _, row := range all {
		for i, c := range row {
			width[i] = max(width[i], utf8.RuneCountInString(c))
		}
	}
	for _, row := range all {
		var b strings.Builder
		for i, c := range row {
			if i == 0 {
				b.WriteString(pad(c, width[i]))
				continue
			}
			b.WriteString("  " + left(c, width[i]))
		}
		r.buf.WriteString(strings.TrimRight(b.String(), " ") + "\n")
	}
}

// Line prints one line as it stands.
func (r *Report) Line(format string, a ...any) { fmt.Fprintf(&r.buf, format+"\n", a...) }

// WriteTo writes the whole report.
func (r *Report) WriteTo(w io.Writer) (int64, error) { return r.buf.WriteTo(w) }

// String returns the report so far.
func (r *Report) String() string { return r.buf.String() }

// Number formats v with the given count of decimals, without a minus sign
// before a zero; NaN is a dash and an infinity is the word "never".
func Number(v float64, decimals int) string {
	switch {
	case math.IsNaN(v):
		return "-"
	case math.IsInf(v, 0):
		return "never"
	}
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	return s
}

func pad(s string, w int) string {
	return s + strings.Repeat(" ", max(0, w-utf8.RuneCountInString(s)))
}

func left(s string, w int) string {
	return strings.Repeat(" ", max(0, w-utf8.RuneCountInString(s))) + s
}
